import { isRefusal, type Refusal } from "../numeric/index.js";
import type { Provenance, SourceId } from "../sources/index.js";
import type { JisParts } from "./jis-parts.js";
import { referenceFor } from "./jis-reference.js";
import { jisClasses, startStopOutlines } from "./jis-type.data.js";
import {
  type CaseSize,
  compact,
  type LabelReading,
  type LabelRefusalCode,
  labelReading,
  malformed,
  type ReferenceRating,
  type Terminals,
} from "./label-reading.js";

/** What a JIS D 5301 designation says. */
export interface JisTypeReading extends LabelReading, JisParts {
  readonly performanceRank: number;
}

/** What a JIS D 5306 start-stop designation says. */
export interface JisStartStopReading extends LabelReading {
  readonly performanceRank: number;
  /** Outline class letter. */
  readonly outline: string;
  readonly polarity?: "L" | "R";
  /** Post class letter as printed, without a known meaning here. */
  readonly postClass?: string;
}

const READ = "read";
/** Groups of a match; those a pattern makes optional are empty. */
type Matched = readonly [string, string, string, string, string, string, string];

/** L = positive right with the posts towards you; from the short side next to the positive post it is on the left. */
function terminalsOf(polarity: string | undefined): (Terminals & Provenance) | undefined {
  if (!polarity) return undefined;
  return {
    positivePost: polarity === "L" ? "right" : "left",
    enLayout: polarity === "L" ? 0 : 1,
    source: "jis-posts",
    standing: READ,
  };
}

function caseOf(jisCase: string | undefined, lowSource?: SourceId): (CaseSize & Provenance) | undefined {
  const row = jisCase && jisClasses[jisCase.charAt(0)];
  if (!row) return undefined;
  const length = 10 * Number(jisCase.slice(1));
  return { length, width: row[0], height: row[1], source: lowSource ?? row[2], standing: READ };
}

/**
 * Reads a type designation of JIS D 5301 (2006 and later).
 *
 * Scope: automotive types rank + class + length + polarity; the length is good to half a centimetre, the cranking
 * current only an estimate ({@link referenceCrankingAmperes}). On labels before 2006 the rank has another basis, which
 * the code cannot tell.
 *
 * @param text such as `55B24L(S)`, `S34B20R`
 * @returns rank (dimensionless), case in mm, terminal layout; or a refusal `malformed-code`
 * Source: Battery Association of Japan and a parts maker's page (both read).
 * @example
 * ```ts
 * import { isRefusal } from "crankworthy/numeric";
 * import { decodeJisType } from "crankworthy/label-codes";
 * const jis = decodeJisType("55b24l(s)");
 * !isRefusal(jis) && [jis.text, jis.performanceRank, jis.caseMillimetres?.width]; // => ["55B24LS", 55, 129]
 * ```
 */
export function decodeJisType(text: string): JisTypeReading | Refusal<LabelRefusalCode> {
  const match = /^(S?)([1-9]\d{1,2})([A-H])(\d\d)([LR]?)(S?)$/.exec(compact(text));
  if (!match) return malformed("55B24L(S)");
  const [whole, prefix, rank, caseClass, lengthDigits, polarity, suffix] = match as unknown as Matched;
  const parts = {
    performanceRank: Number(rank),
    caseClass,
    lengthDigits,
    polarity: (polarity || undefined) as JisParts["polarity"],
    thickPosts: suffix === "S",
    valveRegulated: prefix === "S",
    terminals: terminalsOf(polarity),
    caseMillimetres: caseOf(caseClass + lengthDigits),
    estimatedRating: undefined as ReferenceRating | undefined,
  };
  const reference = referenceFor(parts);
  if (!isRefusal(reference)) parts.estimatedRating = reference;
  return labelReading<JisTypeReading>("jis-d-5301", whole, "jis-designation", READ, parts);
}

/**
 * Writes a JIS D 5301 designation.
 *
 * @param parts as decoded; rank a whole number 10-999
 * @returns such as `55B24LS`; or a refusal `malformed-code`
 * @example
 * ```ts
 * import { formatJisType } from "crankworthy/label-codes";
 * const size = { performanceRank: 34, caseClass: "B", lengthDigits: "20" };
 * formatJisType({ ...size, polarity: "R", thickPosts: false, valveRegulated: true }); // => "S34B20R"
 * ```
 */
export function formatJisType(parts: JisParts): string | Refusal<LabelRefusalCode> {
  const { performanceRank, caseClass, lengthDigits, polarity = "", thickPosts, valveRegulated } = parts;
  const text = `${valveRegulated ? "S" : ""}${performanceRank}${caseClass}${lengthDigits}${polarity}${thickPosts ? "S" : ""}`;
  const read = decodeJisType(text);
  return isRefusal(read) ? read : text;
}

/**
 * Reads a start-stop designation of JIS D 5306:2021: outline letter, rank, polarity, post class.
 *
 * Scope: the outline letters M, N, Q, S, T are placed by trade equivalence (low authority); other letters give no size.
 * The list of the standard was not read, so no cranking current is estimated.
 *
 * @param text such as `Q-85L`
 * @returns rank, case in mm where known, terminal layout; or a refusal `malformed-code`
 * Source: JIS D 5306:2021 section 4 (read); a parts list for the outlines (read).
 * @example
 * ```ts
 * import { isRefusal } from "crankworthy/numeric";
 * import { decodeJisStartStop } from "crankworthy/label-codes";
 * const jis = decodeJisStartStop("N55R");
 * !isRefusal(jis) && [jis.text, jis.performanceRank, jis.caseMillimetres?.length]; // => ["N-55R", 55, 240]
 * ```
 */
export function decodeJisStartStop(text: string): JisStartStopReading | Refusal<LabelRefusalCode> {
  const match = /^([A-Z])([1-9]\d{1,2})([LR]?)([A-Z]?)$/.exec(compact(text));
  if (!match) return malformed("Q-85L");
  const [, outline, rank, polarity, postClass] = match as unknown as Matched;
  const parts = {
    outline,
    performanceRank: Number(rank),
    polarity: (polarity || undefined) as JisParts["polarity"],
    postClass: postClass || undefined,
    terminals: terminalsOf(polarity),
    caseMillimetres: caseOf(startStopOutlines[outline], "jis-trade-names"),
  };
  return labelReading<JisStartStopReading>(
    "jis-d-5306",
    formatJisStartStop(parts),
    "jis-d-5306",
    READ,
    parts,
  );
}

/** Writes a start-stop designation, such as `Q-85L`. */
export function formatJisStartStop(
  parts: Pick<JisStartStopReading, "outline" | "performanceRank"> & {
    readonly polarity?: "L" | "R" | undefined;
    readonly postClass?: string | undefined;
  },
): string {
  return `${parts.outline}-${parts.performanceRank}${parts.polarity ?? ""}${parts.postClass ?? ""}`;
}
