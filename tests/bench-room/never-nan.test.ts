import {
  chargeCapacityAmpereHours,
  chargeHours,
  chargeProfiles,
  judgeCellGravities,
  judgeLoadTest,
  judgeThreeMinuteCharge,
  leastAcceptedAmperes,
  loadLimitProfiles,
  loadTestCurrentAmperes,
  loadTestLimitVolts,
  naturalVentilation,
  planCharge,
  readMissingCells,
  stationaryAirFlowCubicMetresPerHour,
  workshopAirFlowCubicMetresPerHour,
} from "crankworthy/bench";
import type { Derivation } from "crankworthy/sources";
import fc from "fast-check";
import { describe, it } from "vitest";
import { around, either, estimateAround, given, maybe, neverNaN } from "../fuzz/strange-numbers.js";

const kinds = either(...(Object.keys(chargeProfiles) as (keyof typeof chargeProfiles)[]));
const profiles = either(...(Object.keys(loadLimitProfiles) as (keyof typeof loadLimitProfiles)[]));

/** The result with its derivation, so that the steps are looked at as well. */
function explained<T>(call: (derivation: Derivation) => T): unknown {
  const derivation: Derivation = [];
  return [call(derivation), derivation];
}

describe("bench gives no NaN, whatever it is given", () => {
  it("planCharge", () => {
    const input = fc.record({
      chemistry: kinds,
      temperatureCelsius: around(-20, 52),
      capacityAmpereHours: estimateAround(20, 240),
      stateOfCharge: maybe(estimateAround(0, 1.2)),
      openCircuitVolts: maybe(around(8, 13)),
      pace: maybe(either("slow", "standard")),
      chargerAmperes: maybe(around(1, 60)),
      obstacles: maybe(fc.array(either("frozen"), { maxLength: 1 })),
    });
    neverNaN(input, (one) => explained((derivation) => planCharge(given(one), derivation)));
  });

  it("chargeHours, capacity, least current", () => {
    const input = fc.tuple(estimateAround(20, 240), estimateAround(0, 1.2), around(1, 60));
    neverNaN(input, ([capacity, charge, amperes]) => chargeHours(capacity, charge, amperes));
    neverNaN(around(20, 300), (minutes) => chargeCapacityAmpereHours(minutes));
    neverNaN(around(20, 300), (capacity) => leastAcceptedAmperes(capacity));
  });

  it("judgeThreeMinuteCharge", () => {
    const input = fc.record({
      chemistry: kinds,
      highestVolts: around(12, 18),
      voltsStandardUncertainty: around(0, 0.1),
      startAmperes: around(0, 60),
      seconds: around(0, 300),
    });
    neverNaN(input, (one) => explained((derivation) => judgeThreeMinuteCharge(one, derivation)));
  });

  it("judgeCellGravities", () => {
    const input = fc.record({
      gravities: fc.array(around(1, 1.3), { maxLength: 6 }),
      correction: maybe(around(-0.03, 0.03)),
      limit: maybe(either("usual", "marine", "strict")),
      afterFullCharge: fc.boolean(),
    });
    neverNaN(input, (one) => explained((derivation) => judgeCellGravities(given(one), derivation)));
  });

  it("load test: current, limit, judgement", () => {
    const rating = {
      coldCrankingAmperes: maybe(around(200, 900)),
      capacityAmpereHours: maybe(around(20, 200)),
    };
    neverNaN(fc.record(rating), (one) => loadTestCurrentAmperes(given(one)));
    const limit = fc.tuple(
      estimateAround(-25, 45),
      profiles,
      fc.constantFrom<12 | 6>(12, 6, 12, 6, 24 as 12),
    );
    neverNaN(limit, ([celsius, profile, nominalVolts]) =>
      loadTestLimitVolts(celsius, { profile, nominalVolts }),
    );
    const input = fc.record({
      volts: around(6, 12),
      voltsStandardUncertainty: around(0, 0.1),
      loadAmperes: around(100, 400),
      seconds: around(5, 30),
      temperatureCelsius: maybe(estimateAround(-20, 45)),
      stateOfCharge: maybe(estimateAround(0, 1.2)),
      hoursSinceCharge: maybe(around(0, 24)),
      ratedCrankingAmperes: maybe(around(200, 900)),
      capacityAmpereHours: maybe(around(20, 200)),
      profile: maybe(profiles),
    });
    neverNaN(input, (one) => explained((derivation) => judgeLoadTest(given(one), derivation)));
  });

  it("readMissingCells", () => {
    const input = fc.record({
      volts: around(0, 15),
      voltsStandardUncertainty: around(0, 0.1),
      situation: maybe(either("rested", "on-charge")),
      chargedBefore: fc.boolean(),
      sixCellVolts: maybe(estimateAround(11, 15)),
    });
    neverNaN(input, (one) => explained((derivation) => readMissingCells(given(one), derivation)));
  });

  it("ventilation", () => {
    const input = fc.record({
      cells: maybe(around(1, 24)),
      gasCurrent: around(0, 20),
      capacityAmpereHours: around(20, 200),
      batteries: maybe(around(1, 10)),
    });
    neverNaN(input, (one) => stationaryAirFlowCubicMetresPerHour(given(one)));
    neverNaN(input, (one) => workshopAirFlowCubicMetresPerHour(given(one)));
    neverNaN(around(0, 10), naturalVentilation);
  });
});
