import { type ChargePlan, type ChargePlanInput, planCharge } from "../bench/index.js";
import { type Estimate, isRefusal, type Mutable } from "../numeric/index.js";
import {
  type Action,
  COLD_TO_CHARGE,
  type Condition,
  type Finding,
  type FindingCode,
  type Verdict,
} from "../verdict/index.js";
import type { AbilitySection, ChargeSection, IdentitySection, NextStep } from "./evaluation.js";
import { testLoadAmperes } from "./load-test.js";
import type { BatteryRecord } from "./record.js";
import { refused, type Workbook } from "./workbook.js";

/** Hours of rest after a charge before the voltage is read again: the longest common manual figure below a day. */
const REST_HOURS_AFTER_CHARGE = 8;

/** Above this a battery cools down before it is charged [°C]: 5 K below the 50 °C at which charging stops. Our choice. */
const HOT_TO_CHARGE = 45;
/** Room temperature, for a battery that was warmed, cooled or not measured [°C]. The step states it. */
const ROOM_CELSIUS = 20;
/** Findings that speak of clamps, leads and chargers rather than of the battery. */
const CONNECTION: readonly FindingCode[] = [
  "no-voltage",
  "readings-scatter",
  "contact-spread",
  "system-voltage-unclear",
  "ability-implausible",
];

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
  /** The stated room cannot carry the charge. */
  readonly airShort: boolean;
  /** The terms pay for this battery. */
  readonly claimable: boolean;
}

/** What to do next, in order. */
export function nextSteps(grounds: StepGrounds, record: BatteryRecord): NextStep[] {
  const { action, plan } = grounds;
  const has = (code: FindingCode): boolean => grounds.findings.some((one) => one.code === code);
  const temperature = record.conditions?.temperatureCelsius;
  // Dry plates are covered, and ice and heat are out of the battery, before it is charged.
  const fill = has("electrolyte-low") ? [step("top-up-water")] : [];
  const room = grounds.airShort ? [step("change-room"), ...fill] : fill;
  const prepared =
    temperature === undefined || (temperature >= COLD_TO_CHARGE && temperature <= HOT_TO_CHARGE)
      ? room
      : [step(temperature < COLD_TO_CHARGE ? "warm-up" : "cool-down"), ...room];
  const claim = grounds.claimable ? [step("offer-claim")] : [];
  const load = (): NextStep => step("measure-with-load", loadParameters(grounds.identity));
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
        ? [...fill, ...claim, step("hand-back"), step("look-again-before-winter")]
        : [...fill, step("hand-back")];
    case "charge-then-keep":
      return [...prepared, chargeStep(plan, temperature), step("hand-back")];
    case "charge-then-repeat":
      return [
        ...prepared,
        chargeStep(plan, temperature),
        step("rest-after-charge", { hours: REST_HOURS_AFTER_CHARGE }),
        record.measurements.loadTest ? load() : step("measure-again"),
      ];
    case "repeat":
      if (has("reversed-polarity")) return [step("exchange-leads"), step("measure-again")];
      if (has("low-reading-in-vehicle")) return [step("measure-at-the-posts")];
      if (has("voltage-above-rest")) return [step("end-charging"), step("measure-again")];
      if (CONNECTION.some(has)) return [step("check-connection"), step("measure-again")];
      if (has("surface-charge")) return [step("draw-off-surface-charge"), step("measure-again")];
      if (has("missing-ability-measurement")) return [step("measure-ability")];
      if (has("ability-evidence-disagrees")) return [step("check-connection"), step("measure-again"), load()];
      return repeatSteps(grounds, record, load);
  }
}

// What would narrow the answer: more readings shrink an instrument's scatter, not a guessed rating or a model.
function repeatSteps(
  { findings, identity, ability }: StepGrounds,
  record: BatteryRecord,
  load: () => NextStep,
): NextStep[] {
  if (findings.some((one) => one.code === "rating-not-comparable") && ability.length === 0)
    return [step("find-comparable-rating"), load()];
  const modelLimits = ability[0]?.from !== "cranking-estimate" || identity.rating?.from === "type-estimate";
  const taken = record.measurements.cranking?.amperes;
  // Three readings have shrunk what repeats at random; what is left is common to all of them.
  if (modelLimits || (typeof taken === "object" && taken.length >= 3)) return [load()];
  return [step("measure-again", { readings: record.conditions?.place === "vehicle" ? 5 : 3 })];
}

function loadParameters(identity: IdentitySection): NextStep["parameters"] {
  const loadAmperes = testLoadAmperes(identity);
  return loadAmperes === undefined ? {} : { loadAmperes };
}

/** What the battery is charged at: as it is, or at room temperature after it was warmed or cooled. */
function chargingTemperature(temperatureCelsius: number | undefined): number {
  return temperatureCelsius !== undefined &&
    temperatureCelsius >= COLD_TO_CHARGE &&
    temperatureCelsius <= HOT_TO_CHARGE
    ? temperatureCelsius
    : ROOM_CELSIUS;
}

function chargeStep(plan: ChargePlan | undefined, temperatureCelsius: number | undefined): NextStep {
  if (!plan) return step("charge");
  const parameters: Mutable<NextStep["parameters"]> = {
    atCelsius: chargingTemperature(temperatureCelsius),
    endVolts: plan.endVolts.value,
    fromAmperes: plan.currentAmperes.lower,
    toAmperes: plan.currentAmperes.upper,
  };
  if (plan.hours) {
    parameters.fromHours = plan.hours.lower;
    parameters.toHours = plan.hours.upper;
  }
  return step("charge", parameters);
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
  const input: Mutable<ChargePlanInput> = {
    chemistry,
    temperatureCelsius: chargingTemperature(temperature?.value),
    capacityAmpereHours,
  };
  if (charge?.bound === "two-sided") input.stateOfCharge = charge.stateOfCharge;
  if (restVolts !== undefined && restVolts > 0) input.openCircuitVolts = restVolts;
  const plan = planCharge(input, book.derivation);
  if (!isRefusal(plan)) return plan;
  refused(book, "chargePlan", plan);
  return undefined;
}
