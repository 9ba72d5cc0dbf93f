import type { CheckSettings } from "./options.js";
import type { LogChannel } from "./quality.js";
import { createRanges } from "./ranges.js";
import type { CheckedBlock } from "./summary.js";
import type { Found } from "./whole-log.js";
import { createZigzag } from "./zigzag.js";

/** Rows between two looks; a run of {@link LEAST_STUCK_ROWS} cannot hide between them. */
const SAMPLE = 16;
/** Fewest rows that may be asked for (see the options). */
const LEAST_STUCK_ROWS = 20;
/** Equal readings before the other channel is watched at all: nearly all rows stop here. */
const WATCH_FROM = 8;
/** Turns of the other channel: one step up and down may be a lag between the two, drift has none. */
const TURNS = 3;
/** Amplitude of the voltage that a current cannot sleep through [V]; relaxation and charging drift, they do not turn. */
const VOLTS_AMPLITUDE = 0.2;
/** Least amplitude of the current [A], and the resistance assumed at least for any 12 V battery with its leads [Ω]. */
const LEAST_AMPERES_AMPLITUDE = 2;
const LEAST_OHMS = 0.001;

/**
 * @internal A reading that stays the very same while the other channel goes up and down: a frozen converter, a lost message,
 * a loose wire. For the voltage the current must turn by what moves it through one of its own steps at 1 mΩ.
 */
export function createStuck(settings: CheckSettings) {
  const volts = createOne("volts", settings, (step) =>
    Math.max(LEAST_AMPERES_AMPLITUDE, Math.min(step, 1) / LEAST_OHMS),
  );
  const amperes = createOne("amperes", settings, () => VOLTS_AMPLITUDE);
  return {
    scan(block: CheckedBlock): void {
      volts.scan(block, block.volts, block.amperes);
      amperes.scan(block, block.amperes, block.volts);
    },
    finish: (): Found[] => [volts.finish(), amperes.finish()],
  };
}

function createOne(channel: LogChannel, settings: CheckSettings, amplitudeOf: (leastStep: number) => number) {
  const ranges = createRanges("stuck-channel", "error", "rows", settings.rangesPerDefect, channel);
  const other = createZigzag();
  const { stuckRows } = settings;
  let [value, count, leastStep, startNumber] = [Number.NaN, 0, Infinity, 0];
  let [startIndex, lastNumber] = [0, 0];
  function close(lastRow: number): void {
    const otherTurns = other.turns();
    if (count >= stuckRows && otherTurns >= TURNS)
      ranges.stretch({
        severity: "error",
        firstRow: startNumber,
        lastRow,
        count,
        greatest: count,
        values: { value, otherTurns, otherSpan: other.span() },
      });
  }
  /** Every row from one to another, exactly. */
  function walk(
    block: CheckedBlock,
    own: Float64Array,
    others: Float64Array,
    from: number,
    to: number,
  ): void {
    const { firstIndex } = block;
    let held = value;
    let run = count;
    let start = startIndex - firstIndex;
    let last = -1;
    for (let i = from; i < to; i++) {
      const now = own[i]!;
      if (now === held) {
        run++;
        last = i;
        if (run < WATCH_FROM) continue;
        if (run === WATCH_FROM) other.start(others[i]!);
        else other.add(others[i]!, amplitudeOf(leastStep));
        continue;
      }
      if (Number.isNaN(now)) continue;
      if (run >= stuckRows) {
        [value, count] = [held, run];
        if (start >= 0) startNumber = block.number(start);
        close(last < 0 ? lastNumber : block.number(last));
      }
      const step = now > held ? now - held : held - now;
      if (step < leastStep) leastStep = step;
      held = now;
      run = 1;
      start = i;
      last = i;
    }
    [value, count, startIndex] = [held, run, start + firstIndex];
    if (start >= 0) startNumber = block.number(start);
    if (last >= 0) lastNumber = block.number(last);
  }
  return {
    scan(block: CheckedBlock, own: Float64Array, others: Float64Array): void {
      const { rows } = block;
      const step = block.complete ? sampledStep(own, rows) : 0;
      if (step === 0) {
        walk(block, own, others, 0, rows);
        return;
      }
      // No long run inside: only the runs that reach over the block's edges are left.
      let from = 0;
      while (from < rows && own[from] === value) from++;
      let to = rows - 1;
      while (to > 0 && own[to - 1] === own[to]) to--;
      if (from >= to) {
        walk(block, own, others, 0, rows);
        return;
      }
      walk(block, own, others, 0, from + 1);
      if (step < leastStep) leastStep = step;
      [value, count] = [Number.NaN, 0];
      walk(block, own, others, to, rows);
    },
    finish(): Found {
      close(lastNumber);
      count = 0;
      return ranges.finish();
    },
  };
}

/** Least change between neighbours at every sixteenth row; 0 where one of them stands in a run of LEAST_STUCK_ROWS or more. */
function sampledStep(own: Float64Array, rows: number): number {
  let least = Infinity;
  for (let i = SAMPLE; i < rows; i += SAMPLE) {
    const value = own[i]!;
    const step = Math.abs(own[i - 1]! - value);
    if (step > 0) {
      if (step < least) least = step;
      continue;
    }
    let [first, last] = [i - 1, i];
    while (first > 0 && own[first - 1] === value) first--;
    while (last < rows - 1 && own[last + 1] === value) last++;
    if (last - first + 1 >= LEAST_STUCK_ROWS) return 0;
  }
  return least;
}
