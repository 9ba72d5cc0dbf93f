import { describe, expect, it } from "vitest";
import type { OutsideSuite } from "./suite.js";

/** Turns outside suites into tests: every row must hold, and an empty suite fails. */
export function testSuites(suites: readonly OutsideSuite[]): void {
  it("holds at least one suite", () => expect(suites.length).toBeGreaterThan(0));
  for (const suite of suites) {
    describe(suite.title, () => {
      it("has rows and a source", () => {
        expect(suite.rows.length).toBeGreaterThan(0);
        expect(suite.source.length).toBeGreaterThan(10);
      });
      it.each(suite.rows)("$label", (row) => {
        const ours = row.ours();
        if (typeof row.published === "string" || row.allowed === undefined) expect(ours).toBe(row.published);
        else expect(Math.abs(Number(ours) - row.published)).toBeLessThanOrEqual(row.allowed);
      });
    });
  }
}
