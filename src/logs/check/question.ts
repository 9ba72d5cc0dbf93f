import type { LogQuestion, LogSampling } from "./quality.js";
import type { Found, WholeLog } from "./whole-log.js";

/**
 * @internal Longest interval [s] that answers a question. Our choice:
 * crank 100 Hz: the first dip lasts some 10 ms; ripple 10 kHz: three to ten times the rectifier's pulses (1 to 4 kHz);
 * load step 10 Hz: from 0.1 s on polarization adds to the ohmic part; charge and capacity one minute: 0.2 % of an
 * eight-hour run; rest ten minutes, the logger's pulse in published discharge records; draw one minute: a vehicle falls
 * asleep in steps of minutes; self-discharge one day of the weeks it takes.
 */
export const QUESTION_SECONDS: Readonly<Record<LogQuestion, number>> = {
  crank: 0.01,
  ripple: 1e-4,
  "load-step": 0.1,
  charge: 60,
  capacity: 60,
  rest: 600,
  "parasitic-draw": 60,
  "self-discharge": 86_400,
};

/** Questions about rows with current; the others are about rest. */
const UNDER_LOAD: readonly LogQuestion[] = ["crank", "ripple", "load-step", "charge", "capacity"];

/** A logger's clock is no better than this: 60.1 s is a minute, 10.1 ms is 100 Hz. */
const TOLERANCE = 1.05;

/** @internal Sampling against the questions: the median interval under load or at rest where there is one, else of all rows. */
export function slowSampling(
  questions: readonly LogQuestion[],
  sampling: LogSampling | undefined,
  loadedMedianSeconds: number | undefined,
  restMedianSeconds: number | undefined,
  log: WholeLog,
): Found {
  if (!sampling) return { defects: [], total: undefined };
  const defects = questions.flatMap((question) => {
    const own = UNDER_LOAD.includes(question) ? loadedMedianSeconds : restMedianSeconds;
    const medianSeconds = own ?? sampling.medianSeconds;
    const neededSeconds = QUESTION_SECONDS[question];
    if (medianSeconds <= neededSeconds * TOLERANCE) return [];
    const values = { medianSeconds, neededSeconds };
    return { code: "sampling-too-slow", severity: "error", ...log, values, question } as const;
  });
  if (defects.length === 0) return { defects, total: undefined };
  const greatest = Math.max(...defects.map((one) => one.values.medianSeconds));
  const ranges = defects.length;
  return {
    defects,
    total: {
      code: "sampling-too-slow",
      severity: "error",
      rows: log.count,
      ranges,
      rangesLeftOut: 0,
      greatest,
    },
  };
}
