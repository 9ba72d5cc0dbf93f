import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { illustrations, sourcesPage } from "./illustrations.js";

describe("what is drawn and listed in docs (npm run illustrations writes it)", () => {
  it("the pictures are those that the library draws now", async () => {
    const made = await illustrations();
    expect(readdirSync("docs/pictures").sort()).toEqual(
      Object.keys(made)
        .map((name) => `${name}.svg`)
        .sort(),
    );
    for (const [name, svg] of Object.entries(made))
      expect(readFileSync(`docs/pictures/${name}.svg`, "utf8")).toBe(svg);
  });

  it("the sources are those of the bibliography", () => {
    expect(readFileSync("docs/sources.md", "utf8")).toBe(sourcesPage());
  });

  it("every room has its part on the page of rooms", () => {
    const page = readFileSync("docs/rooms.md", "utf8");
    const rooms = readdirSync("src", { withFileTypes: true }).filter((entry) => entry.isDirectory());
    for (const { name } of rooms) expect(page).toContain(`\n## ${name}\n`);
  });
});
