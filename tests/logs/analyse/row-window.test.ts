import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createRowWindow } from "../../../src/logs/analyse/row-window.js";
import type { LogChunk } from "../../../src/logs/chunk.js";

const chunkOf = (from: number, rows: number): LogChunk => {
  const seconds = Float64Array.from({ length: rows }, (_, i) => from + i);
  return { firstRow: from + 1, rows, seconds, volts: seconds.map((t) => 12 + t), amperes: seconds };
};

describe("row window", () => {
  it("gives back what was pushed, whatever the cuts", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 40 }), { maxLength: 12 }), (sizes) => {
        const window = createRowWindow(1000);
        let at = 0;
        for (const size of sizes) {
          window.push(chunkOf(at, size));
          at += size;
        }
        const all = window.between(0, at);
        expect([...all.series.seconds]).toEqual(Array.from({ length: at }, (_, i) => i));
        expect([...all.rowNumbers]).toEqual(Array.from({ length: at }, (_, i) => i + 1));
        expect(all.thinned).toBe(false);
      }),
    );
  });

  it("stays inside its bound: first and last row of what is needed remain, and it says that rows were let go", () => {
    const window = createRowWindow(100);
    for (let at = 0; at < 10_000; at += 7) window.push(chunkOf(at, 7));
    const all = window.between(0, 20_000);
    expect(all.series.seconds.length).toBeLessThanOrEqual(100);
    expect(all.series.seconds.length).toBeGreaterThan(40);
    expect(all.series.seconds[0]).toBe(0);
    expect(all.series.seconds.at(-1)).toBe(10_002);
    expect(all.thinned).toBe(true);
    // The newest rows are whole.
    expect(window.around(20_000, 3).series.seconds).toEqual(Float64Array.of(10_000, 10_001, 10_002));
    expect(window.around(20_000, 3).thinned).toBe(false);
  });

  it("what is no longer needed makes room before anything is thinned", () => {
    const window = createRowWindow(100);
    for (let at = 0; at < 10_000; at += 10) {
      window.push(chunkOf(at, 10));
      window.forgetBefore(at - 50);
    }
    expect(window.between(9_960, 9_999).series.seconds.length).toBe(40);
    expect(window.between(9_960, 9_999).thinned).toBe(false);
    expect([...window.around(9_990, 2).rowNumbers]).toEqual([9_989, 9_990, 9_991, 9_992]);
  });
});
