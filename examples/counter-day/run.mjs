// One day at a workshop counter: a ticket for every record, then the day's summary.
//
//   node examples/counter-day/run.mjs [file.jsonl]
//
// The file holds one record a line and is read as a stream. Status 0: all lines evaluated; 1: some lines were bad, and
// standard error says which and why; 2: the file could not be read.
import { createReadStream } from "node:fs";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { emptySummary, evaluateJsonLines, mergeSummaries, summaryOf } from "crankworthy/fleet";
import { renderDaySummary, renderTicket } from "crankworthy/report";

const file = process.argv[2] ?? fileURLToPath(new URL("records.jsonl", import.meta.url));
const lines = createInterface({ input: createReadStream(file), crlfDelay: Number.POSITIVE_INFINITY });

let day = emptySummary;
try {
  for await (const result of evaluateJsonLines(lines)) {
    if (result.ok) {
      day = mergeSummaries(day, summaryOf(result.evaluation));
      console.log(renderTicket(result.evaluation));
      console.log();
    } else {
      day = mergeSummaries(day, summaryOf());
      console.error(`Line ${result.line} was not evaluated:`);
      for (const { message } of result.issues) console.error(`  - ${message}`);
    }
  }
  console.log(renderDaySummary(day));
  process.exitCode = day.refused > 0 ? 1 : 0;
} catch (error) {
  // Only the file system's own errors mean an unreadable file; anything else is a bug and shows its stack.
  if (!error?.syscall) throw error;
  console.error(`${file} could not be read: ${error.message}`);
  process.exitCode = 2;
}
