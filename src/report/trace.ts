import type { Evaluation } from "../evaluate/index.js";
import type { DerivationStep } from "../sources/index.js";
import type { Finding, Severity } from "../verdict/index.js";
import type { Figures } from "./line.js";
import { english } from "./messages.en.data.js";
import type { Messages, Question } from "./messages.js";
import { type ReportSection, reportSections } from "./sections.js";

/** A worked-out figure of the report and the steps of the derivation that yield it. */
export interface TracedFigure {
  readonly question: Question;
  /** Line of the answer, from 0. */
  readonly line: number;
  /** What it is, such as `charge.stateOfCharge`. */
  readonly figure: string;
  /** Unrounded; an amount or a period of days as text. */
  readonly value: number | string;
  /** Numbers of the steps, from 1; empty where the derivation has none for it. */
  readonly steps: readonly number[];
}

/**
 * Where the figures of a report come from: each worked-out figure with the steps of the derivation that yield exactly it.
 *
 * In scope: charge, ability, load test, cold start, age, money, charging figures, vehicle, and what findings repeat of them.
 * What was given, printed or chosen as a limit is no worked-out figure. A step counts only where its result, or the lower
 * end that it names, is the very number shown; a figure without one is listed with none.
 *
 * @param evaluation from `evaluate(record, { explain: true })`; without a derivation every list of steps is empty
 * @param options catalogue: it decides nothing but the lines there are, default English
 * @returns figures in the order of the report
 * @example
 * ```ts
 * import { evaluate } from "crankworthy";
 * import { traceReport } from "crankworthy/report";
 * const evaluation = evaluate({
 *   identity: { chemistry: "flooded", rating: { standard: "sae-j537", amperes: 600 } },
 *   measurements: { cranking: { standard: "sae-j537", amperes: 480 } },
 * }, { explain: true });
 * const ratio = traceReport(evaluation).find((one) => one.figure === "ability.ratio");
 * ratio?.value; // => 0.8
 * evaluation.derivation?.[ratio.steps[0] - 1]?.quantity; // => "ratio to rating"
 * ```
 */
export function traceReport(
  evaluation: Evaluation,
  { messages = english }: { readonly messages?: Messages } = {},
): TracedFigure[] {
  return traceSections(evaluation, reportSections(evaluation, messages), messages);
}

/** The part of {@link traceReport} that has the sections of this catalogue already. */
export function traceSections(
  evaluation: Evaluation,
  sections: readonly ReportSection[],
  messages: Messages,
): TracedFigure[] {
  const others = figuresByQuestion(evaluation, messages);
  return sections.flatMap(({ question, lines }) =>
    question === "title" || question === "derivation"
      ? []
      : lines.flatMap((one, index) =>
          Object.entries(one.figures ?? others[question]?.[index] ?? {}).flatMap(([figure, value]) =>
            value === undefined
              ? []
              : [
                  {
                    question,
                    line: index,
                    figure,
                    value,
                    steps: stepsOf(figure, value, one.figures, evaluation),
                  },
                ],
          ),
        ),
  );
}

/** Steps that can yield a figure, by their quantity. A figure that is not listed is looked for by its number alone. */
const QUANTITY: Readonly<Record<string, RegExp>> = {
  "what.capacity": /^capacity/,
  "what.reserve": /^reserve capacity/,
  "what.rating": /^(?:rated|reference) cranking current/,
  "charge.stateOfCharge": /^state of charge$/,
  "charge.lower": /^state of charge, 95 % interval$/,
  "charge.upper": /^state of charge, 95 % interval$/,
  "ability.ratio": /^(?:ratio to rating|ability against the reference)$/,
  "ability.lower": /^ability by .*, 95 % interval$/,
  "ability.upper": /^ability by .*, 95 % interval$/,
  "ability.amperes": /^cranking (?:reading|current)/,
  "ability.serviceable": /reaches the serviceable limit$/,
  "ability.notServiceable": /reaches the serviceable limit$/,
  "ability.unserviceable": /below the unserviceable limit$/,
  "loadTest.limit": /^load-test limit$/,
  "loadTest.margin": /^load-test margin$/,
  "loadTest.pass": /^load-test pass probability$/,
  "start.lowest": /^lowest temperature of a start$/,
  "start.lower": /^lowest temperature of a start, lower end/,
  "start.upper": /^lowest temperature of a start, upper end/,
  "start.ability": /^cranking ability on the coldest morning$/,
  "start.demand": /^cranking demand on the coldest morning$/,
  "start.probability": /^probability of a start on the coldest morning$/,
  "vehicle.margin": /, margin to the limit$/,
  "vehicle.probabilityWithin": /, probability of keeping to the limit$/,
  "vehicle.standingDaysLeast": /^days until no start$/,
  "vehicle.standingDaysMost": /^days until no start$/,
  "vehicle.drainSuffices": /^which explanation/,
  "age.reading": /^manufacture period$/,
  "age.ofReading": /^age/,
  "age.oldest": /^age, oldest/,
  "age.youngest": /^age, oldest/,
  "next.fromAmperes": /^charging current, at least$/,
  "next.toAmperes": /^charging current, at most$/,
  "next.endVolts": /^end-of-charge voltage$/,
  "next.fromHours": /^charging hours, at least$/,
  "next.toHours": /^charging hours, at most$/,
  "next.judgeAfterHours": /^hours before a deeply discharged/,
  "next.electrolyte-temperature": /^end of a charge, electrolyte-temperature$/,
  "next.equal-hourly-readings": /^end of a charge, equal-hourly-readings$/,
  "next.charge-current": /^end of a charge, charge-current$/,
  "next.longest-slow-charge": /^end of a charge, longest-slow-charge$/,
  "warranty.used": /^elapsed /,
  "warranty.basis": /^basis$/,
  "warranty.rebate": /^rebate$/,
  "warranty.charge": /^charge$/,
  "warranty.core": /^core$/,
  "warranty.tax": /^tax$/,
  "warranty.cash-rounding": /^cash-rounding$/,
  "warranty.total": /^total$/,
};

function stepsOf(
  figure: string,
  value: number | string,
  beside: Figures | undefined,
  { derivation = [] }: Evaluation,
): number[] {
  const quantity = QUANTITY[figure];
  // Without a name only a number that cannot be there by chance is the same number.
  if (!quantity && !unmistakable(value)) return [];
  const margin = figure === "vehicle.probabilityWithin" ? beside?.["vehicle.margin"] : undefined;
  const found = derivation.findLastIndex(
    (step) =>
      (quantity?.test(step.quantity) ?? true) &&
      yields(step, figure === "ability.notServiceable" ? 1 - Number(value) : value) &&
      (margin === undefined || step.inputs.margin === margin),
  );
  return found < 0 ? [] : [found + 1];
}

function yields({ result, inputs }: DerivationStep, value: number | string): boolean {
  if (result === value || inputs.lower === value || inputs.youngestDays === value) return true;
  // The complement of a probability is exact to the last digit but one.
  return typeof result === "number" && typeof value === "number" && Math.abs(result - value) < 1e-15;
}

/** A number of so many digits that two equal ones are the same one. */
export function unmistakable(value: number | string): boolean {
  return typeof value === "number" && String(value).replace(/e.*|\D|^0+/g, "").length > 7;
}

const severities: readonly Severity[] = ["hazard", "defect", "warning", "note"];

// Figures of the lines that sections.ts makes, in their order; the tests hold each against the text of its line.
function figuresByQuestion(
  evaluation: Evaluation,
  messages: Messages,
): { readonly [Key in Question]?: readonly Figures[] | undefined } {
  const { identity, charge, ability, loadTest, coldStart, verdict, findings, nextSteps, chargePlan } =
    evaluation;
  const { rating, capacityAmpereHours: capacity, reserveCapacityMinutes: reserve } = identity;
  const { serviceableProbability: serviceable, unserviceableProbability: unserviceable } = verdict;
  const morning = coldStart?.atColdestMorning;
  return {
    what: [
      {},
      ...(rating ? [rating.from === "printed" ? {} : { "what.rating": rating.amperes.value }] : []),
      ...(capacity ? [capacity.standardUncertainty === 0 ? {} : { "what.capacity": capacity.value }] : []),
      ...(reserve ? [reserve.standardUncertainty === 0 ? {} : { "what.reserve": reserve.value }] : []),
    ],
    charge: charge && [
      charge.bound === "upper"
        ? { "charge.upper": charge.interval.upper }
        : {
            "charge.stateOfCharge": charge.stateOfCharge.value,
            "charge.lower": charge.interval.lower,
            "charge.upper": charge.interval.upper,
          },
    ],
    ability: [
      ...ability.map(({ ratio, interval: { lower, upper }, amperes }) => ({
        "ability.ratio": ratio.value,
        "ability.lower": lower,
        "ability.upper": upper,
        "ability.amperes": amperes?.value,
      })),
      ...(serviceable === undefined ? [] : [{ "ability.serviceable": serviceable }]),
      ...(unserviceable === undefined || unserviceable < 0.001
        ? []
        : [{ "ability.unserviceable": unserviceable }]),
      // The sentence on the limits.
      ...(serviceable === undefined ? [] : [{}]),
      ...(loadTest
        ? [
            {
              "loadTest.margin": loadTest.marginVolts.value,
              "loadTest.limit": loadTest.limitVolts,
              "loadTest.pass": loadTest.passProbability,
            },
          ]
        : []),
    ],
    start: coldStart && [
      {
        ...("value" in coldStart.lowestStartCelsius && {
          "start.lowest": coldStart.lowestStartCelsius.value,
          // Shown together or not at all.
          ...(coldStart.intervalCelsius.lower !== undefined &&
            coldStart.intervalCelsius.upper !== undefined && {
              "start.lower": coldStart.intervalCelsius.lower,
              "start.upper": coldStart.intervalCelsius.upper,
            }),
        }),
      },
      ...(morning && "startProbability" in morning
        ? [
            {
              "start.ability": morning.abilityAmperes.value,
              "start.demand": morning.demandAmperes.value,
              "start.probability": morning.startProbability,
            },
          ]
        : []),
    ],
    noticed: severities.flatMap((severity) => {
      const items = findings
        .filter((one) => one.severity === severity)
        .map((one) => figuresOfFinding(one, messages));
      return items.length > 0 ? [{}, ...items] : [];
    }),
    next: nextSteps.map(({ code, parameters }) => {
      if (code !== "charge") return {};
      const { fromAmperes, toAmperes, endVolts, fromHours, toHours } = parameters;
      const shown = { fromAmperes, toAmperes, endVolts, fromHours, toHours };
      const { judgeAfterHours, stop = [] } = chargePlan ?? {};
      const limits = stop.filter(
        (one) => one.code !== "terminal-voltage" && !(one.code === "longest-slow-charge" && judgeAfterHours),
      );
      return Object.fromEntries(
        [
          ...Object.entries({ ...shown, judgeAfterHours }),
          ...limits.map((one): [string, number] => [one.code, one.value]),
        ].map(([name, value]) => [`next.${name}`, value]),
      );
    }),
  };
}

function figuresOfFinding({ code, evidence }: Finding, messages: Messages): Figures {
  const [, meaning = ""] = messages.finding[code];
  const named: [RegExp, string, string][] = [
    [/^ability-(?:above|between|worn|below)$/, "ratio", "ability.ratio"],
    [/^ability-(?:above|between|not-judged)$/, "probability", "ability.serviceable"],
    [/^ability-worn$/, "probability", "ability.notServiceable"],
    [/^ability-below$/, "probability", "ability.unserviceable"],
    [/^load-test-/, "marginVolts", "loadTest.margin"],
    [/^load-test-/, "probability", "loadTest.pass"],
    [/^requirement-/, "probability", "start.probability"],
    [/^charge-low$/, "stateOfCharge", "charge.stateOfCharge"],
  ];
  return Object.fromEntries(
    Object.entries(evidence).flatMap(([key, value]) => {
      const name = named.find(([codes, field]) => codes.test(code) && field === key)?.[2];
      if (!meaning.includes(`{${key}`)) return [];
      return name !== undefined || unmistakable(value) ? [[name ?? `${code}.${key}`, value]] : [];
    }),
  );
}
