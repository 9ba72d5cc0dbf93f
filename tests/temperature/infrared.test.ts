import {
  infraredReadingCelsius,
  surfaceCelsiusFromInfrared,
  temperatureUncertaintyKelvin,
} from "crankworthy/temperature";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

describe("infrared temperature", () => {
  it("needs no correction when the setting is right or the surface is as warm as the room", () => {
    expect(infraredReadingCelsius(-18, { emissivity: 0.95, surroundingsCelsius: 20 })).toBeCloseTo(-18, 9);
    expect(infraredReadingCelsius(20, { emissivity: 0.3, surroundingsCelsius: 20 })).toBeCloseTo(20, 9);
  });

  it("undoes itself", () => {
    const celsius = fc.double({ min: -30, max: 60, noNaN: true });
    fc.assert(
      fc.property(
        celsius,
        fc.double({ min: 0.5, max: 1, noNaN: true }),
        celsius,
        (surface, emissivity, surroundingsCelsius) => {
          const setting = { emissivity, surroundingsCelsius };
          const reading = infraredReadingCelsius(surface, setting);
          return Math.abs(surfaceCelsiusFromInfrared(reading, setting) - surface) < 1e-6;
        },
      ),
    );
  });

  it("pulls the reading towards the room where the emissivity is lower than set", () => {
    expect(infraredReadingCelsius(-10, { emissivity: 0.3, surroundingsCelsius: 20 })).toBeGreaterThan(5);
  });

  it("throws instead of giving NaN where nothing could radiate like that", () => {
    expect(() => surfaceCelsiusFromInfrared(-18, { emissivity: 0.2, surroundingsCelsius: 60 })).toThrow(
      /radiation/,
    );
    expect(() => infraredReadingCelsius(20, { emissivity: 0, surroundingsCelsius: 20 })).toThrow(
      /emissivity/,
    );
  });

  it("throws for a method that has no name here", () => {
    expect(() => temperatureUncertaintyKelvin("foo" as "ambient")).toThrow(/method: received foo, expected/);
  });

  it("knows the temperature worse the further from the acid it was taken", () => {
    const order = ["electrolyte", "case-contact", "case-infrared", "ambient", "unstated"] as const;
    const kelvin = order.map(temperatureUncertaintyKelvin);
    expect(kelvin).toEqual([...kelvin].sort((a, b) => a - b));
    expect(new Set(kelvin).size).toBe(order.length);
  });
});
