import { acidFills, openCircuitVolts } from "crankworthy/charge-state";
import { tryEvaluate } from "crankworthy/evaluate";
import {
  answerStep,
  type DraftRecord,
  type GuidanceOptions,
  type GuidedStep,
  nextStep,
  recordOfDraft,
} from "crankworthy/guidance";
import { describe, expect, it } from "vitest";

/** Seeded uniform numbers (mulberry32): the same batteries in every run. */
function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A battery as it truly is, in the hands of somebody who measures with scatter. */
interface Truth {
  charge: number;
  celsius: number;
  justDriven: boolean;
  plates: "covered" | "dry";
  readonly ability: number;
  readonly chemistry: "flooded" | "flooded-calcium" | "efb" | "agm" | "gel" | "unknown";
  readonly damage: readonly "cracked"[];
  readonly ice: boolean;
  readonly system: 12 | 24;
  readonly takesCharge: boolean;
  leadsExchanged: boolean;
  looseClamp: boolean;
}

function beginner(seed: number) {
  const random = randomFrom(seed);
  const chance = (probability: number): boolean => random() < probability;
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const within = (make: () => number, lower: number, upper: number): number => {
    for (;;) {
      const value = make();
      if (value > lower && value < upper) return value;
    }
  };
  const kinds = ["flooded", "flooded", "flooded-calcium", "efb", "agm", "gel", "unknown"] as const;
  const truth: Truth = {
    charge: within(() => 0.65 + 0.25 * normal(), 0, 1),
    celsius: chance(0.8) ? 10 + 18 * random() : -20 + 68 * random(),
    justDriven: chance(0.4),
    plates: chance(0.05) ? "dry" : "covered",
    ability: within(() => 0.8 + 0.2 * normal(), 0.05, 1.3),
    chemistry: kinds[Math.floor(random() * kinds.length)]!,
    damage: chance(0.03) ? ["cracked"] : [],
    ice: chance(0.02),
    system: chance(0.03) ? 24 : 12,
    takesCharge: chance(0.92),
    leadsExchanged: chance(0.04),
    looseClamp: chance(0.04),
  };
  const sealed = truth.chemistry === "agm" || truth.chemistry === "gel";
  const acid = sealed
    ? acidFills["valve-regulated"]
    : truth.chemistry === "flooded"
      ? acidFills.temperate
      : acidFills.calcium;
  const ownOffset = 0.08 * normal();
  const instrument = 1 + 0.03 * normal();
  const shown = 0.5 + 0.5 * random();

  const restVolts = (excess: number): number => {
    const settled = openCircuitVolts({
      stateOfCharge: Math.min(1.05, Math.max(0, truth.charge + ownOffset)),
      acid,
    });
    const volts = (settled as number) + 0.0012 * (truth.celsius - 25) + excess + 0.01 * normal();
    return (truth.leadsExchanged ? -1 : 1) * (truth.system / 12) * volts;
  };
  const cranking = (readings: number) => ({
    standard: "sae-j537",
    amperes: Array.from({ length: readings }, () => {
      if (truth.looseClamp) return Math.max(1, 600 * truth.ability * random());
      const share = truth.charge < 0.75 ? shown : 1;
      return Math.max(1, 600 * truth.ability * share * instrument * (1 + 0.03 * normal()));
    }),
  });
  const loadTest = (loadAmperes: number, most: number, repeated: boolean) => ({
    loadAmperes,
    seconds: 15,
    volts: Math.min(most, Math.max(0, 12.5 - (2.9 * 0.6) / truth.ability + 0.2 * normal())),
    ...(repeated && { repeated }),
  });
  const charge = () => {
    if (truth.takesCharge) truth.charge = 0.93 + 0.06 * random();
    truth.justDriven = false;
    return {
      "conditions.lastEvent": "charge",
      "conditions.chargeCompleted": true,
      "conditions.hoursAtRest": 9,
    };
  };

  /** What this person answers to a step. */
  const answer = (step: GuidedStep, draft: DraftRecord): Record<string, unknown> => {
    switch (step.code) {
      case "look-over":
        return {
          "conditions.damage": truth.damage,
          "conditions.ice": truth.ice,
          "conditions.inspectedOn": "2026-01-14",
          ...(!sealed && truth.plates === "dry" && { "conditions.electrolyteLow": true }),
        };
      case "read-label":
        return {
          "identity.chemistry": truth.chemistry,
          "identity.rating": { standard: "sae-j537", amperes: 600 },
          "identity.capacityAmpereHours": 60,
        };
      case "check-leads": {
        truth.leadsExchanged = false;
        truth.looseClamp = false;
        return {
          "conditions.leadsVerified": true,
          ...(step.fill.includes("measurements.cranking")
            ? { "measurements.cranking": cranking(1) }
            : { "measurements.restVolts": restVolts(truth.justDriven ? 0.15 : 0) }),
        };
      }
      case "measure-temperature":
        return {
          "conditions.temperatureCelsius": truth.celsius + 2 * normal(),
          "conditions.temperatureMethod": "case-contact",
        };
      case "tell-rest-history":
        return { "conditions.lastEvent": "drive", "conditions.hoursAtRest": truth.justDriven ? 0.1 : 14 };
      case "measure-rest-voltage":
        return { "measurements.restVolts": restVolts(truth.justDriven ? 0.3 * random() : 0) };
      case "draw-off-surface-charge":
        truth.justDriven = false;
        return {
          "conditions.surfaceChargeRemoval": "lights",
          "conditions.minutesSinceRemoval": 5,
          "measurements.restVolts": restVolts(0),
        };
      case "measure-gravity": {
        const span = acid.fullGravity - acid.emptyGravity;
        return {
          "measurements.cellGravities": Array.from({ length: 6 }, () =>
            Math.max(1, acid.emptyGravity + span * (truth.charge + 0.02 * normal())),
          ),
        };
      }
      case "measure-cranking":
        return { "measurements.cranking": cranking(chance(0.5) ? 1 : 2) };
      case "repeat-reading": {
        const before = draft.measurements!.cranking!.amperes;
        const readings = typeof before === "number" ? [before] : before;
        const more = cranking(Number(step.parameters.readings) - readings.length);
        return { "measurements.cranking": { ...more, amperes: [...readings, ...more.amperes] } };
      }
      case "top-up-water":
        truth.plates = "covered";
        return { "conditions.waterAdded": true };
      case "warm-up":
      case "cool-down":
        truth.celsius = 20;
        return {
          "conditions.temperatureCelsius": 20,
          "conditions.damage": truth.damage,
          "conditions.ice": truth.ice,
        };
      case "change-room":
        throw new Error("no room was described");
      case "charge":
        return { ...charge(), "measurements.restVolts": restVolts(0.03) };
      case "load-test":
        return {
          "measurements.loadTest": loadTest(
            Number(step.parameters.loadAmperes),
            draft.measurements!.restVolts!,
            false,
          ),
        };
      case "charge-and-repeat-load-test": {
        const charged = charge();
        const volts = restVolts(0.03);
        return {
          ...charged,
          "measurements.restVolts": volts,
          "measurements.loadTest": loadTest(Number(step.parameters.loadAmperes), volts, true),
        };
      }
      case "read-date-code":
        return {
          "identity.dateCode": { text: "2023-05", scheme: "yyyy-mm" },
          "conditions.inspectedOn": "2026-01-14",
        };
      case "give-purchase-and-terms":
        return {
          "warranty.terms": { ...TERMS, exclusions: ["low-electrolyte"] },
          "warranty.purchase": chance(0.7)
            ? { receipt: true, soldOn: "2024-09-01", pricePaid: "120.00", listPriceToday: "130.00" }
            : { receipt: false, pricePaid: "120.00", listPriceToday: "130.00" },
          "warranty.claimedOn": "2026-01-14",
        };
    }
  };
  const options: GuidanceOptions = chance(0.4) ? { exclude: ["give-purchase-and-terms"] } : {};
  return { truth, answer, options };
}

const TERMS = {
  currency: "EUR",
  minorUnitDigits: 2,
  freeMonths: 24,
  totalMonths: 48,
  prorationOrigin: "purchase",
  monthCount: "completed-clamped",
  lastCoveredDay: "anniversary",
  priceBasis: "paid",
  rounding: "half-up",
  replacementTerm: "remaining",
  core: { depositInExchange: "waived" },
  startWithoutReceipt: { kind: "manufacture-plus-months", months: 3 },
} as const;

/** Steps that draw current, open cells or charge; what forbids them is written here anew, from the record alone. */
function hazardsOf(step: GuidedStep, draft: DraftRecord): string[] {
  const { conditions = {}, measurements = {}, identity = {} } = draft;
  const found: string[] = [];
  const loads = step.code === "load-test";
  const charges = step.code === "charge" || step.code === "charge-and-repeat-load-test";
  const opens = step.code === "measure-gravity" || step.code === "top-up-water";
  if (!loads && !charges && !opens && step.code !== "draw-off-surface-charge") return found;
  if (conditions.damage === undefined || conditions.ice === undefined) found.push("not looked over");
  if (conditions.damage?.length) found.push("damaged");
  if (conditions.ice) found.push("frozen");
  const { restVolts } = measurements;
  if (restVolts === undefined || restVolts < 0 || restVolts > 15) found.push("not known to be 12 V");
  const result = tryEvaluate(recordOfDraft(draft));
  if (!result.ok) return [...found, "cannot be evaluated"];
  const { verdict, findings, charge } = result.evaluation;
  if (verdict.action === "isolate" || verdict.action === "stop") found.push(verdict.action);
  for (const { code } of findings)
    if (["frozen-possible", "near-freezing", "cell-missing", "cell-spread"].includes(code)) found.push(code);
  if (opens && (identity.chemistry === "agm" || identity.chemistry === "gel")) found.push("sealed");
  const celsius = conditions.temperatureCelsius;
  if (charges) {
    if (identity.chemistry === "unknown") found.push("charging voltage unknown");
    if (conditions.electrolyteLow) found.push("dry plates");
    if (celsius === undefined || celsius < 5 || celsius > 45) found.push("temperature");
  }
  if (loads) {
    if (charge === undefined || charge.bound === "upper" || charge.stateOfCharge.value < 0.75)
      found.push("low charge");
    if (conditions.lastEvent === "charge" && (conditions.hoursAtRest ?? 0) < 1) found.push("just charged");
    if (conditions.electrolyteLow) found.push("dry plates");
    if (celsius === undefined || celsius < 0) found.push("temperature");
  }
  return found;
}

interface Walk {
  readonly codes: readonly GuidedStep["code"][];
  readonly draft: DraftRecord;
  readonly end: Extract<ReturnType<typeof nextStep>, { done: true }>;
  readonly truth: Truth;
}

function walk(seed: number): Walk {
  const { truth, answer, options } = beginner(seed);
  const codes: GuidedStep["code"][] = [];
  const seen = new Set<string>();
  let draft: DraftRecord = {};
  for (;;) {
    const guidance = nextStep(draft, options);
    if (!guidance.ok) throw new Error(`${seed}: ${guidance.issues.map(({ message }) => message).join("; ")}`);
    if (guidance.done) return { codes, draft, end: guidance, truth };
    const { step } = guidance;
    for (const one of [step, ...guidance.alternatives])
      expect(hazardsOf(one, draft), `${seed}: ${one.code} after ${codes.join(", ")}`).toEqual([]);
    const asked = JSON.stringify([step.code, recordOfDraft(draft)]);
    expect(seen.has(asked), `${seed}: ${step.code} twice`).toBe(false);
    seen.add(asked);
    codes.push(step.code);
    expect(codes.length, `${seed}: ${codes.join(", ")}`).toBeLessThanOrEqual(20);
    draft = answerStep(draft, step, answer(step, draft));
  }
}

const walks = Array.from({ length: 300 }, (_, i) => walk(1000 + i));

describe("three hundred beginners, each with a battery drawn from the prior", () => {
  it("are all led to an end within 20 steps, with no hazardous step on offer (checked on the way)", () => {
    expect(walks.length).toBe(300);
    expect(Math.max(...walks.map(({ codes }) => codes.length))).toBeLessThanOrEqual(20);
  });

  it("are asked for a step again only after a charge or a lead check has made it new", () => {
    for (const { codes } of walks)
      codes.forEach((code, i) => {
        const before = codes.lastIndexOf(code, i - 1);
        if (i === 0 || before < 0) return;
        const between = codes.slice(before + 1, i);
        expect(
          between.some((one) => one.startsWith("charge") || one === "check-leads"),
          codes.join(", "),
        ).toBe(true);
      });
  });

  it("begin with the look-over, and end there when it shows a hazard", () => {
    for (const { codes, truth, end } of walks) {
      expect(codes[0]).toBe("look-over");
      if (truth.ice || truth.damage.length > 0) {
        expect(end.because).toBe("hazard");
        expect(codes).toEqual(["look-over"]);
      }
    }
  });

  it("end with what evaluate says of the record they have made", () => {
    let evaluated = 0;
    for (const { draft, end } of walks) {
      const result = tryEvaluate(recordOfDraft(draft));
      expect(end.evaluation).toEqual(result.ok ? result.evaluation : undefined);
      if (!result.ok) expect(end.because).toBe("hazard");
      else {
        evaluated++;
        const { condition, action } = result.evaluation.verdict;
        if (end.because === "settled") expect(condition).not.toBe("not-established");
        if (end.because === "nothing-left") expect(condition).toBe("not-established");
        if (action === "isolate") expect(end.because).toBe("hazard");
        if (action === "stop") expect(end.because).toBe("other-system");
      }
    }
    expect(evaluated).toBeGreaterThan(250);
  });

  it("mostly come to a settled answer, as wrong as the stated risk says", () => {
    const settled = walks.filter(({ end }) => end.because === "settled");
    const healthy = walks.filter(({ end }) => end.because !== "hazard" && end.because !== "other-system");
    expect(settled.length / healthy.length).toBeGreaterThan(0.8);
    // A claim adds its own risk, so it is left out: batteries that stay in service.
    const kept = settled.filter(({ end }) => end.evaluation!.verdict.action !== "retire");
    let wrong = 0;
    let stated = 0;
    for (const { end, truth } of kept) {
      const { condition, action } = end.evaluation!.verdict;
      const right = truth.ability >= 0.8 ? "serviceable" : truth.ability >= 0.6 ? "worn" : "unserviceable";
      const charge = truth.charge >= 0.75 ? "keep" : "charge-then-keep";
      if (condition !== right || action !== charge) wrong++;
      stated += end.riskNow;
    }
    expect(kept.length).toBeGreaterThan(150);
    // Binomial scatter of some 200 batteries is 0.025; twice that.
    expect(Math.abs(wrong - stated) / kept.length).toBeLessThan(0.05);
  });

  it("use every step but those that need rarer batteries", () => {
    const used = new Set(walks.flatMap(({ codes }) => codes));
    for (const code of [
      "check-leads",
      "draw-off-surface-charge",
      "charge",
      "load-test",
      "give-purchase-and-terms",
    ])
      expect(used).toContain(code);
  });
});
