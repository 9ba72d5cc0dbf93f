import { type Contender, contenders } from "./contenders.js";
import { ours } from "./ours.js";

// One contender over one file in a process of its own, so that nobody inherits another's memory or compiled code.
const [name = "", path = ""] = process.argv.slice(2);
const all: Readonly<Record<string, Contender>> = { ...contenders, ...ours };

/** What a run reports on its last line. */
export interface RunReport {
  readonly seconds: number;
  readonly rows?: number;
  readonly peakMegabytes: number;
}

const start = performance.now();
const rows = await all[name]!(path);
const seconds = (performance.now() - start) / 1000;
const report: RunReport = {
  seconds,
  ...(rows === undefined ? {} : { rows }),
  peakMegabytes: (process.resourceUsage().maxRSS * 1024) / 1e6,
};
console.log(JSON.stringify(report));
