import type { AbilitySection, Evaluation, NamedRefusal } from "../evaluate/index.js";
import { type Estimate, type Interval, interval95 } from "../numeric/index.js";
import type { Finding, Severity } from "../verdict/index.js";
import { ageLines } from "./age.js";
import { asPrinted, fill, fillTemplate, type Parameters, quantity, range, shareRange } from "./format.js";
import { line, type ReportLine } from "./line.js";
import type { DecidingRule, Messages, Question, Sentence } from "./messages.js";
import { derivationLines, type ReportSources } from "./steps.js";
import { clean } from "./text.js";
import { causeLines, vehicleLines } from "./vehicle.js";
import { type Voice, voiceOf } from "./voice.js";
import { warrantyLines } from "./warranty.js";

/** A question and its answer. */
export interface ReportSection {
  readonly question: Question | "title";
  /** The question in words. */
  readonly heading: string;
  readonly lines: readonly ReportLine[];
}

/**
 * What a report says, before any layout: the questions in the order of their importance at the counter, each with its
 * answer. A renderer of another format starts here; it pulls in no language and no bibliography.
 *
 * @param evaluation from `evaluate`
 * @param catalogue of one language
 * @param sources bibliography for the derivation, where the evaluation carries one; without it the steps name keys
 * @example
 * ```ts
 * import { evaluate } from "crankworthy";
 * import { english, reportSections } from "crankworthy/report";
 * const sections = reportSections(evaluate({
 *   identity: { chemistry: "agm", rating: { standard: "sae-j537", amperes: 760 } },
 *   measurements: { restVolts: -12.5 },
 * }), english);
 * sections.find((one) => one.question === "next")?.lines[0]?.text; // => "Exchange the leads and check them against the post marks."
 * ```
 */
export function reportSections(
  evaluation: Evaluation,
  catalogue: Messages,
  sources: ReportSources = {},
): ReportSection[] {
  const messages = voiceOf(catalogue);
  const found: ReportSection[] = [
    { question: "title", heading: messages.phrase.title, lines: titleLines(evaluation, messages) },
  ];
  const add = (question: Question, lines: readonly ReportLine[]): void => {
    if (lines.length > 0) found.push({ question, heading: messages.question[question], lines });
  };
  const { trust, cautions, refusals, derivation } = evaluation;
  add("what", identityLines(evaluation, messages));
  add("trust", [
    line(messages.trust[trust.level]),
    ...trust.because.map((code) => line(messages.finding[code][0], "item")),
  ]);
  add("charge", chargeLines(evaluation, messages));
  add("ability", abilityLines(evaluation, messages));
  add("start", startLines(evaluation, messages));
  add("vehicle", vehicleLines(evaluation, messages));
  add("now", verdictLines(evaluation, messages));
  add("cause", causeLines(evaluation, messages));
  add("noticed", findingLines(evaluation, messages));
  add("next", stepLines(evaluation, messages));
  add(
    "hurt",
    cautions.map(({ code, parameters = {} }) =>
      line(fillTemplate(messages, messages.caution[code], parameters), "item"),
    ),
  );
  add("age", ageLines(evaluation, messages));
  add("warranty", warrantyLines(evaluation, messages));
  add(
    "refused",
    refusals.map((one) => line(refusalText(one, messages), "item")),
  );
  if (derivation) add("derivation", derivationLines(derivation, messages, sources));
  return found;
}

/** The sentences of a finding, its numbers filled in. */
export function findingText({ code, evidence, limit }: Finding, messages: Messages): string {
  return sentence(messages.finding[code], voiceOf(messages), { ...evidence, limit: limit?.value });
}

function sentence([title, meaning]: Sentence, messages: Voice, parameters: Parameters = {}): string {
  const [end, between] = messages.sentence;
  return title + end + (meaning ? between + fillTemplate(messages, meaning, parameters) : "");
}

function refusalText({ about, code, reason, wouldHelp }: NamedRefusal, messages: Voice): string {
  const { refusal = {} } = messages;
  const own = Object.hasOwn(refusal, code) ? refusal[code] : undefined;
  const [why, help] = own ?? [reason, wouldHelp];
  return fill(messages, "refusal", { about, reason: why, wouldHelp: help });
}

function titleLines({ id, inspectedOn }: Evaluation, messages: Voice): ReportLine[] {
  const lines: ReportLine[] = [];
  if (id !== undefined && clean(id) !== "") lines.push(line(fill(messages, "reference", { id })));
  if (inspectedOn !== undefined) lines.push(line(fill(messages, "inspected", { day: inspectedOn })));
  return lines;
}

function identityLines({ identity }: Evaluation, messages: Voice): ReportLine[] {
  const { chemistry, nominalVolts, label, rating, capacityAmpereHours, reserveCapacityMinutes } = identity;
  const lines = [
    line(fill(messages, "identity", { chemistry: messages.chemistry[chemistry], nominalVolts })),
  ];
  if (rating) {
    const { from, standard } = rating;
    // The estimate behind a type code is not symmetric about its value.
    const interval = from === "type-estimate" ? label?.estimatedRating?.interval : undefined;
    const amperes = about(rating.amperes, "A", messages, interval);
    lines.push(line(fill(messages, "rating", { amperes, standard: messages.standard[standard], from })));
  }
  if (capacityAmpereHours)
    lines.push(line(fill(messages, "capacity", { amount: about(capacityAmpereHours, "Ah", messages) })));
  if (reserveCapacityMinutes)
    lines.push(line(fill(messages, "reserve", { amount: about(reserveCapacityMinutes, "min", messages) })));
  if (label) lines.push(line(fill(messages, "label", { text: label.text, scheme: label.scheme })));
  return lines;
}

// A printed figure as it is printed; an estimate with the interval that covers it with about 95 %.
function about(estimate: Estimate, unit: string, messages: Voice, interval = interval95(estimate)): string {
  return estimate.standardUncertainty === 0
    ? asPrinted(estimate.value, unit, messages)
    : `${fill(messages, "about", { value: quantity(estimate.value, unit, messages) })} (${range(interval, unit, messages)})`;
}

function chargeLines({ charge }: Evaluation, messages: Voice): ReportLine[] {
  if (!charge) return [line(messages.phrase.unknown)];
  const { stateOfCharge, interval, bound, from } = charge;
  return [
    line(
      bound === "upper"
        ? fill(messages, "chargeBound", { upper: interval.upper, from })
        : fill(messages, "charge", {
            share: stateOfCharge.value,
            interval: shareRange(interval, 1, messages),
            from,
          }),
    ),
  ];
}

function abilityLines({ ability, loadTest, verdict, findings }: Evaluation, messages: Voice): ReportLine[] {
  const lines = ability.map((one) => line(abilityText(one, messages)));
  const limitOf = (...codes: readonly string[]): number | undefined =>
    findings.find((one) => codes.includes(one.code))?.limit?.value;
  const { serviceableProbability, unserviceableProbability } = verdict;
  if (serviceableProbability !== undefined) {
    const limit = limitOf("ability-above", "ability-between", "ability-worn");
    lines.push(line(fill(messages, "reaches", { limit, probability: serviceableProbability })));
  }
  if (unserviceableProbability !== undefined && unserviceableProbability >= 0.001) {
    const probability = unserviceableProbability;
    lines.push(line(fill(messages, "below", { limit: limitOf("ability-below"), probability })));
  }
  if (serviceableProbability !== undefined) lines.push(line(messages.phrase.limits));
  if (loadTest) {
    const { limitVolts: limit, marginVolts, passProbability: probability, invalidReasons } = loadTest;
    const margin = marginVolts.value;
    const phrase = margin < 0 ? "loadBelow" : "loadAbove";
    lines.push(line(fill(messages, phrase, { margin, limit, probability })));
    if (invalidReasons.length > 0)
      lines.push(line(fill(messages, "loadFaults", { faults: invalidReasons.join(", ") })));
  }
  return lines.length > 0 ? lines : [line(messages.phrase.none)];
}

function abilityText(section: AbilitySection, messages: Voice): string {
  const { from, ratio, interval, amperes, standard, converted } = section;
  return fill(messages, "ability", {
    from,
    ratio: ratio.value,
    // A strong battery exceeds its rating; nothing falls below zero.
    interval: shareRange(interval, Number.POSITIVE_INFINITY, messages),
    amperes: amperes?.value,
    standard: standard && messages.standard[standard],
    converted: converted ? "converted" : undefined,
  });
}

function startLines({ coldStart }: Evaluation, messages: Voice): ReportLine[] {
  if (!coldStart) return [];
  const { lowestStartCelsius: lowest, intervalCelsius, atColdestMorning, assumptions } = coldStart;
  const lines = [
    line(
      "bound" in lowest
        ? fill(messages, lowest.bound === "above" ? "startAbove" : "startBelow", { celsius: lowest.celsius })
        : fill(messages, "startDownTo", {
            celsius: lowest.value,
            interval: celsiusRange(intervalCelsius, messages),
          }),
    ),
  ];
  if (atColdestMorning && !("refused" in atColdestMorning)) {
    const { abilityAmperes, demandAmperes, startProbability: probability } = atColdestMorning;
    const [ability, demand] = [abilityAmperes.value, demandAmperes.value];
    lines.push(line(fill(messages, "coldMorning", { ability, demand, probability })));
  }
  lines.push(line(fill(messages, "assumed", { assumptions: assumptions.join(", ") })));
  return lines;
}

// An end that lies outside the temperature tables is not known.
function celsiusRange({ lower, upper }: Partial<Interval>, messages: Voice): string | undefined {
  if (lower !== undefined && upper !== undefined) return range({ lower, upper }, "°C", messages);
  const end = lower ?? upper;
  if (end === undefined) return undefined;
  return fill(messages, lower === undefined ? "atMost" : "atLeast", {
    value: quantity(end, "°C", messages),
  });
}

function verdictLines(
  { verdict: { condition, action, decidedBy } }: Evaluation,
  messages: Voice,
): ReportLine[] {
  const reason = Object.hasOwn(messages.decidedBy, decidedBy)
    ? messages.decidedBy[decidedBy as DecidingRule]
    : decidedBy;
  return [
    line(sentence(messages.condition[condition], messages)),
    line(sentence(messages.action[action], messages)),
    line(fill(messages, "reason", { reason })),
  ];
}

const SEVERITIES: readonly Severity[] = ["hazard", "defect", "warning", "note"];

function findingLines({ findings }: Evaluation, messages: Voice): ReportLine[] {
  return SEVERITIES.flatMap((severity) => {
    const items = findings
      .filter((one) => one.severity === severity)
      .map((one) => line(findingText(one, messages), "item"));
    return items.length > 0
      ? [line(fill(messages, "group", { name: messages.severity[severity] }), "group"), ...items]
      : [];
  });
}

function stepLines({ nextSteps, chargePlan }: Evaluation, messages: Voice): ReportLine[] {
  return nextSteps.map(({ code, parameters }) => {
    if (code !== "charge") return line(fillTemplate(messages, messages.nextStep[code], parameters), "step");
    const text = fillTemplate(messages, messages.nextStep.charge, parameters);
    if (!chargePlan) return line(text, "step");
    const { ceilingVolts, judgeAfterHours, stop } = chargePlan;
    // A deeply discharged battery is charged for longer than the usual limit.
    const longest = judgeAfterHours
      ? undefined
      : stop.find((one) => one.code === "longest-slow-charge")?.value;
    const limits = Object.fromEntries(stop.map((one) => [one.code, one.value]));
    return line(
      `${text}${messages.sentence[1]}${fill(messages, "chargePlan", { ...limits, ceilingVolts, judgeAfterHours, longest })}`,
      "step",
    );
  });
}
