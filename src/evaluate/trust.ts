import type { Condition, Finding, FindingCode } from "../verdict/index.js";
import type { TrustSection } from "./evaluation.js";

/** Findings that limit what the numbers can carry, whatever they say about the battery. */
const LIMITING: ReadonlySet<FindingCode> = /* @__PURE__ */ new Set<FindingCode>([
  "missing-temperature",
  "missing-rest-history",
  "missing-charge-measurement",
  "missing-ability-measurement",
  "chemistry-unknown",
  "rating-estimated",
  "rating-not-comparable",
  "surface-charge",
  "vehicle-loads-possible",
  "temperature-unusual",
  "temperature-compensation-assumed",
  "ability-implausible",
  "voltage-above-rest",
  "charge-evidence-disagrees",
  "cell-missing-unproven",
  "charge-history-contradicted",
  "load-test-not-valid",
  "electrical-load-present",
  "modules-may-be-awake",
  "contact-spread",
  "low-reading-in-vehicle",
  "draw-not-settled",
  "causes-conflict",
  "electrolyte-low",
]);
const UNUSABLE: ReadonlySet<string> = /* @__PURE__ */ new Set([
  "system-voltage",
  "scattered-readings",
  "contact-spread",
  "conflicting-evidence",
  "frozen",
]);

/** Can the numbers be relied on, and what limits them. */
export function trust(findings: readonly Finding[], condition: Condition, decidedBy: string): TrustSection {
  const because: FindingCode[] = [];
  for (const { code } of findings) if (LIMITING.has(code) && !because.includes(code)) because.push(code);
  const level =
    condition === "not-established" && UNUSABLE.has(decidedBy)
      ? "unusable"
      : because.length > 0
        ? "limited"
        : "sound";
  return { level, because };
}
