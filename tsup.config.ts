import { readdirSync } from "node:fs";
import { defineConfig } from "tsup";

const rooms = readdirSync("src", { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name);

export default defineConfig({
  entry: {
    index: "src/index.ts",
    ...Object.fromEntries(rooms.map((room) => [room, `src/${room}/index.ts`])),
  },
  format: ["esm", "cjs"],
  dts: true,
  splitting: true,
  clean: true,
  treeshake: true,
  target: "es2022",
  platform: "neutral",
  silent: true,
});
