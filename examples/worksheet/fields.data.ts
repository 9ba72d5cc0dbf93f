// The questions of the sheet. A field's path is its place in the record, so an issue of the library names the field it belongs to.
import { ratingStandards } from "crankworthy";

interface Common {
  readonly path: string;
  /** Stands in the fold "more" of its group. */
  readonly more?: true;
}

/** One number, with a slider where there is a usual span: from, to, step. */
export interface NumberField extends Common {
  readonly kind: "number" | "numbers";
  readonly unit: string;
  readonly slide?: readonly [from: number, to: number, step: number];
  /** A list in the record even when there is one entry. */
  readonly always?: true;
}

export interface TextField extends Common {
  readonly kind: "text" | "date" | "money";
  readonly unit?: string;
}

export interface ChoiceField extends Common {
  readonly kind: "choice";
  /** Where the words of the options come from. */
  readonly words: "chemistry" | "standard" | "page" | "code";
  readonly options: readonly string[];
  /** What an option is in the record. */
  readonly as?: "number" | "boolean";
}

/** A box to tick; left empty it is left out of the record, or `false` with `always`. */
export interface TickField extends Common {
  readonly kind: "tick";
  readonly always?: true;
}

/** Several boxes that make a list. */
export interface SetField extends Common {
  readonly kind: "set";
  readonly options: readonly string[];
  readonly always?: true;
}

export type Field = NumberField | TextField | ChoiceField | TickField | SetField;

export interface Group {
  readonly id: string;
  readonly fields: readonly Field[];
  /** The whole group is in the record only while the box of this path is ticked. */
  readonly onlyWith?: string;
}

const chemistries = ["flooded", "flooded-calcium", "efb", "agm", "gel", "unknown"] as const;
const standards = Object.keys(ratingStandards);
const labelSchemes = ["etn", "din-72310", "jis-d-5301", "jis-d-5306", "en-50342-2", "bci"] as const;
const bases = ["own-baseline", "published-for-type", "fleet-median"] as const;

export const groups = [
  {
    id: "label",
    fields: [
      { kind: "text", path: "id" },
      { kind: "choice", path: "identity.chemistry", words: "chemistry", options: chemistries },
      { kind: "choice", path: "identity.rating.standard", words: "standard", options: standards },
      { kind: "number", path: "identity.rating.amperes", unit: "A", slide: [200, 1200, 5] },
      { kind: "number", path: "identity.capacityAmpereHours", unit: "Ah", slide: [20, 220, 1] },
      { kind: "text", path: "identity.dateCode.text" },
      { kind: "number", path: "identity.dateCode.vehicleYear", unit: "", more: true },
      { kind: "number", path: "identity.reserveCapacityMinutes", unit: "min", more: true },
      {
        kind: "choice",
        path: "identity.nominalVolts",
        words: "code",
        options: ["6", "12", "24"],
        as: "number",
        more: true,
      },
      { kind: "choice", path: "identity.labelCode.scheme", words: "code", options: labelSchemes, more: true },
      { kind: "text", path: "identity.labelCode.text", more: true },
      { kind: "date", path: "identity.activatedOn", more: true },
    ],
  },
  {
    id: "history",
    fields: [
      { kind: "date", path: "conditions.inspectedOn" },
      { kind: "number", path: "conditions.temperatureCelsius", unit: "°C", slide: [-30, 50, 1] },
      {
        kind: "choice",
        path: "conditions.lastEvent",
        words: "page",
        options: ["charge", "drive", "discharge"],
      },
      { kind: "number", path: "conditions.hoursAtRest", unit: "h", slide: [0, 72, 0.5] },
      { kind: "choice", path: "conditions.place", words: "page", options: ["bench", "vehicle"] },
      { kind: "tick", path: "conditions.chargeCompleted" },
      {
        kind: "choice",
        path: "conditions.temperatureMethod",
        words: "page",
        options: ["electrolyte", "case-contact", "case-infrared", "ambient"],
        more: true,
      },
      {
        kind: "choice",
        path: "conditions.surfaceChargeRemoval",
        words: "page",
        options: ["none", "lights", "load"],
        more: true,
      },
      { kind: "number", path: "conditions.minutesSinceRemoval", unit: "min", more: true },
      { kind: "tick", path: "conditions.loadsOff", more: true },
      { kind: "number", path: "conditions.minutesSinceLocked", unit: "min", more: true },
      { kind: "tick", path: "conditions.leadsVerified", more: true },
    ],
  },
  {
    id: "readings",
    fields: [
      { kind: "number", path: "measurements.restVolts", unit: "V", slide: [10.5, 13.2, 0.01] },
      { kind: "choice", path: "measurements.cranking.standard", words: "standard", options: standards },
      { kind: "numbers", path: "measurements.cranking.amperes", unit: "A", slide: [50, 1200, 1] },
      { kind: "numbers", path: "measurements.cellGravities", unit: "", always: true },
      { kind: "number", path: "measurements.loadTest.loadAmperes", unit: "A", slide: [50, 600, 5] },
      { kind: "number", path: "measurements.loadTest.seconds", unit: "s", slide: [1, 30, 1] },
      { kind: "number", path: "measurements.loadTest.volts", unit: "V", slide: [6, 12, 0.05] },
      { kind: "tick", path: "measurements.loadTest.repeated", more: true },
      { kind: "number", path: "measurements.voltsStandardUncertainty", unit: "V", more: true },
      { kind: "number", path: "measurements.cranking.relativeStandardUncertainty", unit: "", more: true },
      {
        kind: "choice",
        path: "measurements.cranking.temperatureCompensated",
        words: "page",
        options: ["true", "false"],
        as: "boolean",
        more: true,
      },
      { kind: "number", path: "measurements.gravityTemperatureCelsius", unit: "°C", more: true },
      { kind: "number", path: "measurements.resistance.milliohms", unit: "mΩ", more: true },
      { kind: "number", path: "measurements.resistance.referenceMilliohms", unit: "mΩ", more: true },
      {
        kind: "choice",
        path: "measurements.resistance.referenceBasis",
        words: "page",
        options: bases,
        more: true,
      },
      { kind: "number", path: "measurements.conductance.siemens", unit: "S", more: true },
      { kind: "number", path: "measurements.conductance.referenceSiemens", unit: "S", more: true },
      {
        kind: "choice",
        path: "measurements.conductance.referenceBasis",
        words: "page",
        options: bases,
        more: true,
      },
    ],
  },
  {
    id: "seen",
    fields: [
      {
        kind: "set",
        path: "conditions.damage",
        options: ["cracked", "leaking", "swollen", "burnt-post", "loose-post", "sulfur-smell"],
      },
      { kind: "tick", path: "conditions.ice" },
      { kind: "tick", path: "conditions.electrolyteLow" },
      { kind: "tick", path: "conditions.waterAdded" },
      { kind: "tick", path: "conditions.wrongApplication", more: true },
      { kind: "tick", path: "conditions.dateCodeAltered", more: true },
    ],
  },
  {
    id: "engine",
    fields: [
      { kind: "number", path: "requirement.crankingAmperes", unit: "A", slide: [50, 1000, 5] },
      { kind: "number", path: "requirement.atCelsius", unit: "°C", slide: [-30, 30, 1] },
      { kind: "number", path: "requirement.coldestMorningCelsius", unit: "°C", slide: [-30, 30, 1] },
    ],
  },
  {
    id: "warranty",
    onlyWith: "warranty",
    fields: [
      { kind: "tick", path: "warranty" },
      { kind: "number", path: "warranty.terms.freeMonths", unit: "", slide: [0, 60, 1] },
      { kind: "number", path: "warranty.terms.totalMonths", unit: "", slide: [0, 120, 1] },
      { kind: "date", path: "warranty.purchase.soldOn" },
      { kind: "tick", path: "warranty.purchase.receipt", always: true },
      { kind: "money", path: "warranty.purchase.pricePaid" },
      { kind: "text", path: "warranty.terms.currency" },
      {
        kind: "set",
        path: "warranty.terms.exclusions",
        always: true,
        options: [
          "physical-damage",
          "heat-damage",
          "freeze-damage",
          "low-electrolyte",
          "wrong-application",
          "altered-date-code",
        ],
      },
      { kind: "number", path: "warranty.terms.minorUnitDigits", unit: "", more: true },
      {
        kind: "choice",
        path: "warranty.terms.prorationOrigin",
        words: "page",
        options: ["purchase", "end-of-free-period"],
        more: true,
      },
      {
        kind: "choice",
        path: "warranty.terms.monthCount",
        words: "page",
        options: ["completed-clamped", "completed-day-of-month", "started", "calendar", "days"],
        more: true,
      },
      {
        kind: "choice",
        path: "warranty.terms.lastCoveredDay",
        words: "page",
        options: ["anniversary", "day-before"],
        more: true,
      },
      {
        kind: "choice",
        path: "warranty.terms.priceBasis",
        words: "page",
        options: ["paid", "list-at-purchase", "list-today"],
        more: true,
      },
      {
        kind: "choice",
        path: "warranty.terms.rounding",
        words: "page",
        options: ["half-up", "half-even"],
        more: true,
      },
      {
        kind: "choice",
        path: "warranty.terms.replacementTerm",
        words: "page",
        options: ["remaining", "new"],
        more: true,
      },
      {
        kind: "choice",
        path: "warranty.terms.core.depositInExchange",
        words: "page",
        options: ["waived", "due"],
        more: true,
      },
      { kind: "money", path: "warranty.terms.core.depositAmount", more: true },
      {
        kind: "choice",
        path: "warranty.terms.termStart",
        words: "page",
        options: ["purchase", "installation"],
        more: true,
      },
      { kind: "money", path: "warranty.purchase.listPriceAtPurchase", more: true },
      { kind: "money", path: "warranty.purchase.listPriceToday", more: true },
      { kind: "money", path: "warranty.purchase.replacementPrice", more: true },
      { kind: "date", path: "warranty.purchase.installedOn", more: true },
      { kind: "tick", path: "warranty.purchase.coreReturned", more: true },
      { kind: "date", path: "warranty.claimedOn", more: true },
    ],
  },
] as const satisfies readonly Group[];

export type GroupId = (typeof groups)[number]["id"];
export type FieldPath = (typeof groups)[number]["fields"][number]["path"];

type PageOptions<F> = F extends { words: "page"; options: readonly (infer O)[] }
  ? O
  : F extends { kind: "set"; options: readonly (infer O)[] }
    ? O
    : never;
/** Options whose words are the page's own, or a catalogue's where it has them. */
export type PageOption = PageOptions<(typeof groups)[number]["fields"][number]>;
