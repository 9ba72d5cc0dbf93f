import type { LogSegment, SegmentKind, SegmentReason, SegmentReasonCode } from "../segments.js";
import { CHARGE, ENGINE, PULSE, REST, type RowClass, VOLTAGE_ONLY } from "./row-class.js";
import type { FullSegmentRule } from "./rule.js";
import { edgesOfRun } from "./run-edges.js";
import {
  type Border,
  FIRST_AMPERES,
  FIRST_ROW,
  FROM,
  LAST_AMPERES,
  LAST_ROW,
  ROWS,
  type Run,
  SUM_AMPERES,
  SUM_SQUARES,
  TO,
} from "./run-slots.js";
import { totalsOfRun } from "./run-totals.js";

/** @internal What a run is before its length is final: `current` and `plateau` charge, `level` and `drift` have no current. */
export type PieceKind = "rest" | "load" | "pulse" | "engine" | "current" | "plateau" | "level" | "drift";

/** @internal A run with its class; grows by joining the next one. */
export interface Piece {
  kind: PieceKind;
  readonly run: Run;
  /** Up to the first row of what follows [s]. */
  length: number;
  /** No neighbour changes the length of this pulse any more. */
  settled: boolean;
  reason?: SegmentReasonCode;
}

/** @internal */
export function kindOf(rowClass: RowClass, run: Run, length: number, rule: FullSegmentRule): PieceKind {
  if (rowClass === REST) return "rest";
  if (rowClass === PULSE) return "pulse";
  if (rowClass === ENGINE) return "engine";
  if (rowClass >= VOLTAGE_ONLY) return length >= rule.restPlateauSeconds ? "level" : "drift";
  if (rowClass >= CHARGE) {
    const [first, last] = [Math.abs(run[FIRST_AMPERES]!), Math.abs(run[LAST_AMPERES]!)];
    const change = Math.abs(first - last) / Math.max(first, last);
    return length >= rule.plateauLeastSeconds && change >= rule.currentChangeShare ? "plateau" : "current";
  }
  return "load";
}

/** @internal The segment of a piece that has its final length. */
export function segmentOf(piece: Piece, border: Border | undefined, rule: FullSegmentRule): LogSegment {
  const { run } = piece;
  const [kind, reason] = judged(piece, rule);
  return {
    kind,
    firstRow: run[FIRST_ROW]!,
    lastRow: run[LAST_ROW]!,
    fromSeconds: run[FROM]!,
    toSeconds: run[TO]!,
    reason,
    // Before the totals, which add the interval up to the border to the run.
    edges: edgesOfRun(run, border, rule.edgeSeconds),
    totals: totalsOfRun(run, border),
  };
}

function judged(piece: Piece, rule: FullSegmentRule): readonly [SegmentKind, SegmentReason] {
  const { run, length: seconds, kind } = piece;
  const because = (code: SegmentReasonCode, values: Readonly<Record<string, number>>): SegmentReason => ({
    code,
    values: { seconds, ...values },
  });
  const rows = run[ROWS]!;
  const meanAmperes = run[SUM_AMPERES]! / rows;
  switch (kind) {
    case "rest":
      return ["rest", because("current-near-zero", { meanAmperes, restLeaveAmperes: rule.restLeaveAmperes })];
    case "pulse": {
      // Without current the voltage told.
      if (Number.isNaN(meanAmperes))
        return ["crank", because("voltage-dip", { dipVolts: rule.crankDipVolts })];
      return ["crank", because("current-pulse", { meanAmperes, crankAmperes: rule.crankAmperes })];
    }
    case "engine":
      return ["engine-running", because("charging-after-crank", { engineEnterVolts: rule.engineEnterVolts })];
    case "load": {
      const limit = { meanAmperes, stepMostSeconds: rule.stepMostSeconds };
      return seconds <= rule.stepMostSeconds
        ? ["load-step", because(piece.reason ?? "short-load", limit)]
        : ["discharge", because(piece.reason ?? "discharge-current", limit)];
    }
    case "plateau":
      return [
        "charge-constant-voltage",
        because("current-falls-at-held-voltage", {
          firstAmperes: run[FIRST_AMPERES]!,
          lastAmperes: run[LAST_AMPERES]!,
          plateauVolts: rule.plateauVolts,
        }),
      ];
    case "current": {
      // Two rows show no current that holds.
      if (seconds < rule.leastSeconds || rows < 3)
        return [
          "unclassified",
          because("charge-too-short", { meanAmperes, leastSeconds: rule.leastSeconds }),
        ];
      const variance = Math.max(0, run[SUM_SQUARES]! / rows - meanAmperes * meanAmperes);
      const spread = Math.sqrt(variance) / Math.abs(meanAmperes);
      const values = { meanAmperes, spread, currentSpreadShare: rule.currentSpreadShare };
      return spread > rule.currentSpreadShare
        ? ["unclassified", because("charge-unsteady", values)]
        : ["charge-constant-current", because("current-holds", values)];
    }
    case "level":
      return ["rest", because("voltage-holds", { restPlateauVolts: rule.restPlateauVolts })];
    case "drift":
      return ["unclassified", because(piece.reason ?? "no-current-no-pattern", {})];
  }
}
