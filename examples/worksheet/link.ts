// A sheet as the part of an address behind `#`, which browsers send nowhere: `#v=1&lang=de&record=…`, the record as JSON,
// deflated, in base64url.

/** Version of this packing. The record has a version of its own. */
const PACKING = "1";
const LONGEST_FRAGMENT = 20_000;
const LONGEST_JSON = 100_000;

/** What a fragment holds. */
export type Link =
  | { readonly kind: "none"; readonly language?: string }
  | { readonly kind: "record"; readonly record: unknown; readonly language?: string }
  | { readonly kind: "damaged" | "newer" | "too-long" };

/** The fragment for a record. */
export async function fragmentOf(record: unknown, language: string): Promise<string> {
  const packed = through(
    new TextEncoder().encode(JSON.stringify(record)),
    new CompressionStream("deflate-raw"),
  );
  const bytes = await collected(packed, Number.POSITIVE_INFINITY);
  let binary = "";
  for (const byte of bytes) binary += String.fromCharCode(byte);
  const text = btoa(binary).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
  return `#v=${PACKING}&lang=${encodeURIComponent(language)}&record=${text}`;
}

/** Reads a fragment from anywhere. Whatever it holds, the worst it can bring about is an answer that it was not read. */
export async function readFragment(fragment: string): Promise<Link> {
  if (fragment.length > LONGEST_FRAGMENT) return { kind: "too-long" };
  if (!fragment.includes("=")) return { kind: "none" };
  const found = new URLSearchParams(fragment.replace(/^#/, ""));
  const language = found.get("lang") ?? undefined;
  const told = language === undefined ? {} : { language };
  const text = found.get("record");
  if (text === null) return { kind: "none", ...told };
  const packing = found.get("v") ?? "";
  if (packing !== PACKING) return { kind: Number(packing) > Number(PACKING) ? "newer" : "damaged" };
  try {
    const binary = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
    const bytes = Uint8Array.from(binary, (one) => one.charCodeAt(0));
    // A short text can unpack to a very long one.
    const json = await collected(through(bytes, new DecompressionStream("deflate-raw")), LONGEST_JSON);
    const record: unknown = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(json));
    return { kind: "record", record, ...told };
  } catch (error) {
    return { kind: error instanceof RangeError ? "too-long" : "damaged" };
  }
}

function through(
  bytes: Uint8Array,
  stream: CompressionStream | DecompressionStream,
): ReadableStream<Uint8Array> {
  return new Blob([bytes as Uint8Array<ArrayBuffer>]).stream().pipeThrough(stream);
}

async function collected(stream: ReadableStream<Uint8Array>, most: number): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  let length = 0;
  const reader = stream.getReader();
  for (let read = await reader.read(); !read.done; read = await reader.read()) {
    length += read.value.length;
    if (length > most) {
      await reader.cancel();
      throw new RangeError("longer than a record can be");
    }
    parts.push(read.value);
  }
  const whole = new Uint8Array(length);
  let start = 0;
  for (const part of parts) {
    whole.set(part, start);
    start += part.length;
  }
  return whole;
}
