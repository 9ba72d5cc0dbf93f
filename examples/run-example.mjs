// npm run example NAME [arguments]: runs examples/NAME/run.mjs against the built package.
import { existsSync, readdirSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";

const here = fileURLToPath(new URL(".", import.meta.url));
const [name = ""] = process.argv.splice(2, 1);
const script = `${here}${name}/run.mjs`;
if (!/^[\w-]+$/.test(name) || !existsSync(script)) {
  const names = readdirSync(here).filter((entry) => existsSync(`${here}${entry}/run.mjs`));
  console.error(`usage: npm run example NAME, one of ${names.join(", ")}`);
  process.exit(2);
}
await import(pathToFileURL(script).href);
