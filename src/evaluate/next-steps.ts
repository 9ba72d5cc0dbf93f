import { type ChargeObstacle, type ChargePlan, planCharge } from "../bench/index.js";
import { type Estimate, isRefusal } from "../numeric/index.js";
import type { Verdict } from "../verdict/index.js";
import type { ChargeSection, IdentitySection, NextStep } from "./evaluation.js";
import type { BatteryRecord } from "./record.js";
import { refused, type Workbook } from "./workbook.js";

/** Hours of rest after a charge before the voltage is read again: the longest common manual figure below a day. */
const REST_HOURS_AFTER_CHARGE = 8;

const step = (code: NextStep["code"], parameters: NextStep["parameters"] = {}): NextStep => ({
  code,
  parameters,
});

/** What to do next, in order. */
export function nextSteps(verdict: Verdict, record: BatteryRecord, plan: ChargePlan | undefined): NextStep[] {
  const has = (code: string): boolean => verdict.findings.some((one) => one.code === code);
  const { conditions = {} } = record;
  switch (verdict.action) {
    case "stop":
      return [step("other-method")];
    case "isolate":
      return has("frozen-seen") || has("frozen-possible")
        ? [step("set-apart"), step("thaw-and-inspect")]
        : [step("set-apart"), step("take-back")];
    case "retire":
      return [step("take-back")];
    case "keep":
      return verdict.condition === "worn"
        ? [step("hand-back"), step("look-again-before-winter")]
        : [step("hand-back")];
    case "charge-then-keep":
      return [chargeStep(plan), step("hand-back")];
    case "charge-then-repeat":
      return [
        chargeStep(plan),
        step("rest-after-charge", { hours: REST_HOURS_AFTER_CHARGE }),
        step(record.measurements.loadTest ? "measure-with-load" : "measure-again"),
      ];
    case "repeat": {
      if (has("reversed-polarity")) return [step("exchange-leads"), step("measure-again")];
      if (has("no-voltage") || has("readings-scatter") || has("system-voltage-unclear"))
        return [step("check-connection"), step("measure-again")];
      if (has("surface-charge")) return [step("draw-off-surface-charge"), step("measure-again")];
      if (has("missing-ability-measurement")) return [step("measure-ability")];
      return has("ability-evidence-disagrees")
        ? [step("check-connection"), step("measure-again"), step("measure-with-load")]
        : [step("measure-again", { readings: conditions.place === "vehicle" ? 5 : 3 })];
    }
  }
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
  const obstacles: ChargeObstacle[] = [];
  if (record.conditions?.electrolyteLow) obstacles.push("very-low-electrolyte");
  const plan = planCharge({
    chemistry,
    // Charging happens indoors; a plan for an unknown temperature is one for 25 °C, and the step says so.
    temperatureCelsius: temperature?.value ?? 25,
    capacityAmpereHours,
    ...(charge && charge.bound === "two-sided" && { stateOfCharge: charge.stateOfCharge }),
    ...(restVolts !== undefined && restVolts > 0 && { openCircuitVolts: restVolts }),
    obstacles,
  });
  if (!isRefusal(plan)) return plan;
  refused(book, "chargePlan", plan);
  return undefined;
}
