import {
  type ReadTextOptions,
  readText,
  StreamError,
  type TextInput,
  type TextPiece,
} from "crankworthy/streams";

export async function collect(input: TextInput, options?: ReadTextOptions): Promise<TextPiece[]> {
  const pieces: TextPiece[] = [];
  for await (const piece of readText(input, options)) pieces.push(piece);
  return pieces;
}

/** What stops the reading; fails where nothing does. */
export async function failure(input: TextInput, options?: ReadTextOptions): Promise<StreamError> {
  try {
    await collect(input, options);
  } catch (error) {
    if (error instanceof StreamError) return error;
    throw error;
  }
  throw new Error("read to the end");
}

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Bytes in chunks that end at the given places. */
export function cutAt(bytes: Uint8Array, ...places: readonly number[]): Uint8Array[] {
  const ends = [...places, bytes.length];
  return ends.map((end, i) => bytes.slice(ends[i - 1] ?? 0, end));
}

export function utf16(text: string, littleEndian: boolean): Uint8Array {
  const view = new DataView(new ArrayBuffer(2 * text.length));
  for (let i = 0; i < text.length; i++) view.setUint16(2 * i, text.charCodeAt(i), littleEndian);
  return new Uint8Array(view.buffer);
}
