import { type ChargePlan, planCharge } from "../bench/index.js";
import { type Estimate, isRefusal } from "../numeric/index.js";
import type { Action, Condition, Finding, FindingCode, Verdict } from "../verdict/index.js";
import type { AbilitySection, ChargeSection, IdentitySection, NextStep } from "./evaluation.js";
import type { BatteryRecord } from "./record.js";
import { refused, type Workbook } from "./workbook.js";

/** Hours of rest after a charge before the voltage is read again: the longest common manual figure below a day. */
const REST_HOURS_AFTER_CHARGE = 8;

const step = (code: NextStep["code"], parameters: NextStep["parameters"] = {}): NextStep => ({
  code,
  parameters,
});

/** What the steps follow from. */
export interface StepGrounds {
  readonly condition: Condition;
  readonly action: Action;
  readonly findings: readonly Finding[];
  readonly identity: IdentitySection;
  readonly ability: readonly AbilitySection[];
  readonly plan: ChargePlan | undefined;
}

/** What to do next, in order. */
export function nextSteps(grounds: StepGrounds, record: BatteryRecord): NextStep[] {
  const { action, plan } = grounds;
  const has = (code: FindingCode): boolean => grounds.findings.some((one) => one.code === code);
  // Dry plates are covered before a charge, never after a failed one.
  const fill = has("electrolyte-low") ? [step("top-up-water")] : [];
  switch (action) {
    case "stop":
      return [step("other-method")];
    case "isolate":
      return has("frozen-seen") || has("frozen-possible")
        ? [step("set-apart"), step("thaw-and-inspect")]
        : [step("set-apart"), step("take-back")];
    case "retire":
      return [step("take-back")];
    case "keep":
      return grounds.condition === "worn"
        ? [...fill, step("hand-back"), step("look-again-before-winter")]
        : [...fill, step("hand-back")];
    case "charge-then-keep":
      return [...fill, chargeStep(plan), step("hand-back")];
    case "charge-then-repeat":
      return [
        ...fill,
        chargeStep(plan),
        step("rest-after-charge", { hours: REST_HOURS_AFTER_CHARGE }),
        step(record.measurements.loadTest ? "measure-with-load" : "measure-again"),
      ];
    case "repeat":
      if (has("reversed-polarity")) return [step("exchange-leads"), step("measure-again")];
      if (has("no-voltage") || has("readings-scatter") || has("system-voltage-unclear"))
        return [step("check-connection"), step("measure-again")];
      if (has("surface-charge")) return [step("draw-off-surface-charge"), step("measure-again")];
      if (has("missing-ability-measurement")) return [step("measure-ability")];
      if (has("ability-evidence-disagrees"))
        return [step("check-connection"), step("measure-again"), step("measure-with-load")];
      return repeatSteps(grounds, record);
  }
}

// What would narrow the answer: more readings shrink an instrument's scatter, not a guessed rating or a model.
function repeatSteps({ findings, identity, ability }: StepGrounds, record: BatteryRecord): NextStep[] {
  if (findings.some((one) => one.code === "rating-not-comparable") && ability.length === 0)
    return [step("find-comparable-rating"), step("measure-with-load")];
  const modelLimits = ability[0]?.from !== "cranking-estimate" || identity.rating?.from === "type-estimate";
  if (modelLimits) return [step("measure-with-load")];
  return [step("measure-again", { readings: record.conditions?.place === "vehicle" ? 5 : 3 })];
}

function chargeStep(plan: ChargePlan | undefined): NextStep {
  if (!plan) return step("charge");
  return step("charge", {
    endVolts: plan.endVolts.value,
    fromAmperes: plan.currentAmperes.lower,
    toAmperes: plan.currentAmperes.upper,
    ...(plan.hours && { fromHours: plan.hours.lower, toHours: plan.hours.upper }),
  });
}

/** Numbers for the charge, where a charge is next and its chemistry and capacity are known. */
export function chargePlan(
  verdict: Verdict,
  record: BatteryRecord,
  identity: IdentitySection,
  charge: ChargeSection | undefined,
  temperature: Estimate | undefined,
  book: Workbook,
): ChargePlan | undefined {
  if (verdict.action !== "charge-then-keep" && verdict.action !== "charge-then-repeat") return undefined;
  const { chemistry, capacityAmpereHours } = identity;
  if (chemistry === "unknown" || !capacityAmpereHours) {
    refused(book, "chargePlan", {
      refused: true,
      code: chemistry === "unknown" ? "chemistry-unknown" : "capacity-unknown",
      reason: "Charging voltage and current depend on chemistry and capacity.",
      wouldHelp: "Chemistry and ampere-hours or reserve capacity from the label.",
    });
    return undefined;
  }
  const { restVolts } = record.measurements;
  const plan = planCharge({
    chemistry,
    // Charging happens indoors; a plan for an unknown temperature is one for 25 °C, and the step says so.
    temperatureCelsius: temperature?.value ?? 25,
    capacityAmpereHours,
    ...(charge && charge.bound === "two-sided" && { stateOfCharge: charge.stateOfCharge }),
    ...(restVolts !== undefined && restVolts > 0 && { openCircuitVolts: restVolts }),
  });
  if (!isRefusal(plan)) return plan;
  refused(book, "chargePlan", plan);
  return undefined;
}
