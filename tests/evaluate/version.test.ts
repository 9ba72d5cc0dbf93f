import { readFileSync } from "node:fs";
import { LIBRARY_VERSION } from "crankworthy/evaluate";
import { expect, it } from "vitest";

it("LIBRARY_VERSION is the version of the package", () => {
  expect(LIBRARY_VERSION).toBe(JSON.parse(readFileSync("package.json", "utf8")).version);
});
