/** The record the page starts with. Every figure is invented. */
export const startRecord = {
  schemaVersion: 1,
  id: "Exercise 1",
  identity: {
    chemistry: "flooded",
    rating: { standard: "en-50342-1:2015", amperes: 640 },
    capacityAmpereHours: 70,
    dateCode: { text: "0423" },
  },
  conditions: {
    inspectedOn: "2026-11-20",
    place: "bench",
    temperatureCelsius: 12,
    temperatureMethod: "case-contact",
    lastEvent: "charge",
    hoursAtRest: 14,
    leadsVerified: true,
  },
  measurements: {
    restVolts: 12.58,
    cranking: {
      standard: "en-50342-1:2015",
      amperes: [472, 468, 475],
      relativeStandardUncertainty: 0.045,
      temperatureCompensated: true,
    },
  },
  requirement: { crankingAmperes: 390, atCelsius: -18, coldestMorningCelsius: -20 },
  warranty: {
    terms: {
      freeMonths: 24,
      totalMonths: 48,
      currency: "EUR",
      minorUnitDigits: 2,
      prorationOrigin: "purchase",
      monthCount: "completed-clamped",
      lastCoveredDay: "day-before",
      priceBasis: "paid",
      rounding: "half-up",
      replacementTerm: "remaining",
      exclusions: ["physical-damage", "freeze-damage"],
      core: { depositAmount: "7.50", depositInExchange: "waived" },
    },
    purchase: { receipt: true, soldOn: "2024-02-10", pricePaid: "129.90" },
  },
} as const;
