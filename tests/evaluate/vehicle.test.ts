import { type BatteryRecord, type Evaluation, evaluate, tryEvaluate } from "crankworthy/evaluate";
import type { CauseCode, FindingCode } from "crankworthy/verdict";
import { describe, expect, it } from "vitest";
import { changed, good } from "../report/records.js";
import { copyOf, fullRecord } from "./sample.js";

type Vehicle = NonNullable<BatteryRecord["vehicle"]>;
const on = (vehicle: Vehicle, change: Parameters<typeof changed>[0] = {}): Evaluation =>
  evaluate(changed({ ...change, vehicle: vehicle as never }));
const codes = ({ findings }: Evaluation): string[] => findings.map((one) => one.code);
const supported = ({ causes = [] }: Evaluation): CauseCode[] =>
  causes.filter((one) => one.support === "supported").map((one) => one.code);
const steps = ({ nextSteps }: Evaluation): string[] => nextSteps.map((one) => one.code);
const evidence = ({ findings }: Evaluation, code: FindingCode) =>
  findings.find((one) => one.code === code)!.evidence;

const weak = {
  cranking: { standard: "sae-j537", amperes: [285, 290, 288], relativeStandardUncertainty: 0.045 },
} as const;

describe("a record without a vehicle part", () => {
  it("has neither section nor causes, and says nothing of the vehicle", () => {
    const evaluation = evaluate(good);
    expect(evaluation).not.toHaveProperty("vehicle");
    expect(evaluation).not.toHaveProperty("causes");
    expect(codes(evaluation)).not.toContain("vehicle-uncertainty-assumed");
  });

  it("may have nothing measured on the battery when something was on the vehicle", () => {
    const { measurements: _none, ...rest } = copyOf(fullRecord) as BatteryRecord & { measurements?: object };
    expect(tryEvaluate({ ...rest, measurements: {} }).ok).toBe(true);
  });
});

describe("starting circuit", () => {
  const cranking = { crankingVolts: 10.4, inrush: "left-out", engineTemperatureCelsius: 25 } as const;

  it("holds the voltage against the limit for the engine's temperature, not the battery's", () => {
    const [reading] = on({ starting: { ...cranking, engineTemperatureCelsius: 10 } }).vehicle!.starting!
      .readings;
    expect(reading).toMatchObject({ code: "cranking-voltage", unit: "V", outcome: "within-limit" });
    expect(reading!.limit.value).toBeCloseTo(9.4, 9);
    expect(reading!.margin.value).toBeCloseTo(1, 9);
  });

  it("a minimum with the inrush in it is refused by name", () => {
    const { refusals } = on({ starting: { ...cranking, inrush: "included" } });
    expect(refusals.map(({ about, code }) => [about, code])).toContainEqual([
      "vehicle.starting.crankingVolts",
      "inrush-included",
    ]);
  });

  it("the same drop is too much for a small current and not for a large one", () => {
    const drop = (crankingAmperes: number) => on({ starting: { crankingAmperes, groundDropVolts: 0.15 } });
    expect(codes(drop(50))).toContain("voltage-drop-high");
    expect(codes(drop(180))).not.toContain("voltage-drop-high");
  });

  it("one side within its limit is not the whole way", () => {
    expect(codes(on({ starting: { crankingAmperes: 150, groundDropVolts: 0.05 } }))).not.toContain(
      "voltage-drops-within",
    );
    expect(
      codes(on({ starting: { crankingAmperes: 150, groundDropVolts: 0.05, positiveDropVolts: 0.2 } })),
    ).toContain("voltage-drops-within");
  });

  it("exchanged leads are refused, not taken for a good path", () => {
    const evaluation = on({ starting: { groundDropVolts: -0.4, positiveDropVolts: 0.1 } });
    expect(evaluation.refusals.map((one) => one.code)).toContain("leads-exchanged");
    expect(codes(evaluation)).not.toContain("voltage-drops-within");
  });

  it("a drop without a current shows nothing", () => {
    for (const crankingAmperes of [0, 5e-324, 0.9]) {
      const evaluation = on({
        starting: { crankingAmperes, groundDropVolts: 0.01, positiveDropVolts: 0.01 },
      });
      expect(evaluation.refusals.map((one) => one.code)).toEqual(["no-current", "no-current"]);
      expect(codes(evaluation)).not.toContain("voltage-drops-within");
    }
  });

  it("a high drop keeps a low reading in the vehicle from condemning the battery; on the bench the reading stands", () => {
    const starting = { crankingAmperes: 150, groundDropVolts: 1.4 };
    const inside = on({ starting }, { measurements: weak, conditions: { place: "vehicle", loadsOff: true } });
    expect(inside.verdict).toMatchObject({ condition: "not-established", action: "repeat" });
    expect(supported(inside)).toEqual(["connection"]);
    expect(steps(inside)).toEqual(["measure-at-the-posts", "repair-connection"]);
    const bench = on({ starting }, { measurements: weak });
    expect(bench.verdict.action).toBe("retire");
    expect(supported(bench)).toEqual(["battery", "connection"]);
  });

  it("limits are for 12 V: a 24 V vehicle is refused whole", () => {
    const evaluation = on(
      { starting: cranking },
      { identity: { nominalVolts: 24 }, measurements: { restVolts: 25.3 } },
    );
    expect(evaluation.vehicle).toBeUndefined();
    expect(evaluation.causes).toBeUndefined();
    expect(evaluation.refusals.map((one) => one.code)).toContain("not-12-volt");
  });

  it("battery and cables proved: the step points at starter and engine", () => {
    const evaluation = on({
      starting: { ...cranking, crankingVolts: 8.6, positiveDropVolts: 0.2, groundDropVolts: 0.05 },
    });
    expect(codes(evaluation)).toContain("starter-or-engine");
    expect(steps(evaluation)).toEqual(["look-at-starter", "hand-back"]);
  });

  it("a low voltage with nobody having looked at the cables asks for the drops, with the time allowed", () => {
    const evaluation = on({ starting: { ...cranking, crankingVolts: 8.6 } });
    expect(evaluation.nextSteps.find((one) => one.code === "measure-voltage-drops")?.parameters).toEqual({
      seconds: 15,
      pauseSeconds: 120,
    });
  });
});

describe("charging circuit", () => {
  it("the same 12.8 V condemns a fixed regulator and says nothing under a computer", () => {
    const charging = { regulatedVolts: 12.8, regulatorTemperatureCelsius: 30 };
    const fixed = on({ charging: { ...charging, control: "fixed-regulator" } });
    expect(codes(fixed)).toContain("regulated-voltage-low");
    expect(supported(fixed)).toEqual(["charging-circuit"]);
    for (const control of ["computer-controlled", "unknown"] as const) {
      const open = on({ charging: { ...charging, control } });
      expect(codes(open)).toContain("charging-not-judged");
      expect(supported(open)).toEqual([]);
    }
  });

  it("a low voltage at low speed or with a hungry battery is no fault", () => {
    const low = {
      regulatedVolts: 12.8,
      regulatorTemperatureCelsius: 30,
      control: "fixed-regulator",
    } as const;
    expect(evidence(on({ charging: { ...low, engineRpm: 1500 } }), "charging-not-judged").reason).toBe(
      "engine-below-2500-rpm",
    );
    expect(evidence(on({ charging: { ...low, chargeAmperes: 30 } }), "charging-not-judged").reason).toBe(
      "charge-current-above-10-a",
    );
  });

  it("a fixed regulator without its temperature is not judged", () => {
    const evaluation = on({ charging: { regulatedVolts: 14.1, control: "fixed-regulator" } });
    expect(evidence(evaluation, "charging-not-judged").reason).toBe("regulator-temperature-unknown");
  });

  it("a rise of more than 2.5 V says something of a charged battery only", () => {
    const high = (engineOffVolts: number) =>
      on(
        {
          charging: {
            regulatedVolts: engineOffVolts + 2.8,
            engineOffVolts,
            regulatorTemperatureCelsius: 20,
            control: "fixed-regulator",
          },
        },
        { measurements: { restVolts: engineOffVolts } },
      );
    expect(codes(high(12.6))).toContain("charging-rise-high");
    expect(codes(high(11.6))).not.toContain("charging-rise-high");
  });

  it("ripple held against a limit for another place is refused", () => {
    const ripple = {
      volts: 0.2,
      place: "alternator-output",
      method: "true-rms",
      limit: "posts-50-mv",
    } as const;
    const evaluation = on({ charging: { ripple } });
    expect(evaluation.refusals.map((one) => one.code)).toContain("place-differs");
    expect(codes(evaluation)).not.toContain("ripple-high");
  });
});

describe("parked vehicle", () => {
  it("too early: neither draw nor days, and a wait is asked for", () => {
    const evaluation = on({ draw: { drawAmperes: 0.4, settledMinutes: 10 } });
    expect(codes(evaluation)).toContain("draw-not-settled");
    expect(evaluation.vehicle!.draw!.standingTime).toBeUndefined();
    expect(steps(evaluation)).toEqual(["let-modules-sleep", "hand-back"]);
    expect(supported(evaluation)).toEqual([]);
  });

  it("days until no start follow reserve capacity, charge and draw", () => {
    const days = (drawAmperes: number, change = {}) =>
      on(
        { draw: { drawAmperes, settledMinutes: 90 } },
        { identity: { reserveCapacityMinutes: 98 }, ...change },
      ).vehicle!.draw!.standingTime!.bulletinDays;
    expect(days(0.05, { measurements: { restVolts: 12.9 } })).toBeCloseTo((0.24 * 98) / 24 / 0.05, 6);
    expect(days(0.1)).toBeCloseTo(days(0.05) / 2, 6);
    expect(days(0.05, { measurements: { restVolts: 12.3 } })).toBeLessThan(days(0.05));
  });

  it("equipment explains a raised draw, not a large one", () => {
    const draw = (drawAmperes: number) =>
      on({ draw: { drawAmperes, settledMinutes: 90, equipmentExplains: true } });
    expect(codes(draw(0.07))).toContain("draw-explained");
    expect(codes(draw(0.3))).toContain("draw-high");
  });

  it("a high draw that cannot have emptied it in time: open, with what settles it", () => {
    const evaluation = on(
      { draw: { drawAmperes: 0.11, settledMinutes: 90, parkedDays: 3 } },
      { conditions: { chargeCompleted: false, lastEvent: "discharge" }, measurements: { restVolts: 12.03 } },
    );
    const drain = evaluation.causes!.find((one) => one.code === "drain")!;
    expect(drain).toMatchObject({ support: "open", because: ["draw-high", "flat-too-fast-for-drain"] });
    expect(codes(evaluation)).toContain("causes-conflict");
    expect(steps(evaluation)).toContain("settle-cause");
  });

  it("without reserve capacity the days are refused, the draw is judged", () => {
    const evaluation = on(
      { draw: { drawAmperes: 0.3, settledMinutes: 90 } },
      { identity: { capacityAmpereHours: undefined } },
    );
    expect(evaluation.refusals.map((one) => one.code)).toContain("reserve-capacity-unknown");
    expect(codes(evaluation)).toContain("draw-high");
  });
});

describe("readings in the vehicle", () => {
  const inside = (conditions: object, measurements: object = weak): Evaluation =>
    evaluate(changed({ conditions: { place: "vehicle", ...conditions }, measurements }));

  it("a consumer that is on: repeat at the posts; loads off: the reading stands", () => {
    for (const conditions of [{ loadAmperes: 4 }, { loadsOff: false }, { minutesSinceLocked: 5 }]) {
      const evaluation = inside(conditions);
      expect(evaluation.verdict).toMatchObject({ action: "repeat", decidedBy: "in-vehicle-reading" });
      expect(steps(evaluation)).toEqual(["measure-at-the-posts"]);
    }
    expect(inside({ loadsOff: true }).verdict.action).toBe("retire");
    expect(inside({ loadAmperes: 0.02 }).verdict.action).toBe("retire");
  });

  it("a measured current tells more than the clock", () => {
    expect(codes(inside({ loadAmperes: 0.02, minutesSinceLocked: 5 }))).not.toContain("modules-may-be-awake");
  });

  it("clamps set anew widen the ability, and their spread decides before a low reading does", () => {
    const readings = (readingsPerPlacement?: number) =>
      evaluate(
        changed({
          measurements: {
            cranking: {
              standard: "sae-j537",
              amperes: [400, 402, 436, 438],
              relativeStandardUncertainty: 0.045,
              ...(readingsPerPlacement && { readingsPerPlacement }),
            },
          },
        }),
      );
    const grouped = readings(2);
    expect(grouped.verdict).toMatchObject({ decidedBy: "contact-spread", action: "repeat" });
    expect(steps(grouped)).toEqual(["check-connection", "measure-again"]);
    expect(grouped.ability[0]!.ratio.standardUncertainty).toBeGreaterThan(
      readings().ability[0]!.ratio.standardUncertainty,
    );
  });
});

describe("what the record may not say", () => {
  const issues = (change: (record: Record<string, never>) => void) => {
    const record = copyOf(fullRecord) as never;
    change(record);
    const result = tryEvaluate(record);
    return result.ok ? [] : result.issues.map(({ code, path, message }) => ({ code, path, message }));
  };
  type Parts = {
    vehicle: {
      starting: Record<string, unknown>;
      charging: Record<string, unknown>;
      draw: Record<string, unknown>;
    };
  };
  const at = (record: unknown): Parts["vehicle"] => (record as Parts).vehicle;

  it.each<[string, string, string, (parts: Parts["vehicle"]) => void]>([
    ["wrong-unit", "vehicle.draw.drawAmperes", "milliamperes", (v) => (v.draw.drawAmperes = 50)],
    [
      "wrong-unit",
      "vehicle.starting.groundDropVolts",
      "millivolts",
      (v) => (v.starting.groundDropVolts = 200),
    ],
    [
      "wrong-unit",
      "vehicle.charging.regulatedVolts",
      "millivolts",
      (v) => (v.charging.regulatedVolts = 14_200),
    ],
    [
      "wrong-unit",
      "vehicle.charging.ripple.volts",
      "millivolts",
      (v) => ((v.charging.ripple as Record<string, unknown>).volts = 30),
    ],
    ["missing", "vehicle.starting.inrush", "first dip", (v) => delete v.starting.inrush],
    ["missing", "vehicle.draw.settledMinutes", "min", (v) => delete v.draw.settledMinutes],
    [
      "missing",
      "vehicle.charging.ripple.limit",
      "posts-50-mv",
      (v) => delete (v.charging.ripple as Record<string, unknown>).limit,
    ],
    ["contradiction", "vehicle.starting.engine", "crankingAmperes", (v) => delete v.starting.crankingAmperes],
    [
      "contradiction",
      "vehicle.starting.solenoidDropVolts",
      "part of",
      (v) => (v.starting.solenoidDropVolts = 0.4),
    ],
    [
      "contradiction",
      "vehicle.starting.positiveDropVolts",
      "posts",
      (v) => (v.starting.positiveDropVolts = 11),
    ],
  ])("%s %s", (code, path, hint, change) => {
    const found = issues((record) => change(at(record)));
    expect(found.map((one) => [one.code, one.path])).toEqual([[code, path]]);
    expect(found[0]!.message).toContain(hint);
  });

  it("a vehicle part without a measurement", () => {
    const record = { ...good, vehicle: { charging: { control: "unknown" } } };
    const result = tryEvaluate(record);
    expect(!result.ok && result.issues.map((one) => one.path)).toEqual(["vehicle"]);
  });

  it("consumers on the bench, consumers that are off and draw, readings that do not divide", () => {
    const paths = (change: Parameters<typeof changed>[0]) => {
      const result = tryEvaluate(changed(change));
      return result.ok ? [] : result.issues.map((one) => one.path);
    };
    expect(paths({ conditions: { loadAmperes: 3 } })).toEqual(["conditions.loadAmperes"]);
    expect(paths({ conditions: { place: "vehicle", loadsOff: true, loadAmperes: 3 } })).toEqual([
      "conditions.loadAmperes",
    ]);
    expect(
      paths({
        measurements: {
          cranking: { standard: "sae-j537", amperes: [500, 501, 502], readingsPerPlacement: 2 },
        },
      }),
    ).toEqual(["measurements.cranking.readingsPerPlacement"]);
  });
});

describe("ventilation", () => {
  const caution = (
    code: string,
    ventilation?: BatteryRecord["ventilation"],
    change: Parameters<typeof changed>[0] = {},
  ) =>
    evaluate(changed({ ...change, ventilation: ventilation as never })).cautions.find(
      (one) => one.code === code,
    );

  it("numbers for a charge that comes next, and for a room that was described, whatever the verdict", () => {
    const flat = { conditions: { chargeCompleted: false }, measurements: { restVolts: 12.1 } };
    // 0.05 · 6 cells · 6 A/100 Ah · 60 Ah / 100
    expect(caution("charging-air", undefined, flat)?.parameters).toMatchObject({
      neededCubicMetresPerHour: expect.closeTo(1.08, 9),
      freeVolumeCubicMetres: expect.closeTo(2.7, 9),
    });
    expect(caution("charging-air")).toBeUndefined();
    expect(caution("charging-air", { roomCubicMetres: 40 })).toBeDefined();
  });

  it("a room or a flow that falls short is said; a known flow makes the volume unimportant", () => {
    expect(caution("room-air", { roomCubicMetres: 40 })).toBeUndefined();
    expect(caution("room-air", { roomCubicMetres: 2 })).toBeDefined();
    expect(caution("room-air", { roomCubicMetres: 2, airFlowCubicMetresPerHour: 5 })).toBeUndefined();
    expect(caution("room-air", { roomCubicMetres: 4, batteries: 2 })).toBeDefined();
    expect(caution("room-air", { airFlowCubicMetresPerHour: 1 })?.parameters).toMatchObject({
      givenCubicMetresPerHour: 1,
    });
  });

  it("says nothing it cannot compute", () => {
    expect(
      caution("charging-air", { roomCubicMetres: 40 }, { identity: { capacityAmpereHours: undefined } }),
    ).toBeUndefined();
  });
});
