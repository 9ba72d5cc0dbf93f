import type { TextPiece } from "../../streams/index.js";
import type { BadCellPolicy } from "./format.js";
import { LogInputError, type LogInputProblem, problem } from "./log-input-error.js";
import { byteOffsetOf, lineNumberOf } from "./piece.js";

/** What a log has that cannot be read, so far. */
export interface ReadTally {
  /** Data rows read. */
  readonly rows: number;
  /** Cells that were neither number nor missing mark and count as not sampled. */
  readonly badCells: number;
  /** Rows with too few or too many cells, or lines that are no JSON: kept as rows in which nothing is sampled. */
  readonly badRows: number;
  /** The first hundred of both, with their places. */
  readonly problems: readonly LogInputProblem[];
  /** The time of the first row as written, where `seconds` counts from it. */
  readonly timeZero?: string;
}

const MOST_KEPT = 100;

/** @internal Throws what is wrong, or counts it, as the format asks. */
export interface BadCells {
  /** Always throws: the rest cannot be read either. */
  fail(what: Omit<LogInputProblem, "message" | "line" | "byteOffset">, piece: TextPiece, at: number): never;
  /** @param kind what is counted */
  meet(
    kind: "cell" | "row",
    what: Omit<LogInputProblem, "message" | "line" | "byteOffset">,
    piece: TextPiece,
    at: number,
  ): void;
  counts(): {
    readonly badCells: number;
    readonly badRows: number;
    readonly problems: readonly LogInputProblem[];
  };
}

/** @internal */
export function createBadCells(policy: BadCellPolicy): BadCells {
  const counts = { cell: 0, row: 0 };
  const problems: LogInputProblem[] = [];
  const placed = (
    what: Omit<LogInputProblem, "message" | "line" | "byteOffset">,
    piece: TextPiece,
    at: number,
  ): LogInputProblem =>
    problem({ ...what, line: lineNumberOf(piece, at), byteOffset: byteOffsetOf(piece, at) });
  return {
    fail: (what, piece, at) => {
      throw new LogInputError(placed(what, piece, at));
    },
    meet: (kind, what, piece, at) => {
      if (policy === "error") throw new LogInputError(placed(what, piece, at));
      counts[kind]++;
      if (problems.length < MOST_KEPT) problems.push(placed(what, piece, at));
    },
    counts: () => ({ badCells: counts.cell, badRows: counts.row, problems: [...problems] }),
  };
}
