// Four cars that do not start, four causes: what the vehicle showed, what is behind it, what to do.
//
//   node examples/no-start/run.mjs [file.jsonl]
//
// The file holds one record a line. Status 0: all lines evaluated; 1: some were bad, and standard error says why.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { tryEvaluate } from "crankworthy";
import { english, layOutTicket, reportSections } from "crankworthy/report";

const width = 80;
const file = process.argv[2] ?? fileURLToPath(new URL("records.jsonl", import.meta.url));
/** The answers that tell the four apart; `renderTicket(evaluation)` prints all. */
const short = new Set(["title", "charge", "ability", "vehicle", "now", "cause", "next", "hurt"]);

const told = [];
for (const [index, line] of readFileSync(file, "utf8").split("\n").entries()) {
  if (line.trim() === "") continue;
  const result = tryEvaluate(JSON.parse(line));
  if (!result.ok) {
    console.error(`Line ${index + 1} was not evaluated:`);
    for (const { message } of result.issues) console.error(`  - ${message}`);
    process.exitCode = 1;
    continue;
  }
  const { evaluation } = result;
  const sections = reportSections(evaluation, english).filter(({ question }) => short.has(question));
  console.log(`${layOutTicket(sections, width)}\n\n${"=".repeat(width)}\n`);
  told.push(evaluation);
}

// One line a car: everything that is supported, and what becomes of the battery.
for (const { id, causes = [], verdict } of told) {
  const behind = causes.filter(({ support }) => support === "supported").map(({ code }) => code);
  console.log(
    `${id}: ${behind.join(", ") || "nothing shown"}; battery ${verdict.condition}, ${verdict.action}`,
  );
}
