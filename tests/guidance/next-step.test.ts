import { readFileSync } from "node:fs";
import { tryEvaluate } from "crankworthy/evaluate";
import {
  answerStep,
  type DraftRecord,
  defaultGuidancePrior,
  type Guidance,
  type GuidanceOptions,
  type GuidedStepCode,
  guidedStepCodes,
  nextStep,
} from "crankworthy/guidance";
import { englishGuidance, renderCaution, renderEnd, renderStep } from "crankworthy/report";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { copyOf, fullRecord } from "../evaluate/sample.js";

const looked = { damage: [], ice: false } as const;
const identity = {
  chemistry: "flooded",
  rating: { standard: "sae-j537", amperes: 600 },
  capacityAmpereHours: 60,
} as const;
const cranking = (amperes: number | number[]) => ({ standard: "sae-j537", amperes }) as const;

function ongoing(draft: DraftRecord, options?: GuidanceOptions): Extract<Guidance, { done: false }> {
  const guidance = nextStep(draft, options);
  if (!guidance.ok || guidance.done) throw new Error(JSON.stringify(guidance));
  return guidance;
}
function ended(draft: DraftRecord, options?: GuidanceOptions): Extract<Guidance, { done: true }> {
  const guidance = nextStep(draft, options);
  if (!guidance.ok || !guidance.done) throw new Error(JSON.stringify(guidance));
  return guidance;
}
/** Everything on offer, best first. */
function offered(draft: DraftRecord, options?: GuidanceOptions): GuidedStepCode[] {
  const guidance = nextStep(draft, options);
  if (!guidance.ok) throw new Error(JSON.stringify(guidance.issues));
  return guidance.done ? [] : [guidance.step, ...guidance.alternatives].map(({ code }) => code);
}

describe("order", () => {
  it("begins with the look-over, whatever else would tell more", () => {
    for (const draft of [{}, { identity }, { identity, measurements: { restVolts: 12.1 } }] as DraftRecord[])
      expect(ongoing(draft).step.code).toBe("look-over");
  });

  it("goes on with the label", () => {
    expect(ongoing({ conditions: looked }).step.code).toBe("read-label");
    expect(ongoing({ conditions: looked, identity: { chemistry: "agm" } }).step.code).toBe("read-label");
    expect(ongoing({ conditions: looked, identity: { rating: identity.rating } }).step.code).toBe(
      "read-label",
    );
  });

  it("ranks what follows by the risk it takes away", () => {
    const { step, alternatives } = ongoing({ conditions: looked, identity });
    const drops = [step, ...alternatives].map(({ expectedRiskDrop }) => expectedRiskDrop);
    expect(drops.length).toBeGreaterThan(2);
    expect(drops).toEqual([...drops].sort((one, other) => other - one));
    expect(step.expectedRiskDrop).toBeGreaterThan(0.05);
  });

  it("asks for no ability reading where the prior leaves no doubt of the ability", () => {
    const known = { ability: { value: 1.1, standardUncertainty: 0.05 } };
    const drop = (prior: GuidanceOptions["prior"]): number => {
      const { step, alternatives } = ongoing({ conditions: looked, identity }, { prior: prior! });
      return [step, ...alternatives].find(({ code }) => code === "measure-cranking")!.expectedRiskDrop;
    };
    // Only the charge is open then, and of that a cranking current tells little.
    expect(drop(known)).toBeLessThan(0.5 * drop({}));
  });
});

describe("steps that would be hazardous", () => {
  const measured = { restVolts: 12.66, cranking: cranking(470) } as const;
  const rested = { ...looked, temperatureCelsius: 20, lastEvent: "drive", hoursAtRest: 14 } as const;

  it("offers a load test to a charged, rested battery", () => {
    expect(offered({ identity, conditions: rested, measurements: measured })).toContain("load-test");
  });

  it.each<[why: string, draft: DraftRecord]>([
    ["that was not looked over", { conditions: { ...rested, damage: undefined } as never }],
    ["of unknown temperature", { conditions: { ...looked, lastEvent: "drive", hoursAtRest: 14 } }],
    ["below freezing", { conditions: { ...rested, temperatureCelsius: -4 } }],
    ["with little charge", { measurements: { ...measured, restVolts: 12.2 } }],
    ["of unknown charge", { measurements: { cranking: cranking(470) } }],
    [
      "just charged",
      { conditions: { ...rested, lastEvent: "charge", hoursAtRest: 0.3, chargeCompleted: true } },
    ],
    ["with low acid", { conditions: { ...rested, electrolyteLow: true } }],
    ["with a missing cell", { measurements: { restVolts: 10.5, cranking: cranking(470) } }],
  ])("offers none to a battery %s", (_, draft) => {
    const { damage, ...others } = { damage: undefined, ...draft.conditions };
    const conditions = damage === undefined && draft.conditions ? others : draft.conditions;
    const given = {
      identity,
      conditions: conditions ?? rested,
      measurements: draft.measurements ?? measured,
    };
    expect(offered(given as DraftRecord)).not.toContain("load-test");
  });

  const flat = { restVolts: 12.0, cranking: cranking(250) } as const;

  it("offers a charge to a flat battery whose low reading proves nothing", () => {
    expect(ongoing({ identity, conditions: rested, measurements: flat }).step.code).toBe("charge");
  });

  it.each<[why: string, draft: DraftRecord, instead: GuidedStepCode | undefined]>([
    [
      "of unknown temperature",
      { conditions: { ...looked, lastEvent: "drive", hoursAtRest: 14 } },
      "measure-temperature",
    ],
    ["too cold", { conditions: { ...rested, temperatureCelsius: 2 } }, "warm-up"],
    ["too hot", { conditions: { ...rested, temperatureCelsius: 50 } }, "cool-down"],
    ["with low acid", { conditions: { ...rested, electrolyteLow: true } }, "top-up-water"],
    ["of unknown kind", { identity: { ...identity, chemistry: "unknown" } }, undefined],
    ["of unknown voltage", { measurements: { cranking: cranking(250) } }, "measure-rest-voltage"],
  ])("offers none to a battery %s", (_, draft, instead) => {
    const codes = offered({ identity, conditions: rested, measurements: flat, ...draft });
    expect(codes).not.toContain("charge");
    if (instead) expect(codes).toContain(instead);
  });

  it("warms a cold battery and looks for ice again before anything draws current", () => {
    const cold = { ...rested, temperatureCelsius: -13, temperatureMethod: "electrolyte" } as const;
    const draft = { identity, conditions: cold, measurements: { ...flat, restVolts: 12.2 } } as const;
    const { step } = ongoing(draft);
    expect(step.code).toBe("warm-up");
    expect(step.fill).toContain("conditions.ice");
    for (const code of ["charge", "load-test"] as const) expect(offered(draft)).not.toContain(code);
  });

  it("opens no sealed battery, and none before its voltage was read", () => {
    const open = { identity, conditions: rested, measurements: flat };
    expect(offered(open)).toContain("measure-gravity");
    for (const chemistry of ["agm", "gel", "flooded-calcium"] as const)
      expect(offered({ ...open, identity: { ...identity, chemistry } })).not.toContain("measure-gravity");
    expect(offered({ ...open, measurements: { cranking: cranking(250) } })).not.toContain("measure-gravity");
  });

  it("repeats a failed load test only after a charge, in one step", () => {
    const failed = { ...measured, restVolts: 12.66, loadTest: { loadAmperes: 300, seconds: 15, volts: 8.2 } };
    const { step } = ongoing({
      identity,
      conditions: rested,
      measurements: { ...failed, cranking: cranking(400) },
    });
    expect(step.code).toBe("charge-and-repeat-load-test");
    expect(step.clear).toContain("measurements.loadTest");
    expect(step.fill).toContain("conditions.chargeCompleted");
  });
});

describe("ends", () => {
  it.each<[DraftRecord]>([
    [{ conditions: { damage: ["swollen"] } }],
    [{ conditions: { damage: [], ice: true } }],
    [{ identity, conditions: { ...looked, temperatureCelsius: -20 }, measurements: { restVolts: 11.8 } }],
    [{ identity, conditions: { ...looked, leadsVerified: true }, measurements: { restVolts: -12.4 } }],
  ])("at a hazard: %j", (draft) => {
    const end = ended(draft);
    expect(end.because).toBe("hazard");
    if (end.evaluation) expect(end.evaluation.verdict.action).toBe("isolate");
    expect(end.cautions.map(({ code }) => code)).toContain("never-charge");
  });

  it("at another system, also before anything was measured", () => {
    expect(ended({ identity: { ...identity, nominalVolts: 24 }, conditions: looked }).because).toBe(
      "other-system",
    );
    expect(ended({ identity, conditions: looked, measurements: { restVolts: 25.4 } }).because).toBe(
      "other-system",
    );
  });

  it("where neither label nor reading is to be had", () => {
    const end = ended(
      { conditions: looked },
      { exclude: ["read-label", "measure-temperature", "tell-rest-history"] },
    );
    expect(end.because).toBe("not-evaluable");
    expect(end.evaluation).toBeUndefined();
  });

  it("at once with a full record that leaves nothing open", () => {
    const { resistance: _, ...measurements } = fullRecord.measurements;
    const record = { ...fullRecord, measurements };
    const end = ended(record);
    expect(end.because).toBe("settled");
    const result = tryEvaluate(record);
    expect(result.ok && result.evaluation).toEqual(end.evaluation);
  });

  it("is put off by an open claim, unless none is made", () => {
    const draft = {
      identity,
      conditions: {
        ...looked,
        temperatureCelsius: 20,
        lastEvent: "charge",
        chargeCompleted: true,
        hoursAtRest: 26,
      },
      measurements: { restVolts: 12.6, cranking: cranking([240, 244, 242]) },
    } as const;
    expect(ongoing(draft).step.code).toBe("give-purchase-and-terms");
    expect(ended(draft, { exclude: ["give-purchase-and-terms"] }).because).toBe("settled");
  });
});

describe("drafts", () => {
  const wrong: readonly unknown[] = [
    { measurements: { restVolts: 12600 } },
    { identity: { chemistry: "wet" } },
    { identity, measurements: { restVolts: 12.4 }, colour: "red" },
    { identity: { ...identity, chemistry: "agm" }, measurements: { cellGravities: [1.26] } },
    { identity, conditions: { hoursAtRest: 3 }, measurements: { restVolts: 12.4 } },
    { identity: { ...identity, dateCode: { text: "a", scheme: "none" } }, measurements: { restVolts: 12.4 } },
    null,
    7,
    [],
  ];

  it.each(wrong.map((draft) => [draft]))(
    "gives the issues of tryEvaluate but for what is missing: %j",
    (draft) => {
      const guidance = nextStep(draft);
      const result = tryEvaluate(draft);
      if (guidance.ok || result.ok) throw new Error("expected issues");
      const lacking = ["identity", "identity.chemistry", "measurements"];
      const stands = result.issues.filter(({ code, path }) => code !== "missing" || !lacking.includes(path));
      expect(guidance.issues).toEqual(stands);
      expect(stands.length).toBeGreaterThan(0);
    },
  );

  it("finds a label code that contradicts the printed figure before anything is measured", () => {
    const guidance = nextStep({
      conditions: looked,
      identity: { ...identity, labelCode: { scheme: "din-72310", text: "57412" } },
    });
    expect(guidance.ok).toBe(false);
  });

  it("are not changed, and the same draft gives the same guidance", () => {
    const draft = copyOf({ identity, conditions: looked, measurements: { restVolts: 12.4 } }) as DraftRecord;
    const before = JSON.stringify(draft);
    const first = nextStep(draft);
    expect(JSON.stringify(draft)).toBe(before);
    expect(nextStep(copyOf(draft))).toEqual(first);
    answerStep(draft, { clear: ["measurements.restVolts"] }, { "conditions.ice": true });
    expect(JSON.stringify(draft)).toBe(before);
  });

  it("of any shape never make it throw", () => {
    fc.assert(
      fc.property(fc.anything(), (draft) => {
        expect(typeof nextStep(draft).ok).toBe("boolean");
      }),
      { numRuns: 300 },
    );
  });

  it("with any parts of a record left out give probabilities, and the end of the evaluation", () => {
    const fields = Object.entries(fullRecord).flatMap(([section, value]) =>
      typeof value === "object" ? Object.keys(value).map((field) => [section, field] as const) : [],
    );
    fc.assert(
      fc.property(fc.subarray(fields), (left) => {
        const draft = copyOf(fullRecord) as unknown as Record<string, Record<string, unknown>>;
        for (const [section, field] of left) delete draft[section]![field];
        const guidance = nextStep(draft);
        if (!guidance.ok) return;
        expect(guidance.riskNow).toBeGreaterThanOrEqual(0);
        expect(guidance.riskNow).toBeLessThanOrEqual(1);
        const result = tryEvaluate(draft);
        expect(guidance.evaluation).toEqual(result.ok ? result.evaluation : undefined);
        if (guidance.done) return;
        for (const { expectedRiskDrop } of [guidance.step, ...guidance.alternatives]) {
          expect(expectedRiskDrop).toBeGreaterThanOrEqual(-1);
          expect(expectedRiskDrop).toBeLessThanOrEqual(guidance.riskNow + 1e-12);
        }
      }),
      { numRuns: 150 },
    );
  });

  it("with options that make no sense throw, naming them", () => {
    expect(() => nextStep({}, { prior: { hazardProbability: 2 } })).toThrow("prior.hazardProbability");
    expect(() => nextStep({}, { prior: { hazard: 0.1 } as never })).toThrow("prior.hazard");
    expect(() => nextStep({}, { exclude: ["look" as never] })).toThrow('"look"');
    expect(() => nextStep({}, { smallestRiskDrop: -1 })).toThrow("smallestRiskDrop");
    expect(() => nextStep({}, { policy: { serviceableFraction: 9 } })).toThrow("serviceableFraction");
  });
});

describe("words", () => {
  it("has a sentence for every step, and docs/guidance.md a row", () => {
    expect(Object.keys(englishGuidance.step).sort()).toEqual([...guidedStepCodes].sort());
    const page = readFileSync("docs/guidance.md", "utf8");
    const rows = [...page.matchAll(/^\| `([a-z-]+)` \|/gm)].map(([, code]) => code);
    for (const code of guidedStepCodes) expect(rows).toContain(code);
    for (const code of Object.keys(englishGuidance.end)) expect(rows).toContain(code);
    for (const field of Object.keys(defaultGuidancePrior)) expect(page).toContain(`\`${field}\``);
  });

  it("keeps the width and leaves no placeholder", () => {
    const guidance = ongoing({
      identity,
      conditions: { ...looked, temperatureCelsius: 20, lastEvent: "drive", hoursAtRest: 14 },
      measurements: { restVolts: 12.0, cranking: cranking(250) },
    });
    const texts = [guidance.step, ...guidance.alternatives].map((step) => renderStep(step, { width: 40 }));
    texts.push(...guidance.cautions.map((caution) => renderCaution(caution, { width: 40 })));
    texts.push(renderEnd({ because: "settled", riskNow: 0.02 }, { width: 40 }));
    expect(texts.join("\n")).not.toMatch(/[{}[\]]|undefined|\?/);
    for (const line of texts.join("\n").split("\n")) expect(line.length).toBeLessThanOrEqual(40);
  });
});
