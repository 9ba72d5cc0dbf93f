import { chargeMoved, createSegmenter, type LogChunk, type LogSegment, segmentLog } from "crankworthy/logs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { given } from "../datasets.js";

type Row = readonly [seconds: number, volts: number, amperes: number];

const chunkOf = (rows: readonly Row[], firstRow = 1): LogChunk => ({
  firstRow,
  rows: rows.length,
  seconds: Float64Array.from(rows, ([t]) => t),
  volts: Float64Array.from(rows, ([, v]) => v),
  amperes: Float64Array.from(rows, ([, , i]) => i),
});

/** Rows every `step` seconds, each phase `[seconds, volts, amperes]`; a function gets the time within its phase. */
type Phase = readonly [
  seconds: number,
  volts: number | ((t: number) => number),
  amperes: number | ((t: number) => number),
];
function rowsOf(phases: readonly Phase[], step: number): Row[] {
  const rows: Row[] = [];
  let start = 0;
  for (const [length, volts, amperes] of phases) {
    const count = Math.round(length / step);
    for (let i = 0; i < count; i++) {
      const t = i * step;
      rows.push([
        start + t,
        typeof volts === "number" ? volts : volts(t),
        typeof amperes === "number" ? amperes : amperes(t),
      ]);
    }
    start += count * step;
  }
  return rows;
}
const kinds = (segments: readonly LogSegment[]) => segments.map(({ kind }) => kind);
const cut = (phases: readonly Phase[], step: number, rule = {}) =>
  segmentLog([chunkOf(rowsOf(phases, step))], { ratedAmpereHours: 60, ...rule });

const morning: readonly Phase[] = [
  [120, 12.6, -0.03],
  // A dip, then the plateau with the compressions.
  [
    1,
    (t) => (t < 0.05 ? 8 : 10 + 0.3 * Math.sin(40 * t)),
    (t) => (t < 0.05 ? -600 : -200 + 40 * Math.sin(40 * t)),
  ],
  [200, 14.2, (t) => 30 * Math.exp(-t / 60) + 2],
  [120, 12.9, -0.03],
];

describe("segments by current", () => {
  it("a start: rest, crank, engine running, rest, with the borders where they are", () => {
    const segments = cut(morning, 0.01);
    expect(kinds(segments)).toEqual(["rest", "crank", "engine-running", "rest"]);
    expect(segments.map(({ fromSeconds }) => fromSeconds)).toEqual([0, 120, 121, 321]);
    expect(segments[1]!.totals.leastVolts).toBe(8);
    expect(segments[1]!.reason.code).toBe("current-pulse");
  });

  it("a crank whose compressions let the current fall to nearly nothing stays one crank", () => {
    const amperes = (t: number) => (t % 0.1 < 0.02 ? -5 : -300);
    expect(
      kinds(
        cut(
          [
            [60, 12.6, 0],
            [1, 10, amperes],
            [60, 12.5, 0],
          ],
          0.01,
        ),
      ),
    ).toEqual(["rest", "crank", "rest"]);
  });

  it("a pulse that is too long is a discharge, one that is too short a load step", () => {
    const pulse = (seconds: number): readonly Phase[] => [
      [60, 12.6, 0],
      [seconds, 10, -200],
      [60, 12.5, 0],
    ];
    expect(kinds(cut(pulse(90), 0.1))).toEqual(["rest", "discharge", "rest"]);
    expect(kinds(cut(pulse(0.05), 0.01))).toEqual(["rest", "load-step", "rest"]);
    expect(cut(pulse(0.05), 0.01)[1]!.reason.code).toBe("pulse-too-short");
    expect(kinds(cut(pulse(14), 0.1))[1]).toBe("crank");
  });

  it("an engine that does not catch is a crank and a rest; a second attempt is a crank of its own", () => {
    const attempt: Phase = [2, 10, -200];
    expect(kinds(cut([[60, 12.6, 0], attempt, [5, 12.3, 0], attempt, [60, 12.2, 0]], 0.01))).toEqual([
      "rest",
      "crank",
      "rest",
      "crank",
      "rest",
    ]);
  });

  it("charge: current held, then voltage held while the current falls", () => {
    const segments = cut(
      [
        [7200, (t) => 12.8 + t / 4500, 6],
        [7200, 14.4, (t) => 6 * Math.exp(-t / 3000)],
        [3600, 13, 0],
      ],
      10,
    );
    expect(kinds(segments)).toEqual(["charge-constant-current", "charge-constant-voltage", "rest"]);
    // The level is known to within its band.
    expect(Math.abs(segments[1]!.fromSeconds - 7200)).toBeLessThan(0.12 * 4500 + 60);
  });

  it("noise at a threshold makes no segments", () => {
    let seed = 1;
    const noise = () => {
      seed = (seed * 48_271) % 2_147_483_647;
      return (seed / 2_147_483_647 - 0.5) * 0.12;
    };
    const enter = 60 / 400;
    expect(
      kinds(
        cut(
          [
            [600, 12.6, () => -enter + noise()],
            [600, 12.2, -5],
          ],
          1,
        ),
      ),
    ).toEqual(["rest", "discharge"]);
  });

  it("a short pause of a discharge belongs to it, a long one does not", () => {
    const pause = (seconds: number): readonly Phase[] => [
      [600, 12.2, -5],
      [seconds, 12.5, 0],
      [600, 12.2, -5],
    ];
    expect(kinds(cut(pause(30), 1))).toEqual(["discharge"]);
    expect(kinds(cut(pause(120), 1))).toEqual(["discharge", "rest", "discharge"]);
  });

  it("a load of seconds is a step", () => {
    expect(
      kinds(
        cut(
          [
            [60, 12.6, 0],
            [10, 12.3, -20],
            [60, 12.6, 0],
          ],
          0.1,
        ),
      ),
    ).toEqual(["rest", "load-step", "rest"]);
  });

  it("rows a minute apart are cut as well", () => {
    expect(
      kinds(
        cut(
          [
            [3600, 12.7, 0],
            [7200, 12.2, -3],
            [7200, 12.4, 0],
          ],
          60,
        ),
      ),
    ).toEqual(["rest", "discharge", "rest"]);
  });

  it("rows at the border are counted as edges, and left out of the inner times", () => {
    const rows: Row[] = [
      [0, 12.6, 0],
      [60, 12.6, 0],
      [60.1, 12.4, -3],
      [120, 12.2, -3],
      [180, 12.2, -3],
    ];
    const [rest, load] = segmentLog([chunkOf(rows)], { ratedAmpereHours: 17 });
    expect(rest!.edges).toEqual({
      edgeRowsAtStart: 0,
      edgeRowsAtEnd: 1,
      innerFromSeconds: 0,
      innerToSeconds: 0,
    });
    expect(load!.edges.edgeRowsAtStart).toBe(1);
    expect(load!.edges.innerFromSeconds).toBe(120);
  });
});

describe("segments by voltage alone", () => {
  const none = () => Number.NaN;

  it("a dip, an engine and a rest that holds; the rest is not classified", () => {
    const phases: readonly Phase[] = [
      [4000, 12.6, none],
      [1, (t) => (t < 0.05 ? 8.2 : 10), none],
      [300, 14.2, none],
      [1000, (t) => 12.9 - t / 4000, none],
      [4000, 12.65, none],
    ];
    expect(kinds(cut(phases, 0.05))).toEqual(["rest", "crank", "engine-running", "unclassified", "rest"]);
  });
});

const phase = fc.tuple(
  fc.constantFrom(0.3, 3, 20, 70, 400, 2000),
  fc.constantFrom(12.6, 12.2, 10, 13.4, 14.4),
  fc.constantFrom(0, -0.1, 0.2, -4, -40, -300, 3, 25, Number.NaN),
);
const log = fc.record({
  phases: fc.array(phase, { minLength: 1, maxLength: 9 }),
  step: fc.constantFrom(0.1, 0.25, 1, 60),
  seed: fc.integer({ min: 1, max: 1e6 }),
});
type Log = { phases: [number, number, number][]; step: number; seed: number };
// Noise large enough to cross thresholds, and uneven steps.
function noisy({ phases, step, seed }: Log, withCurrent: boolean): Row[] {
  let state = seed;
  const random = () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647 - 0.5;
  };
  let time = 0;
  return rowsOf(
    phases.filter(([, , i]) => !withCurrent || !Number.isNaN(i)),
    step,
  )
    .slice(0, 4000)
    .map(([, v, i]) => {
      time += step * (1 + random());
      return [time, v + 0.1 * random(), i + 0.3 * random()];
    });
}

describe("for any log", () => {
  it("segments cover every row once, in order", () => {
    fc.assert(
      fc.property(log, (one) => {
        const rows = noisy(one, false);
        fc.pre(rows.length > 0);
        const segments = segmentLog([chunkOf(rows)], { ratedAmpereHours: 60 });
        let next = 1;
        for (const { firstRow, lastRow, totals, fromSeconds, toSeconds } of segments) {
          expect(firstRow).toBe(next);
          expect(totals.rows).toBe(lastRow - firstRow + 1);
          expect([fromSeconds, toSeconds]).toEqual([rows[firstRow - 1]![0], rows[lastRow - 1]![0]]);
          next = lastRow + 1;
        }
        expect(next).toBe(rows.length + 1);
      }),
    );
  });

  it("do not depend on how the rows are cut into chunks", () => {
    fc.assert(
      fc.property(
        log,
        fc.array(fc.integer({ min: 1, max: 700 }), { minLength: 1, maxLength: 6 }),
        (one, sizes) => {
          const rows = noisy(one, false);
          fc.pre(rows.length > 0);
          const whole = segmentLog([chunkOf(rows)], { ratedAmpereHours: 60 });
          const segmenter = createSegmenter({ ratedAmpereHours: 60 });
          const pieces: LogSegment[] = [];
          for (let at = 0, i = 0; at < rows.length; i++) {
            const size = sizes[i % sizes.length]!;
            pieces.push(...segmenter.push(chunkOf(rows.slice(at, at + size), at + 1)));
            at += size;
          }
          pieces.push(...segmenter.finish());
          expect(pieces).toEqual(whole);
        },
      ),
    );
  });

  it("their charges add up to that of the log", () => {
    fc.assert(
      fc.property(log, (one) => {
        const rows = noisy(one, true);
        fc.pre(rows.length > 1);
        const chunk = chunkOf(rows);
        const segments = segmentLog([chunk], { ratedAmpereHours: 60 });
        const moved = given(chargeMoved(chunk));
        const sum = (of: "chargeInAmpereHours" | "chargeOutAmpereHours") =>
          segments.reduce((total, { totals }) => total + totals[of], 0);
        const scale = 1e-9 * (moved.inAmpereHours.value + moved.outAmpereHours.value) + 1e-15;
        expect(Math.abs(sum("chargeInAmpereHours") - moved.inAmpereHours.value)).toBeLessThan(scale);
        expect(Math.abs(sum("chargeOutAmpereHours") - moved.outAmpereHours.value)).toBeLessThan(scale);
      }),
    );
  });

  it("neighbours of the same kind are told apart by a reason", () => {
    fc.assert(
      fc.property(log, (one) => {
        const rows = noisy(one, true);
        fc.pre(rows.length > 0);
        const segments = segmentLog([chunkOf(rows)], { ratedAmpereHours: 60 });
        for (const [i, segment] of segments.entries()) {
          const before = segments[i - 1];
          if (before && ["rest", "discharge", "engine-running"].includes(segment.kind))
            expect(before.kind).not.toBe(segment.kind);
        }
      }),
    );
  });
});

it("a row that runs back in time, or lacks what it needs, is refused by number", () => {
  const segmenter = createSegmenter();
  segmenter.push(
    chunkOf([
      [0, 12, 0],
      [10, 12, 0],
    ]),
  );
  expect(() => segmenter.push(chunkOf([[5, 12, 0]], 3))).toThrow(/row 3: received 5 s/);
  expect(() => createSegmenter().push(chunkOf([[0, Number.NaN, 0]]))).toThrow(/row 1/);
});

it("across a gap the charge is as uncertain as what may have flowed in it", () => {
  const minutes = (from: number, count: number): Row[] =>
    Array.from({ length: count }, (_, i) => [from + 60 * i, 12.2, -10] as const);
  const [one] = segmentLog([chunkOf([...minutes(0, 60), ...minutes(40_000, 60)])], { ratedAmpereHours: 60 });
  const { chargeVarianceAmpereSecondsSquared: variance } = one!.totals;
  const seconds = 40_000 - 59 * 60;
  expect(Math.sqrt(variance)).toBeCloseTo((10 * seconds) / Math.sqrt(3), 3);
});
