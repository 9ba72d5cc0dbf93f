import type { Purchase, WarrantyTerms } from "crankworthy/warranty";

export const terms: WarrantyTerms = {
  currency: "EUR",
  minorUnitDigits: 2,
  freeMonths: 24,
  totalMonths: 60,
  prorationOrigin: "purchase",
  monthCount: "completed-clamped",
  lastCoveredDay: "anniversary",
  priceBasis: "paid",
  rounding: "half-up",
  replacementTerm: "remaining",
  exclusions: [
    "physical-damage",
    "freeze-damage",
    "low-electrolyte",
    "wrong-application",
    "altered-date-code",
  ],
  core: { depositInExchange: "waived" },
};

export const purchase: Purchase = { receipt: true, soldOn: "2020-01-15", pricePaid: "120.00" };
