import {
  type LogChunk,
  type LogSeries,
  type SyntheticLog,
  type SyntheticPlan,
  syntheticLog,
} from "crankworthy/logs";
import { type Estimate, interval95, isRefusal, type Refusal } from "crankworthy/numeric";
import { afterAll, expect } from "vitest";
import { seeded } from "../../warranty/random.js";

/** Draws for the plan of one run. */
export interface Draw {
  readonly between: (least: number, most: number) => number;
  /** Even in the logarithm. */
  readonly logBetween: (least: number, most: number) => number;
  readonly normal: (standardDeviation: number) => number;
}

/** What 1000 runs showed. */
export interface Recovered {
  readonly name: string;
  readonly runs: number;
  /** Runs that gave an estimate; the others refused, by code. */
  readonly answered: number;
  readonly refusals: Readonly<Record<string, number>>;
  /** Share of the answers whose 95 % interval holds the truth. */
  readonly coverage: number;
  /** Mean width of the interval over the mean size of the truth. */
  readonly relativeWidth: number;
  readonly meanWidth: number;
  /** Mean and root mean square of (value − truth)/u: near 0 and 1 where the uncertainty is honest, far below 1 where it is too wide. */
  readonly meanScore: number;
  readonly rmsScore: number;
  /** Mean of value − truth. */
  readonly meanError: number;
}

/** Which logs are made. */
export interface Invented {
  readonly plan: (draw: Draw, seed: number) => SyntheticPlan;
  /** Default 1000. */
  readonly runs?: number;
}

/** One quantity: known truth in, estimate out. */
export interface Question {
  readonly name: string;
  readonly measure: (series: LogSeries, log: SyntheticLog, plan: SyntheticPlan) => Estimate | Refusal<string>;
  readonly truth: (log: SyntheticLog, plan: SyntheticPlan) => number;
  /** Where an interval is not twice 1.96 u wide. */
  readonly holds?: (estimate: Estimate, truth: number) => boolean;
}

export function drawing(seed: number): Draw {
  const random = seeded(seed * 2654435761);
  const between = (least: number, most: number) => least + (most - least) * random();
  return {
    between,
    logBetween: (least, most) => Math.exp(between(Math.log(least), Math.log(most))),
    normal: (deviation) =>
      deviation * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random()),
  };
}

/** A log in memory as the measuring functions take it. */
export function seriesOf(chunks: Iterable<LogChunk>): LogSeries {
  const all = [...chunks];
  const column = (key: "seconds" | "volts" | "amperes" | "temperatureCelsius") => {
    if (all.length === 1) return all[0]![key]!;
    const joined = new Float64Array(all.reduce((rows, chunk) => rows + chunk.rows, 0));
    let at = 0;
    for (const chunk of all) {
      joined.set(chunk[key]!, at);
      at += chunk.rows;
    }
    return joined;
  };
  return {
    seconds: column("seconds"),
    volts: column("volts"),
    amperes: column("amperes"),
    temperatureCelsius: column("temperatureCelsius"),
  };
}

/** Runs a question with 1000 seeds, 1 to 1000: the same in every run. */
export function recover(question: Question & Invented): Recovered {
  return recoverAll(question, [question])[0]!;
}

/** Several questions about the same logs. */
export function recoverAll({ plan, runs = 1000 }: Invented, questions: readonly Question[]): Recovered[] {
  const tallies = questions.map(() => ({
    refusals: {} as Record<string, number>,
    answered: 0,
    covered: 0,
    width: 0,
    size: 0,
    score: 0,
    squares: 0,
    error: 0,
  }));
  for (let seed = 1; seed <= runs; seed++) {
    const made = plan(drawing(seed), seed);
    const log = syntheticLog(made, seed);
    const series = seriesOf(log.chunks);
    questions.forEach(({ measure, truth, holds }, i) => {
      const tally = tallies[i]!;
      const measured = measure(series, log, made);
      if (isRefusal(measured)) {
        tally.refusals[measured.code] = (tally.refusals[measured.code] ?? 0) + 1;
        return;
      }
      const wanted = truth(log, made);
      const { lower, upper } = interval95(measured);
      tally.answered++;
      if (holds ? holds(measured, wanted) : lower <= wanted && wanted <= upper) tally.covered++;
      tally.width += upper - lower;
      tally.size += Math.abs(wanted);
      const score = (measured.value - wanted) / measured.standardUncertainty;
      tally.score += score;
      tally.squares += score * score;
      tally.error += measured.value - wanted;
    });
  }
  return tallies.map(({ refusals, answered, covered, width, size, score, squares, error }, i) => {
    const recovered = {
      name: questions[i]!.name,
      runs,
      answered,
      refusals,
      coverage: covered / answered,
      relativeWidth: width / size,
      meanWidth: width / answered,
      meanScore: score / answered,
      rmsScore: Math.sqrt(squares / answered),
      meanError: error / answered,
    };
    shown.push(recovered);
    return recovered;
  });
}

const shown: Recovered[] = [];
// Coverage alone can be bought with width: both are shown.
afterAll(() => {
  const lines = shown.map(
    ({ name, runs, answered, coverage, relativeWidth, meanScore, rmsScore, refusals }) => {
      const refused = Object.keys(refusals).length > 0 ? ` ${JSON.stringify(refusals)}` : "";
      if (answered === 0) return `${name}: none of ${runs} answered${refused}`;
      const percent = `${(100 * coverage).toFixed(1)} % covered`;
      const width = `mean width ${(100 * relativeWidth).toPrecision(3)} % of the truth`;
      const score = `(value - truth)/u mean ${meanScore.toFixed(2)}, rms ${rmsScore.toFixed(2)}`;
      return `${name}: ${answered} of ${runs} answered, ${percent}, ${width}, ${score}${refused}`;
    },
  );
  shown.length = 0;
  if (lines.length > 0) process.stdout.write(`${lines.join("\n")}\n`);
});

/** At least 93 % covered, most runs answered, and no wider than useful. */
export function expectRecovered(
  recovered: Recovered,
  { leastAnswered = 0.95, mostRelativeWidth }: { leastAnswered?: number; mostRelativeWidth: number },
): void {
  const summary = JSON.stringify(recovered);
  expect(recovered.answered / recovered.runs, summary).toBeGreaterThanOrEqual(leastAnswered);
  expect(recovered.coverage, summary).toBeGreaterThanOrEqual(0.93);
  expect(recovered.relativeWidth, summary).toBeLessThanOrEqual(mostRelativeWidth);
}
