import type { BatteryRecord } from "crankworthy/evaluate";

/** A record with every part filled in: invented, sound, and used as the base of mutations. */
export const fullRecord = {
  schemaVersion: 1,
  id: "sample",
  identity: {
    chemistry: "flooded",
    rating: { standard: "sae-j537", amperes: 600 },
    labelCode: { scheme: "din-72310", text: "56049" },
    nominalVolts: 12,
    capacityAmpereHours: 60,
    reserveCapacityMinutes: 98,
    dateCode: { text: "0324", vehicleYear: 2024 },
    activatedOn: "2024-05-02",
    acid: { fullGravity: 1.265, emptyGravity: 1.12 },
  },
  conditions: {
    inspectedOn: "2026-11-20",
    place: "bench",
    temperatureCelsius: 21,
    temperatureMethod: "electrolyte",
    lastEvent: "charge",
    hoursAtRest: 26,
    surfaceChargeRemoval: "lights",
    minutesSinceRemoval: 5,
    chargeCompleted: true,
    loadsOff: true,
    leadsVerified: true,
    damage: [],
    ice: false,
    electrolyteLow: false,
    waterAdded: false,
  },
  measurements: {
    restVolts: 12.64,
    voltsStandardUncertainty: 0.01,
    cranking: { standard: "sae-j537", amperes: [590, 596, 593], relativeStandardUncertainty: 0.04 },
    resistance: { milliohms: 5.1, referenceMilliohms: 5, referenceBasis: "published-for-type" },
    cellGravities: [1.262, 1.264, 1.265, 1.263, 1.262, 1.264],
    gravityTemperatureCelsius: 22,
    loadTest: { loadAmperes: 300, seconds: 15, volts: 10.1 },
  },
  requirement: { crankingAmperes: 170, atCelsius: 20, coldestMorningCelsius: -12 },
  warranty: {
    terms: {
      currency: "EUR",
      minorUnitDigits: 2,
      freeMonths: 24,
      totalMonths: 48,
      prorationOrigin: "purchase",
      monthCount: "completed-clamped",
      lastCoveredDay: "anniversary",
      priceBasis: "paid",
      rounding: "half-up",
      cashIncrement: "0.05",
      replacementTerm: "remaining",
      exclusions: ["physical-damage", "freeze-damage"],
      core: { depositAmount: "12.00", depositInExchange: "waived" },
      tax: { ratePercent: "19", base: "charge", coreTaxed: false, freeReplacementTaxed: false },
      shelfAgeLimitDays: 180,
      statutoryFloor: { months: 24, scope: "consumer", citation: "invented" },
    },
    purchase: {
      receipt: true,
      soldOn: "2024-06-14",
      pricePaid: "129.99",
      listPriceToday: "149.00",
      coreReturned: true,
      buyer: "consumer",
    },
    claimedOn: "2026-11-20",
    paidInCash: true,
  },
} as const satisfies BatteryRecord;

/** A deep, mutable copy. */
export function copyOf<T>(value: T): T {
  return JSON.parse(JSON.stringify(value)) as T;
}
