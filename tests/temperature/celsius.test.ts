import { celsiusFromFahrenheit, fahrenheitFromCelsius } from "crankworthy/temperature";
import fc from "fast-check";
import { expect, it } from "vitest";

it("converts fixed points and back", () => {
  expect(celsiusFromFahrenheit(32)).toBe(0);
  expect(celsiusFromFahrenheit(-40)).toBeCloseTo(-40, 12);
  expect(fahrenheitFromCelsius(100)).toBe(212);
  fc.assert(
    fc.property(fc.double({ min: -100, max: 200, noNaN: true }), (celsius) => {
      expect(celsiusFromFahrenheit(fahrenheitFromCelsius(celsius))).toBeCloseTo(celsius, 9);
    }),
  );
});
