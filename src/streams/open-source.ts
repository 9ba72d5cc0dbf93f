import { wrongArgument } from "../numeric/index.js";
import { openFile } from "./file-source.js";
import { fromIterator } from "./iterator-source.js";
import type { Source } from "./source.js";
import type { TextChunk, TextInput, WebStream } from "./text-input.js";

/** @internal Opens an input; throws RangeError for what is none. */
export function openSource(input: TextInput): Source | Promise<Source> {
  if (typeof input === "string" || input instanceof Uint8Array) return fromIterator([input].values());
  if (input instanceof URL) {
    if (input.protocol !== "file:")
      wrongArgument("input", input.protocol, "a URL of a file, or the opened stream");
    return openFile(input);
  }
  if (typeof input === "object" && input !== null) {
    if ("path" in input && typeof input.path === "string" && !(Symbol.asyncIterator in input))
      return openFile(input.path);
    if ("getReader" in input && typeof input.getReader === "function") return fromWebStream(input);
    if (Symbol.asyncIterator in input) return fromIterator(input[Symbol.asyncIterator](), input);
    if (Symbol.iterator in input) return fromIterator(input[Symbol.iterator]());
  }
  return wrongArgument(
    "input",
    typeof input,
    "text, bytes, { path }, a file URL, a stream or an iterable of chunks",
  );
}

function fromWebStream(stream: WebStream): Source {
  if ((stream as { readonly locked?: boolean }).locked)
    wrongArgument("input", "a stream that somebody else reads", "one that is free");
  const reader = stream.getReader();
  return {
    next: async (): Promise<TextChunk | undefined> => {
      const { done, value } = await reader.read();
      return done ? undefined : value;
    },
    close: () => reader.cancel().catch(() => {}),
  };
}
