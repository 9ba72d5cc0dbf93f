import { type LogSeries, measureSettledDraw } from "crankworthy/logs";
import { describe, expect, it } from "vitest";
import { given } from "../datasets.js";
import { coverage, rounded, seeded } from "./recovery.js";

interface Parked {
  readonly minutes: number;
  /** Draw [A] from a minute on. */
  readonly stages: readonly (readonly [minute: number, amperes: number])[];
  readonly wakeUps?: readonly (readonly [minute: number, seconds: number, amperes: number])[];
  readonly noise?: number;
  readonly zero?: number;
  readonly seed?: number;
}

const STAGES = [
  [0, 4],
  [2, 0.6],
  [16, 0.15],
  [30, 0.028],
] as const;

function parked({ minutes, stages, wakeUps = [], noise = 0, zero = 0, seed = 1 }: Parked): LogSeries {
  const random = seeded(seed);
  const seconds = Float64Array.from({ length: minutes * 12 + 1 }, (_, i) => 5 * i);
  const draw = (t: number): number => {
    for (const [minute, length, amperes] of wakeUps)
      if (t >= minute * 60 && t < minute * 60 + length) return amperes;
    return stages.findLast(([minute]) => t >= minute * 60)![1];
  };
  return {
    seconds,
    volts: seconds.map(() => 12.6),
    amperes: seconds.map((t) => rounded(-draw(t) + zero + noise * random.normal(), 0.001)),
  };
}

describe("measureSettledDraw", () => {
  it("the interval holds the settled draw under noise, rounding and a zero error", () => {
    const share = coverage(200, (seed) => {
      const random = seeded(seed + 2);
      const truth = 0.02 + 0.06 * random.even();
      const series = parked({
        minutes: 90,
        stages: [...STAGES.slice(0, 3), [30, truth]],
        wakeUps: [[50 + 20 * random.even(), 20, 2]],
        noise: 0.004,
        zero: 0.005 * random.normal(),
        seed,
      });
      return {
        truth,
        got: given(measureSettledDraw(series, { amperesStandardUncertainty: 0.005 })).drawAmperes,
      };
    });
    expect(share).toBeGreaterThan(0.93);
  });

  it("takes the last stage, not the first pause, and says when it began", () => {
    const got = given(measureSettledDraw(parked({ minutes: 90, stages: STAGES })));
    expect(got.drawAmperes.value).toBeCloseTo(0.028, 6);
    expect(got.settleMinutes.value).toBeCloseTo(30, 1);
    expect(got.observedMinutes).toBe(90);
    expect(got.doubts).toEqual([]);
  });

  it("lists wake-ups, and leaves them out of the draw but not of the mean with them", () => {
    const got = given(
      measureSettledDraw(
        parked({
          minutes: 120,
          stages: STAGES,
          wakeUps: [
            [60, 30, 2],
            [100, 600, 1],
          ],
        }),
      ),
    );
    expect(got.wakeUps).toHaveLength(2);
    expect(got.wakeUps[0]!.fromSeconds / 60).toBeCloseTo(60, 0);
    expect(got.wakeUps[0]!.peakAmperes).toBe(2);
    expect(Math.abs(got.wakeUps[1]!.ampereHours / (600 / 3600) - 1)).toBeLessThan(0.05);
    expect(got.drawAmperes.value).toBeCloseTo(0.028, 6);
    // 90 minutes settled: 30 s at 2 A and 600 s at 1 A among them.
    const mean = (0.028 * (5400 - 630) + 2 * 30 + 600) / 5400;
    expect(Math.abs(got.drawWithWakeUpsAmperes.value / mean - 1)).toBeLessThan(0.02);
  });

  it("says that a later stage may come when the log is short", () => {
    const got = given(measureSettledDraw(parked({ minutes: 28, stages: STAGES })));
    expect(got.drawAmperes.value).toBeCloseTo(0.15, 6);
    expect(got.doubts).toEqual(["later-stages-possible"]);
  });

  it("refuses a draw that goes on falling, one awake at the end, and one that never comes down", () => {
    const falling = parked({ minutes: 90, stages: [[0, 1]] });
    expect(
      measureSettledDraw({ ...falling, amperes: falling.seconds.map((t) => -Math.exp(-t / 1500)) }),
    ).toMatchObject({ code: "never-settles" });
    const awake = parked({ minutes: 90, stages: STAGES, wakeUps: [[60, 1800, 1]] });
    expect(
      measureSettledDraw({
        ...awake,
        amperes: awake.amperes.map((I, i) => (i > 720 ? I * (1 + (i % 400) / 200) : I)),
      }),
    ).toMatchObject({ code: "never-settles" });
  });

  it("works on rows that come only when something changes", () => {
    const every = parked({ minutes: 90, stages: STAGES });
    const keep = (i: number) =>
      i % 48 === 0 || every.amperes[i] !== every.amperes[i - 1] || every.amperes[i] !== every.amperes[i + 1];
    const pick = (column: Float64Array) => column.filter((_, i) => keep(i));
    const sparse = { seconds: pick(every.seconds), volts: pick(every.volts), amperes: pick(every.amperes) };
    expect(sparse.seconds.length).toBeLessThan(60);
    const got = given(measureSettledDraw(sparse));
    expect(got.drawAmperes.value).toBeCloseTo(0.028, 6);
    expect(got.settleMinutes.value).toBeCloseTo(30, 1);
  });

  it("a week under noise as large as the draw settles", () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const { normal } = seeded(seed);
      const seconds = Float64Array.from({ length: 7 * 1440 }, (_, i) => 60 * i);
      const amperes = seconds.map(() => -0.05 + 0.06 * normal());
      const got = given(measureSettledDraw({ seconds, volts: seconds.map(() => 12.6), amperes }));
      expect(Math.abs(got.drawAmperes.value - 0.05)).toBeLessThan(2.5 * got.drawAmperes.standardUncertainty);
      expect(got.drawAmperes.standardUncertainty).toBeLessThan(0.005);
      expect(got.wakeUps.length).toBeLessThan(3);
      expect(got.settleMinutes.value).toBeLessThan(20);
    }
  });

  it("refuses a short log, wide gaps and a charger", () => {
    expect(measureSettledDraw(parked({ minutes: 14, stages: STAGES }))).toMatchObject({ code: "too-short" });
    const series = parked({ minutes: 90, stages: STAGES });
    const cut = (column: Float64Array) => column.filter((_, i) => i < 400 || i > 500);
    expect(
      measureSettledDraw({
        seconds: cut(series.seconds),
        volts: cut(series.volts),
        amperes: cut(series.amperes),
      }),
    ).toMatchObject({ code: "sampling-too-slow" });
    expect(measureSettledDraw(parked({ minutes: 90, stages: [[0, -3]] }))).toMatchObject({
      code: "not-parked",
    });
  });
});
