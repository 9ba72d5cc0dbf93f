import type {
  AbilitySection,
  ChargeSection,
  Evaluation,
  NextStep,
  ReferenceCranking,
  VehicleReading,
  VehicleSection,
} from "../evaluate/index.js";
import type { Standing } from "../sources/index.js";
import type {
  Action,
  CauseCode,
  CauseSupport,
  CautionCode,
  Condition,
  DamageSign,
  FindingCode,
  SettlingStep,
  Severity,
} from "../verdict/index.js";
import type {
  ElapsedTerm,
  Eligibility,
  Settlement,
  SettlementLine,
  SettlementReason,
  WarrantyTerms,
} from "../warranty/index.js";

/** The questions a report answers, in the order of their importance at the counter. */
export type Question =
  | "what"
  | "trust"
  | "charge"
  | "ability"
  | "start"
  | "vehicle"
  | "now"
  | "cause"
  | "noticed"
  | "next"
  | "hurt"
  | "age"
  | "warranty"
  | "refused"
  | "derivation";

/** A title that stands alone, without placeholders, and what it means here. */
export type Sentence = readonly [title: string, meaning?: string];

/** Rules that can decide; `low-electrolyte` and `requirement` only leave findings. */
export type DecidingRule =
  | "damaged-case"
  | "frozen"
  | "low-electrolyte"
  | "system-voltage"
  | "scattered-readings"
  | "contact-spread"
  | "in-vehicle-reading"
  | "missing-cell"
  | "cell-spread"
  | "too-little-charge"
  | "conflicting-evidence"
  | "load-test"
  | "ability"
  | "no-ability-evidence";

/** Where an amount of the warranty ledger comes from. */
export type ExplanationCode =
  | "price-paid"
  | "price-list-at-purchase"
  | "price-list-today"
  | "free-period"
  | "statutory-floor"
  | "prorated-from-purchase"
  | "prorated-from-end-of-free-period"
  | "step-schedule"
  | "price-less-rebate"
  | "no-charge"
  | "core-deposit-due"
  | "core-deposit-refunded"
  | "core-deposit-waived"
  | "tax-on-charge"
  | "tax-on-charge-plus-retained-value"
  | "cash-rounding"
  | "total";

/** Why a load test does not count. */
export type LoadTestFault =
  | "charge-below-75-percent"
  | "charge-unknown"
  | "temperature-unknown"
  | "duration-too-short"
  | "duration-too-long"
  | "load-too-low"
  | "load-too-high"
  | "load-basis-unknown"
  | "just-charged";

type Starting = NonNullable<VehicleSection["starting"]>;
type Draw = NonNullable<VehicleSection["draw"]>;
type DateCode = NonNullable<Evaluation["age"]>["dateCode"];

/** Codes that stand as words inside a sentence. An unknown code is shown with blanks for its hyphens. */
export type Word =
  | DamageSign
  | LoadTestFault
  | DateCode["settledBy"][number]
  | DateCode["readings"][number]["reasons"][number]
  | DateCode["notes"][number]
  | AbilitySection["from"]
  | ChargeSection["from"]
  | ReferenceCranking["from"]
  | NonNullable<Evaluation["coldStart"]>["assumptions"][number]
  | Standing
  | WarrantyTerms["monthCount"]
  | ElapsedTerm["unit"]
  | VehicleReading["code"]
  | VehicleReading["outcome"]
  | Starting["reasons"][number]["lookAt"][number]
  | NonNullable<Draw["flatBattery"]>["code"]
  | CauseCode
  | SettlingStep
  // why a reading in the vehicle is doubted, and why a charging voltage is not judged
  | "voltage-drop"
  | "consumer-on"
  | "computer-controlled"
  | "control-unknown"
  | "regulator-temperature-unknown"
  | "charge-current-above-10-a"
  | "engine-below-2500-rpm"
  // reasons to take a reading with care
  | "battery-not-proved"
  | "method-of-limit-not-printed"
  | "meters-differ"
  | "converted"
  | "passed"
  | "failed"
  // why a comparison or a prediction is missing
  | "no-rating"
  | "iec-edition-unstated"
  | "hca-not-a-rating"
  | "en-level-2"
  | "en-level-unstated"
  | "iec-test-not-read"
  | "standard-unstated"
  | "jis-before-2006"
  | "test-not-established"
  | "no-direct-conversion"
  | "no-ability"
  | "outside-tables"
  | "temperature-outside-table"
  // what was asked for and refused
  | "identity.labelCode"
  | "identity.dateCode"
  | "measurements.restVolts"
  | "measurements.cellGravities"
  | "measurements.cranking"
  | "measurements.resistance"
  | "measurements.conductance"
  | "measurements.loadTest"
  | "requirement"
  | "chargePlan"
  | "vehicle"
  | "vehicle.starting.crankingVolts"
  | "vehicle.starting.crankingAmperes"
  | "vehicle.starting.positiveDropVolts"
  | "vehicle.starting.groundDropVolts"
  | "vehicle.starting.solenoidDropVolts"
  | "vehicle.charging.regulatedVolts"
  | "vehicle.charging.positiveDropVolts"
  | "vehicle.charging.groundDropVolts"
  | "vehicle.charging.ripple"
  | "vehicle.draw";

/** Sentences and half-sentences that hold a report together. */
export type Phrase =
  | "title"
  | "reference"
  | "inspected"
  | "identity"
  | "label"
  | "rating"
  | "capacity"
  | "reserve"
  | "about"
  | "range"
  | "atLeast"
  | "atMost"
  | "anything"
  | "group"
  | "unknown"
  | "none"
  | "charge"
  | "chargeBound"
  | "ability"
  | "reaches"
  | "below"
  | "limits"
  | "loadAbove"
  | "loadBelow"
  | "loadFaults"
  | "startDownTo"
  | "startBelow"
  | "startAbove"
  | "coldMorning"
  | "assumed"
  | "reason"
  | "chargePlan"
  | "vehicleReading"
  | "otherSources"
  | "care"
  | "standing"
  | "flatBattery"
  | "because"
  | "dateCode"
  | "reading"
  | "period"
  | "span"
  | "years"
  | "months"
  | "overall"
  | "ruledOut"
  | "note"
  | "more"
  | "term"
  | "amount"
  | "replacement"
  | "worst"
  | "best"
  | "shelf"
  | "refusal"
  | "stepResult"
  | "stepSource"
  | "plusMinus"
  | "noDerivation"
  | "dayTitle"
  | "evaluated"
  | "unusable"
  | "byCondition"
  | "byAction"
  | "byChemistry"
  | "byRatingStandard"
  | "byFinding"
  | "pictures"
  | "step"
  | "stepsInBrackets";

/**
 * Everything a report says, in one language. A template holds `{name}`, formatted as `{name:unit}` says: `V A Ah min
 * h °C % mA mV mΩ m m³ m³/h cm²` with the unit, `%1` percent with a decimal, `c` a share of charge shown within 0..100 %, `-V` with the sign
 * turned, `g` gravity, `n` whole number, `d` one decimal, `p` probability, `w` codes put into words, `s` a decimal in text as it is, `date` a calendar day. `{name#one=day|other=days}` is the form that the language's plural rule (Intl.PluralRules) picks for the number. `[…]` is left out when a name in it has no value.
 */
export interface Messages {
  /** BCP 47 tag: decides marks in numbers, the form of dates and plurals. */
  readonly language: string;
  readonly direction: "ltr" | "rtl";
  /** Between the entries of a list, with its blank. */
  readonly comma: string;
  /** Between parts of a list that hold commas themselves, with its blank. */
  readonly semicolon: string;
  /** Ends a title that a sentence follows, and what stands between two sentences. */
  readonly sentence: readonly [end: string, between: string];
  /** How the first day of a month is written before the month's name. */
  readonly firstDay: string;
  /** Probability: of 100, of 1000, above 999 and below 1 of 1000; `{n}` is the count. */
  readonly chance: readonly [hundred: string, thousand: string, above: string, below: string];
  readonly question: Readonly<Record<Question, string>>;
  readonly severity: Readonly<Record<Severity, string>>;
  readonly chemistry: Readonly<Record<Evaluation["identity"]["chemistry"], string>>;
  /** Rating standards as printed, with the edition where it is known. */
  readonly standard: Readonly<Record<ReferenceCranking["standard"], string>>;
  readonly condition: Readonly<Record<Condition, Sentence>>;
  readonly action: Readonly<Record<Action, Sentence>>;
  readonly decidedBy: Readonly<Record<DecidingRule, string>>;
  readonly trust: Readonly<Record<Evaluation["trust"]["level"], string>>;
  readonly finding: Readonly<Record<FindingCode, Sentence>>;
  readonly cause: Readonly<Record<CauseCode, string>>;
  readonly support: Readonly<Record<CauseSupport, string>>;
  readonly caution: Readonly<Record<CautionCode, string>>;
  readonly nextStep: Readonly<Record<NextStep["code"], string>>;
  readonly eligibility: Readonly<Record<Eligibility["answer"], string>>;
  readonly outcome: Readonly<Record<Settlement["outcome"], string>>;
  readonly settlement: Readonly<Record<SettlementReason, string>>;
  readonly line: Readonly<Record<SettlementLine["kind"], string>>;
  readonly explanation: Readonly<Record<ExplanationCode, string>>;
  readonly word: Readonly<Record<Word, string>>;
  readonly phrase: Readonly<Record<Phrase, string>>;
  /**
   * Why a computation was refused and what would help, by the refusal's code, without placeholders. English leaves it out:
   * a refusal brings its English along, which also stands in for a code that is not listed.
   */
  readonly refusal?: Readonly<Partial<Record<string, readonly [reason: string, wouldHelp: string]>>>;
}
