import { drawLimits, judgeDraw } from "crankworthy/vehicle";
import { describe, expect, it } from "vitest";
import { given, plusMinus } from "./given.js";

const draw = (milliamperes: number, settledMinutes = 90, more = {}) => ({
  drawAmperes: plusMinus(milliamperes / 1000, 0.001),
  settledMinutes,
  ...more,
});

describe("judgeDraw", () => {
  it("expected up to 50 mA, to be explained up to 85 mA, above that a search", () => {
    expect(given(judgeDraw(draw(30))).outcome).toBe("expected");
    expect(given(judgeDraw(draw(65))).outcome).toBe("needs-explaining");
    expect(given(judgeDraw(draw(65, 90, { equipmentExplains: true }))).outcome).toBe(
      "explained-by-equipment",
    );
    expect(given(judgeDraw(draw(130, 90, { equipmentExplains: true }))).outcome).toBe("search-for-consumer");
    expect(given(judgeDraw(draw(50))).outcome).toBe("not-established");
    expect(given(judgeDraw(draw(85.5))).outcome).toBe("not-established");
  });

  it("30 mA: within by the default, but a manual with 25 mA would not have it", () => {
    const judged = given(judgeDraw(draw(30)));
    expect(judged.expected.sourcesAgree).toBe(false);
    expect(given(judgeDraw(draw(30), "workshop-2003")).outcome).toBe("needs-explaining");
  });

  it("takes a low draw at any time, and refuses a high one before the modules sleep", () => {
    expect(given(judgeDraw(draw(20, 1))).outcome).toBe("expected");
    expect(judgeDraw(draw(300, 59))).toMatchObject({ code: "not-settled" });
    expect(given(judgeDraw(draw(300, 60))).outcome).toBe("search-for-consumer");
    expect(judgeDraw(draw(300, 70), "default-late-vehicle")).toMatchObject({ code: "not-settled" });
    expect(given(judgeDraw(draw(300, 5), "workshop-2001")).outcome).toBe("search-for-consumer");
  });

  it("refuses milliamperes given as amperes, and a current into the battery", () => {
    expect(judgeDraw(draw(50_000))).toMatchObject({ code: "not-a-standing-draw" });
    expect(judgeDraw(draw(-500))).toMatchObject({ code: "negative-reading" });
    expect(() => judgeDraw(draw(50, Number.NaN))).toThrow(/settledMinutes/);
  });

  it("a profile without a second limit never orders a search", () => {
    expect(drawLimits("workshop-2008").search).toBeUndefined();
    expect(given(judgeDraw(draw(500), "workshop-2008")).outcome).toBe("needs-explaining");
  });
});
