import type { Mutable } from "../../numeric/index.js";
import type { LogChunk } from "../chunk.js";
import type { CheckedPlan } from "./defaults.js";
import { HAIR_SECONDS } from "./law.js";
import { looksOf } from "./looks.js";
import { createRandom } from "./random.js";
import { simulate } from "./simulation.js";

const MOST_ROWS = 16_384;

/** The rows that the instrument writes, in chunks. @internal */
export function* record(plan: CheckedPlan, seed: number): Generator<LogChunk> {
  const { instrument } = plan;
  const { changeDriven, clockStartSeconds, currentLagSeconds: lag, temperatureEverySeconds } = instrument;
  const random = createRandom(seed);
  const ofVolts = simulate(plan, seed);
  const ofAmperes = lag === 0 ? ofVolts : simulate(plan, seed);
  const quantizeVolts = quantizer(instrument.resolutionVolts);
  const quantizeAmperes = quantizer(instrument.resolutionAmperes);
  let [writtenVolts, writtenAmperes, writtenAt] = [Number.NaN, Number.NaN, Number.NEGATIVE_INFINITY];
  // A short log is one chunk of about its own length.
  const most = Math.min(MOST_ROWS, regularRows(plan));
  let chunk = emptyChunk(1, most, clockStartSeconds !== undefined);
  let rows = 0;
  for (const look of looksOf(plan, seed)) {
    const { seconds, what } = look;
    ofVolts.readAt(seconds);
    // Before the first row nothing flows but what flows at the start.
    if (lag !== 0) ofAmperes.readAt(Math.min(plan.borders.at(-1)!, Math.max(0, seconds - lag)));
    let volts = quantizeVolts(
      (what === "edge" ? look.edgeVolts : ofVolts.reading.volts) +
        instrument.offsetVolts +
        instrument.noiseVolts * random.normal(),
    );
    let amperes = quantizeAmperes(
      ofAmperes.reading.amperes + instrument.offsetAmperes + instrument.noiseAmperes * random.normal(),
    );
    if (what === "amperes" || what === "temperature") volts = Number.NaN;
    if (what === "volts" || what === "temperature") amperes = Number.NaN;
    if (changeDriven && what !== "edge" && what !== "temperature") {
      const moved =
        !(Math.abs(volts - writtenVolts) < changeDriven.volts || what === "amperes") ||
        !(Math.abs(amperes - writtenAmperes) < changeDriven.amperes || what === "volts");
      if (!moved && seconds - writtenAt < changeDriven.longestSeconds - HAIR_SECONDS) continue;
    }
    if (what !== "temperature") writtenAt = seconds;
    if (!Number.isNaN(volts)) writtenVolts = volts;
    if (!Number.isNaN(amperes)) writtenAmperes = amperes;
    // Microseconds, so that the text is short.
    const time = Math.round(seconds * 1e6) / 1e6;
    chunk.seconds[rows] = time;
    chunk.volts[rows] = volts;
    chunk.amperes[rows] = amperes;
    chunk.temperatureCelsius[rows] =
      what === "temperature" || temperatureEverySeconds === undefined
        ? Math.round(ofVolts.reading.temperatureCelsius * 10) / 10
        : Number.NaN;
    if (chunk.clockSeconds) chunk.clockSeconds[rows] = Math.round((clockStartSeconds! + time) * 1e3) / 1e3;
    if (++rows === most) {
      yield chunk;
      chunk = emptyChunk(chunk.firstRow + rows, most, clockStartSeconds !== undefined);
      rows = 0;
    }
  }
  if (rows > 0) yield cut(chunk, rows);
}

function regularRows({ phases, instrument }: CheckedPlan): number {
  const perLook = instrument.changeDriven?.ownRows ? 2 : 1;
  let rows = 16;
  for (const { seconds, intervalSeconds = instrument.intervalSeconds } of phases)
    rows += perLook * Math.ceil(seconds / intervalSeconds);
  return rows;
}

type Columns = Mutable<LogChunk> & { readonly temperatureCelsius: Float64Array };

function emptyChunk(firstRow: number, rows: number, clock: boolean): Columns {
  const column = () => new Float64Array(rows);
  const columns = { seconds: column(), volts: column(), amperes: column(), temperatureCelsius: column() };
  const chunk = { firstRow, rows, ...columns };
  return clock ? { ...chunk, clockSeconds: column() } : chunk;
}

function cut(chunk: Columns, rows: number): LogChunk {
  const { seconds, volts, amperes, temperatureCelsius, clockSeconds } = chunk;
  const columns = {
    seconds: seconds.slice(0, rows),
    volts: volts.slice(0, rows),
    amperes: amperes.slice(0, rows),
    temperatureCelsius: temperatureCelsius.slice(0, rows),
  };
  const short = { firstRow: chunk.firstRow, rows, ...columns };
  return clockSeconds ? { ...short, clockSeconds: clockSeconds.slice(0, rows) } : short;
}

/** Rounds to steps; a step like 0.001 divides, so that the number nearest to the decimal results and prints short. */
function quantizer(step: number): (value: number) => number {
  if (step === 0) return (value) => value;
  const perUnit = Math.round(1 / step);
  if (step <= 1 && Math.abs(perUnit * step - 1) < 1e-12)
    return (value) => Math.round(value * perUnit) / perUnit + 0;
  return (value) => Math.round(value / step) * step + 0;
}
