// One day at a workshop counter: a short ticket for every record, then the day's summary.
//
//   node examples/counter-day/run.mjs [file.jsonl]
//
// The file holds one record a line and is read as a stream. Status 0: all lines evaluated; 1: some lines were bad, and
// standard error says which and why; 2: the file could not be read.
import { createReadStream } from "node:fs";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { emptySummary, evaluateJsonLines, mergeSummaries, summaryOf } from "crankworthy/fleet";
import { english, layOutTicket, renderDaySummary, reportSections } from "crankworthy/report";

const width = 80;
/** Thirty full tickets are a book: these answers make the short one. `renderTicket(evaluation)` prints them all. */
const short = new Set(["title", "what", "charge", "now", "noticed", "next", "hurt", "warranty", "refused"]);

function shortTicket(evaluation) {
  const sections = reportSections(evaluation, english).filter(({ question }) => short.has(question));
  return layOutTicket(sections, width);
}

// A reader that has seen enough (`| head`) closes the pipe: no reason to complain.
process.stdout.on("error", (error) => {
  if (error.code !== "EPIPE") throw error;
  process.exit();
});

const file = process.argv[2] ?? fileURLToPath(new URL("records.jsonl", import.meta.url));
const lines = createInterface({ input: createReadStream(file), crlfDelay: Number.POSITIVE_INFINITY });

let day = emptySummary;
try {
  for await (const result of evaluateJsonLines(lines)) {
    if (result.ok) {
      day = mergeSummaries(day, summaryOf(result.evaluation));
      console.log(`${shortTicket(result.evaluation)}\n\n${"=".repeat(width)}\n`);
    } else {
      day = mergeSummaries(day, summaryOf());
      console.error(`Line ${result.line} was not evaluated:`);
      for (const { message } of result.issues) console.error(`  - ${message}`);
    }
  }
  console.log(renderDaySummary(day, { width }));
  process.exitCode = day.refused > 0 ? 1 : 0;
} catch (error) {
  // Only the file system's own errors mean an unreadable file; anything else is a bug and shows its stack.
  if (!error?.syscall) throw error;
  console.error(`${file} could not be read: ${error.message}`);
  process.exitCode = 2;
}
