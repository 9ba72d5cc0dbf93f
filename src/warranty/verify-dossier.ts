import { canonicalJson } from "./canonical-json.js";
import type { Dossier, DossierSeal, SealKey } from "./dossier.js";
import { repeatedKey } from "./repeated-key.js";
import { hmacHolds, importKey, marksOf, type Sections, sectionsOf, sha256 } from "./seal.js";

/** One place where a dossier is not as it was sealed. */
export interface DossierChange {
  /** Section: `record.measurements`, `libraryVersion`, …; `seal` when every section is genuine, but not their combination. */
  readonly path: string;
  readonly kind: "changed" | "added" | "removed";
  /** What shows it. Only `keyed` also shows changes by somebody who computed the hashes anew. */
  readonly shownBy: "digest" | "keyed";
}

/** What holds in a dossier, and what was changed. */
export interface DossierCheck {
  /**
   * `intact`: everything that could be checked holds (without a key: the hashes only); `changed`: see `changes`;
   * `not-authentic`: the hashes hold, but the key asked for is not the one it was sealed with, or it has no keyed seal;
   * `not-a-dossier`: see `reason`.
   */
  readonly answer: "intact" | "changed" | "not-authentic" | "not-a-dossier";
  readonly digestHolds: boolean;
  /** `not-checked`: it has a keyed seal, no key was given. `other-key`: not one mark was made with this key. */
  readonly keyedSeal: "holds" | "broken" | "other-key" | "missing" | "not-checked" | "none";
  readonly changes: readonly DossierChange[];
  /**
   * For a text: whether it is byte for byte the canonical form. One with other white space or key order still has its
   * content; one with a key written twice says two things and is `not-a-dossier`.
   */
  readonly canonicalText?: boolean;
  /** The dossier as read, changed or not. */
  readonly dossier?: Dossier;
  /** Why it is no dossier. */
  readonly reason?: string;
}

/**
 * Tells what holds in a dossier and which sections were changed.
 *
 * With a key, the answer rests on the keyed marks: a change is also found, and named, when the hashes were computed anew.
 * Marks are compared in constant time.
 *
 * @param dossier its text, or the object
 * @param options `key`: the one it was sealed with
 * @returns what holds and what was changed; never throws for bad content
 * @throws RangeError for a key that is too short
 * @throws Error where there is no Web Crypto
 * @example
 * ```ts
 * import { canonicalJson, sealDossier, verifyDossier } from "crankworthy/warranty";
 * const dossier = await sealDossier({ record: { id: "7" }, evaluation: {}, libraryVersion: "0.1.0" });
 * const text = canonicalJson(dossier);
 * (await verifyDossier(text)).keyedSeal; // => "none"
 * (await verifyDossier(text.replace('"7"', '"8"'))).changes; // => [{ path: "record.id", kind: "changed", shownBy: "digest" }]
 * ```
 */
export async function verifyDossier(
  dossier: string | Dossier,
  options: { readonly key?: SealKey } = {},
): Promise<DossierCheck> {
  const key = options.key === undefined ? undefined : await importKey(options.key);
  const read = readDossier(dossier);
  if ("reason" in read) {
    const answer = "not-a-dossier";
    return { answer, digestHolds: false, keyedSeal: "none", changes: [], reason: read.reason };
  }
  const { seal, ...parts } = read.dossier;
  const { sha256: digest, keyed, ...open } = seal;
  const sections = sectionsOf(parts);

  const recomputed = await marksOf(sections, sha256);
  const changes = differing(
    sections,
    open.sections,
    "digest",
    (path) => recomputed[path] === open.sections[path],
  );
  const digestHolds = (await sha256({ ...parts, seal: open })) === digest;

  let keyedSeal: DossierCheck["keyedSeal"] = keyed ? "not-checked" : "none";
  if (key && !keyed) keyedSeal = "missing";
  if (key && keyed) {
    const { hmac, ...openKeyed } = keyed;
    const genuine = new Set<string>();
    for (const [path, value] of sections) {
      // Paths are the sealer's text: `constructor` must not find what every object inherits.
      if (!Object.hasOwn(keyed.sections, path)) continue;
      if (await hmacHolds(key, [path, value], keyed.sections[path]!)) genuine.add(path);
    }
    const holds = await hmacHolds(key, { ...parts, seal: { ...seal, keyed: openKeyed } }, hmac);
    keyedSeal = holds ? "holds" : genuine.size > 0 ? "broken" : "other-key";
    if (keyedSeal === "broken") {
      const known = new Set(changes.map(({ path }) => path));
      for (const one of differing(sections, keyed.sections, "keyed", (path) => genuine.has(path))) {
        if (!known.has(one.path)) changes.push(one);
      }
    }
  }
  if (changes.length === 0 && (!digestHolds || keyedSeal === "broken")) {
    changes.push({ path: "seal", kind: "changed", shownBy: digestHolds ? "keyed" : "digest" });
  }
  return {
    answer:
      changes.length > 0
        ? "changed"
        : keyedSeal === "missing" || keyedSeal === "other-key"
          ? "not-authentic"
          : "intact",
    digestHolds,
    keyedSeal,
    changes,
    ...(read.canonicalText !== undefined && { canonicalText: read.canonicalText }),
    dossier: read.dossier,
  };
}

/** Sections that differ from the sealed marks; of a part and its sections only the sections, which say more. */
function differing(
  sections: Sections,
  sealed: Readonly<Record<string, string>>,
  shownBy: DossierChange["shownBy"],
  holds: (path: string) => boolean,
): DossierChange[] {
  const changes: DossierChange[] = [];
  for (const path of new Set([...sections.keys(), ...Object.keys(sealed)])) {
    if (!sections.has(path)) changes.push({ path, kind: "removed", shownBy });
    else if (!Object.hasOwn(sealed, path)) changes.push({ path, kind: "added", shownBy });
    else if (!holds(path)) changes.push({ path, kind: "changed", shownBy });
  }
  return changes.filter(
    ({ path, kind }) =>
      (kind === "changed" && !changes.some((other) => other.path.startsWith(`${path}.`))) ||
      (kind !== "changed" &&
        !changes.some((other) => other.kind === kind && path.startsWith(`${other.path}.`))),
  );
}

type Read = { readonly dossier: Dossier; readonly canonicalText?: boolean } | { readonly reason: string };

function readDossier(given: string | Dossier): Read {
  let value: unknown = given;
  if (typeof given === "string") {
    try {
      value = JSON.parse(given);
    } catch {
      return { reason: "The text is no JSON." };
    }
    const repeated = repeatedKey(given);
    if (repeated !== undefined) return { reason: `The text says two things: ${repeated} is written twice.` };
  }
  const text = canonicalJson(value);
  if (typeof text !== "string") return { reason: text.reason };
  const { format, record, evaluation, seal } = tableOf(value);
  if (format !== "crankworthy-dossier/1") return { reason: "It does not say format crankworthy-dossier/1." };
  if (!isTable(record) || !isTable(evaluation)) return { reason: "It lacks a record or an evaluation." };
  if (!isSeal(seal)) return { reason: "It has no seal that can be read." };
  return { dossier: value as Dossier, ...(typeof given === "string" && { canonicalText: given === text }) };
}

const MARK = /^[0-9a-f]{64}$/;
const isTable = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const tableOf = (value: unknown): Readonly<Record<string, unknown>> => (isTable(value) ? value : {});
const isMark = (value: unknown): boolean => typeof value === "string" && MARK.test(value);
const areMarks = (value: unknown): boolean => isTable(value) && Object.values(value).every(isMark);

function isSeal(seal: unknown): seal is DossierSeal {
  const { sections, sha256: digest, keyed } = tableOf(seal);
  if (!areMarks(sections) || !isMark(digest)) return false;
  return keyed === undefined || (areMarks(tableOf(keyed).sections) && isMark(tableOf(keyed).hmac));
}
