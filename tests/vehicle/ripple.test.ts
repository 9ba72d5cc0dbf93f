import { judgeRipple, RIPPLE_LIMITS, type RippleLimitName } from "crankworthy/vehicle";
import { describe, expect, it } from "vitest";
import { given, plusMinus } from "./given.js";

const posts = { rippleVolts: plusMinus(0.15, 0.005), place: "battery-posts", method: "true-rms" } as const;

describe("judgeRipple", () => {
  it("0.15 V RMS at the posts: look further, no rectifier fault, and sources differ on both sides", () => {
    expect(judgeRipple(posts, "default-look-further")).toMatchObject({
      outcome: "beyond-limit",
      sourcesAgree: false,
      doubts: [],
    });
    expect(judgeRipple(posts, "default-rectifier-fault")).toMatchObject({ outcome: "within-limit" });
  });

  it("accepts a limit only where place and method are those of the reading", () => {
    for (const name of Object.keys(RIPPLE_LIMITS) as RippleLimitName[]) {
      const [place, method] = RIPPLE_LIMITS[name];
      const result = judgeRipple(posts, name);
      if (place !== "battery-posts") expect(result).toMatchObject({ code: "place-differs" });
      else if (method === "peak-to-peak") expect(result).toMatchObject({ code: "method-differs" });
      else expect(given(result).limit.value).toBeGreaterThan(0);
    }
  });

  it("peak to peak is never held against a limit whose method is not printed", () => {
    const output = { ...posts, place: "alternator-output" } as const;
    expect(judgeRipple({ ...output, method: "peak-to-peak" }, "output-250-mv")).toMatchObject({
      code: "method-differs",
    });
    expect(given(judgeRipple(output, "output-250-mv")).doubts).toEqual(["method-of-limit-not-printed"]);
    expect(given(judgeRipple({ ...posts, method: "meter-on-ac" }, "default-look-further")).doubts).toEqual([
      "meters-differ",
    ]);
  });

  it("refuses a negative ripple", () => {
    expect(judgeRipple({ ...posts, rippleVolts: plusMinus(-0.1) }, "posts-90-mv")).toMatchObject({
      code: "negative-reading",
    });
  });
});
