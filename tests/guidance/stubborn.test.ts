import { tryEvaluate } from "crankworthy/evaluate";
import {
  answerStep,
  type DraftRecord,
  type FieldValues,
  type Guidance,
  type GuidanceOptions,
  type GuidedStep,
  type GuidedStepCode,
  nextStep,
  recordOfDraft,
} from "crankworthy/guidance";
import { englishGuidance, renderCaution, renderEnd, renderStep } from "crankworthy/report";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const identity = {
  chemistry: "flooded",
  rating: { standard: "sae-j537", amperes: 600 },
  capacityAmpereHours: 60,
} as const;
const rested = {
  damage: [],
  ice: false,
  temperatureCelsius: 20,
  lastEvent: "drive",
  hoursAtRest: 14,
} as const;
const cranking = { standard: "sae-j537", amperes: 250 } as const;
const flat: DraftRecord = { identity, conditions: rested, measurements: { restVolts: 12.0, cranking } };
const withConditions = (conditions: object): DraftRecord => ({
  ...flat,
  conditions: { ...rested, ...conditions },
});

const MOST_STEPS = 60;
/** Steps whose own answers decide whether they are offered again; other readings may come anew after a charge. */
const ONCE_AGAIN: readonly GuidedStepCode[] = [
  "look-over",
  "read-label",
  "check-leads",
  "top-up-water",
  "warm-up",
  "cool-down",
  "change-room",
  "charge",
  "charge-and-repeat-load-test",
];

type Answer = (step: GuidedStep, draft: DraftRecord) => FieldValues;

function walk(from: DraftRecord, answer: Answer, options?: GuidanceOptions) {
  const codes: GuidedStepCode[] = [];
  let draft = from;
  for (;;) {
    const guidance: Guidance = nextStep(draft, options);
    if (!guidance.ok) throw new Error(JSON.stringify([codes, guidance.issues]));
    if (guidance.done) return { codes, draft, end: guidance };
    codes.push(guidance.step.code);
    if (codes.length > MOST_STEPS) throw new Error(`no end: ${codes.join(", ")}`);
    draft = answerStep(draft, guidance.step, answer(guidance.step, draft));
  }
}
const count = (codes: readonly string[], code: string): number => codes.filter((one) => one === code).length;
const isCharge = (code: string): boolean => code.startsWith("charge");

/** Somebody who does the readings, and answers one step always in the same useless way. */
const measuring =
  (code: GuidedStepCode, values: FieldValues): Answer =>
  (step) => {
    if (step.code === code) return values;
    const readings: Record<string, FieldValues> = {
      "measure-cranking": { "measurements.cranking": cranking },
      "measure-rest-voltage": { "measurements.restVolts": 12.0 },
      "repeat-reading": { "measurements.cranking": { ...cranking, amperes: [250, 251, 249] } },
      "measure-gravity": { "measurements.cellGravities": [1.17, 1.17, 1.17, 1.17, 1.17, 1.17] },
    };
    return readings[step.code] ?? {};
  };

describe("low acid", () => {
  const low = withConditions({ electrolyteLow: true });
  const topUp: GuidedStep = (() => {
    const guidance = nextStep(low);
    if (!guidance.ok || guidance.done) throw new Error("expected a step");
    return [guidance.step, ...guidance.alternatives].find(({ code }) => code === "top-up-water")!;
  })();

  it("stays noted unless water was added", () => {
    for (const values of [{ "conditions.waterAdded": false }, {}])
      expect(answerStep(low, topUp, values).conditions?.electrolyteLow).toBe(true);
    const watered = answerStep(low, topUp, { "conditions.waterAdded": true });
    expect(watered.conditions).not.toHaveProperty("electrolyteLow");
  });

  it.each([[{ "conditions.waterAdded": false }], [{}]])(
    "is never charged without water, and ends with the reason: %j",
    (values) => {
      const { codes, end } = walk(low, measuring("top-up-water", values));
      expect(codes.filter(isCharge)).toEqual([]);
      expect(count(codes, "top-up-water")).toBe(2);
      expect(end.because).toBe("nothing-left");
      expect(end.untaken).toContainEqual({
        code: "top-up-water",
        why: { code: "plates-uncovered" },
        because: "tried",
      });
      expect(renderEnd(end, { width: 400 })).toContain(englishGuidance.reason["plates-uncovered"]);
    },
  );
});

describe("a preparation that does not take", () => {
  it.each<[GuidedStepCode, string, DraftRecord, FieldValues]>([
    [
      "warm-up",
      "too-cold-to-charge",
      withConditions({ temperatureCelsius: 2 }),
      { "conditions.temperatureCelsius": 2 },
    ],
    [
      "cool-down",
      "too-hot-to-charge",
      withConditions({ temperatureCelsius: 50 }),
      { "conditions.temperatureCelsius": 50 },
    ],
    [
      "charge",
      "too-little-charge",
      flat,
      {
        "conditions.lastEvent": "charge",
        "conditions.chargeCompleted": false,
        "conditions.hoursAtRest": 9,
        "measurements.restVolts": 12.0,
      },
    ],
  ])("%s is asked for once more, then it ends", (code, why, draft, values) => {
    const { codes, end } = walk(draft, measuring(code, values));
    expect(count(codes, code)).toBe(2);
    expect(end.because).toBe("nothing-left");
    expect(end.untaken).toContainEqual({ code, why: { code: why }, because: "tried" });
  });

  it("as the first look or the label ends it: nothing is measured on a battery nobody looked at", () => {
    expect(walk({}, () => ({})).codes).toEqual(["look-over", "look-over"]);
    const unread = walk({ conditions: { damage: [], ice: false } }, () => ({}));
    expect(unread.codes).toEqual(["read-label", "read-label"]);
    expect(unread.end).toMatchObject({ because: "not-evaluable", untaken: [{ code: "read-label" }] });
  });
});

describe("the list of answered steps", () => {
  it("is no part of the record, and is checked", () => {
    const draft = answerStep(flat, { code: "charge", clear: [] }, {});
    expect(draft.tried).toEqual(["charge"]);
    expect(recordOfDraft(draft)).toEqual(flat);
    expect(tryEvaluate(recordOfDraft(draft)).ok).toBe(true);
    const paths = (tried: unknown): unknown => {
      const guidance = nextStep({ ...flat, tried });
      return guidance.ok || guidance.issues.map(({ code, path }) => [code, path]);
    };
    expect(paths(["charge", "dance"])).toEqual([["not-a-choice", "tried[1]"]]);
    expect(paths("charge")).toEqual([["wrong-type", "tried"]]);
    expect(paths(undefined)).toBe(true);
  });
});

describe("a room without air", () => {
  const ventilation = { roomCubicMetres: 1, airFlowCubicMetresPerHour: 0, batteries: 50 } as const;
  const stuffy: DraftRecord = { ...flat, ventilation };
  const first = (draft: DraftRecord, options?: GuidanceOptions) => {
    const guidance = nextStep(draft, options);
    if (!guidance.ok || guidance.done) throw new Error(JSON.stringify(guidance));
    return guidance;
  };
  const offered = (draft: DraftRecord): GuidedStepCode[] => {
    const { step, alternatives } = first(draft);
    return [step, ...alternatives].map(({ code }) => code);
  };

  it("is changed before the charge, with its cautions", () => {
    const { step, cautions } = first(stuffy);
    expect(step.code).toBe("change-room");
    expect(offered(stuffy).filter(isCharge)).toEqual([]);
    const codes = cautions.map(({ code }) => code);
    expect(codes).toContain("charging-air");
    expect(codes).toContain("room-air");
    const text = renderStep(step, { width: 400 });
    expect(text).toMatch(/before it is charged: 54\.0\sm³\/h of fresh air, or without a fan 135\.0\sm³/);
    expect(cautions.map((caution) => renderCaution(caution)).join()).not.toMatch(/[{}]|undefined/);
  });

  it("is left behind for one that carries the charge, also when only its volume is told", () => {
    const { step } = first(stuffy);
    const moved = answerStep(stuffy, step, {
      "ventilation.roomCubicMetres": 5000,
      "ventilation.batteries": 1,
    });
    expect(moved.ventilation).toEqual({ roomCubicMetres: 5000, batteries: 1 });
    const guidance = first(moved);
    expect(guidance.step.code).toBe("charge");
    expect(guidance.cautions).toEqual(guidance.evaluation!.cautions);
    expect(guidance.cautions.map(({ code }) => code)).toContain("charging-air");
  });

  it.each<[string, FieldValues]>([
    ["not changed", {}],
    ["changed for another as bad", { "ventilation.roomCubicMetres": 2 }],
  ])("%s ends without a charge", (_, values) => {
    const { codes, end } = walk(stuffy, measuring("change-room", values));
    expect(codes.filter(isCharge)).toEqual([]);
    expect(end.because).toBe("nothing-left");
    expect(end.untaken).toContainEqual({
      code: "change-room",
      why: { code: "room-without-air" },
      because: "tried",
    });
  });

  it("that cannot be changed ends without a charge, as does one without air for a battery of unknown size", () => {
    const { codes, end } = walk(stuffy, measuring("charge", {}), { exclude: ["change-room"] });
    expect(codes.filter(isCharge)).toEqual([]);
    expect(end.untaken).toContainEqual({
      code: "change-room",
      why: { code: "room-without-air" },
      because: "excluded",
    });
    const { capacityAmpereHours: _, ...unsized } = identity;
    expect(offered({ ...stuffy, identity: unsized }).filter(isCharge)).toEqual([]);
  });

  it("holds back a charge for a repeated load test too", () => {
    const failed: DraftRecord = {
      identity,
      conditions: rested,
      measurements: {
        restVolts: 12.66,
        cranking: { ...cranking, amperes: 400 },
        loadTest: { loadAmperes: 300, seconds: 15, volts: 8.2 },
      },
    };
    expect(offered(failed)).toContain("charge-and-repeat-load-test");
    expect(offered({ ...failed, ventilation }).filter(isCharge)).toEqual([]);
    expect(offered({ ...failed, ventilation })).toContain("change-room");
  });
});

describe("whatever is answered, usefully or not", () => {
  /** Answers of all kinds, most of them useless; those of a step are cut to what it fills. */
  const values: Record<string, fc.Arbitrary<unknown>> = {
    "conditions.damage": fc.constant([]),
    "conditions.ice": fc.constant(false),
    "conditions.electrolyteLow": fc.constant(true),
    "conditions.waterAdded": fc.boolean(),
    "conditions.leadsVerified": fc.boolean(),
    "conditions.temperatureCelsius": fc.constantFrom(2, 20, 50),
    "conditions.lastEvent": fc.constantFrom("charge", "drive"),
    "conditions.hoursAtRest": fc.constantFrom(0.2, 9),
    "conditions.chargeCompleted": fc.boolean(),
    "conditions.surfaceChargeRemoval": fc.constant("none"),
    "measurements.restVolts": fc.constantFrom(12.0, 12.3, 12.65, 13.2),
    "measurements.cranking": fc.constantFrom(cranking, { ...cranking, amperes: [250, 500, 90] }),
    "measurements.cellGravities": fc.constant([1.2]),
    "measurements.loadTest": fc.constant({ loadAmperes: 300, seconds: 15, volts: 8.2 }),
    "ventilation.roomCubicMetres": fc.constantFrom(1, 5000),
    "ventilation.airFlowCubicMetresPerHour": fc.constant(0),
    "identity.chemistry": fc.constant("flooded"),
    "identity.rating": fc.constant(identity.rating),
  };
  const answers = fc.array(fc.record(values, { requiredKeys: [] }), { minLength: 1, maxLength: 5 });
  const starts = fc.constantFrom<DraftRecord>(
    {},
    flat,
    withConditions({ electrolyteLow: true }),
    withConditions({ temperatureCelsius: 2 }),
    withConditions({ temperatureCelsius: 50 }),
    { ...flat, ventilation: { roomCubicMetres: 1, airFlowCubicMetresPerHour: 0, batteries: 50 } },
  );

  it("it ends, no preparation is asked for more than twice, and none is charged dry or without air", () => {
    fc.assert(
      fc.property(starts, answers, (start, given) => {
        const codes: GuidedStepCode[] = [];
        let draft = start;
        for (;;) {
          const guidance = nextStep(draft);
          // An answer may contradict the draft; then its issues are said, and there is no step.
          if (!guidance.ok || guidance.done) break;
          const { step } = guidance;
          for (const { code } of [step, ...guidance.alternatives]) {
            if (!isCharge(code)) continue;
            expect(draft.conditions?.electrolyteLow).not.toBe(true);
            expect(draft.ventilation?.airFlowCubicMetresPerHour).not.toBe(0);
          }
          const told = given[codes.length % given.length]!;
          codes.push(step.code);
          expect(codes.length, codes.join(", ")).toBeLessThanOrEqual(MOST_STEPS);
          const filled = Object.entries(told).filter(([path]) => step.fill.includes(path));
          draft = answerStep(draft, step, Object.fromEntries(filled));
        }
        for (const code of ONCE_AGAIN) expect(count(codes, code), codes.join(", ")).toBeLessThanOrEqual(2);
      }),
      { numRuns: 100 },
    );
  }, 30_000);
});
