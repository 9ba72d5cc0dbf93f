import { existsSync, readdirSync } from "node:fs";
import type { LanguagePack } from "crankworthy/languages";
import { languages } from "crankworthy/languages";
import { englishPictureWords } from "crankworthy/pictures";
import { english, englishGuidance } from "crankworthy/report";

/** English, in the form of a language pack. */
export const englishPack: LanguagePack = {
  language: "en",
  messages: english,
  guidance: englishGuidance,
  pictures: englishPictureWords,
};

const only = process.env.LANGUAGE_TAG;

/** Tags of the languages that have a folder; LANGUAGE_TAG=fr tests one alone. */
export const tags = readdirSync("src/languages", { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && existsSync(`src/languages/${entry.name}/index.ts`))
  .map((entry) => entry.name)
  .filter((tag) => only === undefined || tag === only);

/** Every language pack that there is, by tag. */
export const packs: readonly (readonly [tag: string, pack: LanguagePack])[] = await Promise.all(
  tags.map(async (tag) => {
    const name = languages.find((one) => one.tag === tag)?.pack;
    if (name === undefined) throw new Error(`${tag} is not in src/languages/list.ts`);
    const module = (await import(`../../src/languages/${tag}/index.ts`)) as Record<string, LanguagePack>;
    if (module[name] === undefined) throw new Error(`src/languages/${tag}/index.ts exports no ${name}`);
    return [tag, module[name]] as const;
  }),
);

/** Every text of a catalogue with its path, such as `/finding/cell-missing/1`; the refusals, which English lacks, apart. */
export function texts(catalogue: unknown, path = ""): (readonly [path: string, text: string])[] {
  if (typeof catalogue === "string") return [[path, catalogue]];
  return Object.entries(catalogue as object)
    .filter(([key]) => !(path === "/messages" && key === "refusal"))
    .flatMap(([key, inner]) => texts(inner, `${path}/${key}`));
}
