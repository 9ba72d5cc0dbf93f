import {
  type Border,
  EDGE_OPEN,
  FROM,
  INNER_FROM,
  LAST_VOLTS,
  ROWS,
  type Run,
  SECOND_LAST_SECONDS,
  SECOND_LAST_VOLTS,
  START_EDGES,
  THIRD_LAST_SECONDS,
  THIRD_LAST_VOLTS,
  TO,
} from "./run-slots.js";

/** Rows at either end that may hold a mean, and the times that leave them out. */
export interface RunEdges {
  readonly edgeRowsAtStart: number;
  readonly edgeRowsAtEnd: number;
  readonly innerFromSeconds: number;
  readonly innerToSeconds: number;
}

export function edgesOfRun(run: Run, border: Border | undefined, edgeSeconds: number): RunEdges {
  const times = [run[TO]!, run[SECOND_LAST_SECONDS]!, run[THIRD_LAST_SECONDS]!];
  const volts = [run[LAST_VOLTS]!, run[SECOND_LAST_VOLTS]!, run[THIRD_LAST_VOLTS]!];
  const start = run[START_EDGES]!;
  const free = Math.min(3, run[ROWS]! - start);
  let end = 0;
  while (border?.edge && end < free) {
    const near = end < 2 && border.seconds - times[end]! <= edgeSeconds;
    if (!near && volts[end] !== border.volts) break;
    end++;
  }
  return {
    edgeRowsAtStart: start,
    edgeRowsAtEnd: end,
    innerFromSeconds: run[EDGE_OPEN] === 1 ? run[TO]! : run[INNER_FROM]!,
    innerToSeconds: end < 3 && end < run[ROWS]! ? times[end]! : run[FROM]!,
  };
}
