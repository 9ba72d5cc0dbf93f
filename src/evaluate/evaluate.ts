import { isRefusal, type Mutable } from "../numeric/index.js";
import { cautions, type DecisionPolicy, decide, defaultPolicy, facts, policyWith } from "../verdict/index.js";
import { type AbilityOutcome, abilities } from "./ability.js";
import { age, schemeIssues } from "./age.js";
import { causesOf, withCauseSteps } from "./cause-steps.js";
import { cautionSetting } from "./caution-setting.js";
import { charge } from "./charge.js";
import { coldStart } from "./cold-start.js";
import { contradictions } from "./contradictions.js";
import type { Evaluation, WarrantySection } from "./evaluation.js";
import { gather } from "./evidence.js";
import { explainVerdict } from "./explain.js";
import { identify } from "./identify.js";
import { readInVehicle } from "./in-vehicle.js";
import { InputError, type InputIssue } from "./issue.js";
import { loadTest } from "./load-test.js";
import { chargePlan, nextSteps } from "./next-steps.js";
import { parseRecord } from "./parse.js";
import type { BatteryRecord } from "./record.js";
import { settle } from "./settle.js";
import { batteryTemperature, systemReading } from "./system.js";
import { trust } from "./trust.js";
import { hasWiringFault, vehicle } from "./vehicle.js";
import type { Workbook } from "./workbook.js";

/** How to evaluate. */
export interface EvaluateOptions {
  /** Replaces single limits of the default policy. */
  readonly policy?: Partial<DecisionPolicy>;
  /** Adds the derivation of every number, with its source. */
  readonly explain?: boolean;
}

/** An evaluation, or everything that is wrong with the record. */
export type EvaluateResult =
  | { readonly ok: true; readonly evaluation: Evaluation }
  | { readonly ok: false; readonly issues: readonly InputIssue[] };

/**
 * Evaluates one record; throws when the record cannot be used.
 *
 * @param record a {@link BatteryRecord}, or anything: it is checked completely before a number is computed
 * @param options policy and explanation
 * @returns what the battery is, what to do now and next, how sure that is, what can hurt, what the warranty pays
 * @throws InputError with every issue of the record at once; RangeError when the policy itself makes no sense
 * @example
 * ```ts
 * import { evaluate } from "crankworthy";
 * const evaluation = evaluate({
 *   identity: { chemistry: "flooded", rating: { standard: "sae-j537", amperes: 600 } },
 *   conditions: { temperatureCelsius: 22, lastEvent: "drive", hoursAtRest: 12 },
 *   measurements: { restVolts: 12.62, cranking: { standard: "sae-j537", amperes: [585, 590, 588] } },
 * });
 * evaluation.verdict.condition; // => "serviceable"
 * evaluation.verdict.action; // => "keep"
 * ```
 */
export function evaluate(record: unknown, options: EvaluateOptions = {}): Evaluation {
  const result = tryEvaluate(record, options);
  if (!result.ok) throw new InputError(result.issues);
  return result.evaluation;
}

/**
 * Evaluates one record without throwing.
 *
 * @example
 * ```ts
 * import { tryEvaluate } from "crankworthy";
 * const result = tryEvaluate({ identity: {}, measurements: { restVolts: 12600 } });
 * !result.ok && result.issues.map((issue) => issue.path); // => ["identity.chemistry", "measurements.restVolts"]
 * ```
 */
export function tryEvaluate(record: unknown, options: EvaluateOptions = {}): EvaluateResult {
  const parsed = parseRecord(record);
  if (!parsed.ok) return parsed;
  const issues = contradictions(parsed.record);
  issues.push(...schemeIssues(parsed.record));
  if (issues.length > 0) return { ok: false, issues };
  return evaluateParsed(parsed.record, options);
}

const NO_ABILITY: AbilityOutcome = { sections: [], notComparable: false };

// The one way through. Each section adds its findings and refusals to the book; nothing flows back.
function evaluateParsed(record: BatteryRecord, options: EvaluateOptions): EvaluateResult {
  const policy = options.policy ? policyWith(options.policy) : defaultPolicy;
  const book: Workbook = { findings: [], refusals: [], derivation: options.explain ? [] : undefined };
  const { conditions = {}, warranty } = record;

  const identity = identify(record.identity, book);
  if ("length" in identity) return { ok: false, issues: identity };
  const battery = age(record, conditions.inspectedOn, book);

  const temperature = batteryTemperature(record, book);
  const system = systemReading(record, identity.nominalVolts, book);
  const charged = charge(record, temperature, system === "twelve-volt", book);
  // Of a 6 V or 24 V battery no ability is held against the rating.
  const ability = system === "other" ? NO_ABILITY : abilities(record, identity.rating, temperature, book);
  const loaded = loadTest(record, identity, charged.section, temperature, book);
  const start = record.requirement && coldStart(record.requirement, identity, ability.sections[0], book);
  const onVehicle =
    record.vehicle &&
    vehicle(
      record,
      record.vehicle,
      { identity, charge: charged.section, temperature, system, loadTest: loaded?.evidence, policy },
      book,
    );
  const inVehicle = readInVehicle(record, hasWiringFault(onVehicle), book);

  const evidence = gather(record, system, charged, policy, book);
  evidence.abilities = ability.sections;
  if (ability.notComparable) evidence.abilityNotComparable = true;
  if (ability.scatter) evidence.scatter = ability.scatter;
  if (ability.contact) evidence.contact = ability.contact;
  if (inVehicle) evidence.inVehicle = inVehicle;
  if (loaded) evidence.loadTest = loaded.evidence;
  const morning = start?.atColdestMorning;
  if (morning && !isRefusal(morning)) evidence.startProbability = morning.startProbability;
  const verdict = decide(evidence, policy);
  const { condition, action, decidedBy } = verdict;

  if (book.derivation)
    explainVerdict(book.derivation, verdict, ability.sections, charged.section, battery, policy);
  const plan = chargePlan(verdict, record, identity, charged.section, temperature, book);

  const findings = [...book.findings, ...verdict.findings];
  const causes = onVehicle && causesOf(findings, facts(evidence, policy));
  const outcome: Mutable<Evaluation["verdict"]> = { condition, action, decidedBy };
  if (verdict.serviceableProbability !== undefined)
    outcome.serviceableProbability = verdict.serviceableProbability;
  if (verdict.unserviceableProbability !== undefined)
    outcome.unserviceableProbability = verdict.unserviceableProbability;
  const claimedOn = warranty?.claimedOn ?? conditions.inspectedOn;
  let settled: WarrantySection | undefined;
  if (warranty && claimedOn !== undefined) {
    const grounds = {
      condition,
      action,
      reachesLimit:
        decidedBy === "load-test" ? loaded?.section.passProbability : verdict.serviceableProbability,
      // A completed charge is what tells a failed cell from six empty ones: it is the charge and the repeat at once.
      failedAfterCharge: condition === "internally-failed" && evidence.chargeCompleted,
      chargeSufficient: facts(evidence, policy).chargeSufficient,
      frozen: evidence.frozen === "seen",
    };
    settled = settle(record, claimedOn, grounds, battery, policy, book);
  }
  const setting = cautionSetting(record, identity, evidence, verdict);
  const steps = nextSteps(
    {
      condition,
      action,
      findings,
      identity,
      ability: ability.sections,
      plan,
      airShort: setting.air?.enough === false,
      claimable: settled?.eligibility.answer === "claimable",
    },
    record,
  );
  const evaluation: Mutable<Evaluation> = {
    schemaVersion: 1,
    identity,
    trust: trust(findings, condition, decidedBy),
    ability: ability.sections,
    verdict: outcome,
    findings,
    cautions: cautions(setting),
    nextSteps: causes ? withCauseSteps(steps, action, causes, findings) : steps,
    refusals: book.refusals,
  };
  if (record.id !== undefined) evaluation.id = record.id;
  if (conditions.inspectedOn !== undefined) evaluation.inspectedOn = conditions.inspectedOn;
  if (battery) evaluation.age = battery;
  if (charged.section) evaluation.charge = charged.section;
  if (loaded) evaluation.loadTest = loaded.section;
  if (start) evaluation.coldStart = start;
  if (onVehicle) evaluation.vehicle = onVehicle;
  if (causes) evaluation.causes = causes;
  if (plan) evaluation.chargePlan = plan;
  if (settled) evaluation.warranty = settled;
  if (book.derivation) evaluation.derivation = book.derivation;
  return { ok: true, evaluation };
}
