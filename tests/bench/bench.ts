import { readFileSync } from "node:fs";
import type { BatteryRecord } from "crankworthy/evaluate";
import { bundleSizes } from "./bundle-sizes.js";
import { straightLine } from "./straight-line.js";

// Times the built package, not the sources. Ratios within one run are what counts: the clock of a shared machine is not.
const built = new URL("../../dist/evaluate.js", import.meta.url).href;
const { recordSchema, tryEvaluate } = (await import(built)) as typeof import("crankworthy/evaluate");

const file = process.argv[2] ?? "examples/counter-day/records.jsonl";
const records = readFileSync(file, "utf8")
  .split("\n")
  .filter((line) => line.trim() !== "")
  .map((line) => JSON.parse(line) as BatteryRecord)
  .filter((record) => tryEvaluate(record).ok);

let sink = 0;
const jobs: Readonly<Record<string, () => void>> = {
  "straight-line arithmetic": () => {
    for (const record of records) sink += straightLine(record).ratio;
  },
  "zod parse alone": () => {
    for (const record of records) sink += recordSchema.safeParse(record).success ? 1 : 0;
  },
  "full validated evaluation": () => {
    for (const record of records) sink += tryEvaluate(record).ok ? 1 : 0;
  },
  "full evaluation, explained": () => {
    for (const record of records) sink += tryEvaluate(record, { explain: true }).ok ? 1 : 0;
  },
};

const ROUNDS = 15;
const REPEATS = 60;
const samples = new Map<string, number[]>(Object.keys(jobs).map((name) => [name, []]));
for (const job of Object.values(jobs)) for (let i = 0; i < REPEATS * 3; i++) job();
// The jobs take turns, so that a machine that slows down slows all of them.
for (let round = 0; round < ROUNDS; round++)
  for (const [name, job] of Object.entries(jobs)) {
    const start = performance.now();
    for (let i = 0; i < REPEATS; i++) job();
    samples.get(name)!.push(((performance.now() - start) * 1000) / (REPEATS * records.length));
  }

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;
const parse = samples.get("zod parse alone")!;
console.log(`${records.length} records of ${file}, ${ROUNDS} rounds, Node ${process.versions.node}\n`);
console.log("job                          µs/record   records/s   × zod parse (median of ratios)");
for (const [name, times] of samples) {
  const ratio = median(times.map((time, i) => time / parse[i]!));
  const per = median(times);
  console.log(
    `${name.padEnd(28)} ${per.toFixed(2).padStart(9)} ${Math.round(1e6 / per)
      .toString()
      .padStart(11)}   ${ratio.toFixed(2)}`,
  );
}
console.log("target: full validated evaluation at most 3.00 × the zod parse\n");

console.log("minified + gzip, without zod, decimal.js and date-fns      bytes   target");
for (const { name, bytes, target } of await bundleSizes())
  console.log(
    `${name.padEnd(52)} ${bytes.toString().padStart(11)}   ${target ? `${target}${bytes > target ? "  over" : ""}` : ""}`,
  );
if (!Number.isFinite(sink)) throw new Error("unreachable");
