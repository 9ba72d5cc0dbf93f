import { judgeCellGravities, judgeLoadTest, readMissingCells } from "../bench/index.js";
import { type Estimate, isRefusal } from "../numeric/index.js";
import { temperatureUncertaintyKelvin } from "../temperature/index.js";
import { recogniseSystem } from "../vehicle/index.js";
import {
  cautions,
  type DecisionPolicy,
  decide,
  defaultPolicy,
  type Evidence,
  facts,
  type SystemReading,
} from "../verdict/index.js";
import { abilities } from "./ability.js";
import { age, schemeIssues } from "./age.js";
import { ASSUMED_VOLTMETER_UNCERTAINTY, type ChargeOutcome, charge } from "./charge.js";
import { coldStart } from "./cold-start.js";
import { contradictions } from "./contradictions.js";
import type { ChargeSection, Evaluation, IdentitySection, LoadTestSection } from "./evaluation.js";
import { identify } from "./identify.js";
import { InputError, type InputIssue } from "./issue.js";
import { chargePlan, nextSteps } from "./next-steps.js";
import { parseRecord } from "./parse.js";
import type { BatteryRecord } from "./record.js";
import { settle } from "./settle.js";
import { trust } from "./trust.js";
import { note, refused, type Workbook } from "./workbook.js";

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
 * @throws InputError with every issue of the record at once
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
  const issues = [...contradictions(parsed.record), ...schemeIssues(parsed.record)];
  if (issues.length > 0) return { ok: false, issues };
  return evaluateParsed(parsed.record, options);
}

function evaluateParsed(record: BatteryRecord, options: EvaluateOptions): EvaluateResult {
  const policy = options.policy ? { ...defaultPolicy, ...options.policy } : defaultPolicy;
  const book: Workbook = { findings: [], refusals: [], derivation: options.explain ? [] : undefined };
  const { conditions = {} } = record;

  const identity = identify(record.identity, book);
  if ("length" in identity) return { ok: false, issues: identity };
  const temperature = batteryTemperature(record, book);
  const system = systemReading(record, identity, book);
  const chargeOutcome = charge(record, temperature, system === "twelve-volt", book);
  const section = chargeOutcome.section;
  const ability = abilities(record, identity.rating, temperature, book);
  const loadTest = loadTestEvidence(record, identity, section, temperature, book);
  const start =
    record.requirement && coldStart(record.requirement, identity, ability.sections[0], section, book);
  if (conditions.place === "vehicle" && conditions.loadsOff !== true)
    note(book, "vehicle-loads-possible", "warning");

  const evidence = gather(record, system, chargeOutcome, policy, book);
  const startAt = start?.atColdestMorning;
  const complete: Evidence = {
    ...evidence,
    abilities: ability.sections,
    ...(ability.scatter && { scatter: ability.scatter }),
    ...(loadTest && { loadTest: loadTest.evidence }),
    ...(startAt && !isRefusal(startAt) && { startProbability: startAt.startProbability }),
  };
  const verdict = decide(complete, policy);
  const battery = age(record, conditions.inspectedOn, book);
  const plan = chargePlan(verdict, record, identity, section, temperature, book);
  const claimedOn = record.warranty?.claimedOn ?? conditions.inspectedOn;
  const warranty =
    record.warranty && claimedOn !== undefined
      ? settle(
          record,
          claimedOn,
          {
            condition: verdict.condition,
            action: verdict.action,
            serviceableProbability: verdict.serviceableProbability,
            loadTest: loadTest?.section,
            chargeSufficient: facts(complete, policy).chargeSufficient,
            frozen: complete.frozen === "seen",
          },
          battery,
          policy,
          book,
        )
      : undefined;
  const findings = [...book.findings, ...verdict.findings];
  const { condition, action, decidedBy, serviceableProbability, unserviceableProbability } = verdict;
  return {
    ok: true,
    evaluation: {
      schemaVersion: 1,
      ...(record.id !== undefined && { id: record.id }),
      ...(conditions.inspectedOn !== undefined && { inspectedOn: conditions.inspectedOn }),
      identity,
      ...(battery && { age: battery }),
      trust: trust(findings, decidedBy),
      ...(section && { charge: section }),
      ability: ability.sections,
      ...(loadTest && { loadTest: loadTest.section }),
      ...(start && { coldStart: start }),
      verdict: {
        condition,
        action,
        decidedBy,
        ...(serviceableProbability !== undefined && { serviceableProbability }),
        ...(unserviceableProbability !== undefined && { unserviceableProbability }),
      },
      findings,
      cautions: cautions({
        action,
        damage: complete.damage,
        frozen: complete.frozen,
        sealed: identity.chemistry === "agm" || identity.chemistry === "gel",
        place: conditions.place ?? "unknown",
        ...(temperature && { temperatureCelsius: temperature.value }),
        failedCell: condition === "internally-failed",
        otherSystem: system === "other",
      }),
      nextSteps: nextSteps(verdict, record, plan),
      ...(plan && { chargePlan: plan }),
      ...(warranty && { warranty }),
      refusals: book.refusals,
      ...(book.derivation && { derivation: book.derivation }),
    },
  };
}

function batteryTemperature(record: BatteryRecord, book: Workbook): Estimate | undefined {
  const { temperatureCelsius, temperatureMethod } = record.conditions ?? {};
  if (temperatureCelsius === undefined) {
    note(book, "missing-temperature", "warning");
    return undefined;
  }
  // Above 45 °C or in deep frost a reading is possible, and a wrong unit is as likely.
  if (temperatureCelsius > 45 || temperatureCelsius < -35)
    note(book, "temperature-unusual", "warning", { temperatureCelsius });
  return {
    value: temperatureCelsius,
    standardUncertainty: temperatureUncertaintyKelvin(temperatureMethod ?? "unstated"),
  };
}

const ASK_TO_READING = {
  "exchange-leads-and-repeat": "reversed",
  "reversed-battery": "reversed-after-check",
  "almost-no-voltage": "no-voltage",
  "twelve-volts-flat-or-failed": "twelve-volt",
  "label-contradicts": "other",
  "above-any-system": "other",
  "label-decides": "unclear",
  "between-systems": "unclear",
  "on-a-boundary": "unclear",
} as const satisfies Record<string, SystemReading>;

function systemReading(
  record: BatteryRecord,
  { nominalVolts }: IdentitySection,
  book: Workbook,
): SystemReading {
  if (nominalVolts === 6 || nominalVolts === 24) return "other";
  const { restVolts, voltsStandardUncertainty } = record.measurements;
  if (restVolts === undefined) return "not-measured";
  const system = recogniseSystem(
    { value: restVolts, standardUncertainty: voltsStandardUncertainty ?? ASSUMED_VOLTMETER_UNCERTAINTY },
    nominalVolts as 12 | undefined,
    record.conditions?.leadsVerified === true,
    book.derivation,
  );
  if (!system.certain) return ASK_TO_READING[system.ask];
  return system.nominalVolts === 12 ? "twelve-volt" : "other";
}

function gather(
  record: BatteryRecord,
  system: SystemReading,
  { section, frozen }: ChargeOutcome,
  policy: DecisionPolicy,
  book: Workbook,
): Omit<Evidence, "abilities"> {
  const { conditions = {}, measurements } = record;
  const chargeCompleted = conditions.chargeCompleted === true;
  const { restVolts } = measurements;
  const base = {
    damage: conditions.damage ?? [],
    frozen: conditions.ice ? ("seen" as const) : frozen ? ("possible" as const) : ("no" as const),
    ...(frozen && {
      freezing: {
        temperatureCelsius: frozen.temperatureCelsius,
        freezingPointCelsius: frozen.freezingPointCelsius,
      },
    }),
    electrolyteLow: conditions.electrolyteLow === true,
    system,
    ...(restVolts !== undefined && { systemVolts: restVolts }),
    chargeCompleted,
  };
  const missing =
    system === "twelve-volt" && restVolts !== undefined
      ? readMissingCells(
          {
            volts: restVolts,
            voltsStandardUncertainty: measurements.voltsStandardUncertainty ?? ASSUMED_VOLTMETER_UNCERTAINTY,
            chargedBefore: chargeCompleted,
          },
          book.derivation,
        )
      : undefined;
  return {
    ...base,
    ...(section
      ? { charge: { stateOfCharge: section.stateOfCharge, bound: section.bound } }
      : emptyOrLess(restVolts, system)),
    ...(missing &&
      missing.cells > 0 && {
        missingCell: { cells: missing.cells, shortfallVolts: missing.shortfallVolts.value },
      }),
    ...cellEvidence(record, section, policy, book),
  };
}

// Below the range of the curve the voltage still says one thing: the charge is at most empty.
function emptyOrLess(restVolts: number | undefined, system: SystemReading): Pick<Evidence, "charge"> {
  return system === "twelve-volt" && restVolts !== undefined && restVolts < 11.7
    ? { charge: { stateOfCharge: { value: 0, standardUncertainty: 0.09 }, bound: "upper" } }
    : {};
}

const SPREAD_LIMIT_NAMES = { 0.05: "usual", 0.03: "marine", 0.025: "strict" } as const;

function cellEvidence(
  record: BatteryRecord,
  section: ChargeSection | undefined,
  policy: DecisionPolicy,
  book: Workbook,
): Pick<Evidence, "cells"> {
  const gravities = section?.gravity?.cells.map((cell) => cell.value);
  if (!gravities || gravities.length < 2) return {};
  const judged = judgeCellGravities(
    {
      gravities,
      limit: SPREAD_LIMIT_NAMES[policy.cellSpread],
      afterFullCharge: record.conditions?.chargeCompleted === true,
      waterAdded: record.conditions?.waterAdded === true,
    },
    book.derivation,
  );
  if (isRefusal(judged)) {
    refused(book, "measurements.cellGravities", judged);
    return {};
  }
  return {
    cells: {
      spread: judged.spread.value,
      exceedProbability: judged.exceedProbability,
      weakestCell: judged.weakestCell,
      mixed: !judged.invalidReasons.includes("water-not-mixed"),
    },
  };
}

function loadTestEvidence(
  record: BatteryRecord,
  identity: IdentitySection,
  section: ChargeSection | undefined,
  temperature: Estimate | undefined,
  book: Workbook,
): { readonly section: LoadTestSection; readonly evidence: NonNullable<Evidence["loadTest"]> } | undefined {
  const { loadTest, voltsStandardUncertainty } = record.measurements;
  if (!loadTest) return undefined;
  const { rating, capacityAmpereHours } = identity;
  // Half the cold-cranking rating is meant in the 7.2 V standards; other ratings leave the rule by capacity.
  const rated = rating && (rating.standard === "sae-j537" || rating.standard === "jis-d-5301:2006");
  const judged = judgeLoadTest(
    {
      volts: loadTest.volts,
      voltsStandardUncertainty: voltsStandardUncertainty ?? ASSUMED_VOLTMETER_UNCERTAINTY,
      loadAmperes: loadTest.loadAmperes,
      seconds: loadTest.seconds,
      ...(temperature && { temperatureCelsius: temperature }),
      ...(section && section.bound === "two-sided" && { stateOfCharge: section.stateOfCharge }),
      ...(rated && { ratedCrankingAmperes: rating.amperes.value }),
      ...(capacityAmpereHours && { capacityAmpereHours: capacityAmpereHours.value }),
    },
    book.derivation,
  );
  if (isRefusal(judged)) {
    refused(book, "measurements.loadTest", judged);
    note(book, "load-test-not-valid", "warning", { reasons: judged.code });
    return undefined;
  }
  const { limitVolts, marginVolts, passProbability, invalidReasons, passStands, failStands } = judged;
  return {
    section: { limitVolts: limitVolts.value, marginVolts, passProbability, invalidReasons },
    evidence: {
      passProbability,
      marginVolts,
      limitVolts: limitVolts.value,
      passStands,
      failStands,
      invalidReasons,
      repeated: loadTest.repeated === true,
      source: "load-limit",
    },
  };
}
