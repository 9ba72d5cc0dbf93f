import { type Refusal, refuse } from "../numeric/index.js";

/** A system of ISO/IEC 7064. */
export type CheckSystem = "mod-11-2" | "mod-11-10" | "mod-37-2" | "mod-37-36" | "mod-97-10";

const ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

// modulus, radix (0: hybrid), data alphabet size, check characters in value order. ISO/IEC 7064 (from memory, examples read).
const SYSTEMS: Readonly<Record<CheckSystem, readonly [number, number, number, string]>> = {
  "mod-11-2": [11, 2, 10, "0123456789X"],
  "mod-11-10": [10, 0, 10, "0123456789"],
  "mod-37-2": [37, 2, 36, `${ALPHABET}*`],
  "mod-37-36": [36, 0, 36, ALPHABET],
  "mod-97-10": [97, 10, 36, "0123456789"],
};

const checkLength = (system: CheckSystem) => (system === "mod-97-10" ? 2 : 1);

/**
 * Check character(s) of a text under ISO/IEC 7064.
 *
 * Equations: pure systems p = (p + a) · r mod M from p = 0, check c with p + c ≡ 1; hybrid systems p = 2 · ((p + a) mod M,
 * 0 read as M) mod (M + 1) from p = M; MOD 97-10 gives 98 − 100 n mod 97, letters first replaced by 10..35.
 *
 * @param system one of the five
 * @param data at least one character: digits, and capital letters where the system knows them (`37-…`, `97-10`)
 * @returns one character (`mod-97-10`: two digits), or the refusal `foreign-character`
 * @example
 * ```ts
 * import { checkCharacters } from "crankworthy/warranty";
 * checkCharacters("mod-37-36", "CLM2025000123"); // => "J"
 * checkCharacters("mod-97-10", "794"); // => "44"
 * ```
 */
export function checkCharacters(system: CheckSystem, data: string): string | Refusal<"foreign-character"> {
  const [modulus, radix, size, checks] = SYSTEMS[system];
  let p = radix === 0 ? modulus : 0;
  let foreign = data === "";
  for (const character of data) {
    const a = ALPHABET.indexOf(character);
    if (a < 0 || a >= size) foreign = true;
    if (radix === 0) p = (2 * ((p + a) % modulus || modulus)) % (modulus + 1);
    else if (radix === 2) p = ((p + a) * 2) % modulus;
    else p = (p * (a < 10 ? 10 : 100) + a) % modulus;
  }
  if (foreign) {
    const wanted = size === 10 ? "digits" : "digits and capital letters A to Z";
    return refuse("foreign-character", `${system} knows no such text: ${data}.`, `A text of ${wanted} only.`);
  }
  if (radix === 10) return String(98 - ((p * 100) % modulus)).padStart(2, "0");
  return checks[(modulus + 1 - p) % modulus]!;
}

/**
 * Tells whether a text ends in its own check character(s). It tells typing errors, not forgeries: anyone can compute a
 * check character, so a reference that releases money needs a keyed signature as well.
 *
 * @param system one of the five
 * @param text data and check character(s), no separators
 * @example
 * ```ts
 * import { hasValidCheck } from "crankworthy/warranty";
 * hasValidCheck("mod-37-36", "CLM2025000123J"); // => true
 * hasValidCheck("mod-37-36", "CLM2025000132J"); // => false
 * ```
 */
export function hasValidCheck(system: CheckSystem, text: string): boolean {
  const cut = text.length - checkLength(system);
  return cut > 0 && checkCharacters(system, text.slice(0, cut)) === text.slice(cut);
}

/** One change that makes a text valid. */
export interface LikelyTypo {
  /** Likeliest first: neighbours swapped, a look-alike read wrongly, any other single character. */
  readonly kind: "transposition" | "look-alike" | "substitution";
  /** Position of the (first) wrong character, counted from 1. */
  readonly position: number;
  readonly written: string;
  readonly instead: string;
  readonly corrected: string;
}

const LOOK_ALIKES = [
  "O0",
  "0O",
  "Q0",
  "0Q",
  "D0",
  "0D",
  "I1",
  "1I",
  "L1",
  "1L",
  "Z2",
  "2Z",
  "S5",
  "5S",
  "G6",
  "6G",
  "B8",
  "8B",
];
const KINDS = ["transposition", "look-alike", "substitution"] as const;

/**
 * Lists the single substitutions and adjacent transpositions that would make an invalid text valid. Nothing is repaired:
 * most positions offer one, so a person has to compare with the original.
 *
 * @param system one of the five
 * @param text data and check character(s), no separators; an empty list when it is valid already
 * @returns likeliest kind first, then by position
 * @example
 * ```ts
 * import { likelyTypos } from "crankworthy/warranty";
 * likelyTypos("mod-37-36", "CLM2025000132J")[0]; // => { kind: "transposition", position: 12, written: "32", instead: "23", corrected: "CLM2025000123J" }
 * ```
 */
export function likelyTypos(system: CheckSystem, text: string): LikelyTypo[] {
  const found: LikelyTypo[] = [];
  if (hasValidCheck(system, text)) return found;
  const [, , size, checks] = SYSTEMS[system];
  const data = text.length - checkLength(system);
  const attempt = (kind: LikelyTypo["kind"], at: number, written: string, instead: string) => {
    const corrected = text.slice(0, at) + instead + text.slice(at + written.length);
    if (written !== instead && hasValidCheck(system, corrected)) {
      found.push({ kind, position: at + 1, written, instead, corrected });
    }
  };
  for (let at = 0; at < text.length; at++) {
    const written = text[at]!;
    if (at + 1 < text.length) attempt("transposition", at, written + text[at + 1]!, text[at + 1]! + written);
    for (const instead of at < data ? ALPHABET.slice(0, size) : checks) {
      attempt(LOOK_ALIKES.includes(written + instead) ? "look-alike" : "substitution", at, written, instead);
    }
  }
  return found.sort((a, b) => KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind));
}
