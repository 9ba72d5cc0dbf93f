import type { Evaluation } from "../evaluate/index.js";
import type { Estimate, Interval } from "../numeric/index.js";

/** What a cell holds: a number or an amount stands bare, a text between quotes. */
export type Cell = number | { readonly amount: string } | string | undefined;

/** One column: its name, with the unit where it has one, and what stands in it. */
export type Column = readonly [name: string, cell: (evaluation: Evaluation) => Cell];

const estimate = (name: string, of: (evaluation: Evaluation) => Estimate | undefined): Column[] => [
  [name, (e) => of(e)?.value],
  [`${name}StandardUncertainty`, (e) => of(e)?.standardUncertainty],
];
const list = (codes: readonly string[]): string => codes.join(" ");
const amount = (text: string | undefined): Cell => (text === undefined ? undefined : { amount: text });
const settlement = ({ warranty }: Evaluation) => warranty?.settlement;
const lowest = ({ coldStart }: Evaluation) => coldStart?.lowestStartCelsius;
const morning = ({ coldStart }: Evaluation) => {
  const one = coldStart?.atColdestMorning;
  return one && "startProbability" in one ? one : undefined;
};
// Which ends of the 95 % interval the temperature tables reach.
const endsOf = ({ lower, upper }: Partial<Interval>): string => {
  if (lower === undefined) return upper === undefined ? "none" : "upper";
  return upper === undefined ? "lower" : "two-sided";
};
const reading = ({ age }: Evaluation) => age?.dateCode.readings[0];

/** Columns of a row, in their order; new ones are added at the end only. */
export const csvColumns: readonly Column[] = [
  ["schemaVersion", (e) => e.schemaVersion],
  ["id", (e) => e.id],
  ["inspectedOn", (e) => e.inspectedOn],
  ["condition", (e) => e.verdict.condition],
  ["action", (e) => e.verdict.action],
  ["decidedBy", (e) => e.verdict.decidedBy],
  ["serviceableProbability", (e) => e.verdict.serviceableProbability],
  ["unserviceableProbability", (e) => e.verdict.unserviceableProbability],
  ["trust", (e) => e.trust.level],
  ["chemistry", (e) => e.identity.chemistry],
  ["nominalVolts", (e) => e.identity.nominalVolts],
  ["labelText", (e) => e.identity.label?.text],
  ["labelScheme", (e) => e.identity.label?.scheme],
  ["ratingStandard", (e) => e.identity.rating?.standard],
  ["ratingFrom", (e) => e.identity.rating?.from],
  ...estimate("ratingAmperes", (e) => e.identity.rating?.amperes),
  ...estimate("capacityAmpereHours", (e) => e.identity.capacityAmpereHours),
  ...estimate("reserveCapacityMinutes", (e) => e.identity.reserveCapacityMinutes),
  ["chargeFrom", (e) => e.charge?.from],
  ["chargeBound", (e) => e.charge?.bound],
  ...estimate("stateOfCharge", (e) => e.charge?.stateOfCharge),
  ["stateOfChargeLower", (e) => (e.charge?.bound === "upper" ? undefined : e.charge?.interval.lower)],
  ["stateOfChargeUpper", (e) => e.charge?.interval.upper],
  ["abilityFrom", (e) => e.ability[0]?.from],
  ["abilityStandard", (e) => e.ability[0]?.standard],
  ...estimate("abilityRatio", (e) => e.ability[0]?.ratio),
  ["abilityRatioLower", (e) => e.ability[0]?.interval.lower],
  ["abilityRatioUpper", (e) => e.ability[0]?.interval.upper],
  ...estimate("abilityAmperes", (e) => e.ability[0]?.amperes),
  ["loadTestLimitVolts", (e) => e.loadTest?.limitVolts],
  ...estimate("loadTestMarginVolts", (e) => e.loadTest?.marginVolts),
  ["loadTestPassProbability", (e) => e.loadTest?.passProbability],
  ["loadTestInvalidReasons", (e) => e.loadTest && list(e.loadTest.invalidReasons)],
  [
    "lowestStartCelsius",
    (e) => {
      const one = lowest(e);
      return one && ("bound" in one ? one.celsius : one.value);
    },
  ],
  [
    "lowestStartCelsiusStandardUncertainty",
    (e) => {
      const one = lowest(e);
      return one && "value" in one ? one.standardUncertainty : undefined;
    },
  ],
  [
    "lowestStartBound",
    (e) => {
      const one = lowest(e);
      return one && ("bound" in one ? one.bound : endsOf(e.coldStart!.intervalCelsius));
    },
  ],
  ...estimate("coldMorningAbilityAmperes", (e) => morning(e)?.abilityAmperes),
  ...estimate("coldMorningDemandAmperes", (e) => morning(e)?.demandAmperes),
  ["coldMorningStartProbability", (e) => morning(e)?.startProbability],
  ["dateCodeText", (e) => e.age?.dateCode.text],
  ["dateCodeReadings", (e) => e.age?.dateCode.readings.length],
  ["madeFrom", (e) => reading(e)?.from],
  ["madeTo", (e) => reading(e)?.to],
  ["ageDaysLower", (e) => e.age?.ageDays.lower],
  ["ageDaysUpper", (e) => e.age?.ageDays.upper],
  ["warrantyAnswer", (e) => e.warranty?.eligibility.answer],
  ["warrantyOutcome", (e) => settlement(e)?.outcome],
  ["currency", (e) => settlement(e)?.currency],
  ["rebateAmount", (e) => amount(settlement(e)?.rebate)],
  ["chargeAmount", (e) => amount(settlement(e)?.charge)],
  ["totalAmount", (e) => amount(settlement(e)?.total)],
  ["lastCoveredDay", (e) => settlement(e)?.lastCoveredDay],
  ["findings", (e) => list(e.findings.map((one) => one.code))],
  ["cautions", (e) => list(e.cautions.map((one) => one.code))],
  ["nextSteps", (e) => list(e.nextSteps.map((one) => one.code))],
  ["causes", (e) => e.causes && list(e.causes.map((one) => `${one.code}:${one.support}`))],
  ["refusals", (e) => list(e.refusals.map((one) => `${one.about}:${one.code}`))],
];
