import { readdirSync } from "node:fs";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";

// Ceilings asked for, in bytes minified and gzipped, the three runtime dependencies left out.
const TARGETS: Readonly<Record<string, number>> = {
  ratings: 4000,
  "charge-state": 4000,
  "date-codes": 5000,
  "everything (index)": 25_000,
};

async function gzipped(contents: string): Promise<number> {
  const result = await build({
    stdin: { contents, resolveDir: process.cwd(), loader: "js" },
    bundle: true,
    minify: true,
    format: "esm",
    write: false,
    external: ["zod", "decimal.js", "date-fns"],
    logLevel: "error",
  });
  return gzipSync(result.outputFiles[0]!.contents, { level: 9 }).length;
}

export interface BundleSize {
  readonly name: string;
  readonly bytes: number;
  readonly target?: number;
}

/** Sizes of the built package as a bundler sees it: each subpath whole, the index, and typical single imports. */
export async function bundleSizes(): Promise<BundleSize[]> {
  const rooms = readdirSync("dist")
    .filter((file) => file.endsWith(".js") && !file.startsWith("chunk-") && file !== "index.js")
    .map((file) => file.replace(".js", ""))
    .sort();
  const entries: [string, string][] = [
    ...rooms.map((room): [string, string] => [room, `export * from "./dist/${room}.js"`]),
    ["everything (index)", 'export * from "./dist/index.js"'],
    ["only chargeFromRestVoltage", 'export { chargeFromRestVoltage } from "./dist/charge-state.js"'],
    ["only convertRating", 'export { convertRating } from "./dist/ratings.js"'],
    ["only settleClaim", 'export { settleClaim } from "./dist/warranty.js"'],
  ];
  const sizes: BundleSize[] = [];
  for (const [name, contents] of entries) {
    const bytes = await gzipped(contents);
    sizes.push(name in TARGETS ? { name, bytes, target: TARGETS[name]! } : { name, bytes });
  }
  return sizes;
}
