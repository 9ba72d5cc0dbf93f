import {
  crankingTime,
  judgeCrankingCurrent,
  judgeCrankingVoltage,
  minimumCrankingVolts,
} from "crankworthy/vehicle";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { given, plusMinus } from "./given.js";

describe("minimumCrankingVolts", () => {
  it("never rises towards the cold and keeps its value inside its spread", () => {
    const celsius = fc.double({ min: -18, max: 60, noNaN: true });
    fc.assert(
      fc.property(celsius, celsius, (a, b) => {
        const cold = given(minimumCrankingVolts(Math.min(a, b)));
        const warm = given(minimumCrankingVolts(Math.max(a, b)));
        expect(cold.value).toBeLessThanOrEqual(warm.value + 1e-12);
        expect(cold.lower).toBeLessThan(cold.value);
        expect(cold.upper).toBeGreaterThan(cold.value);
      }),
    );
  });

  it("keeps the standing of the source near 70 °F, and owns the slope below", () => {
    expect(minimumCrankingVolts(22, "roller")).toMatchObject({ source: "roller-manual", standing: "read" });
    expect(minimumCrankingVolts(10, "roller")).toMatchObject({ standing: "our-choice" });
  });

  it("accepts -18 °C, as 0 °F is printed, and refuses colder", () => {
    expect(given(minimumCrankingVolts(-18)).value).toBeCloseTo(8.5, 1);
    expect(minimumCrankingVolts(-18.1)).toMatchObject({ code: "below-table" });
  });
});

describe("judgeCrankingVoltage", () => {
  const reading = {
    crankingVolts: plusMinus(9.8, 0.03),
    temperatureCelsius: 22,
    inrush: "left-out",
  } as const;

  it("9.8 V holds by the default; a source with 10 V disagrees; the battery was not proved", () => {
    expect(judgeCrankingVoltage(reading)).toMatchObject({
      outcome: "within-limit",
      sourcesAgree: false,
      doubts: ["battery-not-proved"],
    });
    expect(judgeCrankingVoltage({ ...reading, batteryProved: true }, { minimum: "roller" })).toMatchObject({
      outcome: "beyond-limit",
      doubts: [],
    });
  });

  it("refuses a dip with the inrush, a log too slow, and cold beyond the table", () => {
    expect(judgeCrankingVoltage({ ...reading, inrush: "included" })).toMatchObject({
      code: "inrush-included",
    });
    expect(judgeCrankingVoltage({ ...reading, sampleIntervalSeconds: 1 })).toMatchObject({
      code: "sampled-too-slowly",
    });
    expect(judgeCrankingVoltage({ ...reading, temperatureCelsius: -25 })).toMatchObject({
      code: "below-table",
    });
  });
});

describe("judgeCrankingCurrent", () => {
  const level = (amperes: number, engine: Parameters<typeof judgeCrankingCurrent>[2], celsius = 80) =>
    given(judgeCrankingCurrent(plusMinus(amperes, 2), celsius, engine)).level;

  it("tells usual, raised and high apart", () => {
    expect(level(90, "4-cylinder-warm")).toBe("usual");
    expect(level(130, "4-cylinder-warm")).toBe("raised");
    expect(level(200, "4-cylinder-warm")).toBe("high");
    expect(level(200, "8-cylinder-warm")).toBe("raised");
    expect(level(50, "one-1.9-litre-4-cylinder")).toBe("low");
  });

  it("takes 250 A as usual at -20 °C and as high in warmth, for the engine with both printed", () => {
    expect(level(250, "one-1.9-litre-4-cylinder", -20)).toBe("usual");
    expect(level(250, "one-1.9-litre-4-cylinder", 20)).toBe("high");
  });

  it("refuses a cold engine against a warm figure and temperatures between printed rows", () => {
    const at = (celsius: number, engine: Parameters<typeof judgeCrankingCurrent>[2]) =>
      judgeCrankingCurrent(plusMinus(100, 2), celsius, engine);
    expect(at(10, "4-cylinder-warm")).toMatchObject({ code: "no-row-for-temperature" });
    expect(at(-10, "one-1.9-litre-4-cylinder")).toMatchObject({ code: "no-row-for-temperature" });
    expect(judgeCrankingCurrent(plusMinus(-100), 80, "4-cylinder-warm")).toMatchObject({
      code: "negative-reading",
    });
  });
});

it("cranking times: no pause where the source states none", () => {
  expect(crankingTime("workshop-1983")).toEqual({
    longestSeconds: 30,
    source: "workshop-starting-1983",
    standing: "read",
  });
});
