import { type NotRepresentable, writeCanonical } from "./canonical-json.js";
import { hmac, importKey, marksOf, sectionsOf, sha256 } from "./seal.js";
import type { Settlement } from "./settlement.js";
import type { WarrantyTerms } from "./terms.js";

/** What goes into a dossier. Plain data throughout; see {@link canonicalJson}. */
export interface DossierContent {
  /** The battery record, as it was evaluated. */
  readonly record: object;
  readonly evaluation: object;
  /** Terms and settlement where they were worked out apart from the record. */
  readonly terms?: WarrantyTerms;
  readonly settlement?: Settlement;
  /** Limits that replaced those of the default policy. */
  readonly policy?: object;
  /** `LIBRARY_VERSION` of `crankworthy/evaluate`. */
  readonly libraryVersion: string;
  /** Editions of tables by name. */
  readonly tableVersions?: Readonly<Record<string, string>>;
}

/** SHA-256 and, with a key, HMAC-SHA-256 of everything and of each section; hexadecimal. */
export interface DossierSeal {
  readonly canonicalization: "RFC 8785";
  readonly digest: "SHA-256";
  /** Of `[path, content]`, by path: `record`, `record.identity`, … */
  readonly sections: Readonly<Record<string, string>>;
  /** Of the dossier without `seal.sha256` and `seal.keyed`. */
  readonly sha256: string;
  readonly keyed?: {
    readonly algorithm: "HMAC-SHA-256";
    readonly sections: Readonly<Record<string, string>>;
    /** Of the dossier without this one. */
    readonly hmac: string;
  };
}

/** A claim's papers in one object that shows when it was changed. Write it down with {@link canonicalJson}. */
export interface Dossier extends DossierContent {
  readonly format: "crankworthy-dossier/1";
  readonly seal: DossierSeal;
}

/** Key of a keyed seal: text (its UTF-8 bytes) or bytes, at least 16 of them. */
export type SealKey = string | Uint8Array;

/**
 * Puts record, evaluation, terms, settlement and versions into a dossier that shows later whether and where it was changed.
 *
 * Scope: hashes alone find accidents and honest mistakes. Whoever alters a dossier on purpose can compute them anew, so a
 * dossier that has to stand in a dispute needs a key that the other side does not have. A keyed seal proves something to
 * holders of the key only; it is no signature. Keep the key out of the dossier and out of the program.
 *
 * Sources: RFC 8785 (canonical JSON), FIPS 180-4 (SHA-256), RFC 2104 (HMAC); from memory. The layout is this library's
 * choice.
 *
 * @param content what to seal; it is copied. A key whose value is `undefined` counts as missing
 * @param options `key`: 16 bytes or more, best 32 random ones
 * @returns the dossier, or the refusal `not-representable` with a `path` for content that JSON cannot carry
 * @throws RangeError for a key that is too short
 * @throws Error where there is no Web Crypto (Node before 20, pages not served over https)
 * @example
 * ```ts
 * import { sealDossier, verifyDossier } from "crankworthy/warranty";
 * const key = "thirty-two bytes from a generator";
 * const content = { record: { measurements: { restVolts: 12.4 } }, evaluation: {}, libraryVersion: "0.1.0" };
 * const dossier = await sealDossier(content, { key });
 * (await verifyDossier(dossier, { key })).answer; // => "intact"
 * const altered = { ...dossier, record: { measurements: { restVolts: 11.4 } } };
 * (await verifyDossier(altered, { key })).changes[0].path; // => "record.measurements"
 * ```
 */
export async function sealDossier(
  content: DossierContent,
  options: { readonly key?: SealKey } = {},
): Promise<Dossier | NotRepresentable> {
  const { record, evaluation, terms, settlement, policy, libraryVersion, tableVersions } = content;
  const named = { record, evaluation, terms, settlement, policy, libraryVersion, tableVersions };
  const text = writeCanonical({ format: "crankworthy-dossier/1", ...named }, true);
  if (typeof text !== "string") return text;
  // From the text, so that later changes of the caller's objects cannot reach the dossier.
  const parts = JSON.parse(text) as Omit<Dossier, "seal">;
  const sections = sectionsOf(parts);
  const open = {
    canonicalization: "RFC 8785",
    digest: "SHA-256",
    sections: await marksOf(sections, sha256),
  } as const;
  const seal = { ...open, sha256: await sha256({ ...parts, seal: open }) };
  if (options.key === undefined) return { ...parts, seal };
  const key = await importKey(options.key);
  const keyed = {
    algorithm: "HMAC-SHA-256",
    sections: await marksOf(sections, (value) => hmac(key, value)),
  } as const;
  const mark = await hmac(key, { ...parts, seal: { ...seal, keyed } });
  return { ...parts, seal: { ...seal, keyed: { ...keyed, hmac: mark } } };
}
