import type { LanguagePack } from "crankworthy/languages";
import { languages } from "crankworthy/languages";
import { build } from "esbuild";
import { describe, expect, it } from "vitest";
import { englishPack, packs, texts } from "./packs.js";

/**
 * What a bundler makes of a few lines that import the library: `loaded` is every module that importing reads, as Node does
 * too, `modules` those that something is left of after tree shaking.
 */
async function bundled(contents: string): Promise<{ code: string; modules: string[]; loaded: string[] }> {
  const { outputFiles, metafile } = await build({
    stdin: { contents, resolveDir: process.cwd(), loader: "ts" },
    bundle: true,
    write: false,
    metafile: true,
    format: "esm",
    platform: "neutral",
    charset: "utf8",
    treeShaking: true,
  });
  const [output] = Object.values(metafile.outputs);
  const modules = Object.entries(output!.inputs).filter(([, { bytesInOutput }]) => bytesInOutput > 0);
  return {
    code: outputFiles[0]!.text,
    modules: modules.map(([path]) => path),
    loaded: Object.keys(metafile.inputs).filter((path) => path !== "<stdin>"),
  };
}

/** Sentences long enough to belong to one language only, and without marks that a bundler writes otherwise. */
const sentences = (pack: LanguagePack): string[] =>
  texts(pack)
    .map(([, text]) => text)
    .filter((text) => text.replace(/\P{L}/gu, "").length > 12 && !/["'`\\\n]/.test(text));

const nameOf = (tag: string): string => languages.find((one) => one.tag === tag)!.pack;

describe.each(packs)("%s", (tag, pack) => {
  const others = [englishPack, ...packs.filter(([other]) => other !== tag).map(([, other]) => other)];
  const own = new Set(sentences(pack));
  const foreign = others.flatMap(sentences).filter((text) => !own.has(text));
  const strangers = (code: string) => foreign.filter((text) => code.includes(`"${text}"`));

  it("brings its own files along and nothing else", async () => {
    const { code, loaded } = await bundled(
      `export { ${nameOf(tag)} } from "./src/languages/${tag}/index.ts";`,
    );
    expect([...own].filter((text) => !code.includes(`"${text}"`))).toEqual([]);
    expect(strangers(code)).toEqual([]);
    expect(loaded.filter((path) => !path.startsWith(`src/languages/${tag}/`))).toEqual([]);
  });

  it("a ticket laid out in it needs no English and no bibliography", async () => {
    const { code, modules } = await bundled(`
      import { ${nameOf(tag)} as pack } from "./src/languages/${tag}/index.ts";
      import { layOutTicket, reportSections } from "./src/report/index.ts";
      export const ticket = (evaluation) => layOutTicket(reportSections(evaluation, pack.messages));`);
    expect(code).toContain(pack.messages.phrase.limits);
    expect(strangers(code)).toEqual([]);
    expect(modules.filter((path) => /src\/sources\/|\.en\.data/.test(path))).toEqual([]);
  });
});

describe("the check itself", () => {
  it("sees English where it is", async () => {
    const { code } = await bundled('export { english } from "./src/report/index.ts";');
    const [first] = sentences(englishPack);
    expect(code).toContain(`"${first}"`);
  });
});

describe("the room of languages", () => {
  it("has no catalogue in its index", async () => {
    const { loaded } = await bundled('export * from "./src/languages/index.ts";');
    expect(loaded.sort()).toEqual(["src/languages/index.ts", "src/languages/list.ts"]);
  });
});
