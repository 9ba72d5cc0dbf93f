import { readFileSync } from "node:fs";
import { filesBelow } from "../docs/code-blocks.js";

// Rooms that an evaluation calls; what warranty refuses concerns data of many claims and never reaches one.
const ROOMS = [
  "bench",
  "charge-state",
  "date-codes",
  "evaluate",
  "label-codes",
  "ratings",
  "temperature",
  "vehicle",
];

/** Every refusal code written in the rooms that an evaluation calls. */
export function codesInSource(): string[] {
  const found = new Set<string>();
  for (const room of ROOMS)
    for (const file of filesBelow(`src/${room}`, ".ts")) {
      const text = readFileSync(file, "utf8");
      for (const [, code] of text.matchAll(/\brefuse\(\s*"([a-z0-9-]+)"/g)) found.add(code!);
      for (const [, code] of text.matchAll(/\boutside\(\s*"([a-z-]+)"/g)) found.add(`${code}-outside-range`);
      // A refusal or a table of refusals written out.
      for (const [, choice] of text.matchAll(/refused: true,\s*code(: [^\n]*),$/gm))
        for (const [, code] of choice!.matchAll(/[?:] "([a-z0-9-]+)"/g)) found.add(code!);
      for (const [table] of text.matchAll(
        /^(?:export )?const (?:TEXTS|conversionRefusals)\b[^=]*= \{[\s\S]*?^\}/gm,
      ))
        for (const [, code] of table.matchAll(/^ {2}"?([a-z0-9-]+)"?: \[/gm)) found.add(code!);
    }
  return [...found].sort();
}
