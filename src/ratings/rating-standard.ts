/**
 * A cranking rating with the edition that fixes its test. `unstated` is a bare current ("CCA 600") whose standard
 * nobody printed; `:unstated` names the standard but not the edition or level.
 */
export type RatingStandard =
  | "sae-j537"
  | "en-50342-1:2015"
  | "en-50342-1:2006-level-1"
  | "en-50342-1:2006-level-2"
  | "en-50342-1:unstated"
  | "iec-60095-1:pre-2006"
  | "iec-60095-1:2006"
  | "iec-60095-1:2018"
  | "iec-60095-1:unstated"
  | "din-43539-2"
  | "jis-d-5301:2006"
  | "jis-d-5301:pre-2006"
  | "bci-ca"
  | "bci-mca"
  | "hca"
  | "gost-959-91"
  | "gb-t-5008-1"
  | "unstated";
