import {
  acidDensityGramsPerCubicCentimetre,
  cellEmfVolts,
  chargeFromGravity,
  chargeFromRestVoltage,
  combineCharge,
  conductivitySiemensPerMetre,
  correctedGravity,
  defaultAcid,
  freezingPointCelsius,
  fullChargeVolts,
  gravityFromVolts,
  massPercent,
  meanSlopeVolts,
  molalityMolesPerKilogram,
  molarityMolesPerLitre25,
  openCircuitVolts,
  restEffect,
} from "crankworthy/charge-state";
import { isRefusal } from "crankworthy/numeric";
import type { Derivation } from "crankworthy/sources";
import fc from "fast-check";
import { describe, it } from "vitest";
import { around, either, given, maybe, neverNaN } from "../fuzz/strange-numbers.js";

const chemistry = either("flooded", "flooded-calcium", "efb", "agm", "gel", "unknown");
const acid = fc.record({ fullGravity: around(1.2, 1.32), emptyGravity: around(1.02, 1.15) });
const rest = fc
  .record({
    lastEvent: either("charge", "drive", "discharge", "unknown"),
    hoursAtRest: maybe(around(0, 30)),
    surfaceChargeRemoval: maybe(either("none", "lights", "load")),
    minutesSinceRemoval: maybe(around(0, 20)),
  })
  .map(given);
const voltage = fc
  .record({
    volts: around(11, 13),
    voltsStandardUncertainty: around(0, 0.05),
    chemistry,
    acid: maybe(acid),
    temperatureCelsius: maybe(around(-30, 60)),
    temperatureStandardUncertaintyKelvin: maybe(around(0, 9)),
    rest,
  })
  .map(given);
const gravity = fc
  .record({
    cellReadings: fc.array(around(1.05, 1.3), { maxLength: 6 }),
    chemistry,
    acid: maybe(acid),
    temperatureCelsius: maybe(around(-20, 70)),
  })
  .map(given);
const strength = fc.oneof(
  fc.record({ massPercent: around(0, 50) }),
  fc.record({ relativeDensity25: around(0.98, 1.35) }),
  fc.record({ densityGramsPerCubicCentimetre25: around(0.99, 1.35) }),
);

describe("charge-state gives no NaN, whatever it is given", () => {
  it("charge from voltage, from gravity, and from both", () => {
    neverNaN(voltage, (one) => {
      const derivation: Derivation = [];
      return [chargeFromRestVoltage(one, derivation), derivation];
    });
    neverNaN(gravity, (one) => {
      const derivation: Derivation = [];
      return [chargeFromGravity(one, derivation), derivation];
    });
    neverNaN(fc.tuple(voltage, gravity), ([one, other]) => {
      const own = one.acid === undefined ? {} : { acid: one.acid };
      const v = chargeFromRestVoltage(one);
      const g = chargeFromGravity({ ...other, ...own, chemistry: one.chemistry });
      return isRefusal(v) || isRefusal(g) ? [v, g] : combineCharge(v, g);
    });
  });

  it("rest, curves, corrections", () => {
    neverNaN(rest, restEffect);
    neverNaN(
      fc.record({ stateOfCharge: around(-0.2, 1.2), acid, temperatureCelsius: around(-30, 60) }),
      openCircuitVolts,
    );
    neverNaN(acid, (one) => [fullChargeVolts(one), meanSlopeVolts(one)]);
    neverNaN(chemistry, defaultAcid);
    neverNaN(fc.record({ reading: around(1, 1.3), temperatureCelsius: around(-20, 70) }), correctedGravity);
    neverNaN(around(10, 14), gravityFromVolts);
  });

  it("acid", () => {
    neverNaN(strength, (one) => [
      massPercent(one),
      molalityMolesPerKilogram(one),
      molarityMolesPerLitre25(one),
      cellEmfVolts(one),
      freezingPointCelsius(one),
    ]);
    neverNaN(
      fc.record({ massPercent: around(0, 55), temperatureCelsius: around(-10, 110) }),
      acidDensityGramsPerCubicCentimetre,
    );
    neverNaN(around(500, 6000), (concentration) => conductivitySiemensPerMetre(concentration));
  });
});
