import { type LogChunk, type SyntheticPhase, type SyntheticPlan, syntheticLog } from "crankworthy/logs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

/** A meter without faults: what is written is what is. */
const exact = { noiseVolts: 0, noiseAmperes: 0, resolutionVolts: 0, resolutionAmperes: 0 } as const;
const battery = {
  fullVolts: 12.8,
  emptyVolts: 11.8,
  capacityAmpereHours: 50,
  stateOfCharge: 0.8,
  resistanceOhms: 0.01,
  fastOhms: 0.005,
  fastSeconds: 30,
  slowOhms: 0.01,
  slowSeconds: 2000,
} as const;

function only(plan: SyntheticPlan, seed = 1): LogChunk {
  const [chunk, more] = [...syntheticLog(plan, seed).chunks];
  expect(more).toBeUndefined();
  return chunk!;
}
function voltsAt(chunk: LogChunk, seconds: number): number {
  return chunk.volts[chunk.seconds.indexOf(seconds)]!;
}

describe("the battery of a synthetic log", () => {
  it("falls by resistance at once, by both exponentials in time, and settles at the electromotive force", () => {
    const phases = [
      { kind: "rest", seconds: 10 },
      { kind: "discharge", seconds: 100, amperes: 5 },
      { kind: "rest", seconds: 30_000 },
    ] as const;
    const plan = { battery, phases, instrument: exact };
    const chunk = [...syntheticLog(plan, 1).chunks][0]!;
    const { truth } = syntheticLog(plan, 1);
    expect(voltsAt(chunk, 9)).toBeCloseTo(12.6, 12);
    expect(voltsAt(chunk, 10)).toBeCloseTo(12.6 - 0.05, 12);
    // 60 s of 5 A: charge out 1/12 Ah of 50 Ah over 1 V, both exponentials from their equations.
    const after =
      12.6 - 5 / 60 / 50 - 0.05 - 0.025 * (1 - Math.exp(-60 / 30)) - 0.05 * (1 - Math.exp(-60 / 2000));
    expect(voltsAt(chunk, 70)).toBeCloseTo(after, 12);
    const settled = 12.6 - 500 / 3600 / 50;
    expect(truth.segments[2]!.electromotiveVolts).toBeCloseTo(settled, 12);
    const slow = 0.05 * (1 - Math.exp(-100 / 2000));
    expect(voltsAt(chunk, 10_110)).toBeCloseTo(settled - slow * Math.exp(-10_000 / 2000), 9);
    expect(truth.chargeOutAmpereHours).toBeCloseTo(500 / 3600, 12);
    expect(truth.chargeInAmpereHours).toBe(0);
  });

  it("is charged with constant current, then constant voltage, and the charge in is what raises its state", () => {
    const plan = {
      battery,
      phases: [{ kind: "charge", seconds: 20_000, amperes: 4, volts: 14.4, intervalSeconds: 10 }],
      instrument: exact,
    } as const;
    const chunk = only(plan);
    const [current, voltage] = syntheticLog(plan, 1).truth.segments;
    expect(current!.kind).toBe("charge-constant-current");
    expect(voltage!.kind).toBe("charge-constant-voltage");
    for (let i = 0; i < chunk.rows; i++) {
      const time = chunk.seconds[i]!;
      if (time < current!.toSeconds - 1) expect(chunk.amperes[i]).toBeCloseTo(4, 12);
      if (time > voltage!.fromSeconds + 1) {
        expect(chunk.volts[i]).toBeCloseTo(14.4, 9);
        expect(chunk.amperes[i]!).toBeLessThanOrEqual(chunk.amperes[i - 1]! + 1e-9);
      }
    }
    const raised = voltage!.stateOfCharge - battery.stateOfCharge;
    const charge = current!.chargeInAmpereHours + voltage!.chargeInAmpereHours;
    // Trapezoid against the steps of the calculation.
    expect(raised * 50).toBeCloseTo(charge, 2);
    let trapezoid = 0;
    for (let i = 1; i < chunk.rows; i++)
      trapezoid += ((chunk.amperes[i]! + chunk.amperes[i - 1]!) / 2) * (10 / 3600);
    expect(trapezoid).toBeCloseTo(charge, 3);
  });

  it("leaks what its meter does not see", () => {
    const { truth } = syntheticLog(
      {
        battery: { ...battery, selfDischargeAmperes: 0.005 },
        phases: [{ kind: "rest", seconds: 864_000, intervalSeconds: 3600 }],
      },
      1,
    );
    expect(truth.segments[0]!.stateOfCharge).toBeCloseTo(0.8 - (0.005 * 240) / 50, 12);
    expect(truth.chargeOutAmpereHours).toBe(0);
  });

  it("is cranked: the least voltage is that of the continuous signal", () => {
    const phases = [
      { kind: "rest", seconds: 0.5 },
      { kind: "crank", seconds: 1, crankingAmperes: 150 },
      { kind: "rest", seconds: 1 },
    ] as const;
    const least = (intervalSeconds: number) => {
      const often = phases.map((one) => (one.kind === "crank" ? { ...one, intervalSeconds } : one));
      return only({ battery, phases: often, instrument: exact }).volts.reduce((a, b) => Math.min(a, b));
    };
    const { truth } = syntheticLog({ battery, phases }, 1);
    const { leastVolts, leastVoltsSeconds } = truth.segments[1]!;
    expect(least(0.0001)).toBeCloseTo(leastVolts, 3);
    expect(least(0.01)).toBeGreaterThan(leastVolts);
    // The inrush comes first, then compressions.
    expect(leastVoltsSeconds).toBeGreaterThan(0.5);
    expect(leastVoltsSeconds).toBeLessThan(0.52);
  });

  it("parked: stairs, a settled draw, wake-ups", () => {
    const chunk = only({
      battery,
      phases: [
        {
          kind: "parked",
          seconds: 1000,
          settledAmperes: 0.03,
          stairs: [
            { amperes: 5, untilSeconds: 60 },
            { amperes: 0.5, untilSeconds: 200 },
          ],
          wakeUps: { everySeconds: 400, forSeconds: 20, amperes: 2 },
        },
      ],
      instrument: exact,
    });
    const at = (seconds: number) => -chunk.amperes[seconds]!;
    expect([0, 59, 60, 199, 200, 399].map(at)).toEqual([5, 5, 0.5, 0.5, 0.03, 0.03]);
    expect([400, 419, 420, 799, 800, 819, 820].map(at)).toEqual([2.03, 2.03, 0.03, 0.03, 2.03, 2.03, 0.03]);
  });

  it("what happens does not depend on when it is looked at", () => {
    const phases = [
      { kind: "load-steps", seconds: 20, amperes: [0, 80], holdSeconds: 0.7, random: true },
      { kind: "crank", seconds: 1, crankingAmperes: 120 },
      { kind: "engine-running", seconds: 60, volts: 14.2, amperes: 40 },
      { kind: "rest", seconds: 19 },
    ] as const satisfies readonly SyntheticPhase[];
    const seen = (intervalSeconds: number, currentLagSeconds: number) =>
      only({ battery, phases, instrument: { ...exact, intervalSeconds, currentLagSeconds } });
    const [coarse, fine, late] = [seen(1, 0), seen(0.25, 0), seen(0.25, 0.5)];
    for (let k = 0; k < coarse.rows; k++) {
      expect(fine.volts[4 * k]).toBe(coarse.volts[k]);
      expect(fine.amperes[4 * k]).toBe(coarse.amperes[k]);
    }
    for (let k = 2; k < fine.rows; k++) expect(late.amperes[k]).toBeCloseTo(fine.amperes[k - 2]!, 9);
  });

  it("stays within 0 to 1 of its charge, or the plan is wrong", () => {
    const plan = { battery, phases: [{ kind: "discharge", seconds: 1e5, amperes: 5 }] } as const;
    expect(() => syntheticLog(plan, 1)).toThrow(/plan\.phases\[0\].*state of charge/);
  });
});

const phase: fc.Arbitrary<SyntheticPhase> = fc.oneof(
  fc.record({ kind: fc.constant("rest" as const), seconds: fc.double({ min: 0.5, max: 3000, noNaN: true }) }),
  fc.record({
    kind: fc.constant("discharge" as const),
    seconds: fc.double({ min: 0.5, max: 1000, noNaN: true }),
    amperes: fc.double({ min: 0, max: 20, noNaN: true }),
  }),
  fc.record({
    kind: fc.constant("load-steps" as const),
    seconds: fc.double({ min: 0.5, max: 100, noNaN: true }),
    amperes: fc.constant([1, 40]),
    holdSeconds: fc.double({ min: 0.01, max: 10, noNaN: true }),
    random: fc.boolean(),
  }),
  fc.record({
    kind: fc.constant("charge" as const),
    seconds: fc.double({ min: 0.5, max: 3000, noNaN: true }),
    amperes: fc.double({ min: 0.1, max: 40, noNaN: true }),
    volts: fc.double({ min: 12, max: 15, noNaN: true }),
  }),
  fc.record({
    kind: fc.constant("crank" as const),
    seconds: fc.double({ min: 0.2, max: 2, noNaN: true }),
    crankingAmperes: fc.double({ min: 50, max: 300, noNaN: true }),
    intervalSeconds: fc.constant(0.005),
  }),
);

describe("any plan", () => {
  it("gives finite rows in order of time, and a truth whose parts add up", () => {
    fc.assert(
      fc.property(
        fc.array(phase, { minLength: 1, maxLength: 6 }),
        fc.nat(),
        fc.constantFrom(0, 0.1),
        (phases, seed, edgeRowsSeconds) => {
          const log = syntheticLog({ phases, instrument: { edgeRowsSeconds } }, seed);
          let before = Number.NEGATIVE_INFINITY;
          let rows = 0;
          for (const chunk of log.chunks) {
            expect(chunk.firstRow).toBe(rows + 1);
            rows += chunk.rows;
            for (const column of [chunk.seconds, chunk.volts, chunk.amperes, chunk.temperatureCelsius!]) {
              expect(column.length).toBe(chunk.rows);
              expect(column.every(Number.isFinite)).toBe(true);
            }
            for (const seconds of chunk.seconds) {
              expect(seconds).toBeGreaterThanOrEqual(before);
              before = seconds;
            }
          }
          const { truth } = log;
          let [at, charge] = [0, 0];
          for (const segment of truth.segments) {
            expect(segment.fromSeconds).toBeCloseTo(at, 6);
            at = segment.toSeconds;
            charge += segment.chargeInAmpereHours - segment.chargeOutAmpereHours;
          }
          expect(at).toBeCloseTo(truth.seconds, 6);
          const risen = truth.segments.at(-1)!.stateOfCharge - truth.firstStateOfCharge;
          expect(risen * truth.capacityAmpereHours).toBeCloseTo(charge, 1);
        },
      ),
      { numRuns: 60 },
    );
  });
});
