import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { build } from "esbuild";
import type { RunReport } from "./child.js";
import { type GeneratedLog, generateLog } from "./generate.js";

// Reads a generated log with every contender and prints how fast and in how much memory. The contenders take turns, each in
// a process of its own; what counts are ratios within one round, because the clock of a shared machine is not to be trusted.
const { values } = parseArgs({
  options: {
    megabytes: { type: "string", default: "200" },
    rounds: { type: "string", default: "3" },
    /** Reads a file of 1 GB too, for the memory. */
    big: { type: "boolean", default: false },
    only: { type: "string", default: "" },
  },
});

const BYTES = "bytes alone (createReadStream)";
const OURS = "ours, everything (analyseLog)";
const folder = mkdtempSync(join(tmpdir(), "bench-logs-"));

/** The child as a consumer would ship it: bundled JavaScript, no loader in between. */
async function bundle(): Promise<string> {
  const outfile = join(folder, "child.mjs");
  await build({
    entryPoints: ["tests/bench/logs/child.ts"],
    outfile,
    bundle: true,
    platform: "node",
    format: "esm",
    target: "node20",
    tsconfig: "tsconfig.json",
    banner: {
      js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);',
    },
    logLevel: "error",
  });
  return outfile;
}

function run(child: string, name: string, path: string, written: GeneratedLog): RunReport | string {
  const { stdout, stderr } = spawnSync(process.execPath, [child, name, path], { encoding: "utf8" });
  const last = stdout.trim().split("\n").at(-1);
  if (!last) return stderr.match(/^\w*Error.*$/m)?.[0] ?? (stderr.trim() || "no answer");
  const report = JSON.parse(last) as RunReport;
  if (report.rows !== undefined && report.rows !== written.rows)
    return `saw ${report.rows} rows of ${written.rows}`;
  return report;
}

const median = (numbers: readonly number[]): number =>
  [...numbers].sort((a, b) => a - b)[numbers.length >> 1]!;

try {
  const child = await bundle();
  const path = join(folder, "log.csv");
  const written = generateLog(path, Number(values.megabytes) * 1e6);
  const megabytes = written.bytes / 1e6;
  console.log(
    `${megabytes.toFixed(0)} MB, ${written.rows} rows of 4 columns, ${values.rounds} rounds, Node ${process.versions.node}\n`,
  );

  const { contenders } = await import("./contenders.js");
  const { ours } = await import("./ours.js");
  const names = [...Object.keys(contenders), ...Object.keys(ours)].filter((name) =>
    name.includes(values.only),
  );
  const reports = new Map<string, RunReport[]>();
  const failures = new Map<string, string>();
  for (let round = 0; round < Number(values.rounds); round++)
    for (const name of names) {
      if (failures.has(name)) continue;
      const report = run(child, name, path, written);
      if (typeof report === "string") failures.set(name, report);
      else reports.set(name, [...(reports.get(name) ?? []), report]);
    }

  /** How many times as fast as another, the median over the rounds. */
  const times = (name: string, other: string): number | undefined => {
    const [mine, theirs] = [reports.get(name), reports.get(other)];
    return mine && theirs ? median(mine.map(({ seconds }, i) => theirs[i]!.seconds / seconds)) : undefined;
  };
  const peak = (name: string): number => Math.max(...(reports.get(name) ?? []).map((r) => r.peakMegabytes));

  console.log("contender                          s     MB/s   × bytes alone   ours ×   peak memory [MB]");
  for (const name of names) {
    const failure = failures.get(name);
    const seconds = median((reports.get(name) ?? []).map((report) => report.seconds));
    console.log(
      failure
        ? `${name.padEnd(30)}  failed: ${failure.slice(0, 90)}`
        : [
            name.padEnd(30),
            seconds.toFixed(2).padStart(6),
            (megabytes / seconds).toFixed(0).padStart(8),
            (times(name, BYTES)?.toFixed(3) ?? "").padStart(15),
            (times(OURS, name)?.toFixed(2) ?? "").padStart(8),
            peak(name).toFixed(0).padStart(18),
          ].join(""),
    );
  }

  console.log("\ntarget                                                       reached");
  const judge = (target: string, reached: number | undefined, met: (value: number) => boolean): void =>
    console.log(
      `${target.padEnd(60)} ${reached === undefined || Number.isNaN(reached) ? "not measured" : `${reached.toFixed(2).padStart(7)}  ${met(reached) ? "met" : "MISSED"}`}`,
    );
  const fastest = (prefix: string): string =>
    names
      .filter((name) => name.startsWith(prefix) && reports.has(name))
      .sort((a, b) => (times(b, BYTES) ?? 0) - (times(a, BYTES) ?? 0))[0] ?? prefix;
  for (const [prefix, target] of [
    ["csv-parse", 2],
    ["papaparse", 2],
    ["udsv", 0.5],
  ] as const) {
    const rival = fastest(prefix);
    judge(`everything at least ${target} × ${rival}`, times(OURS, rival), (value) => value >= target);
  }
  const small = reports.has(OURS) ? peak(OURS) : undefined;
  judge(`peak memory below 150 MB at ${megabytes.toFixed(0)} MB`, small, (value) => value < 150);

  if (values.big) {
    const writtenBig = generateLog(path, 1e9);
    const flat = names.filter((name) => name === "readText" || name.startsWith("ours"));
    for (const name of flat) {
      const report = run(child, name, path, writtenBig);
      if (typeof report === "string") console.log(`${name} at 1 GB failed: ${report.slice(0, 90)}`);
      else {
        judge(`${name}: peak memory below 150 MB at 1 GB`, report.peakMegabytes, (value) => value < 150);
        const growth = report.peakMegabytes / peak(name);
        judge(
          `${name}: memory at 1 GB over memory at ${megabytes.toFixed(0)} MB, at most 1.15`,
          growth,
          (value) => value <= 1.15,
        );
      }
    }
  } else console.log("npm run bench:logs -- --big reads a file of 1 GB too");
} finally {
  rmSync(folder, { recursive: true });
}
