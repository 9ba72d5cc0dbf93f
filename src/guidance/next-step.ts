import type { BatteryRecord } from "../evaluate/record.js";
import { chargingAir } from "../evaluate/ventilation.js";
import { requireFinite } from "../numeric/index.js";
import { type Action, type Caution, cautions, defaultPolicy, policyWith } from "../verdict/index.js";
import type { Candidate } from "./candidate.js";
import { changed, checkDraft, clearedBy, type DraftRecord, type FieldValues } from "./draft.js";
import { SMALLEST_RISK_DROP } from "./limits.data.js";
import { priorWith } from "./prior.js";
import { hazardous } from "./safety.js";
import { type GuidanceSetting, type Situation, situationOf } from "./situation.js";
import { candidates } from "./steps.js";
import { spentSteps, withoutTried } from "./tried.js";
import {
  type Guidance,
  type GuidanceEnd,
  type GuidanceOptions,
  type GuidedStep,
  type GuidedStepCode,
  guidedStepCodes,
  type UntakenStep,
} from "./types.js";

/**
 * The single measurement or preparation that would most change the decision now, and why; or the end.
 *
 * Scope: from an empty draft to the settlement of a claim. Every step is imagined on a few equally probable outcomes,
 * each evaluated as a record of its own; the step whose outcomes leave the least risk of a wrong answer comes first.
 * Damage and ice are asked for before anything else, the label next. A step that would be hazardous in this state is never
 * offered; after a hazard there is no step. A step that was answered twice and is still called for has not taken: it is not
 * asked for again, so the steps end, whatever is answered.
 *
 * @param draft a {@link DraftRecord}, or anything: wrong values give the issues that `tryEvaluate` gives
 * @param options policy, prior, steps to leave out, smallest drop of risk worth a step [probability]
 * @returns the step with alternatives and cautions, the end with the evaluation, or the issues; never throws for a draft
 * @throws RangeError when policy, prior or options make no sense
 *
 * Risk = 1 − P(condition and action given now are those of full knowledge); drop = risk − mean risk afterwards.
 * Source: preposterior analysis; prior, model of readings and loss are our choice, see docs/guidance.md.
 * @example
 * ```ts
 * import { answerStep, nextStep } from "crankworthy/guidance";
 * const first = nextStep({});
 * first.ok && !first.done && first.step.code; // => "look-over"
 * const damaged = nextStep({ conditions: { damage: ["cracked"], ice: false } });
 * damaged.ok && damaged.done && damaged.because; // => "hazard"
 * ```
 */
export function nextStep(draft: unknown, options: GuidanceOptions = {}): Guidance {
  const base = settingOf(options);
  const smallest = options.smallestRiskDrop ?? SMALLEST_RISK_DROP;
  requireFinite("smallestRiskDrop", smallest, 0, 1);
  const taken = withoutTried(draft);
  if (!taken.ok) return taken;
  const setting: GuidanceSetting = { ...base, spent: spentSteps(taken.tried) };
  const checked = checkDraft(taken.input);
  if (!checked.ok) return checked;
  const { record, labelRead } = checked.draft;
  const now = situationOf(record, labelRead, setting);
  if ("length" in now) return { ok: false, issues: now };

  if (hazardous(now)) return end(now, "hazard");
  if (isOtherSystem(now)) return end(now, "other-system");
  const untaken = untakenSteps(now, setting);
  const condition = now.evaluation?.verdict.condition;
  // What was to come before everything else was asked for and not told: nothing may be built on that.
  if (untaken.some(({ code, because }) => because === "tried" && FIRST.has(code)))
    return end(now, condition === undefined ? "not-evaluable" : "nothing-left", untaken);
  const offered = candidates(now, setting);
  const ranked = rank(now, offered, setting);
  const [best, ...others] = ranked;
  // Until there is an answer no gap is too small to close: what is worth little alone may carry the next step.
  const settled = condition !== undefined && condition !== "not-established";
  if (!best || (settled && best.kind !== "gate" && best.step.expectedRiskDrop < smallest)) {
    if (settled) return end(now, "settled");
    return end(now, condition === undefined ? "not-evaluable" : "nothing-left", untaken);
  }
  return {
    ok: true,
    done: false,
    riskNow: now.risk,
    step: best.step,
    alternatives: others.map(({ step }) => step),
    // A charge is offered only where the evaluation asks for one: its cautions are those of the charge.
    cautions:
      CHARGING.has(best.step.code) && now.evaluation
        ? now.evaluation.cautions
        : cautionsFor(now, "repeat", best.step.code),
    ...(now.evaluation && { evaluation: now.evaluation }),
  };
}

/**
 * A draft with the answer to a step: what the step made untrue is taken out, what was answered is set, and the step is noted
 * under `tried`, which `nextStep` reads and `evaluate` does not know ({@link recordOfDraft} leaves it out).
 *
 * @param draft as it was given to {@link nextStep}; it is not changed
 * @param step from `nextStep`
 * @param values by path, such as `{ "measurements.restVolts": 12.4 }`
 * @example
 * ```ts
 * import { answerStep, nextStep } from "crankworthy/guidance";
 * const guidance = nextStep({});
 * const draft = guidance.ok && !guidance.done
 *   ? answerStep({}, guidance.step, { "conditions.damage": [], "conditions.ice": false })
 *   : {};
 * const second = nextStep(draft);
 * second.ok && !second.done && second.step.code; // => "read-label"
 * ```
 */
export function answerStep(
  draft: DraftRecord,
  step: Pick<GuidedStep, "clear"> & Partial<Pick<GuidedStep, "code">>,
  values: FieldValues,
): DraftRecord {
  const answered = changed(draft, values, clearedBy(values, step.clear));
  return step.code === undefined ? answered : { ...answered, tried: [...(draft.tried ?? []), step.code] };
}

function settingOf({ policy, prior, exclude = [] }: GuidanceOptions): GuidanceSetting {
  for (const code of exclude)
    if (!guidedStepCodes.includes(code)) throw new RangeError(`exclude: "${code}" is no step`);
  return {
    changes: policy,
    policy: policy ? policyWith(policy) : defaultPolicy,
    prior: priorWith(prior),
    exclude: new Set(exclude),
    spent: NONE,
  };
}

const NONE: ReadonlySet<GuidedStepCode> = /* @__PURE__ */ new Set<GuidedStepCode>();
const FIRST: ReadonlySet<GuidedStepCode> = /* @__PURE__ */ new Set<GuidedStepCode>([
  "look-over",
  "read-label",
]);

/** What would be asked for, had it not been tried or left out. */
function untakenSteps(now: Situation, setting: GuidanceSetting): UntakenStep[] {
  const { exclude, spent } = setting;
  if (exclude.size === 0 && spent.size === 0) return [];
  return candidates(now, { ...setting, exclude: NONE, spent: NONE })
    .filter(({ code }) => exclude.has(code) || spent.has(code))
    .map(({ code, why }) => ({
      code,
      why: { code: why },
      because: exclude.has(code) ? "excluded" : "tried",
    }));
}

interface Ranked {
  readonly kind: Candidate["kind"];
  readonly step: GuidedStep;
}

function rank(now: Situation, offered: readonly Candidate[], setting: GuidanceSetting): Ranked[] {
  const drops = new Map<Candidate, number>();
  let bestReading = 0;
  for (const candidate of offered) {
    if (candidate.kind !== "reading") continue;
    const drop = now.risk - meanRisk(now, candidate, setting, false);
    drops.set(candidate, drop);
    bestReading = Math.max(bestReading, drop);
  }
  for (const candidate of offered) {
    if (candidate.kind === "reading") continue;
    const alone = now.risk - meanRisk(now, candidate, setting, false);
    // What the best reading gains by it, or gives at all only after it.
    const withReading = now.risk - meanRisk(now, candidate, setting, true) - bestReading;
    drops.set(candidate, Math.max(alone, withReading));
  }
  return offered
    .map((candidate, order) => ({ candidate, order, drop: drops.get(candidate)! }))
    .sort((one, other) => {
      const gates = Number(other.candidate.kind === "gate") - Number(one.candidate.kind === "gate");
      const bothGates = one.candidate.kind === "gate" && other.candidate.kind === "gate";
      return gates || (bothGates ? 0 : other.drop - one.drop) || one.order - other.order;
    })
    .map(({ candidate: { code, kind, fill, clear, why, parameters }, drop }) => ({
      kind,
      step: {
        code,
        fill,
        clear,
        why: { code: why },
        parameters,
        riskNow: now.risk,
        expectedRiskDrop: drop,
      },
    }));
}

/** Risk after a step, averaged over its imagined outcomes; `further` allows the best reading after it. */
function meanRisk(now: Situation, candidate: Candidate, setting: GuidanceSetting, further: boolean): number {
  const labelRead = now.labelRead || candidate.code === "read-label";
  const records = candidate.imagine();
  if (records.length === 0) return now.risk;
  let sum = 0;
  for (const record of records) sum += riskAfter(now, record, labelRead, setting, further);
  return sum / records.length;
}

function riskAfter(
  now: Situation,
  record: BatteryRecord,
  labelRead: boolean,
  setting: GuidanceSetting,
  further: boolean,
): number {
  const after = situationOf(record, labelRead, setting);
  // An imagined record that contradicts itself tells nothing.
  if ("length" in after) return now.risk;
  let { risk } = after;
  if (!further || hazardous(after)) return risk;
  for (const next of candidates(after, setting))
    if (next.kind === "reading") risk = Math.min(risk, meanRisk(after, next, setting, false));
  return risk;
}

function isOtherSystem({ evaluation, identity, record }: Situation): boolean {
  const nominalVolts = identity?.nominalVolts ?? record.identity.nominalVolts;
  return evaluation?.verdict.action === "stop" || nominalVolts === 6 || nominalVolts === 24;
}

function end(now: Situation, because: GuidanceEnd, untaken: readonly UntakenStep[] = []): Guidance {
  const action = because === "hazard" ? "isolate" : because === "other-system" ? "stop" : "repeat";
  return {
    ok: true,
    done: true,
    because,
    untaken,
    riskNow: now.risk,
    cautions: now.evaluation?.cautions ?? cautionsFor(now, action),
    ...(now.evaluation && { evaluation: now.evaluation }),
  };
}

const CHARGING: ReadonlySet<GuidedStepCode> = /* @__PURE__ */ new Set<GuidedStepCode>([
  "charge",
  "charge-and-repeat-load-test",
]);
const OPENING: ReadonlySet<GuidedStepCode> = /* @__PURE__ */ new Set<GuidedStepCode>([
  "measure-gravity",
  "top-up-water",
]);

/** What can hurt while a step is done, or at first sight, before anything could be evaluated. */
function cautionsFor(
  { record, evaluation, identity }: Situation,
  action: Action,
  step?: GuidedStepCode,
): Caution[] {
  const { damage = [], ice, place = "unknown", temperatureCelsius } = record.conditions ?? {};
  const { chemistry, nominalVolts } = record.identity;
  const air = step === "change-room" && identity ? chargingAir(identity, record.ventilation) : undefined;
  return cautions({
    action,
    damage,
    frozen: ice ? "seen" : "no",
    sealed: chemistry === "agm" || chemistry === "gel",
    chargeUnknown: evaluation?.charge === undefined,
    place,
    ...(temperatureCelsius !== undefined && { temperatureCelsius }),
    failedCell: false,
    otherSystem: nominalVolts === 6 || nominalVolts === 24,
    acidHandled: step !== undefined && OPENING.has(step),
    ...(air && { air }),
  });
}
