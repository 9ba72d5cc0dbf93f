/** Above this a battery cools down before it is charged [°C]: as the evaluation's own steps have it. Our choice. */
export const HOTTEST_TO_CHARGE = 45;
/** Hours of rest after a charge, as the evaluation's own steps have it. */
export const REST_HOURS_AFTER_CHARGE = 8;
/** Readings of one battery that are asked for, on the bench and in the vehicle. */
export const READINGS_WANTED = { bench: 3, vehicle: 5 } as const;
/** Once there is an answer, a step that takes away less risk is not asked for. Our choice. */
export const SMALLEST_RISK_DROP = 0.01;
/** A sale and terms for imagining a claim; only whether it can be settled is looked at. */
export const IMAGINED_TERMS = {
  currency: "EUR",
  minorUnitDigits: 2,
  freeMonths: 24,
  totalMonths: 24,
  prorationOrigin: "purchase",
  monthCount: "completed-clamped",
  lastCoveredDay: "anniversary",
  priceBasis: "paid",
  rounding: "half-up",
  replacementTerm: "remaining",
  exclusions: [],
  core: { depositInExchange: "waived" },
} as const;
