import * as z from "zod";
import { dayNumber } from "../numeric/index.js";
import { ratingStandards } from "../ratings/index.js";
import { RIPPLE_LIMITS, type RippleLimitName } from "../vehicle/index.js";
import { NOT_A_DATE, ranges } from "./ranges.data.js";

// One line a field; the public shape is record.ts, and a type test holds the two together. Descriptions, units and
// hints are not here but in ranges.data.ts, so that the schema stays the fast path and nothing else.

const number = (path: keyof typeof ranges) => z.number().min(ranges[path].min).max(ranges[path].max);
const text = (most: number) => z.string().min(1).max(most);
// A range in which a battery can have been made, sold or tested, and in which terms can run.
const date = z
  .string()
  .refine((value) => value > "1950" && value < "2200" && !Number.isNaN(dayNumber(value)), NOT_A_DATE);
const wholeMonths = z.int().min(0).max(1200);
const amount = z
  .string()
  .max(20)
  .regex(/^\d{1,13}(\.\d{1,4})?$/);
const percent = z
  .string()
  .max(10)
  .regex(/^\d{1,3}(\.\d{1,6})?$/);
const standard = z.enum(Object.keys(ratingStandards) as [keyof typeof ratingStandards]);

const identity = z.strictObject({
  chemistry: z.enum(["flooded", "flooded-calcium", "efb", "agm", "gel", "unknown"]),
  rating: z.strictObject({ standard, amperes: number("identity.rating.amperes") }).optional(),
  labelCode: z
    .strictObject({
      scheme: z.enum(["etn", "din-72310", "jis-d-5301", "jis-d-5306", "en-50342-2", "bci"]),
      text: text(40),
    })
    .optional(),
  nominalVolts: z.literal([6, 12, 24]).optional(),
  capacityAmpereHours: number("identity.capacityAmpereHours").optional(),
  reserveCapacityMinutes: number("identity.reserveCapacityMinutes").optional(),
  dateCode: z
    .strictObject({
      text: text(40),
      scheme: text(40).optional(),
      vehicleYear: z.int().min(1950).max(2100).optional(),
    })
    .optional(),
  activatedOn: date.optional(),
  acid: z
    .strictObject({
      fullGravity: number("identity.acid.fullGravity"),
      emptyGravity: number("identity.acid.emptyGravity"),
    })
    .optional(),
});

const conditions = z.strictObject({
  inspectedOn: date.optional(),
  place: z.enum(["bench", "vehicle"]).optional(),
  temperatureCelsius: number("conditions.temperatureCelsius").optional(),
  temperatureMethod: z.enum(["electrolyte", "case-contact", "case-infrared", "ambient"]).optional(),
  lastEvent: z.enum(["charge", "drive", "discharge"]).optional(),
  hoursAtRest: number("conditions.hoursAtRest").optional(),
  surfaceChargeRemoval: z.enum(["none", "lights", "load"]).optional(),
  minutesSinceRemoval: number("conditions.minutesSinceRemoval").optional(),
  restVoltsExtrapolated: z.boolean().optional(),
  chargeCompleted: z.boolean().optional(),
  loadsOff: z.boolean().optional(),
  loadAmperes: number("conditions.loadAmperes").optional(),
  minutesSinceLocked: number("conditions.minutesSinceLocked").optional(),
  leadsVerified: z.boolean().optional(),
  damage: z
    .array(z.enum(["cracked", "leaking", "swollen", "burnt-post", "loose-post", "sulfur-smell"]))
    .max(6)
    .optional(),
  ice: z.boolean().optional(),
  electrolyteLow: z.boolean().optional(),
  waterAdded: z.boolean().optional(),
  wrongApplication: z.boolean().optional(),
  dateCodeAltered: z.boolean().optional(),
});

const referenceBasis = z.enum(["own-baseline", "published-for-type", "fleet-median"]);
const crankingAmperes = number("measurements.cranking.amperes");

const measurements = z.strictObject({
  restVolts: number("measurements.restVolts").optional(),
  voltsStandardUncertainty: number("measurements.voltsStandardUncertainty").optional(),
  cranking: z
    .strictObject({
      standard,
      amperes: z.union([crankingAmperes, z.array(crankingAmperes).min(1).max(50)]),
      readingsPerPlacement: z.int().min(2).max(25).optional(),
      relativeStandardUncertainty: number("measurements.cranking.relativeStandardUncertainty").optional(),
      temperatureCompensated: z.boolean().optional(),
    })
    .optional(),
  resistance: z
    .strictObject({
      milliohms: number("measurements.resistance.milliohms"),
      referenceMilliohms: number("measurements.resistance.referenceMilliohms"),
      referenceBasis,
    })
    .optional(),
  conductance: z
    .strictObject({
      siemens: number("measurements.conductance.siemens"),
      referenceSiemens: number("measurements.conductance.referenceSiemens"),
      referenceBasis,
    })
    .optional(),
  cellGravities: z.array(number("measurements.cellGravities")).min(1).max(6).optional(),
  gravityTemperatureCelsius: number("measurements.gravityTemperatureCelsius").optional(),
  loadTest: z
    .strictObject({
      loadAmperes: number("measurements.loadTest.loadAmperes"),
      seconds: number("measurements.loadTest.seconds"),
      volts: number("measurements.loadTest.volts"),
      repeated: z.boolean().optional(),
    })
    .optional(),
});

const engine = z.enum(["4-cylinder-warm", "6-cylinder-warm", "8-cylinder-warm", "one-1.9-litre-4-cylinder"]);
const drawProfile = z.enum([
  "default",
  "default-late-vehicle",
  "workshop-2008",
  "workshop-2003",
  "vocational",
  "workshop-undated",
  "workshop-2001",
  "workshop-2023",
  "workshop-2005",
  "faq",
  "bulletin",
]);

const vehicle = z.strictObject({
  starting: z
    .strictObject({
      crankingVolts: number("vehicle.starting.crankingVolts").optional(),
      inrush: z.enum(["left-out", "included"]).optional(),
      engineTemperatureCelsius: number("vehicle.starting.engineTemperatureCelsius").optional(),
      crankingAmperes: number("vehicle.starting.crankingAmperes").optional(),
      engine: engine.optional(),
      speed: z.enum(["normal", "slow", "none"]).optional(),
      positiveDropVolts: number("vehicle.starting.positiveDropVolts").optional(),
      groundDropVolts: number("vehicle.starting.groundDropVolts").optional(),
      solenoidDropVolts: number("vehicle.starting.solenoidDropVolts").optional(),
    })
    .optional(),
  charging: z
    .strictObject({
      regulatedVolts: number("vehicle.charging.regulatedVolts").optional(),
      loadedVolts: number("vehicle.charging.loadedVolts").optional(),
      engineOffVolts: number("vehicle.charging.engineOffVolts").optional(),
      regulatorTemperatureCelsius: number("vehicle.charging.regulatorTemperatureCelsius").optional(),
      control: z.enum(["fixed-regulator", "computer-controlled", "unknown"]).optional(),
      engineRpm: number("vehicle.charging.engineRpm").optional(),
      chargeAmperes: number("vehicle.charging.chargeAmperes").optional(),
      positiveDropVolts: number("vehicle.charging.positiveDropVolts").optional(),
      groundDropVolts: number("vehicle.charging.groundDropVolts").optional(),
      outputAmperes: number("vehicle.charging.outputAmperes").optional(),
      ripple: z
        .strictObject({
          volts: number("vehicle.charging.ripple.volts"),
          place: z.enum(["battery-posts", "alternator-output"]),
          method: z.enum(["meter-on-ac", "true-rms", "peak-to-peak"]),
          limit: z.enum(Object.keys(RIPPLE_LIMITS) as [RippleLimitName]),
        })
        .optional(),
    })
    .optional(),
  draw: z
    .strictObject({
      drawAmperes: number("vehicle.draw.drawAmperes"),
      settledMinutes: number("vehicle.draw.settledMinutes"),
      equipmentExplains: z.boolean().optional(),
      profile: drawProfile.optional(),
      parkedDays: number("vehicle.draw.parkedDays").optional(),
      fullWhenParked: z.boolean().optional(),
    })
    .optional(),
});

const ventilation = z.strictObject({
  roomCubicMetres: number("ventilation.roomCubicMetres").optional(),
  airFlowCubicMetresPerHour: number("ventilation.airFlowCubicMetresPerHour").optional(),
  batteries: z.int().min(1).max(100).optional(),
});

const requirement = z.strictObject({
  crankingAmperes: number("requirement.crankingAmperes"),
  atCelsius: number("requirement.atCelsius"),
  coldestMorningCelsius: number("requirement.coldestMorningCelsius"),
});

const termLengths = {
  freeMonths: wholeMonths,
  freeDays: z.int().min(0).max(36500).optional(),
  totalMonths: wholeMonths,
  stepSchedule: z
    .array(z.strictObject({ fromMonth: wholeMonths, rebatePercent: percent }))
    .max(200)
    .optional(),
};

const terms = z.strictObject({
  ...termLengths,
  currency: z.string().regex(/^[A-Z]{3}$/),
  minorUnitDigits: z.int().min(0).max(4),
  prorationOrigin: z.enum(["purchase", "end-of-free-period"]),
  monthCount: z.enum(["completed-clamped", "completed-day-of-month", "started", "calendar", "days"]),
  lastCoveredDay: z.enum(["anniversary", "day-before"]),
  priceBasis: z.enum(["paid", "list-at-purchase", "list-today"]),
  rounding: z.enum(["half-up", "half-even"]),
  cashIncrement: amount.optional(),
  replacementTerm: z.enum(["remaining", "new"]),
  exclusions: z
    .array(
      z.enum([
        "physical-damage",
        "heat-damage",
        "freeze-damage",
        "low-electrolyte",
        "wrong-application",
        "altered-date-code",
      ]),
    )
    .max(6),
  core: z.strictObject({ depositAmount: amount.optional(), depositInExchange: z.enum(["waived", "due"]) }),
  tax: z
    .strictObject({
      ratePercent: percent,
      base: z.enum(["charge", "charge-plus-retained-value"]),
      coreTaxed: z.boolean(),
      freeReplacementTaxed: z.boolean(),
    })
    .optional(),
  termStart: z.enum(["purchase", "installation"]).optional(),
  startWithoutReceipt: z
    .strictObject({ kind: z.literal("manufacture-plus-months"), months: wholeMonths })
    .optional(),
  shelfAgeLimitDays: z.int().min(0).max(36500).optional(),
  useClasses: z
    .record(text(40), z.union([z.strictObject({ excluded: z.literal(true) }), z.strictObject(termLengths)]))
    .optional(),
  originalBuyerOnly: z.boolean().optional(),
  maxClaims: z.int().min(1).max(100).optional(),
  cap: amount.optional(),
  statutoryFloor: z
    .strictObject({
      months: wholeMonths,
      scope: z.enum(["anyone", "consumer"]),
      citation: text(200).optional(),
    })
    .optional(),
});

const purchase = z.strictObject({
  receipt: z.boolean(),
  soldOn: date.optional(),
  installedOn: date.optional(),
  pricePaid: amount.optional(),
  listPriceAtPurchase: amount.optional(),
  listPriceToday: amount.optional(),
  replacementPrice: amount.optional(),
  coreReturned: z.boolean().optional(),
  retainedValue: amount.optional(),
  useClass: text(40).optional(),
  claimsSoFar: z.int().min(0).max(100).optional(),
  originalBuyer: z.boolean().optional(),
  buyer: z.enum(["consumer", "business"]).optional(),
});

/** The zod schema of a {@link BatteryRecord}. Its issues are zod's own; `evaluate` translates them. */
export const recordSchema = z.strictObject({
  schemaVersion: z.literal(1).optional(),
  id: text(120).optional(),
  identity,
  conditions: conditions.optional(),
  measurements,
  vehicle: vehicle.optional(),
  ventilation: ventilation.optional(),
  requirement: requirement.optional(),
  warranty: z
    .strictObject({ terms, purchase, claimedOn: date.optional(), paidInCash: z.boolean().optional() })
    .optional(),
});
