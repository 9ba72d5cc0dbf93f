/**
 * Warranty terms as data, months counted by a named convention, and claims settled to the last minor unit.
 *
 * @module
 */

export { canonicalJson, type NotRepresentable } from "./canonical-json.js";
export {
  type CheckSystem,
  checkCharacters,
  hasValidCheck,
  type LikelyTypo,
  likelyTypos,
} from "./check-characters.js";
export { checkTerms, type TermsIssue } from "./check-terms.js";
export { claimReference, type ReadReference, readClaimReference } from "./claim-reference.js";
export { type Convention, policyConventions } from "./conventions.data.js";
export {
  type Coverage,
  type CoverageCase,
  type CoveragePhase,
  type CoverageQuestion,
  type CoverageReason,
  type CoverageTerms,
  coverageOn,
  type ShelfAge,
  shelfAge,
} from "./coverage.js";
export { cashIncrement, minorUnitDigits } from "./currencies.data.js";
export {
  type Dossier,
  type DossierContent,
  type DossierSeal,
  type SealKey,
  sealDossier,
} from "./dossier.js";
export {
  type ClaimFacts,
  claimEligibility,
  type Eligibility,
  type EligibilityEvidence,
} from "./eligibility.js";
export {
  type ExpectedWarrantyCost,
  expectedWarrantyCost,
  type PromisePolicy,
  promiseOf,
  type WarrantyCostQuestion,
  type WarrantyPromise,
} from "./expected-cost.js";
export { type PriceSplit, roundCash, roundMoney, splitPrice } from "./money.js";
export { addMonthsFrom, countDays, countMonths, lastCoveredDay, MEAN_MONTH_DAYS } from "./months.js";
export { type NoDefectShare, noDefectShare } from "./no-defect-share.js";
export { type Claim, settleCheckedClaim, settleClaim } from "./settle.js";
export type {
  ElapsedTerm,
  Explanation,
  Settlement,
  SettlementLine,
  SettlementReason,
} from "./settlement.js";
export type {
  CorePolicy,
  DateInterval,
  Exclusion,
  LastCoveredDay,
  MoneyRounding,
  MonthCount,
  PriceBasis,
  ProrationOrigin,
  Purchase,
  RebateStep,
  StatutoryFloor,
  TaxPolicy,
  TermLengths,
  UseClassTerms,
  WarrantyTerms,
} from "./terms.js";
export { type DossierChange, type DossierCheck, verifyDossier } from "./verify-dossier.js";
export {
  fitWeibullLife,
  type LifeData,
  type WeibullFit,
  type WeibullFitOptions,
  type WeibullFitRefusal,
} from "./weibull-fit.js";
export { failureShareBy, partialMeanLifeMonths, type WeibullLife } from "./weibull-life.js";
