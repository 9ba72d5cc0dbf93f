import type { BatteryRecord } from "../../src/evaluate/index.js";

/** An invented battery between the limits, with everything a picture can show. */
export const worn = {
  id: "B-17",
  identity: {
    chemistry: "flooded",
    rating: { standard: "sae-j537", amperes: 600 },
    dateCode: { text: "C4" },
  },
  conditions: { inspectedOn: "2026-11-20", lastEvent: "charge", hoursAtRest: 24, temperatureCelsius: 21 },
  measurements: {
    restVolts: 12.46,
    cellGravities: [1.23, 1.232, 1.231, 1.229, 1.23, 1.232],
    cranking: { standard: "sae-j537", amperes: [436, 440, 441, 438] },
  },
  requirement: { crankingAmperes: 170, atCelsius: 20, coldestMorningCelsius: -12 },
  warranty: {
    purchase: { receipt: true, soldOn: "2024-05-06", pricePaid: "120.00" },
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
      replacementTerm: "remaining",
      exclusions: [],
      core: { depositInExchange: "waived" },
      statutoryFloor: { months: 24, scope: "consumer" },
    },
  },
} as const satisfies BatteryRecord;
