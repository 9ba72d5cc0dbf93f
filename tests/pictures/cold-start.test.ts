import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BatteryRecord, evaluate } from "../../src/evaluate/index.js";
import { isRefusal } from "../../src/numeric/index.js";
import { coldStartPicture } from "../../src/pictures/index.js";
import { worn } from "./evaluations.js";
import { all, descriptionOf, expectSoundPicture } from "./read-svg.js";

const picture = (
  requirement: typeof worn.requirement | { [K in keyof typeof worn.requirement]: number },
  width = 720,
) => {
  const record = { ...worn, requirement };
  return coldStartPicture({ evaluation: evaluate(record), record }, { width });
};

describe("coldStartPicture", () => {
  it("tells lowest start, currents, margin and chance of the evaluation", () => {
    const told = descriptionOf(expectSoundPicture(picture(worn.requirement)));
    const { coldStart } = evaluate(worn);
    const { marginAmperes } = coldStart!.atColdestMorning as { marginAmperes: { value: number } };
    expect(told).toContain(`Margin: ${marginAmperes.value.toFixed(0)}\u00a0A ±`);
    expect(told).toMatch(/As likely as not to start down to −\d+\u00a0°C \(−\d+\u00a0°C to −\d+\u00a0°C\)/);
    expect(told).toContain("Chance that it starts: ");
  });

  // The evaluation gives one morning; the curves are computed back from it. So another morning must lie on the same curves.
  it("draws the same two curves whichever morning is asked for", () => {
    const curves = (coldestMorningCelsius: number) =>
      all(expectSoundPicture(picture({ ...worn.requirement, coldestMorningCelsius })), "path")
        .slice(0, 4)
        .map(({ attributes }) => attributes.d!.match(/[\d.]+/g)!.map(Number));
    const [cold, warm] = [curves(-25), curves(7)];
    cold.forEach((path, i) => {
      path.forEach((place, k) => {
        expect(Math.abs(place - warm[i]![k]!)).toBeLessThan(0.11);
      });
    });
  });

  it("says so where the start never or always succeeds within the tables", () => {
    const never = descriptionOf(expectSoundPicture(picture({ ...worn.requirement, crankingAmperes: 1400 })));
    expect(never).toContain("Does not start up to 26.7\u00a0°C; the tables end there");
    const always = descriptionOf(expectSoundPicture(picture({ ...worn.requirement, crankingAmperes: 40 })));
    expect(always).toContain("Starts down to −28.9\u00a0°C at least; the tables end there");
  });

  it("refuses without requirement, without ability and outside the tables", () => {
    const { requirement: _, ...without } = worn;
    expect(
      coldStartPicture({ evaluation: evaluate(without), record: without as BatteryRecord }),
    ).toMatchObject({
      code: "no-cold-start",
    });
    expect(picture({ ...worn.requirement, coldestMorningCelsius: -40 })).toMatchObject({
      code: "no-cold-start",
    });
    const { cranking: _cranking, ...measurements } = worn.measurements;
    const record = { ...worn, measurements };
    expect(coldStartPicture({ evaluation: evaluate(record), record })).toMatchObject({
      code: "no-cold-start",
    });
  });

  it("is sound for every demand and morning", () => {
    let drawn = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 1500 }),
        fc.integer({ min: -28, max: 26 }),
        fc.integer({ min: -28, max: 26 }),
        fc.integer({ min: 280, max: 1200 }),
        (crankingAmperes, atCelsius, coldestMorningCelsius, width) => {
          const svg = picture({ crankingAmperes, atCelsius, coldestMorningCelsius }, width);
          if (isRefusal(svg)) return;
          drawn++;
          expectSoundPicture(svg);
        },
      ),
      { numRuns: 60 },
    );
    expect(drawn).toBeGreaterThan(30);
  });
});
