import type { LogSegment } from "../segments.js";
import { kindOf, type Piece, type PieceKind, segmentOf } from "./piece.js";
import { CHARGE, DISCHARGE, ENGINE, PULSE, REST, type RowClass, VOLTAGE_ONLY } from "./row-class.js";
import type { FullSegmentRule } from "./rule.js";
import { mergeRun, newRun } from "./run.js";
import { FIRST_AMPERES, FIRST_VOLTS, FROM, ROWS, type Run, SUM_AMPERES, SUM_VOLTS, TO } from "./run-slots.js";

/** @internal Runs of rows that have ended but may still grow together with what follows. */
export interface Holding {
  /** Takes a run that ended where `next` began, and returns an empty one. */
  push(rowClass: RowClass, run: Run, next: RowClass, nextFrom: number): Run;
  /** Segments that nothing can change any more, given the run still open. */
  take(open: RowClass, run: Run, now: number): LogSegment[];
  finish(last: RowClass, run: Run): LogSegment[];
}

const isCharge = (kind: PieceKind): boolean => kind === "current" || kind === "plateau";
const isLevel = (kind: PieceKind): boolean => kind === "level" || kind === "drift";
const meanVolts = ({ run }: Piece): number => run[SUM_VOLTS]! / run[ROWS]!;

/** @internal */
export function createHolding(rule: FullSegmentRule): Holding {
  const held: Piece[] = [];
  const spare: Run[] = [];

  const join = (into: Piece, piece: Piece, to: number): void => {
    mergeRun(into.run, piece.run);
    spare.push(piece.run);
    into.length = to - into.run[FROM]!;
  };

  // What a run that may be too short for its class is taken for.
  const place = (piece: Piece, next: RowClass, nextFrom: number): void => {
    const before = held.at(-1);
    const { length } = piece;
    const tiny = length < rule.settleSeconds;
    if (piece.kind === "engine" && length < rule.engineLeastSeconds && before?.kind !== "engine") {
      const mean = piece.run[SUM_AMPERES]! / piece.run[ROWS]!;
      piece.kind = Number.isNaN(mean)
        ? "drift"
        : Math.abs(mean) <= rule.restEnterAmperes
          ? "rest"
          : mean > 0
            ? "current"
            : "load";
    }
    // Speeding up to idle: the voltage is still on its way.
    if (next === ENGINE && piece.kind !== "pulse" && length < rule.engineLeastSeconds) piece.kind = "engine";
    const { kind } = piece;
    if (before) {
      const joins =
        (before.kind === "pulse" && tiny) ||
        (before.kind === "engine" && next === ENGINE && length < rule.engineLeastSeconds) ||
        growsTogether(before, piece) ||
        (kind === "rest" && interrupts(before, length, tiny, next)) ||
        (kind === "load" && tiny && before.kind === "rest" && next === REST && isNoise(piece)) ||
        (kind === "current" &&
          length < rule.leastSeconds &&
          (next < CHARGE || next >= VOLTAGE_ONLY) &&
          (before.kind === "load" || (before.kind === "rest" && next === REST)));
      if (joins) {
        // The longer part gives a charge its name.
        if (before.kind === "current" && kind === "plateau") before.kind = "plateau";
        join(before, piece, nextFrom);
        return;
      }
    }
    // The first rows of a rising pulse.
    if (kind === "load" && tiny && next === PULSE) piece.kind = "pulse";
    held.push(piece);
  };

  // A row or two of noise over the threshold.
  const isNoise = ({ run }: Piece): boolean =>
    Math.abs(run[SUM_AMPERES]! / run[ROWS]!) <= 2 * rule.restLeaveAmperes;

  const growsTogether = (before: Piece, piece: Piece): boolean => {
    const [a, b] = [before.kind, piece.kind];
    if (a === "plateau" && isCharge(b)) return near(before, piece, rule.plateauVolts);
    if (a === "level" && b === "level") return near(before, piece, rule.restPlateauVolts);
    // Less than it takes to be called anything: the begin of a plateau that ramps up.
    if (a === "current" && b === "plateau") return false;
    return a === b;
  };
  const near = (a: Piece, b: Piece, band: number): boolean =>
    Math.abs(meanVolts(a) - meanVolts(b)) <= 2 * band;

  const interrupts = (before: Piece, length: number, tiny: boolean, next: RowClass): boolean => {
    if (before.kind === "load" && next === DISCHARGE)
      return tiny || (before.length > rule.stepMostSeconds && length < rule.leastSeconds);
    return isCharge(before.kind) && next >= CHARGE && next < VOLTAGE_ONLY && length < rule.leastSeconds;
  };

  /** Pulses whose length no longer changes are named; those too long or too short are loads. */
  const settlePulses = (openLength: number): void => {
    for (let i = 0; i < held.length; i++) {
      const piece = held[i]!;
      if (piece.kind !== "pulse" || piece.settled) continue;
      const after = held[i + 1];
      if ((after ? after.length : openLength) < rule.settleSeconds) continue;
      piece.settled = true;
      if (piece.length >= rule.crankLeastSeconds && piece.length <= rule.crankMostSeconds) continue;
      piece.kind = Number.isNaN(piece.run[SUM_AMPERES]!) ? "drift" : "load";
      piece.reason = piece.length > rule.crankMostSeconds ? "pulse-too-long" : "pulse-too-short";
      if (after && after.kind === piece.kind) {
        join(piece, after, after.run[FROM]! + after.length);
        held.splice(i + 1, 1);
      }
      const before = held[i - 1];
      if (before && before.kind === piece.kind) {
        join(before, piece, piece.run[FROM]! + piece.length);
        held.splice(i, 1);
        i--;
      }
    }
  };

  const isFinal = (piece: Piece, after: PieceKind, length: number, closed: Piece | undefined): boolean => {
    if (piece.kind === "pulse") return piece.settled;
    // The open run will grow together with it.
    if (!closed && after === piece.kind) return false;
    if (after === "pulse" && piece.kind === "load") return closed?.settled === true;
    if (after === "engine") return length >= rule.engineLeastSeconds;
    if (piece.kind === "engine") return length >= rule.engineLeastSeconds;
    if (isCharge(piece.kind) && isCharge(after)) return closed !== undefined;
    if (isLevel(piece.kind) && isLevel(after)) return closed !== undefined;
    if (piece.kind === "load") return length >= rule.leastSeconds;
    if (isCharge(piece.kind)) return length >= rule.leastSeconds || after === "load";
    if (piece.kind === "rest" && isCharge(after)) return length >= rule.leastSeconds;
    return true;
  };

  return {
    push(rowClass, run, next, nextFrom) {
      const length = nextFrom - run[FROM]!;
      place({ kind: kindOf(rowClass, run, length, rule), run, length, settled: false }, next, nextFrom);
      // Lengths of closed pieces only: what the open run will be is not known yet.
      settlePulses(0);
      return spare.pop() ?? newRun();
    },
    take(open, run, now) {
      const openLength = now - run[FROM]!;
      settlePulses(openLength);
      const found: LogSegment[] = [];
      while (held.length > 0) {
        const closed = held[1];
        const length = closed ? closed.length : openLength;
        const after = closed ? closed.kind : kindOf(open, run, openLength, rule);
        if (!isFinal(held[0]!, after, length, closed)) break;
        found.push(emit(held.shift()!, closed?.run ?? run, after));
      }
      return found;
    },
    finish(last, run) {
      const length = run[TO]! - run[FROM]!;
      const end = run[TO]!;
      place({ kind: kindOf(last, run, length, rule), run, length, settled: false }, -1, end);
      settlePulses(Number.POSITIVE_INFINITY);
      const found: LogSegment[] = [];
      while (held.length > 0) {
        const piece = held.shift()!;
        const after = held[0];
        found.push(emit(piece, after?.run, after?.kind));
      }
      return found;
    },
  };

  function emit(piece: Piece, next: Run | undefined, after: PieceKind | undefined): LogSegment {
    const border = next && {
      seconds: next[FROM]!,
      volts: next[FIRST_VOLTS]!,
      amperes: next[FIRST_AMPERES]!,
      edge: !(
        after &&
        ((isCharge(piece.kind) && isCharge(after)) || (isLevel(piece.kind) && isLevel(after)))
      ),
    };
    const segment = segmentOf(piece, border, rule);
    spare.push(piece.run);
    return segment;
  }
}
