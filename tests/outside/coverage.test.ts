import { describe, expect, it } from "vitest";
import { coverageOf, coverageSuites } from "./coverage.js";

describe("stated 95 % intervals against other sources", () => {
  it.each(coverageSuites)("$quantity", (suite) => {
    expect(suite.cases.length).toBeGreaterThan(2);
    const { inside, missed } = coverageOf(suite);
    const share = inside / suite.cases.length;
    expect(share, missed.join("; ")).toBeGreaterThanOrEqual(suite.share[0]);
    expect(share).toBeLessThanOrEqual(suite.share[1]);
  });
});
