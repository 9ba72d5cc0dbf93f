import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { defineConfig } from "tsup";

const folders = (path: string) =>
  readdirSync(path, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && existsSync(`${path}/${entry.name}/index.ts`))
    .map((entry) => entry.name);

export default defineConfig({
  entry: {
    index: "src/index.ts",
    ...Object.fromEntries(folders("src").map((room) => [room, `src/${room}/index.ts`])),
    // One entry a language: whoever needs one loads no other.
    ...Object.fromEntries(
      folders("src/languages").map((tag) => [`languages/${tag}`, `src/languages/${tag}/index.ts`]),
    ),
  },
  format: ["esm", "cjs"],
  dts: true,
  splitting: true,
  clean: true,
  treeshake: true,
  target: "es2022",
  platform: "neutral",
  // Without a platform esbuild would not know where a package's module entry is.
  esbuildOptions: (options) => {
    options.mainFields = ["module", "main"];
  },
  metafile: true,
  onSuccess: async () => writeNotices(),
  silent: true,
});

/** Packages that are bundled rather than depended on: their licences travel with the build. */
function writeNotices(): void {
  const packages = new Set<string>();
  for (const file of readdirSync("dist").filter((name) => name.startsWith("metafile-"))) {
    const { inputs } = JSON.parse(readFileSync(`dist/${file}`, "utf8")) as {
      inputs: Record<string, unknown>;
    };
    for (const input of Object.keys(inputs)) {
      const name = /node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(input)?.[1];
      if (name) packages.add(name);
    }
    rmSync(`dist/${file}`);
  }
  const notices = [...packages].sort().map((name) => {
    const path = `node_modules/${name}`;
    const { version } = JSON.parse(readFileSync(`${path}/package.json`, "utf8")) as { version: string };
    const licence = readdirSync(path).find((file) => /^licen[cs]e/i.test(file));
    if (!licence) throw new Error(`${name} is bundled and has no licence file`);
    return `${name} ${version}\n\n${readFileSync(`${path}/${licence}`, "utf8").trim()}\n`;
  });
  writeFileSync("dist/THIRD-PARTY.txt", notices.join(`\n${"-".repeat(72)}\n\n`));
}
