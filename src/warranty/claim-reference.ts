import type { Refusal } from "../numeric/index.js";
import {
  type CheckSystem,
  checkCharacters,
  hasValidCheck,
  type LikelyTypo,
  likelyTypos,
} from "./check-characters.js";

/**
 * Writes a claim reference: the parts joined, then the check character(s).
 *
 * @param parts prefix, year, padded serial number, …; digits and capital letters, joined without separator
 * @param system MOD 37,36 unless stated: no check character outside A..Z 0..9 (our choice; MOD 97-10 for digits only)
 * @returns the reference, or the refusal `foreign-character`
 * @example
 * ```ts
 * import { claimReference } from "crankworthy/warranty";
 * claimReference(["CLM", "2025", "000123"]); // => "CLM2025000123J"
 * ```
 */
export function claimReference(
  parts: readonly string[],
  system: CheckSystem = "mod-37-36",
): string | Refusal<"foreign-character"> {
  const data = parts.join("");
  const check = checkCharacters(system, data);
  return typeof check === "string" ? data + check : check;
}

/** A claim reference as it was typed in. */
export interface ReadReference {
  readonly valid: boolean;
  /** Capital letters, without spaces and hyphens. */
  readonly folded: string;
  /** When not valid: what single slip would explain it. Look-alikes are named, never repaired. */
  readonly typos: readonly LikelyTypo[];
}

/**
 * Reads a typed claim reference. Folding: ASCII letters to capitals, spaces and hyphens dropped, nothing else.
 *
 * @param typed the reference as typed
 * @param system the system it was made with
 * @example
 * ```ts
 * import { readClaimReference } from "crankworthy/warranty";
 * readClaimReference("clm-2025-000123-j").valid; // => true
 * readClaimReference("CLM-2025-O00123-J").typos[0].position; // => 8
 * ```
 */
export function readClaimReference(typed: string, system: CheckSystem = "mod-37-36"): ReadReference {
  const folded = typed
    .replace(/[\s-]/g, "")
    .replace(/[a-z]/g, (letter) => String.fromCharCode(letter.charCodeAt(0) - 32));
  return { valid: hasValidCheck(system, folded), folded, typos: likelyTypos(system, folded) };
}
