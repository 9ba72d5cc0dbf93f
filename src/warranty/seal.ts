import { canonicalJson } from "./canonical-json.js";

// SHA-256 and HMAC-SHA-256 of canonical JSON through Web Crypto, and the sections a dossier is hashed by.

const LEAST_KEY_BYTES = 16;

/** Path of a section and its content: every part of the dossier, and each second level of a part that is an object. */
export type Sections = ReadonlyMap<string, unknown>;

export function sectionsOf(content: object): Sections {
  const sections = new Map<string, unknown>();
  for (const [part, value] of Object.entries(content)) {
    if (part === "seal") continue;
    sections.set(part, value);
    if (typeof value !== "object" || value === null || Array.isArray(value)) continue;
    for (const [key, inner] of Object.entries(value)) sections.set(`${part}.${key}`, inner);
  }
  return sections;
}

function web(): SubtleCrypto {
  const subtle = globalThis.crypto?.subtle;
  if (!subtle) throw new Error("Web Crypto is missing: a dossier needs Node 20 or a page served over https");
  return subtle;
}

/** UTF-8 bytes of the canonical JSON; the value is known to be representable. */
function bytesOf(value: unknown): Uint8Array<ArrayBuffer> {
  const text = canonicalJson(value) as string;
  return new Uint8Array(new TextEncoder().encode(text));
}

const hex = (buffer: ArrayBuffer): string =>
  Array.from(new Uint8Array(buffer), (byte) => byte.toString(16).padStart(2, "0")).join("");

function bytesOfHex(text: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(text.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
}

export async function digestOf(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  return hex(await web().digest("SHA-256", bytes));
}

export const sha256 = (value: unknown): Promise<string> => digestOf(bytesOf(value));

export async function importKey(key: string | Uint8Array): Promise<CryptoKey> {
  const bytes = typeof key === "string" ? new TextEncoder().encode(key) : key;
  if (bytes.length < LEAST_KEY_BYTES) {
    throw new RangeError(`key: received ${bytes.length} bytes, expected at least ${LEAST_KEY_BYTES}`);
  }
  const algorithm = { name: "HMAC", hash: "SHA-256" };
  return web().importKey("raw", new Uint8Array(bytes), algorithm, false, ["sign", "verify"]);
}

export async function hmacOf(key: CryptoKey, bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  return hex(await web().sign("HMAC", key, bytes));
}

export const hmac = (key: CryptoKey, value: unknown): Promise<string> => hmacOf(key, bytesOf(value));

/** Compares in constant time: `verify`, not a comparison of texts. */
export async function hmacHolds(key: CryptoKey, value: unknown, mark: string): Promise<boolean> {
  return web().verify("HMAC", key, bytesOfHex(mark), bytesOf(value));
}

/** A mark of every section; the path is hashed with the content, so that two sections cannot be exchanged. */
export async function marksOf(
  sections: Sections,
  mark: (value: unknown) => Promise<string>,
): Promise<Record<string, string>> {
  const entries = [...sections].map(async ([path, value]) => [path, await mark([path, value])] as const);
  return Object.fromEntries(await Promise.all(entries));
}
