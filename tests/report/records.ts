import { type BatteryRecord, type Evaluation, evaluate } from "crankworthy/evaluate";
import { decide, type Evidence, type Finding } from "crankworthy/verdict";
import type { Purchase, WarrantyTerms } from "crankworthy/warranty";

export const terms: WarrantyTerms = {
  currency: "USD",
  minorUnitDigits: 2,
  freeMonths: 24,
  totalMonths: 60,
  prorationOrigin: "purchase",
  monthCount: "completed-clamped",
  lastCoveredDay: "anniversary",
  priceBasis: "paid",
  rounding: "half-up",
  replacementTerm: "remaining",
  exclusions: ["physical-damage", "low-electrolyte"],
  core: { depositInExchange: "waived" },
};
export const purchase: Purchase = { receipt: true, soldOn: "2022-06-10", pricePaid: "189.99" };

/** A charged battery that gives 98 % of its rating. */
export const good: BatteryRecord = {
  id: "W-17",
  identity: {
    chemistry: "flooded",
    nominalVolts: 12,
    rating: { standard: "sae-j537", amperes: 600 },
    capacityAmpereHours: 60,
  },
  conditions: {
    inspectedOn: "2025-01-20",
    place: "bench",
    temperatureCelsius: 22,
    lastEvent: "charge",
    hoursAtRest: 24,
    chargeCompleted: true,
  },
  measurements: {
    restVolts: 12.62,
    voltsStandardUncertainty: 0.01,
    cranking: { standard: "sae-j537", amperes: [585, 590, 588], relativeStandardUncertainty: 0.045 },
  },
};

type Fields<Part> = { readonly [Field in keyof Part]?: Part[Field] | undefined };
type Change = {
  readonly [Part in keyof BatteryRecord]?: Fields<NonNullable<BatteryRecord[Part]>> | undefined;
};

/** `good` with other fields; a field set to undefined is taken out. */
export function changed(change: Change): BatteryRecord {
  const record: Record<string, unknown> = { ...good };
  for (const [part, fields] of Object.entries(change)) {
    const before = record[part];
    const merged: unknown =
      typeof fields === "object" && !Array.isArray(fields)
        ? { ...(before as object | undefined), ...fields }
        : fields;
    record[part] = merged;
  }
  // JSON drops what is undefined.
  return JSON.parse(JSON.stringify(record)) as BatteryRecord;
}

const cranking = (amperes: number | number[], standard = "sae-j537") =>
  ({ standard, amperes, relativeStandardUncertainty: 0.045 }) as NonNullable<
    BatteryRecord["measurements"]["cranking"]
  >;
const engine = (crankingAmperes: number, coldestMorningCelsius = -15) => ({
  crankingAmperes,
  atCelsius: 20,
  coldestMorningCelsius,
});
const load = (volts: number, repeated = false) => ({ loadAmperes: 300, seconds: 15, volts, repeated });
const weak = { cranking: cranking([285, 290, 288]) };
const claim = (t: Partial<WarrantyTerms>, p: Partial<Purchase> = {}, change: Change = {}) =>
  changed({
    measurements: weak,
    ...change,
    warranty: { terms: { ...terms, ...t }, purchase: { ...purchase, ...p } },
  });

/** Records that together call forth almost everything a report can say. */
export const records: Readonly<Record<string, BatteryRecord>> = {
  good,
  bare: changed({
    id: undefined,
    identity: { chemistry: "unknown", nominalVolts: undefined, capacityAmpereHours: undefined },
    conditions: undefined,
    measurements: { restVolts: 12.5, voltsStandardUncertainty: undefined, cranking: undefined },
  }),
  instrumentUnstated: changed({ measurements: { cranking: { standard: "sae-j537", amperes: 590 } } }),
  noInspectionDay: changed({
    identity: { dateCode: { text: "0322" } },
    conditions: { inspectedOn: undefined },
  }),
  dateCode: changed({ identity: { dateCode: { text: "0322" } } }),
  dateCodeOfAMonth: changed({ identity: { dateCode: { text: "2024-12" } } }),
  dateCodeManyReadings: changed({ identity: { dateCode: { text: "1212" } } }),
  dateCodeToday: changed({ identity: { dateCode: { text: "2025-01-20" } } }),
  dateCodeUnread: changed({ identity: { dateCode: { text: "??" } } }),
  dateCodeLookAlike: changed({ identity: { dateCode: { text: "D0" } } }),
  labelUnread: changed({ identity: { labelCode: { scheme: "etn", text: "no code" } } }),
  jisType: changed({
    identity: { rating: undefined, labelCode: { scheme: "jis-d-5301", text: "55B24L" } },
    measurements: { cranking: cranking(300, "jis-d-5301:2006") },
  }),
  etn: changed({
    identity: {
      rating: undefined,
      labelCode: { scheme: "etn", text: "560 077 054" },
      capacityAmpereHours: undefined,
    },
    measurements: { cranking: cranking(500, "en-50342-1:unstated") },
  }),
  notComparable: changed({ measurements: { cranking: cranking(500, "unstated") } }),
  iecUnstated: changed({
    identity: { rating: { standard: "iec-60095-1:unstated", amperes: 500 } },
    measurements: { cranking: cranking(480, "iec-60095-1:unstated") },
  }),
  noRating: changed({
    identity: { rating: undefined, labelCode: { scheme: "bci", text: "35" } },
    requirement: engine(200),
  }),
  damaged: changed({ conditions: { damage: ["cracked", "sulfur-smell"] } }),
  ice: changed({ conditions: { ice: true } }),
  mayBeFrozen: changed({
    conditions: { temperatureCelsius: -20, chargeCompleted: false },
    measurements: { restVolts: 11.8 },
  }),
  nearFreezing: changed({
    conditions: { temperatureCelsius: -12, chargeCompleted: false },
    measurements: { restVolts: 11.87 },
  }),
  acidLow: changed({
    conditions: { electrolyteLow: true, chargeCompleted: false },
    measurements: { restVolts: 12.1 },
  }),
  twentyFourVolts: changed({ identity: { nominalVolts: 24 }, measurements: { restVolts: 25.2 } }),
  sixVoltsUnmeasured: changed({
    identity: { nominalVolts: 6 },
    measurements: { restVolts: undefined, voltsStandardUncertainty: undefined },
  }),
  systemUnclear: changed({ identity: { nominalVolts: undefined }, measurements: { restVolts: 6.2 } }),
  noVoltage: changed({ measurements: { restVolts: 0.3 } }),
  reversed: changed({ measurements: { restVolts: -12.5 } }),
  reversedChecked: changed({ conditions: { leadsVerified: true }, measurements: { restVolts: -12.5 } }),
  surfaceCharge: changed({
    conditions: { lastEvent: "drive", hoursAtRest: 0.1, chargeCompleted: false },
    measurements: { restVolts: 12.9, ...weak },
  }),
  inVehicle: changed({
    conditions: { place: "vehicle", chargeCompleted: false },
    measurements: { cranking: cranking(480) },
  }),
  extrapolated: changed({
    conditions: { restVoltsExtrapolated: true },
    measurements: { restVolts: 12.55, voltsStandardUncertainty: 0.03 },
  }),
  hot: changed({ conditions: { temperatureCelsius: 48 } }),
  scatter: changed({ measurements: { cranking: cranking([400, 590, 588]) } }),
  cellMissing: changed({ measurements: { restVolts: 10.6, ...weak } }),
  cellMaybeMissing: changed({
    conditions: { chargeCompleted: false },
    measurements: { restVolts: 10.6, ...weak },
  }),
  cellSpread: changed({ measurements: { cellGravities: [1.265, 1.26, 1.265, 1.14, 1.265, 1.27], ...weak } }),
  cellSpreadUnproven: changed({
    conditions: { chargeCompleted: false },
    measurements: {
      restVolts: undefined,
      voltsStandardUncertainty: undefined,
      cellGravities: [1.2, 1.2, 1.1, 1.2],
      ...weak,
    },
  }),
  aboveFull: changed({ measurements: { restVolts: 13.02 } }),
  belowEmpty: changed({
    conditions: { chargeCompleted: false },
    measurements: { restVolts: 11.75, ...weak },
  }),
  veryFlat: changed({ conditions: { chargeCompleted: false }, measurements: { restVolts: 9.2, ...weak } }),
  chargeLow: changed({ conditions: { chargeCompleted: false }, measurements: { restVolts: 12.2 } }),
  stillOnCharge: changed({ measurements: { restVolts: 14.2 } }),
  clampsOff: changed({ measurements: { cranking: { standard: "sae-j537", amperes: 4 } } }),
  chargeLowNoTemperature: changed({
    conditions: { chargeCompleted: false, temperatureCelsius: undefined },
    measurements: { restVolts: 12.1, ...weak },
  }),
  chargeUnsure: changed({
    conditions: { chargeCompleted: false },
    measurements: { restVolts: 12.48, ...weak },
  }),
  chargeDisagrees: changed({
    measurements: { restVolts: 12.7, cellGravities: [1.15, 1.15, 1.15, 1.15, 1.15, 1.15] },
  }),
  chargedButLow: changed({ measurements: { restVolts: 11.9, ...weak } }),
  between: changed({ measurements: { cranking: cranking(480) } }),
  worn: changed({ measurements: { cranking: cranking([400, 402, 398]) }, requirement: engine(150) }),
  unserviceable: changed({ measurements: weak }),
  strong: changed({ measurements: { cranking: cranking(700) } }),
  byResistance: changed({
    measurements: {
      cranking: undefined,
      resistance: { milliohms: 9, referenceMilliohms: 4, referenceBasis: "own-baseline" },
    },
  }),
  byConductance: changed({
    measurements: {
      cranking: undefined,
      conductance: { siemens: 700, referenceSiemens: 800, referenceBasis: "fleet-median" },
    },
  }),
  loadPassed: changed({ measurements: { cranking: undefined, loadTest: load(10.4) } }),
  loadFailed: changed({ measurements: { cranking: undefined, loadTest: load(8.9) } }),
  loadFailedAgain: changed({ measurements: { cranking: undefined, loadTest: load(8.9, true) } }),
  loadUndecided: changed({ measurements: { cranking: undefined, loadTest: load(9.62) } }),
  loadNotValid: changed({
    conditions: { temperatureCelsius: undefined },
    measurements: {
      restVolts: 11.9,
      cranking: undefined,
      loadTest: { loadAmperes: 100, seconds: 5, volts: 9.8 },
    },
  }),
  loadTooCold: changed({ conditions: { temperatureCelsius: -25 }, measurements: { loadTest: load(9.8) } }),
  disagreeing: changed({ measurements: { ...weak, loadTest: load(10.4) } }),
  engineStarts: changed({ requirement: engine(120, -5) }),
  engineFails: changed({ requirement: engine(500, -20) }),
  engineUnsure: changed({ requirement: engine(270) }),
  engineOutside: changed({ requirement: engine(120, -45) }),
  engineFlat: changed({
    conditions: { chargeCompleted: false },
    measurements: { restVolts: 11.9 },
    requirement: engine(120),
  }),
  claim: claim({}),
  claimFree: claim({}, { soldOn: "2024-03-01" }),
  claimOver: claim({}, { soldOn: "2015-03-01" }),
  claimDays: claim({ monthCount: "days" }),
  claimAfterFree: claim({ prorationOrigin: "end-of-free-period", cap: "20.00" }),
  claimSteps: claim({ stepSchedule: [{ fromMonth: 24, rebatePercent: "40" }] }),
  claimCash: claim(
    {
      cashIncrement: "0.05",
      core: { depositAmount: "18.00", depositInExchange: "due" },
      tax: { ratePercent: "8.25", base: "charge", coreTaxed: true, freeReplacementTaxed: false },
    },
    { coreReturned: true, replacementPrice: "60.00" },
    {},
  ),
  claimRetained: claim(
    {
      tax: {
        ratePercent: "4",
        base: "charge-plus-retained-value",
        coreTaxed: false,
        freeReplacementTaxed: true,
      },
      core: { depositAmount: "18.00", depositInExchange: "waived" },
    },
    { retainedValue: "5.00", coreReturned: false },
  ),
  claimRetainedUnknown: claim({
    tax: {
      ratePercent: "4",
      base: "charge-plus-retained-value",
      coreTaxed: false,
      freeReplacementTaxed: true,
    },
  }),
  claimNoPrice: claim({ priceBasis: "list-today" }),
  claimListed: claim({ priceBasis: "list-at-purchase" }, { listPriceAtPurchase: "200.00" }),
  claimLaw: claim(
    {
      freeMonths: 0,
      totalMonths: 12,
      statutoryFloor: { months: 60, scope: "consumer", citation: "the law" },
    },
    { buyer: "consumer" },
  ),
  claimLawBuyerUnknown: claim({
    freeMonths: 0,
    totalMonths: 12,
    statutoryFloor: { months: 60, scope: "consumer" },
  }),
  claimNoReceipt: claim(
    { startWithoutReceipt: { kind: "manufacture-plus-months", months: 3 } },
    { receipt: false },
    { identity: { dateCode: { text: "0322" } } },
  ),
  claimShelf: claim({ shelfAgeLimitDays: 30 }, {}, { identity: { dateCode: { text: "2022-03" } } }),
  claimDoubts: claim({
    originalBuyerOnly: true,
    maxClaims: 1,
    shelfAgeLimitDays: 100,
    useClasses: { taxi: { excluded: true } },
  }),
  claimExcluded: claim({}, {}, { conditions: { damage: ["cracked"] } }),
  claimGood: claim({}, {}, { measurements: { cranking: cranking([585, 590, 588]) } }),
  claimTooEarly: claim({}, {}, { conditions: { chargeCompleted: false }, measurements: { restVolts: 12 } }),
  contacts: changed({
    measurements: { cranking: { ...cranking([441, 443, 470, 472]), readingsPerPlacement: 2 } },
  }),
  consumerOn: changed({
    conditions: { place: "vehicle", chargeCompleted: false, loadAmperes: 6 },
    measurements: weak,
  }),
  modulesAwake: changed({
    conditions: { place: "vehicle", chargeCompleted: false, minutesSinceLocked: 12 },
    measurements: weak,
  }),
  noStartConnection: changed({
    measurements: weak,
    conditions: { place: "vehicle", loadsOff: true },
    vehicle: {
      starting: {
        crankingVolts: 12.6,
        inrush: "left-out",
        speed: "slow",
        crankingAmperes: 60,
        engine: "4-cylinder-warm",
        engineTemperatureCelsius: 70,
        positiveDropVolts: 0.2,
        groundDropVolts: 1.6,
        solenoidDropVolts: 0.18,
      },
    },
  }),
  noStartStarter: changed({
    vehicle: {
      starting: {
        crankingVolts: 8.7,
        inrush: "left-out",
        speed: "slow",
        crankingAmperes: 320,
        engine: "4-cylinder-warm",
        engineTemperatureCelsius: 70,
        positiveDropVolts: 0.3,
        groundDropVolts: 0.1,
      },
    },
  }),
  noTurning: changed({ vehicle: { starting: { crankingVolts: 12.6, inrush: "left-out", speed: "none" } } }),
  cranksWell: changed({
    vehicle: {
      starting: {
        crankingVolts: 10.8,
        inrush: "left-out",
        speed: "normal",
        crankingAmperes: 95,
        engine: "4-cylinder-warm",
        engineTemperatureCelsius: 70,
      },
      charging: {
        regulatedVolts: 14.2,
        loadedVolts: 13.6,
        engineOffVolts: 12.6,
        regulatorTemperatureCelsius: 30,
        control: "fixed-regulator",
        ripple: { volts: 0.03, place: "battery-posts", method: "meter-on-ac", limit: "default-look-further" },
      },
      draw: { drawAmperes: 0.02, settledMinutes: 90 },
    },
  }),
  perAmpere: changed({
    vehicle: { starting: { crankingAmperes: 60, groundDropVolts: 0.19, solenoidDropVolts: 0.05 } },
  }),
  chargesBadly: changed({
    conditions: { chargeCompleted: false },
    measurements: { restVolts: 12.1 },
    vehicle: {
      charging: {
        regulatedVolts: 12.8,
        loadedVolts: 12.2,
        engineOffVolts: 12.1,
        regulatorTemperatureCelsius: 30,
        control: "fixed-regulator",
        positiveDropVolts: 0.7,
        groundDropVolts: 0.05,
        outputAmperes: 25,
        ripple: { volts: 0.4, place: "alternator-output", method: "true-rms", limit: "output-250-mv" },
      },
    },
    ventilation: { airFlowCubicMetresPerHour: 0.4 },
  }),
  overcharges: changed({
    vehicle: {
      charging: {
        regulatedVolts: 15.9,
        engineOffVolts: 12.7,
        regulatorTemperatureCelsius: 30,
        control: "fixed-regulator",
      },
    },
    ventilation: { roomCubicMetres: 1.5, batteries: 4 },
  }),
  chargingByComputer: changed({
    vehicle: { charging: { regulatedVolts: 12.9, control: "computer-controlled" } },
  }),
  chargingUndecided: changed({
    vehicle: {
      charging: { regulatedVolts: 13.53, regulatorTemperatureCelsius: 33, control: "fixed-regulator" },
    },
  }),
  drawEarly: changed({ vehicle: { draw: { drawAmperes: 0.4, settledMinutes: 10 } } }),
  drawEquipment: changed({
    vehicle: { draw: { drawAmperes: 0.07, settledMinutes: 90, equipmentExplains: true } },
  }),
  drain: changed({
    conditions: { chargeCompleted: false, lastEvent: "discharge" },
    measurements: { restVolts: 12.2 },
    vehicle: { draw: { drawAmperes: 0.31, settledMinutes: 90, parkedDays: 5, fullWhenParked: true } },
  }),
  drainTooFast: changed({
    conditions: { chargeCompleted: false, lastEvent: "discharge" },
    measurements: { restVolts: 12.03 },
    vehicle: { draw: { drawAmperes: 0.1, settledMinutes: 90, parkedDays: 3 } },
  }),
  drainOpen: changed({ vehicle: { draw: { drawAmperes: 0.03, settledMinutes: 90, parkedDays: 60 } } }),
  sealedFlat: changed({
    identity: { chemistry: "agm", rating: { standard: "en-50342-1:2015", amperes: 760 } },
    conditions: { chargeCompleted: false },
    measurements: { restVolts: 9.8, cranking: cranking(300, "en-50342-1:2015") },
  }),
};

export const evaluations: Readonly<Record<string, Evaluation>> = Object.fromEntries(
  Object.entries(records).map(([name, record]) => [name, evaluate(record)]),
);

/** What the rules find in evidence that a person wrote by hand, with nothing but what is required. */
export function foundByHand(change: Partial<Evidence>): readonly Finding[] {
  const evidence: Evidence = {
    damage: [],
    frozen: "no",
    electrolyteLow: false,
    system: "twelve-volt",
    chargeCompleted: false,
    abilities: [],
    ...change,
  };
  return decide(evidence).findings;
}
