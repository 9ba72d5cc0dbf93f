import type { TextChunk } from "./text-input.js";

/** @internal One open source, whatever it was made from. */
export interface Source<Chunk = TextChunk> {
  /** The next chunk, `undefined` at the end. A chunk is good until the next call. */
  next(): Promise<Chunk | undefined>;
  /** Lets go of file or stream; may be called at any time, also twice, also while `next` waits. */
  close(): Promise<void>;
  /** Known for files [B]. */
  readonly bytesTotal?: number;
}
