import type { CheckedPlan } from "./defaults.js";
import { HAIR_SECONDS } from "./law.js";
import { simulate } from "./simulation.js";

/** When the instrument looks, and at what. @internal */
export interface Look {
  seconds: number;
  what: "row" | "volts" | "amperes" | "temperature" | "edge";
  /** Voltage of an edge row [V]. */
  edgeVolts: number;
}

/** All looks in order of time; the same object each time. @internal */
export function* looksOf(plan: CheckedPlan, seed: number): Generator<Look> {
  const temperatures = temperatureTimes(plan);
  const edges = plan.instrument.edgeRowsSeconds > 0 ? edgeRows(plan, seed) : none();
  const look: Look = { seconds: 0, what: "row", edgeVolts: Number.NaN };
  let temperature = temperatures.next();
  let edge = edges.next();
  // Between two edge rows there is no other row.
  let freeFrom = Number.NEGATIVE_INFINITY;
  for (const { seconds, what } of regular(plan)) {
    for (;;) {
      const ofEdge = edge.done ? Number.POSITIVE_INFINITY : edge.value.seconds;
      const ofTemperature = temperature.done ? Number.POSITIVE_INFINITY : temperature.value;
      if (Math.min(ofEdge, ofTemperature) > seconds) break;
      if (ofTemperature < ofEdge) {
        look.seconds = ofTemperature;
        look.what = "temperature";
        temperature = temperatures.next();
      } else {
        look.seconds = ofEdge;
        look.what = "edge";
        look.edgeVolts = edge.value!.volts;
        freeFrom = edge.value!.freeFrom;
        edge = edges.next();
      }
      yield look;
    }
    if (seconds <= freeFrom) continue;
    look.seconds = seconds;
    look.what = what;
    yield look;
  }
}

function* regular({ phases, borders, instrument }: CheckedPlan): Generator<Pick<Look, "seconds" | "what">> {
  const own = instrument.changeDriven?.ownRows === true;
  const look: Pick<Look, "seconds" | "what"> = { seconds: 0, what: own ? "volts" : "row" };
  for (const [phase, { intervalSeconds = instrument.intervalSeconds }] of phases.entries()) {
    // The end of the log has a row if it falls on one.
    const end = borders[phase + 1]! + (phase === phases.length - 1 ? HAIR_SECONDS : -HAIR_SECONDS);
    for (let k = 0; borders[phase]! + k * intervalSeconds < end; k++) {
      look.seconds = borders[phase]! + k * intervalSeconds;
      if (own) look.what = "volts";
      yield look;
      if (!own || look.seconds + intervalSeconds / 2 >= end) continue;
      look.seconds += intervalSeconds / 2;
      look.what = "amperes";
      yield look;
    }
  }
}

function* temperatureTimes({ instrument, borders }: CheckedPlan): Generator<number> {
  const every = instrument.temperatureEverySeconds;
  if (every === undefined) return;
  for (let k = 0; k * every <= borders.at(-1)!; k++) yield k * every;
}

interface EdgeRow {
  readonly seconds: number;
  readonly volts: number;
  readonly freeFrom: number;
}

function* none(): Generator<EdgeRow> {}

/** Both rows of every jump; a jump that follows too soon has none. */
function* edgeRows(plan: CheckedPlan, seed: number): Generator<EdgeRow> {
  const half = plan.instrument.edgeRowsSeconds / 2;
  const ahead = simulate(plan, seed);
  ahead.readAt(0);
  let last = 0;
  for (let change = ahead.nextChange(); change < Number.POSITIVE_INFINITY; change = ahead.nextChange()) {
    ahead.readAt(change - 10 * HAIR_SECONDS);
    const before = { ...ahead.reading };
    ahead.readAt(change);
    if (before.amperes === ahead.reading.amperes || change - half <= last) continue;
    last = change + half;
    if (last > plan.borders.at(-1)!) return;
    const volts = (before.volts + ahead.reading.volts) / 2;
    yield { seconds: change - half, volts, freeFrom: last };
    yield { seconds: last, volts, freeFrom: last };
  }
}
