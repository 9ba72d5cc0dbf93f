import type { Block } from "./blocks.js";
import type { LogChannel } from "./quality.js";
import { createSampler, median, quantile } from "./sampler.js";
import type { SignEvidence } from "./sign.js";
import type { BlockSummary } from "./summary.js";
import { type WholeLog, wholeLog } from "./whole-log.js";

/** Values kept of each column; a longer log is judged by every second, fourth, … of them. */
const KEPT = 4096;
/** Median that no system in V has, and any from a flat 6 V to a charging 48 V one has in mV. */
const MILLIVOLTS = [4000, 65_000] as const;
/** No 12 V starter battery gives this for one row in a hundred [A]. */
const MOST_AMPERES = 3000;
/** A tenth of the resistance of the best 12 V battery: current a thousand times too large shows so [Ω]. */
const LEAST_OHMS = 1e-4;
/** Below this a small resistance may be a small answer to a small step [A]. */
const LEAST_MILLIAMPERES = 100;
/** A battery at 60 °C in half of all rows is no battery's life; in °F it is 16 °C. Colder °F cannot be told from °C. */
const FAHRENHEIT = [60, 150] as const;
const KELVIN = [230, 340] as const;

/** @internal Units that typical ranges of a 12 V battery contradict. Looks at values before impossible ones are taken out. */
export function createUnits() {
  const [volts, amperes, celsius] = [createSampler(KEPT), createSampler(KEPT), createSampler(KEPT)];
  return {
    scan(block: Block, { complete, temperatures }: BlockSummary): void {
      volts.take(block.volts, block.rows, complete);
      amperes.take(block.amperes, block.rows, complete);
      if (block.temperatureCelsius)
        celsius.take(block.temperatureCelsius, block.rows, temperatures === block.rows);
    },
    finish(sign: SignEvidence, log: WholeLog) {
      const sorted = volts.sorted();
      const medianVolts = median(sorted);
      const sizes = amperes.sorted().map(Math.abs).sort();
      const amperesQuantile99 = quantile(sizes, 0.99);
      const medianCelsius = median(celsius.sorted());
      const within = (value: number, [least, most]: readonly [number, number]) =>
        value >= least && value <= most;
      const inMilliamperes =
        amperesQuantile99 >= MOST_AMPERES ||
        (sign.stepsAgreeing + sign.stepsOpposing >= 2 &&
          Math.abs(sign.apparentOhms) < LEAST_OHMS &&
          amperesQuantile99 >= LEAST_MILLIAMPERES);
      const explained: LogChannel[] = [];
      const found = [];
      if (within(Math.abs(medianVolts), MILLIVOLTS)) {
        explained.push("volts");
        found.push(wholeLog("voltage-in-millivolts", "error", log, { medianVolts }, "volts"));
      }
      if (inMilliamperes) {
        explained.push("amperes");
        const values = { amperesQuantile99, apparentOhms: sign.apparentOhms };
        found.push(wholeLog("current-in-milliamperes", "error", log, values, "amperes"));
      }
      if (within(medianCelsius, KELVIN)) {
        explained.push("temperatureCelsius");
        found.push(wholeLog("temperature-in-kelvin", "error", log, { medianCelsius }, "temperatureCelsius"));
      } else if (within(medianCelsius, FAHRENHEIT))
        found.push(
          wholeLog("temperature-in-fahrenheit", "warning", log, { medianCelsius }, "temperatureCelsius"),
        );
      return { found, explained, sortedVolts: sorted };
    },
  };
}
