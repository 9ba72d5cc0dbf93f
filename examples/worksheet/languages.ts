// The languages of the page: the library's packs, with the page's own words beside them.
import type { LanguagePack } from "crankworthy/languages";
import { arabic } from "crankworthy/languages/ar";
import { german } from "crankworthy/languages/de";
import { spanish } from "crankworthy/languages/es";
import { french } from "crankworthy/languages/fr";
import { japanese } from "crankworthy/languages/ja";
import { englishPictureWords } from "crankworthy/pictures";
import { english, englishGuidance } from "crankworthy/report";
import type { PageOption } from "./fields.data.js";
import { decimalMark } from "./sheet.js";
import { ar } from "./words/ar.js";
import { de } from "./words/de.js";
import { en } from "./words/en.js";
import { es } from "./words/es.js";
import { fr } from "./words/fr.js";
import { ja } from "./words/ja.js";
import type { Words } from "./words/words.js";

/** All that is said in one language. */
export interface Language {
  readonly tag: string;
  readonly ownName: string;
  readonly words: Words;
  readonly pack: Pick<LanguagePack, "messages" | "pictures">;
  readonly mark: "." | ",";
}

const language = (tag: string, ownName: string, words: Words, pack: LanguagePack): Language => ({
  tag,
  ownName,
  words,
  pack,
  mark: decimalMark(pack.messages.language),
});

const englishPack: LanguagePack = {
  language: "en",
  messages: english,
  guidance: englishGuidance,
  pictures: englishPictureWords,
};

/** English first: it is what the page starts with. */
export const pageLanguages: readonly [Language, ...Language[]] = [
  language("en", "English", en, englishPack),
  language("ar", "العربية", ar, arabic),
  language("de", "Deutsch", de, german),
  language("es", "español", es, spanish),
  language("fr", "français", fr, french),
  language("ja", "日本語", ja, japanese),
];

/** The language with a tag, English for a tag that is none. */
export function languageOf(tag: string | undefined): Language {
  return pageLanguages.find((one) => one.tag === tag) ?? pageLanguages[0];
}

/** The word of an option: the catalogue's where it has one, so that sheet and answer use the same. */
export function optionWord(option: string, { words, pack }: Language): string {
  const own: Readonly<Record<string, string>> = words.option;
  const shared: Readonly<Record<string, string>> = pack.messages.word;
  if (Object.hasOwn(own, option)) return own[option as PageOption] ?? option;
  return Object.hasOwn(shared, option) ? (shared[option] ?? option) : option;
}
