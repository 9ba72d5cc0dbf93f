import { requireKey, wrongArgument } from "../numeric/index.js";

/** How the bytes stand for characters. */
export type TextEncodingName = "utf-8" | "utf-16le" | "utf-16be" | "windows-1252";

/** How far reading has come. */
export interface ReadProgress {
  /** Taken from the source, still compressed where it is [B]. */
  readonly bytesRead: number;
  /** The whole, where it is known (files) [B]. */
  readonly bytesTotal?: number;
}

/** How a text is read. */
export interface ReadTextOptions {
  /** Stops the reading, also while it waits; the iteration then throws the signal's reason. */
  readonly signal?: AbortSignal;
  /** Called before each piece, and once at the end. */
  readonly onProgress?: (progress: ReadProgress) => void;
  /** Size of a piece, if its lines allow [B]; default 65 536: strings of a V8 engine that are larger are slower to make. */
  readonly pieceBytes?: number;
  /** Longest line that is accepted, without its end, counted in UTF-8 [B]; default 1 048 576. */
  readonly mostLineBytes?: number;
  /** Longest text that is accepted, decompressed [B]; default: no limit. */
  readonly mostBytes?: number;
  /** Never guessed; default `utf-8`. */
  readonly encoding?: TextEncodingName;
  /** A character that encloses fields: a line end between two of them ends no line. Default: none. */
  readonly quote?: '"' | "'";
}

/** @internal */
export interface Settings {
  readonly pieceBytes: number;
  readonly mostLineBytes: number;
  readonly mostBytes: number;
  readonly encoding: TextEncodingName;
  /** Its code. */
  readonly quote: number | undefined;
}

const ENCODINGS: Readonly<Record<TextEncodingName, true>> = {
  "utf-8": true,
  "utf-16le": true,
  "utf-16be": true,
  "windows-1252": true,
};

/** @internal Checks the options and fills in what is left out. */
export function settle(options: ReadTextOptions): Settings {
  const { pieceBytes = 65_536, mostLineBytes = 1_048_576, mostBytes, encoding = "utf-8", quote } = options;
  requireBytes("options.pieceBytes", pieceBytes);
  requireBytes("options.mostLineBytes", mostLineBytes);
  if (mostBytes !== undefined) requireBytes("options.mostBytes", mostBytes);
  requireKey("options.encoding", encoding, ENCODINGS);
  if (quote !== undefined) requireKey("options.quote", quote, { '"': 0, "'": 0 });
  return {
    pieceBytes,
    mostLineBytes,
    mostBytes: mostBytes ?? Number.POSITIVE_INFINITY,
    encoding,
    quote: quote?.charCodeAt(0),
  };
}

/** Where one buffer has to hold it. */
const MOST_BUFFER = 2 ** 29;

function requireBytes(name: string, value: number): void {
  const most = name === "options.mostBytes" ? Number.MAX_SAFE_INTEGER : MOST_BUFFER;
  if (!(Number.isSafeInteger(value) && value >= 1 && value <= most))
    wrongArgument(name, value, `a whole number from 1 to ${most}`);
}
