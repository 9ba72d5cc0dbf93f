import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createTraceThinner, type ThinnedTrace } from "../../src/pictures/index.js";

type Row = readonly [number, number, number];

function thin(rows: readonly Row[], cuts: readonly number[], columns = 16): ThinnedTrace {
  const thinner = createTraceThinner(columns);
  const ends = [0, ...cuts.map((cut) => cut % (rows.length + 1)).sort((a, b) => a - b), rows.length];
  for (let k = 1; k < ends.length; k++) {
    const piece = rows.slice(ends[k - 1], ends[k]);
    const column = (index: 0 | 1 | 2) => Float64Array.from(piece, (row) => row[index]);
    thinner.push({
      firstRow: ends[k - 1]! + 1,
      rows: piece.length,
      seconds: column(0),
      volts: column(1),
      amperes: column(2),
    });
  }
  return thinner.finish();
}

const value = fc.oneof(fc.double({ min: -1e3, max: 1e3, noNaN: true }), fc.constant(Number.NaN));
const row = fc.tuple(
  fc.oneof(
    fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    fc.integer({ min: 0, max: 500 }),
    fc.constant(Number.NaN),
  ),
  value,
  value,
);
const rows = fc.array(row, { maxLength: 300 });

describe("createTraceThinner", () => {
  it("does not depend on where chunks are cut", () => {
    fc.assert(
      fc.property(rows, fc.array(fc.nat(), { maxLength: 8 }), (given, cuts) => {
        expect(thin(given, cuts)).toEqual(thin(given, []));
      }),
      { numRuns: 200 },
    );
  });

  it("keeps the least and the greatest value, first and last time, and few points", () => {
    fc.assert(
      fc.property(rows, (given) => {
        const { volts, amperes, withoutTime } = thin(given, []);
        const timed = given.filter(([time]) => !Number.isNaN(time));
        expect(withoutTime).toBe(given.length - timed.length);
        for (const [channel, index] of [
          [volts, 1],
          [amperes, 2],
        ] as const) {
          const there = timed.filter((one) => !Number.isNaN(one[index]));
          expect(channel.sampled).toBe(there.length);
          if (there.length === 0) continue;
          const values = there.map((one) => one[index]);
          const times = there.map(([time]) => time);
          expect(Math.min(...channel.values)).toBe(Math.min(...values));
          expect(Math.max(...channel.values)).toBe(Math.max(...values));
          expect(channel.seconds[0]).toBe(Math.min(...times));
          expect(channel.seconds.at(-1)).toBe(Math.max(...times));
          // Four points in each of the 32 buckets that 16 columns need.
          expect(channel.values.length).toBeLessThanOrEqual(4 * 32);
          expect([...channel.seconds]).toEqual([...channel.seconds].sort((a, b) => a - b));
        }
      }),
      { numRuns: 200 },
    );
  });

  it("invents no point", () => {
    fc.assert(
      fc.property(rows, (given) => {
        const { volts } = thin(given, []);
        const known = new Set(given.map(([time, v]) => `${time + 0} ${v + 0}`));
        volts.seconds.forEach((time, i) => {
          expect(known).toContain(`${time + 0} ${volts.values[i]! + 0}`);
        });
      }),
      { numRuns: 100 },
    );
  });

  it("counts rows that run back in time and values that are none", () => {
    const trace = thin(
      [
        [0, 12, 0],
        [5, 1e13, 0],
        [3, 12.1, 0],
      ],
      [],
    );
    expect(trace).toMatchObject({ rows: 3, back: 1, fromSeconds: 0, toSeconds: 5 });
    expect(trace.volts).toMatchObject({ sampled: 2, beyond: 1 });
  });

  it("remembers the longest steps, longest first", () => {
    const { volts } = thin(
      [
        [0, 12, 0],
        [1, 12, 0],
        [101, 12, 0],
        [102, 12, 0],
        [402, 12, 0],
      ],
      [],
    );
    expect(volts.longestSteps.slice(0, 2)).toEqual([
      { fromSeconds: 102, toSeconds: 402 },
      { fromSeconds: 1, toSeconds: 101 },
    ]);
  });

  it("has room for the widest picture by default, and asks for a whole number of columns", () => {
    const thinner = createTraceThinner();
    const seconds = Float64Array.from({ length: 20_000 }, (_, i) => i);
    thinner.push({ firstRow: 1, rows: 20_000, seconds, volts: seconds, amperes: seconds });
    expect(thinner.finish().volts.values.length).toBeGreaterThan(4000);
    for (const columns of [15, 8193, 20.5, Number.NaN])
      expect(() => createTraceThinner(columns)).toThrow(RangeError);
  });
});
