import { wrongArgument } from "../../numeric/index.js";
import type { LogTimeScale } from "./quality.js";
import { createSampler, median, type Sampler } from "./sampler.js";
import type { CheckedBlock } from "./summary.js";
import { type Found, type WholeLog, wholeLog } from "./whole-log.js";

const LEAST_PAIRS = 10;
const LEAST_CLOCK_SECONDS = 0.5;
const TOLERANCE = 0.05;
const UNITS = [
  [1, "consistent"],
  [1e9, "nanoseconds"],
  [1e6, "microseconds"],
  [1e3, "milliseconds"],
  [1 / 60, "minutes"],
  [1 / 3600, "hours"],
] as const;
/** Ratios kept; a longer log is judged by every second, fourth, … of its pairs. */
const KEPT = 8192;

function judge(ratios: Sampler, compared: LogTimeScale["compared"]): LogTimeScale {
  const pairs = ratios.seen();
  if (pairs < LEAST_PAIRS) return { statement: "no-statement", pairs, compared };
  const ratio = median(ratios.sorted());
  const unit = UNITS.find(([factor]) => Math.abs(ratio - factor) <= TOLERANCE * factor);
  return { statement: unit?.[1] ?? "unexplained", ratio, pairs, compared };
}

/** @internal The same row by row: a pair of columns in, a statement out. */
export function createTimeScale() {
  const beside = createSampler(KEPT);
  const apart = createSampler(KEPT);
  let [elapsed, clock, farElapsed, farClock] = [Number.NaN, Number.NaN, Number.NaN, Number.NaN];
  let hasClock = false;
  function push(seconds: Float64Array, clockSeconds: Float64Array, rows: number): void {
    hasClock = true;
    for (let i = 0; i < rows; i++) {
      const [time, wall] = [seconds[i]!, clockSeconds[i]!];
      const [stepTime, stepWall] = [time - elapsed, wall - clock];
      if (stepTime > 0 && stepWall >= LEAST_CLOCK_SECONDS && stepTime / stepWall < Infinity)
        beside.add(stepTime / stepWall);
      [elapsed, clock] = [time, wall];
      const [farTime, farWall] = [time - farElapsed, wall - farClock];
      if (farWall < LEAST_CLOCK_SECONDS && farWall >= 0 && farTime >= 0) continue;
      // A clock or a time that goes back starts anew; a row without one of them waits for the next.
      if (Number.isNaN(time + wall)) continue;
      if (farTime > 0 && farWall > 0 && farTime / farWall < Infinity) apart.add(farTime / farWall);
      [farElapsed, farClock] = [time, wall];
    }
  }
  return {
    push,
    scan({ seconds, clockSeconds, rows }: CheckedBlock): void {
      if (clockSeconds) push(seconds, clockSeconds, rows);
    },
    finish(): LogTimeScale | undefined {
      if (!hasClock) return undefined;
      const near = judge(beside, "neighbouring-rows");
      if (near.statement !== "no-statement") return near;
      const far = judge(apart, "rows-apart");
      return far.statement === "no-statement" ? near : far;
    },
  };
}

/**
 * Compares elapsed time with a second clock: the same unit, a named other one, or none that fits.
 *
 * Scope: median of Δelapsed/Δclock over neighbouring rows with Δelapsed > 0 and Δclock ≥ 0.5 s, at least 10 of them;
 * within 5 % of a unit it is that unit. Faster logs say nothing that way: then rows at least 0.5 s apart are compared (our
 * choice). Beyond 8192 pairs an even selection of them is taken.
 *
 * @param elapsedSeconds elapsed time as the log has it, believed to be seconds; NaN where missing
 * @param clockSeconds seconds on a clock, as long
 * @returns statement, ratio and pairs; nothing is repaired
 *
 * Source: Battery Data Format, reference validator, src/bdf/_time_scale.py, github.com/battery-data-alliance/battery-data-format
 * (read).
 * @example
 * ```ts
 * import { compareTimeScale } from "crankworthy/logs";
 * const clock = Float64Array.from({ length: 20 }, (_, i) => 1.7e9 + 10 * i);
 * compareTimeScale(clock.map((_, i) => 10_000 * i), clock).statement; // => "milliseconds"
 * compareTimeScale(clock.map((_, i) => 10.6 * i), clock).statement; // => "unexplained"
 * ```
 */
export function compareTimeScale(elapsedSeconds: Float64Array, clockSeconds: Float64Array): LogTimeScale {
  if (elapsedSeconds.length !== clockSeconds.length)
    wrongArgument("clockSeconds", `${clockSeconds.length} values`, `${elapsedSeconds.length}`);
  const scale = createTimeScale();
  scale.push(elapsedSeconds, clockSeconds, elapsedSeconds.length);
  return scale.finish()!;
}

/** @internal A named unit makes every duration wrong; two clocks that merely disagree leave open which one is right. */
export function timeScaleDefect(scale: LogTimeScale, log: WholeLog): Found[] {
  const { statement, ratio, pairs } = scale;
  if (ratio === undefined || statement === "consistent") return [];
  const severity = statement === "unexplained" ? "warning" : "error";
  return [wholeLog("time-scale", severity, log, { ratio, pairs }, "seconds")];
}
