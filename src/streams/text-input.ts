/** A part of a text as a source hands it out: bytes, or characters already decoded. */
export type TextChunk = Uint8Array | string;

/** The part of a Web `ReadableStream` that is used; those of browsers and of Node have it. */
export interface WebStream {
  getReader(): {
    read(): Promise<{ readonly done: boolean; readonly value?: TextChunk | undefined }>;
    cancel(reason?: unknown): Promise<void>;
  };
}

/**
 * Where a text comes from: the text itself (`string`), its bytes, a file (`{ path }` or a `file:` URL, outside browsers
 * only), a Web stream, or anything that hands out chunks in order, such as a Node stream. Chunks may end anywhere.
 */
export type TextInput =
  | string
  | Uint8Array
  | { readonly path: string }
  | URL
  | WebStream
  | AsyncIterable<TextChunk>
  | Iterable<TextChunk>;
