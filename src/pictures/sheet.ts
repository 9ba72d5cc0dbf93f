import { type PlainDate, requireFinite, requireKey, wrongArgument } from "../numeric/index.js";
import { daysIn } from "./days.js";
import { chance, type NumberFormat, numbersIn } from "./numbers.js";
import { type Palette, palettes } from "./style.data.js";
import { englishPictureWords } from "./words.en.data.js";
import { type PictureWords, type Say, sayIn } from "./words.js";

/** Settings of every picture. */
export interface PictureOptions {
  /** Width [px] (280..2000), default 720. The height follows. */
  readonly width?: number;
  /** Begins every id inside the picture; letters, digits, `-`, `_`. Default: made from what the picture says. */
  readonly id?: string;
  /**
   * `auto` (default) follows the reader's preference for dark pages and prints light; the other two are fixed. A page sets its
   * own colours through `--crankworthy-ink`, `-soft`, `-rule`, `-paper`, `-first`, `-second`.
   */
  readonly scheme?: "auto" | "light" | "dark";
  /** The words, default English. */
  readonly words?: PictureWords;
  /** How numbers are written, default as the language of the words does, with digits 0 to 9 and no grouping. */
  readonly formatNumber?: NumberFormat;
}

/** What drawing needs to know of the page. */
export interface Sheet {
  readonly width: number;
  readonly narrow: boolean;
  readonly id: string | undefined;
  readonly scheme: "auto" | "light" | "dark";
  readonly palette: Palette;
  readonly lang: string;
  /** Sentences run from right to left. */
  readonly rightToLeft: boolean;
  readonly say: Say;
  readonly number: NumberFormat;
  /** Number and unit that stay together. */
  readonly quantity: (value: number, decimals: number, unit: string) => string;
  readonly chance: (probability: number) => string;
  /** A calendar day in words. */
  readonly day: (day: PlainDate) => string;
}

/** Below this the layout is that of a phone [px]. */
const NARROW_WIDTH = 520;

export function sheetFor(options: PictureOptions = {}): Sheet {
  const { width = 720, id, scheme = "auto", words = englishPictureWords, formatNumber } = options;
  requireFinite("width", width, 280, 2000);
  requireKey("scheme", scheme, { auto: 0, light: 0, dark: 0 });
  if (id !== undefined && !/^[A-Za-z][\w-]{0,63}$/.test(id))
    wrongArgument("id", id, "a letter, then up to 63 letters, digits, - or _");
  const number = formatNumber ?? numbersIn(words.lang);
  const rightToLeft = /^(ar|fa|he|ur)(-|$)/i.test(words.lang);
  // Without the mark a number and its unit change places in a sentence that runs the other way.
  const mark = rightToLeft ? "\u200e" : "";
  const say = sayIn(words, rightToLeft ? "\u200f" : "");
  return {
    width,
    narrow: width < NARROW_WIDTH,
    id,
    scheme,
    palette: palettes[scheme === "dark" ? "dark" : "light"],
    lang: words.lang,
    rightToLeft,
    say,
    number,
    quantity: (value, decimals, unit) => `${mark}${number(value, decimals)}\u00a0${unit}${mark}`,
    chance: (probability) => chance(probability, say, number),
    day: daysIn(words.lang),
  };
}
