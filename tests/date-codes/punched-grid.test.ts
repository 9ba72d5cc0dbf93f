import { decodePunchedGrid, type PunchedGrid } from "crankworthy/date-codes";
import { isRefusal } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";

const TODAY = "2025-06-15";

function months(grid: PunchedGrid, maxAgeYears = 12): readonly string[] | string {
  const answer = decodePunchedGrid(grid, { inspectedOn: TODAY, maxAgeYears });
  return isRefusal(answer) ? answer.code : answer.readings.map(({ from }) => from.slice(0, 7));
}

describe("decodePunchedGrid", () => {
  it("one month and one year is one month", () => {
    expect(months({ months: [3], years: [24] })).toEqual(["2024-03"]);
    expect(months({ months: [3], years: [2024], yearDigits: 4 })).toEqual(["2024-03"]);
  });

  it("a grid of single digits leaves the decade open", () => {
    const answer = decodePunchedGrid({ months: [3], years: [4], yearDigits: 1 }, { inspectedOn: TODAY });
    expect(answer).toMatchObject({
      ambiguous: true,
      readings: [{ from: "2024-03-01" }, { from: "2014-03-01" }],
    });
    expect(months({ months: [3], years: [4] }, 25)).toEqual(["2004-03"]);
  });

  it("more removed cells are more readings, newest first", () => {
    expect(months({ months: [3, 11], years: [23, 24] })).toEqual([
      "2024-11",
      "2024-03",
      "2023-11",
      "2023-03",
    ]);
  });

  it("a vehicle's year would settle decades, not neighbouring years", () => {
    const settledBy = (grid: PunchedGrid) => {
      const answer = decodePunchedGrid(grid, { inspectedOn: TODAY });
      return isRefusal(answer) ? answer.code : answer.settledBy;
    };
    expect(settledBy({ months: [3], years: [23, 24] })).toEqual(["sale-date", "second-code"]);
    expect(settledBy({ months: [3], years: [4], yearDigits: 1 })).toContain("vehicle-year");
  });

  it("hears the evidence", () => {
    const options = { inspectedOn: TODAY, evidence: { soldOn: "2024-01-10" } };
    const answer = decodePunchedGrid({ months: [3], years: [23, 24] }, options);
    expect(answer).toMatchObject({
      text: "3/23+24",
      ambiguous: false,
      excluded: [{ because: "made-after-sale" }],
    });
  });

  it("refuses an empty grid and a month outside the window, and throws for cells that no grid has", () => {
    expect(months({ months: [], years: [24] })).toBe("grid-not-punched");
    expect(months({ months: [3], years: [] })).toBe("grid-not-punched");
    expect(months({ months: [7], years: [25] })).toBe("outside-window");
    expect(() => months({ months: [13], years: [24] })).toThrow(/months.*13/);
    expect(() => months({ months: [3], years: [2024] })).toThrow(/years.*2024/);
  });
});
