// Builds the page into one file: `node examples/worksheet/build.mjs [out.html]`. With --sources it takes src/ instead of dist/.
import { createHash } from "node:crypto";
import { mkdir, readFile, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, "../..");

/** While the library itself is being worked on: its rooms from src/, without a build. */
const fromSources = {
  name: "crankworthy-from-sources",
  setup({ onResolve }) {
    onResolve({ filter: /^crankworthy(\/|$)/ }, ({ path }) => ({
      path: join(root, "src", path.slice("crankworthy".length), "index.ts"),
    }));
  },
};

/**
 * The page as one text of HTML.
 *
 * @param {{ sources?: boolean }} options
 */
export async function buildPage({ sources = false } = {}) {
  const bundled = (entry, options) =>
    build({
      entryPoints: [join(here, entry)],
      bundle: true,
      minify: true,
      write: false,
      charset: "utf8",
      ...options,
    });
  const [script, style, page] = await Promise.all([
    bundled("main.ts", {
      format: "iife",
      target: "es2022",
      // "crankworthy" is this package: it finds itself by its own exports, as it does from node_modules elsewhere.
      plugins: sources ? [fromSources] : [],
    }).then(({ outputFiles }) => outputFiles[0].text.trim()),
    bundled("worksheet.css", {}).then(({ outputFiles }) => outputFiles[0].text.trim()),
    readFile(join(here, "page.html"), "utf8"),
  ]);
  if (/<\/script|<!--/i.test(script)) throw new Error("the script would end its own element");
  const hash = `sha256-${createHash("sha256").update(script).digest("base64")}`;
  const parts = {
    "SCRIPT-HASH": hash,
    "<!-- STYLE -->": `<style>${style}</style>`,
    "<!-- SCRIPT -->": `<script>${script}</script>`,
  };
  return page.replace(/SCRIPT-HASH|<!-- (?:STYLE|SCRIPT) -->/g, (mark) => parts[mark]);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const args = process.argv.slice(2);
  const out =
    args.find((one) => !one.startsWith("--")) ?? join(root, "examples/worksheet/dist/worksheet.html");
  const page = await buildPage({ sources: args.includes("--sources") });
  await mkdir(dirname(out), { recursive: true });
  await writeFile(out, page);
  console.log(`${out}: ${Math.round(Buffer.byteLength(page) / 1024)} KiB`);
}
