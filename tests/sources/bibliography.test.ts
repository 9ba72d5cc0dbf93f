import { readFileSync } from "node:fs";
import { bibliography } from "crankworthy/sources";
import { describe, expect, it } from "vitest";
import { filesBelow } from "../docs/code-blocks.js";

const dataFiles = filesBelow("src/sources", ".ts").filter((file) => file.endsWith(".data.ts"));

/** Code without its comments; the few `//` inside strings only lose the rest of their line. */
const code = (file: string): string =>
  readFileSync(file, "utf8")
    .replace(/\/\*[\s\S]*?\*\//g, "")
    .replace(/(^|\s)\/\/[^\n]*/g, "$1");

/** Keys of one data file, as they are written. */
const keysIn = (file: string): string[] =>
  [...readFileSync(file, "utf8").matchAll(/^ {2}(?:"([^"]+)"|(\w+)): \{/gm)].map((m) => m[1] ?? m[2]!);

const rooms = filesBelow("src", ".ts")
  .filter((file) => !dataFiles.includes(file))
  .map((file) => ({ file, text: code(file) }));

describe("bibliography", () => {
  it("is read whole: the keys found in the data files are those of the bibliography", () => {
    expect(dataFiles.flatMap(keysIn).sort()).toEqual(Object.keys(bibliography).sort());
  });

  it("defines no key in two data files", () => {
    const keys = dataFiles.flatMap(keysIn);
    expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
  });

  it("holds no key that nothing rests on", () => {
    const all = rooms.map(({ text }) => text).join("\n");
    expect(Object.keys(bibliography).filter((key) => !all.includes(`"${key}"`))).toEqual([]);
  });

  it("knows every source that the code names", () => {
    const unknown = rooms.flatMap(({ file, text }) =>
      [...text.matchAll(/\b\w*[sS]ource: "([a-z0-9.-]+)"/g)]
        .map((match) => match[1]!)
        .filter((key) => !Object.hasOwn(bibliography, key))
        .map((key) => `${file}: ${key}`),
    );
    expect(unknown).toEqual([]);
  });

  it("describes software and sites instead of naming them; names stand in the address", () => {
    const named = Object.entries(bibliography).filter(([, { title }]) =>
      /\b[\w-]+\.(com|net|org|info|de|uk|jp)\b|github|python|pybamm|\bICU\b|joda/i.test(title),
    );
    expect(named.map(([key]) => key)).toEqual([]);
  });
});
