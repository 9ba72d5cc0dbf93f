import { analyseLog, type LogAnalysis, recordFromLog } from "crankworthy/logs";
import { isRefusal } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";

const HEAD = "Test Time / s,Voltage / V,Current / A\n";
const identity = { chemistry: "agm", rating: { standard: "sae-j537", amperes: 600 } } as const;
type Phase = readonly [
  seconds: number,
  step: number,
  volts: number | ((t: number) => number),
  amperes: number,
];

function table(...phases: readonly Phase[]): string {
  const rows: string[] = [];
  let start = 0;
  for (const [length, step, volts, amperes] of phases) {
    for (let i = 0; i < Math.round(length / step); i++) {
      const voltage = typeof volts === "number" ? volts : volts(i * step);
      rows.push(`${(start + i * step).toFixed(4)},${voltage.toFixed(4)},${amperes}`);
    }
    start += length;
  }
  return HEAD + rows.join("\n");
}
const rule = { ratedAmpereHours: 70 };
const crankOf = (log: LogAnalysis) => {
  const found = log.measurements.find(({ quantity }) => quantity === "crank");
  if (found?.quantity !== "crank" || isRefusal(found.result)) throw new Error("no crank");
  return found.result as Extract<typeof found.result, { durationSeconds: unknown }>;
};
const refusedAt = (log: LogAnalysis, path: string, choices = {}) =>
  recordFromLog(log, identity, choices).refused.find((one) => one.path === path)?.refusal.code;

describe("a crank in a log", () => {
  // Fast a second before and two after, as a logger with a trigger writes it.
  const pulse = (hertz: number, seconds: number, volts: number, amperes: number, after: number): Phase[] => [
    [119, 0.5, 12.6, 0],
    [1, 1 / hertz, 12.6, 0],
    [seconds, 1 / hertz, volts, amperes],
    [2, 1 / hertz, after, after > 13 ? 8 : 0],
  ];
  const start = (hertz: number) =>
    table(...pulse(hertz, 1, 11.4, -180, 14.2), [600, 0.1, 14.2, 8], [120, 0.5, 12.9, 0]);

  it.each([100, 1000])("at %i Hz lasts as long, and stands as high, as it does", async (hertz) => {
    const log = await analyseLog(start(hertz), "bdf", { rule });
    const crank = crankOf(log);
    expect(crank.durationBound).toBe("two-sided");
    expect(Math.abs(crank.durationSeconds.value - 1)).toBeLessThan(2 / hertz);
    expect(recordFromLog(log, identity).record.vehicle?.starting).toEqual({
      crankingVolts: expect.closeTo(11.4, 3),
      inrush: "left-out",
      crankingAmperes: expect.closeTo(180, 1),
    });
  });

  it("is a start only where an engine follows and nothing charged before, or where somebody says so", async () => {
    const path = "vehicle.starting.crankingVolts";
    const loadTest = await analyseLog(
      table(...pulse(100, 10, 10.1, -350, 12.4), [300, 0.5, 12.4, 0]),
      "bdf",
      {
        rule,
      },
    );
    expect(refusedAt(loadTest, path)).toBe("no-engine-after");
    expect(recordFromLog(loadTest, identity).record).not.toHaveProperty("vehicle");
    expect(
      recordFromLog(loadTest, identity, { pulsesAreStarts: true }).record.vehicle?.starting?.crankingVolts,
    ).toBeCloseTo(10.1, 3);
    const helped = await analyseLog(
      table(
        [120, 0.5, 11.6, 0],
        [300, 0.1, 13.4, 30],
        [1, 0.005, 13.4, 30],
        [1, 0.005, 11.5, -160],
        [2, 0.005, 14.2, 8],
        [600, 0.1, 14.2, 8],
      ),
      "bdf",
      { rule },
    );
    expect(refusedAt(helped, path)).toBe("charged-just-before");
  });
});

describe("the history of a rest", () => {
  it("is that of the charge before, not of a lamp that burnt for seconds", async () => {
    const log = await analyseLog(
      table([36_000, 60, 14.2, 5], [5, 1, 12.9, -5], [1800, 10, (t) => 13 - t / 36_000, 0]),
      "bdf",
      { rule },
    );
    expect(recordFromLog(log, identity).record.conditions).toMatchObject({ lastEvent: "charge" });
  });

  it("is that of a discharge that took a hundredth of the capacity", async () => {
    const log = await analyseLog(
      table([36_000, 60, 14.2, 5], [1200, 10, 12.5, -5], [1800, 10, 12.6, 0]),
      "bdf",
      { rule },
    );
    expect(recordFromLog(log, identity).record.conditions).toMatchObject({ lastEvent: "discharge" });
  });
});

it("the draw of a parked car is found where it is too large for a rest, wake-ups and all", async () => {
  const fault = await analyseLog(table([86_400, 10, 12.5, -0.4]), "bdf", { rule, measure: { draw: {} } });
  expect(recordFromLog(fault, identity).record.vehicle?.draw).toMatchObject({
    drawAmperes: expect.closeTo(0.4, 3),
  });
  const wakes = Array.from({ length: 6 }, (): Phase[] => [
    [14_340, 10, 12.6, -0.03],
    [60, 10, 12.5, -2],
  ]).flat();
  const sleeper = await analyseLog(table(...wakes), "bdf", { rule, measure: { draw: {} } });
  const draw = sleeper.measurements.find(({ quantity }) => quantity === "draw");
  if (draw?.quantity !== "draw" || isRefusal(draw.result)) throw new Error("no draw");
  const { wakeUps, drawWithWakeUpsAmperes } = draw.result as Extract<
    typeof draw.result,
    { wakeUps: unknown }
  >;
  expect(wakeUps.length).toBeGreaterThanOrEqual(5);
  expect(drawWithWakeUpsAmperes.value).toBeGreaterThan(0.035);
});

it("capacity: only the first discharge began as the caller says", async () => {
  const log = await analyseLog(
    table([7200, 60, 12.2, -5], [600, 60, 12.4, 0], [7200, 60, (t) => 12 - t / 4000, -5], [600, 60, 12, 0]),
    "bdf",
    { rule, measure: { capacity: { endVolts: 10.5, startedFull: true, acceptLowerBound: true } } },
  );
  const results = log.measurements
    .filter(({ quantity }) => quantity === "capacity")
    .map(({ result }) => result);
  expect(results).toHaveLength(2);
  expect(results[0]).toMatchObject({ bound: "lower" });
  expect(results[1]).toMatchObject({ refused: true, code: "start-not-known" });
});

it("rows in which the check found an error make no field", async () => {
  const rows = table(
    [600, 10, 12.6, 0],
    [3600, 10, (t) => 12.3 - t / 7200, 5],
    [3600, 10, (t) => 12.1 + 0.1 * (1 - Math.exp(-t / 600)), 0],
  );
  const log = await analyseLog(rows, "bdf", { rule });
  expect(
    log.quality.defects.some(({ code, severity }) => code === "current-sign" && severity === "error"),
  ).toBe(true);
  const { record, refused } = recordFromLog(log, identity);
  expect(record.measurements).toEqual({});
  expect(refused.map(({ refusal }) => refusal.code)).toContain("rows-faulty");
});

it("24 V is handed on: what to do then is for the evaluation to say", async () => {
  const log = await analyseLog(table([3600, 10, 24.4, -5], [3600, 10, 25, 0]), "bdf", { rule });
  expect(recordFromLog(log, identity).record.measurements.restVolts).toBeCloseTo(25, 1);
});
