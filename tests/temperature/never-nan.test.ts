import type { Derivation } from "crankworthy/sources";
import {
  type CapacityProfile,
  capacityAt25Celsius,
  capacityPercent,
  capacityProfiles,
  celsiusFromFahrenheit,
  coldStartMargin,
  crankingAbilityPercent,
  crankingDemandPercent,
  fahrenheitFromCelsius,
  infraredReadingCelsius,
  resistanceAt25Celsius,
  surfaceCelsiusFromInfrared,
  type TemperatureTable,
  temperatureUncertaintyKelvin,
} from "crankworthy/temperature";
import fc from "fast-check";
import { describe, it } from "vitest";
import { around, either, estimateAround, given, maybe, neverNaN } from "../fuzz/strange-numbers.js";

const profiles = either(...(Object.keys(capacityProfiles) as CapacityProfile[]));
const table: fc.Arbitrary<TemperatureTable> = fc.record({
  id: fc.constant("own"),
  rows: fc.tuple(
    fc.tuple(around(-40, -19), around(30, 120), around(0, 20)),
    fc.tuple(around(0, 40), around(30, 300), around(0, 20)),
  ),
  source: fc.constant("mine"),
  standing: fc.constant("our-choice" as const),
});

describe("temperature gives no NaN, whatever it is given", () => {
  it("coldStartMargin, with tables of the caller's as well", () => {
    const input = fc.record({
      abilityAmperes: estimateAround(100, 1000),
      stateOfCharge: maybe(estimateAround(0.2, 1.3)),
      demandAmperes: estimateAround(50, 500),
      demandReferenceCelsius: around(-20, 26),
      coldestMorningCelsius: maybe(around(-30, 20)),
      neededVolts: maybe(around(7.2, 9.6)),
      abilityTable: maybe(table),
      demandTable: maybe(table),
      chargeSensitivity: maybe(estimateAround(0, 1)),
    });
    neverNaN(
      input,
      (one) => {
        const derivation: Derivation = [];
        return [coldStartMargin(given(one), derivation), derivation];
      },
      5000,
    );
  });

  it("ability, demand, capacity", () => {
    neverNaN(around(-30, 30), (celsius) => [crankingAbilityPercent(celsius), crankingDemandPercent(celsius)]);
    neverNaN(fc.tuple(around(-10, 55), profiles), ([celsius, profile]) => capacityPercent(celsius, profile));
    neverNaN(fc.tuple(estimateAround(20, 200), around(-10, 55), profiles), ([capacity, celsius, profile]) =>
      capacityAt25Celsius(capacity, celsius, profile),
    );
  });

  it("resistance, infrared, scales, methods", () => {
    neverNaN(fc.tuple(estimateAround(0.002, 0.02), estimateAround(-25, 50)), ([ohms, celsius]) =>
      resistanceAt25Celsius(ohms, celsius),
    );
    const setting = fc.record({
      emissivity: around(0.1, 1),
      surroundingsCelsius: around(-30, 60),
      emissivitySetting: maybe(around(0.1, 1)),
    });
    neverNaN(fc.tuple(around(-40, 80), setting), ([celsius, one]) =>
      infraredReadingCelsius(celsius, given(one)),
    );
    neverNaN(fc.tuple(around(-40, 80), setting), ([celsius, one]) =>
      surfaceCelsiusFromInfrared(celsius, given(one)),
    );
    neverNaN(around(-60, 200), (degrees) => [celsiusFromFahrenheit(degrees), fahrenheitFromCelsius(degrees)]);
    const methods = either("electrolyte", "case-contact", "case-infrared", "ambient", "unstated");
    neverNaN(methods, (method) => temperatureUncertaintyKelvin(method));
  });
});
