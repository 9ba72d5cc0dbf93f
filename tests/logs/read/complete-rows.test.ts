import { completeRows, type LogChunk, rowNumber } from "crankworthy/logs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const cell = fc.oneof(
  { weight: 3, arbitrary: fc.integer({ min: 0, max: 99 }) },
  { weight: 1, arbitrary: fc.constant(Number.NaN) },
);
const chunks = fc
  .tuple(
    fc.integer({ min: 1, max: 1000 }),
    fc.array(fc.tuple(cell, cell, cell, cell, cell), { maxLength: 20 }),
  )
  .map(([firstRow, rows]): LogChunk => {
    const column = (at: number) => Float64Array.from(rows, (row) => row[at]!);
    return {
      firstRow,
      rows: rows.length,
      seconds: column(0),
      volts: column(1),
      amperes: column(2),
      temperatureCelsius: column(3),
      clockSeconds: column(4),
    };
  });

const rowsOf = (chunk: LogChunk) =>
  Array.from({ length: chunk.rows }, (_, i) => [
    rowNumber(chunk, i),
    chunk.seconds[i]!,
    chunk.volts[i]!,
    chunk.amperes[i]!,
    chunk.temperatureCelsius![i]!,
    chunk.clockSeconds![i]!,
  ]);

describe("completeRows", () => {
  it("keeps the rows with time, voltage and current, all their values and their numbers", () => {
    fc.assert(
      fc.property(chunks, (chunk) => {
        const complete = completeRows(chunk);
        const expected = rowsOf(chunk).filter(([, t, v, i]) => !Number.isNaN(t! + v! + i!));
        expect(rowsOf(complete)).toEqual(expected);
        if (expected.length === chunk.rows) expect(complete).toBe(chunk);
        expect(completeRows(complete)).toBe(complete);
      }),
    );
  });
});
