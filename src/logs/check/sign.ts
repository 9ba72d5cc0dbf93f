import type { CheckedBlock } from "./summary.js";
import { type Found, wholeLog } from "./whole-log.js";

/** Complete rows that make one level: edge rows and a current reported late vanish in the mean. */
const CELL_ROWS = 8;
/** Levels of steady current in a row, and their time [s], that show a drift. Shorter ones still recover from the last load. */
const DRIFT_CELLS = 6;
const DRIFT_SECONDS = 600;
/** A drift below this is noise or the hump at the start of a discharge [V]. */
const DRIFT_VOLTS = 0.1;
/** Current is steady within this share. */
const STEADY = 0.1;
/** Least step of current [A], and as a share of the range seen so far: parts of a larger step do not count. */
const STEP_AMPERES = 0.25;
const STEP_SHARE = 0.25;
/** What 10 A do to 2 mΩ [V]: less proves nothing. */
const STEP_VOLTS = 0.02;

/** @internal What steps and drifts say. */
export interface SignEvidence {
  readonly stepsAgreeing: number;
  readonly stepsOpposing: number;
  readonly driftsAgreeing: number;
  readonly driftsOpposing: number;
  /** Σ ΔV·ΔI / Σ ΔI² over the steps [Ω]; 0 without steps. Negative where they oppose. */
  readonly apparentOhms: number;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly rows: number;
}

/**
 * @internal Does the voltage rise when the current rises? With positive current charging it must: at every step (a resistance
 * is positive), and as a drift under steady charge, while it falls under steady discharge.
 */
export function createSign() {
  // Fields of objects, since numbers that a closure writes are made anew with every write.
  const sum = { count: 0, volts: 0, amperes: 0, lastSeconds: 0 };
  // The last two levels, and the extremes so far.
  const level = { volts0: 0, volts1: 0, amperes0: 0, amperes1: 0, least: Infinity, most: -Infinity };
  const steady = { cells: 0, amperes: 0, volts: 0, seconds: 0, lastVolts: 0, lastSeconds: 0 };
  const steps = { agree: 0, oppose: 0, product: 0, square: 0 };
  const drifts = { agree: 0, oppose: 0 };
  const pending = { waits: false, volts: 0, amperes: 0 };
  // Levels since the last step.
  let [cells, firstRow, lastRow, rows] = [0, 0, 0, 0];

  function closeDrift(): void {
    const moved = steady.lastVolts - steady.volts;
    if (steady.cells >= DRIFT_CELLS && steady.lastSeconds - steady.seconds >= DRIFT_SECONDS)
      if (Math.abs(moved) >= DRIFT_VOLTS) {
        if (moved > 0 === steady.amperes > 0) drifts.agree++;
        else drifts.oppose++;
      }
    steady.cells = 0;
  }
  function cell(volts: number, amperes: number, seconds: number): void {
    if (amperes < level.least) level.least = amperes;
    if (amperes > level.most) level.most = amperes;
    const size = Math.abs(amperes);
    if (size < STEP_AMPERES || Math.abs(amperes - steady.amperes) > STEADY * size) {
      closeDrift();
      steady.amperes = amperes;
    }
    // The first level may hold the step itself.
    if (size >= STEP_AMPERES && ++steady.cells <= 2) {
      steady.volts = volts;
      steady.seconds = seconds;
    }
    steady.lastVolts = volts;
    steady.lastSeconds = seconds;
    const least = Math.max(STEP_AMPERES, STEP_SHARE * (level.most - level.least));
    if (pending.waits) {
      pending.waits = false;
      const change = amperes - pending.amperes;
      const answer = volts - pending.volts;
      if (Math.abs(change) >= least && Math.abs(answer) >= STEP_VOLTS) {
        if (answer > 0 === change > 0) steps.agree++;
        else steps.oppose++;
        steps.product += answer * change;
        steps.square += change * change;
      }
      // The same step is not looked at twice.
      cells = -1;
    } else if (cells >= 2 && Math.abs(amperes - level.amperes1) >= least) {
      // This level may hold rows of before and after: the next one decides.
      pending.waits = true;
      pending.volts = level.volts1;
      pending.amperes = level.amperes1;
    }
    level.volts1 = level.volts0;
    level.amperes1 = level.amperes0;
    level.volts0 = volts;
    level.amperes0 = amperes;
    cells++;
  }
  /** The same for a block without missing values that begins with a level; returns its last row used. */
  function wholeCells({ volts, amperes, seconds, rows: all }: CheckedBlock): number {
    let from = 0;
    for (; from + CELL_ROWS <= all; from += CELL_ROWS) {
      let sumVolts = 0;
      let sumAmperes = 0;
      for (let i = from; i < from + CELL_ROWS; i++) {
        sumVolts += volts[i]!;
        sumAmperes += amperes[i]!;
      }
      cell(sumVolts / CELL_ROWS, sumAmperes / CELL_ROWS, seconds[from + CELL_ROWS - 1]!);
    }
    return from - 1;
  }
  return {
    scan(block: CheckedBlock): void {
      const { volts, amperes, seconds, complete } = block;
      if (block.completeRows === 0) return;
      const whole = complete && sum.count === 0 && rows > 0;
      let last = whole ? wholeCells(block) : -1;
      for (let i = last + 1; i < block.rows; i++) {
        const voltage = volts[i]!;
        const current = amperes[i]!;
        if (!complete && Number.isNaN(seconds[i]! + voltage + current)) continue;
        if (last < 0 && rows === 0) firstRow = block.number(i);
        last = i;
        sum.volts += voltage;
        sum.amperes += current;
        if (++sum.count < CELL_ROWS) continue;
        cell(sum.volts / CELL_ROWS, sum.amperes / CELL_ROWS, seconds[i]!);
        sum.count = 0;
        sum.volts = 0;
        sum.amperes = 0;
      }
      rows += block.completeRows;
      lastRow = block.number(last);
      sum.lastSeconds = seconds[last]!;
    },
    finish(): SignEvidence {
      // The rest behind a discharge may be short of a level.
      if (sum.count >= 2) cell(sum.volts / sum.count, sum.amperes / sum.count, sum.lastSeconds);
      closeDrift();
      return {
        stepsAgreeing: steps.agree,
        stepsOpposing: steps.oppose,
        driftsAgreeing: drifts.agree,
        driftsOpposing: drifts.oppose,
        apparentOhms: steps.square > 0 ? steps.product / steps.square : 0,
        firstRow,
        lastRow,
        rows,
      };
    },
  };
}

/** Pieces of evidence needed, and how many times they outnumber those against (our choice): mixed evidence says nothing. */
const LEAST_EVIDENCE = 2;
const OUTNUMBER = 4;

/** @internal An error where the voltage goes against the current: every charge, power and resistance has the wrong sign. */
export function signSuspicion(evidence: SignEvidence): Found[] {
  const { stepsAgreeing, stepsOpposing, driftsAgreeing, driftsOpposing, apparentOhms } = evidence;
  const opposing = stepsOpposing + driftsOpposing;
  if (opposing < LEAST_EVIDENCE || opposing < OUTNUMBER * (stepsAgreeing + driftsAgreeing)) return [];
  const log = { firstRow: evidence.firstRow, lastRow: evidence.lastRow, count: evidence.rows };
  const values = { stepsOpposing, stepsAgreeing, driftsOpposing, driftsAgreeing, apparentOhms };
  return [wholeLog("current-sign", "error", log, values, "amperes")];
}
