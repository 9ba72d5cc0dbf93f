import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const src = fileURLToPath(new URL("./src", import.meta.url));

// Tests read the sources, so a failing line is the line you edit; the packed build has tests of its own.
export default defineConfig({
  resolve: {
    alias: [
      { find: /^crankworthy$/, replacement: `${src}/index.ts` },
      { find: /^crankworthy\/(.+)$/, replacement: `${src}/$1/index.ts` },
    ],
  },
  test: {
    include: ["tests/**/*.test.ts"],
    testTimeout: 60_000,
    setupFiles: ["tests/setup.ts"],
    // Every core works: the recovery tests are arithmetic, a thousand logs each.
    maxWorkers: availableParallelism(),
  },
});
