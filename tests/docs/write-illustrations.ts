import { mkdirSync, writeFileSync } from "node:fs";
import { illustrations, sourcesPage } from "./illustrations.js";

mkdirSync("docs/pictures", { recursive: true });
for (const [name, svg] of Object.entries(await illustrations()))
  writeFileSync(`docs/pictures/${name}.svg`, svg);
writeFileSync("docs/sources.md", sourcesPage());
