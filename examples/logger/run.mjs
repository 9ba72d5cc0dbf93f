// What a logger's file tells about a battery: quality, segments, measurements, evaluation, and the trace as a picture.
//
//   node examples/logger/run.mjs [file.csv [format.json]]
//
// The file has the columns of the open Battery Data Format, or what format.json says (a `LogFormat`), and is read as a
// stream, of any length. Without a file an invented log is made, written to sample-log.csv in the working directory, and
// read from there. The picture goes to logger-trace.svg. Status 0: read; 2: not to be read, and standard error says why.
import { createWriteStream, readFileSync, writeFileSync } from "node:fs";
import { basename } from "node:path";
import { pipeline } from "node:stream/promises";
import { tryEvaluate } from "crankworthy";
import { analyseLog, isLogInputError, recordFromLog } from "crankworthy/logs";
import { createTraceThinner, logTracePicture } from "crankworthy/pictures";
import { renderTicket } from "crankworthy/report";
import { isStreamError } from "crankworthy/streams";
import { sample } from "./sample.mjs";

let [file, formatFile] = process.argv.slice(2);
const format = formatFile === undefined ? "bdf" : JSON.parse(readFileSync(formatFile, "utf8"));
let truth;
if (file === undefined) {
  const made = sample();
  file = "sample-log.csv";
  await pipeline(made.text, createWriteStream(file));
  truth = made.truth;
  console.log("An invented log, not a measured one: sample-log.csv\n");
}

/** `12.34 ± 0.05 V` with the digits that the uncertainty leaves. */
function shown({ value, standardUncertainty: u }, unit, factor = 1) {
  const half = 1.96 * u * factor;
  const digits = half > 0 ? Math.max(0, Math.min(6, 1 - Math.floor(Math.log10(half)))) : 3;
  return `${(value * factor).toFixed(digits)} ± ${half.toFixed(digits)} ${unit}`;
}
const refused = (one) => `not given: ${one.code}. ${one.reason} Would help: ${one.wouldHelp}`;
const told = (one, words) => ("refused" in one ? refused(one) : words(one));

/** One line a measurement; the rest of each result is there for those who want it. */
const words = {
  "last-rest-voltage": ({ volts, restSeconds }) => `${volts} V after ${Math.round(restSeconds)} s`,
  "settled-voltage": (one) => {
    if (one.kind === "value") return shown(one.volts, "V");
    const [side, volts] = Object.entries(one.bound)[0];
    const bound = `${side === "atLeastVolts" ? "at least" : "at most"} ${volts.toFixed(3)} V, ${one.reason}`;
    return one.expected ? `${bound}; expected ${shown(one.expected.volts, "V")}` : bound;
  },
  draw: (one) => `${shown(one.drawAmperes, "mA", 1000)}, wake-ups ${one.wakeUps.length}`,
  crank: (one) =>
    `least ${one.bound === "upper" ? "at most " : ""}${shown(one.minimumVolts, "V")}, ${shown(one.durationSeconds, "s")}`,
  "charging-voltage": (one) => shown(one.regulatedVolts, "V"),
  ripple: (one) => shown(one.rmsVolts, "mV rms", 1000),
  capacity: (one) => shown(one.ampereHours, "Ah"),
};

/** One pass over the file; the picture's points are gathered on the way. */
async function analyse(currentLagSeconds) {
  const thinner = createTraceThinner();
  const analysis = await analyseLog({ path: file }, format, {
    onChunk: (chunk) => thinner.push(chunk),
    // A logger's queue may mix up rows by this much.
    reorderWithinSeconds: 1,
    // A parked car is asked for its draw; resistance, rests, cranks and charging are measured by themselves.
    measure: { draw: {} },
    ...(currentLagSeconds !== undefined && { currentLagSeconds }),
  });
  return { analysis, trace: thinner.finish() };
}

let read;
try {
  read = await analyse();
  const { quality, resistance } = read.analysis;
  // The lag is known at the end of the log; with it the steps of the load can be paired.
  if (resistance.ohmic?.code === "current-lags") read = await analyse(quality.lag.lagSeconds.value);
} catch (error) {
  if (!isLogInputError(error) && !isStreamError(error)) throw error;
  console.error(error.message);
  process.exit(2);
}
const { analysis, trace } = read;
const { quality, segments, measurements, resistance, charge } = analysis;

console.log(`Quality: ${quality.rows} rows, ${quality.completeRows} complete`);
for (const { code, severity, firstRow, lastRow, count } of quality.defects)
  console.log(`  ${severity} ${code}, rows ${firstRow}..${lastRow}, ${count} times`);
if (quality.lag)
  console.log(`  current behind voltage: ${told(quality.lag, (one) => shown(one.lagSeconds, "s"))}`);

console.log("\nSegments");
for (const [i, { kind, fromSeconds, toSeconds, firstRow, lastRow, reason, totals }] of segments.entries()) {
  const moved = totals.chargeInAmpereHours - totals.chargeOutAmpereHours;
  console.log(
    `  ${i + 1}. ${kind}, ${fromSeconds.toFixed(1)} to ${toSeconds.toFixed(1)} s, rows ${firstRow}..${lastRow}, ` +
      `${totals.leastVolts.toFixed(2)}..${totals.mostVolts.toFixed(2)} V, ${moved.toFixed(3)} Ah (${reason.code})`,
  );
}

console.log("\nMeasurements");
for (const { segment, quantity, result } of measurements)
  console.log(`  ${segment}. ${quantity}: ${told(result, words[quantity])}`);
console.log(
  `  charge: ${told(charge, (one) => `in ${shown(one.inAmpereHours, "Ah")}, out ${shown(one.outAmpereHours, "Ah")}`)}`,
);
console.log(
  `  resistance: ${told(resistance, ({ ohmic }) => told(ohmic, (one) => shown(one.resistanceOhms, "mΩ", 1000)))}`,
);
if (truth) {
  // The sample is invented, so its secrets can be told.
  const rest = truth.segments.at(-1);
  const crank = truth.segments.find(({ kind }) => kind === "crank");
  console.log(
    `\nWhat was hidden: resistance ${truth.resistanceOhms * 1000} mΩ, lag ${truth.currentLagSeconds} s, ` +
      `least voltage ${crank.leastVolts.toFixed(3)} V, settled voltage ${rest.electromotiveVolts.toFixed(3)} V`,
  );
}

const identity = {
  chemistry: "efb",
  rating: { standard: "en-50342-1:2015", amperes: 680 },
  capacityAmpereHours: 74,
};
const { record, origin, refused: missing } = recordFromLog(analysis, identity);
console.log("\nRecord");
for (const [path, { firstRow, lastRow, quantity }] of Object.entries(origin))
  console.log(`  ${path}: ${quantity}, rows ${firstRow}..${lastRow}`);
for (const { path, refusal } of missing) console.log(`  ${path}: ${refused(refusal)}`);
const result = tryEvaluate(record);
console.log(
  result.ok
    ? `\n${renderTicket(result.evaluation)}`
    : `\nNot to be evaluated: ${result.issues.map(({ message }) => message).join("; ")}`,
);

const picture = logTracePicture({ trace, segments, name: basename(file) });
if (typeof picture === "string") {
  writeFileSync("logger-trace.svg", picture);
  console.log("\nPicture: logger-trace.svg");
}
