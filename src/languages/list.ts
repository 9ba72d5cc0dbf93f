/**
 * Languages beside English, each under `crankworthy/languages/TAG`: its BCP 47 tag, the name of the pack that is exported
 * there, and how the language calls itself. English is in the rooms `report` and `pictures`.
 *
 * @example
 * ```ts
 * import { languages } from "crankworthy/languages";
 * languages.find((one) => one.tag === "de")?.ownName; // => "Deutsch"
 * ```
 */
export const languages = [
  { tag: "ar", pack: "arabic", ownName: "العربية" },
  { tag: "de", pack: "german", ownName: "Deutsch" },
  { tag: "es", pack: "spanish", ownName: "español" },
  { tag: "fr", pack: "french", ownName: "français" },
  { tag: "ja", pack: "japanese", ownName: "日本語" },
] as const;

/** BCP 47 tag of a language beside English. */
export type LanguageTag = (typeof languages)[number]["tag"];
