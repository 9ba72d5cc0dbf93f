import { type LogChunk, reorderRows, rowNumber } from "crankworthy/logs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const chunkOf = (firstRow: number, seconds: readonly number[]): LogChunk => ({
  firstRow,
  rows: seconds.length,
  seconds: Float64Array.from(seconds),
  volts: Float64Array.from(seconds, (_, i) => firstRow + i),
  amperes: Float64Array.from(seconds, (_, i) => firstRow + i),
});

function reorder(times: readonly number[], withinSeconds: number, size: number) {
  const rows = reorderRows(withinSeconds);
  const chunks: LogChunk[] = [];
  let mostHeld = 0;
  let out = 0;
  for (let at = 0; at < times.length; at += size) {
    chunks.push(...rows.push(chunkOf(at + 1, times.slice(at, at + size))));
    out = chunks.reduce((sum, chunk) => sum + chunk.rows, 0);
    mostHeld = Math.max(mostHeld, Math.min(times.length, at + size) - out);
  }
  chunks.push(...rows.finish());
  const all = chunks.flatMap((chunk) =>
    Array.from({ length: chunk.rows }, (_, i) => [chunk.seconds[i]!, rowNumber(chunk, i), chunk.volts[i]!]),
  );
  return { all, moved: rows.moved(), mostHeld };
}

// Times that go up by 0..2 s a row, each then up to 3 s late.
const lateTimes = fc
  .array(fc.tuple(fc.double({ min: 0, max: 2, noNaN: true }), fc.double({ min: 0, max: 3, noNaN: true })), {
    minLength: 1,
    maxLength: 60,
  })
  .map((steps) => {
    let time = 0;
    return steps.map(([step, late]) => {
      time += step;
      return Math.round(2 * (time - late)) / 2;
    });
  });

describe("reorderRows", () => {
  it("is a stable sort of rows late within the window, whatever the chunks, each with its number and values", () => {
    fc.assert(
      fc.property(lateTimes, fc.integer({ min: 1, max: 10 }), (times, size) => {
        const rows = times.map((time, i) => [time, i + 1, i + 1]);
        const { all, moved } = reorder(times, 3.5, size);
        expect(all).toEqual([...rows].sort((a, b) => a[0]! - b[0]! || a[1]! - b[1]!));
        let latest = Number.NEGATIVE_INFINITY;
        const late = times.filter((time) => {
          const isLate = time < latest;
          latest = Math.max(latest, time);
          return isLate;
        });
        expect(moved).toBe(late.length);
      }),
    );
  });

  it("holds no more than its window and a chunk", () => {
    const times = Array.from({ length: 10_000 }, (_, i) => i * 0.1 - (i % 7 === 3 ? 0.5 : 0));
    expect(reorder(times, 1, 100).mostHeld).toBeLessThanOrEqual(11);
  });

  it("refuses a row later than the window, wherever the chunk begins", () => {
    for (const size of [1, 2, 3, 10])
      expect(() => reorder([0, 10, 9, 20, 17.9], 2, size)).toThrow(
        expect.objectContaining({
          name: "LogInputError",
          code: "too-late",
          row: 5,
          expected: "rows at most 2 s late",
        }),
      );
  });

  it("has no place for a row without a time", () => {
    expect(() => reorderRows(1).push(chunkOf(7, [0, Number.NaN]))).toThrow("chunk, row 8: received NaN");
  });

  it("hands chunks in order on as they are, but for what may still be overtaken", () => {
    const chunk = chunkOf(1, [0, 1, 2]);
    expect(reorderRows(0).push(chunk)[0]).toBe(chunk);
    const rows = reorderRows(1.5);
    expect([...rows.push(chunk)[0]!.seconds]).toEqual([0]);
    expect(rows.finish().map((rest) => [rest.firstRow, ...rest.seconds])).toEqual([[2, 1, 2]]);
  });
});
