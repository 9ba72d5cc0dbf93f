import { build } from "esbuild";
import { expect, it } from "vitest";

it("a bundle for browsers asks for nothing that only Node has", async () => {
  const result = await build({
    entryPoints: ["src/streams/index.ts"],
    bundle: true,
    platform: "browser",
    format: "esm",
    write: false,
    metafile: true,
    logLevel: "silent",
  });
  expect(result.warnings).toEqual([]);
  expect(Object.values(result.metafile.outputs).flatMap((output) => output.imports)).toEqual([]);
  expect(result.outputFiles[0]!.text).not.toMatch(/\brequire\(|\bimport\(/);
});
