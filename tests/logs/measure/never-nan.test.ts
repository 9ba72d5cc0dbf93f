import {
  alignCurrent,
  capacityAtRate,
  chargeFactor,
  chargeMovedInSegments,
  combineLoadSteps,
  findOhmicResistance,
  fitOhmicResistance,
  type LogSeries,
  measureChargingVoltage,
  measureCrank,
  measureLoadSteps,
  measureRipple,
  measureSettledDraw,
} from "crankworthy/logs";
import { isRefusal } from "crankworthy/numeric";
import fc from "fast-check";
import { describe, it } from "vitest";
import { around, estimateAround, given, maybe, neverNaN } from "../../fuzz/strange-numbers.js";

/** Rows of a few levels, so that steps, plateaus and repeated values happen; times uneven, some equal; a strange number now and then. */
const series = (maxLength: number, even = false): fc.Arbitrary<LogSeries> =>
  fc
    .tuple(
      fc.array(
        fc.tuple(
          even ? fc.constant(0.01) : fc.constantFrom(0, 0.01, 0.01, 0.02, 60),
          fc.constantFrom(8, 9.9, 10.4, 12.5, 12.6, 12.6, 14.2),
          fc.constantFrom(-300, -100, -3, -0.03, 0, 0, 5, 20),
          fc.constantFrom(Number.NaN, -10, 0, 20, 40),
        ),
        { maxLength },
      ),
      fc.nat(10 * maxLength),
      around(9, 15),
      around(-9, 9),
    )
    .map(([rows, at, volts, amperes]) => {
      let time = 0;
      return {
        seconds: Float64Array.from(rows, ([step]) => {
          time += step;
          return time;
        }),
        volts: Float64Array.from(rows, ([, one], i) => (i === at ? volts : one)),
        amperes: Float64Array.from(rows, ([, , one], i) => (i === at ? amperes : one)),
        temperatureCelsius: Float64Array.from(rows, ([, , , one]) => one),
      };
    });

// Alignment hands on NaN temperatures, as a series may hold them.
const withoutTemperature = ({ seconds, volts, amperes }: LogSeries): LogSeries => ({
  seconds,
  volts,
  amperes,
});

describe("measuring gives no NaN, whatever it is given", () => {
  it("load steps, one and combined", () => {
    const options = fc.record({
      leastStepAmperes: around(1, 50),
      windowSeconds: maybe(around(0.01, 1)),
      mostOhmicSeconds: maybe(around(0.01, 100)),
      settledShare: maybe(around(0, 0.5)),
      acceptPolarisation: fc.boolean(),
      noiseVolts: maybe(around(0, 0.1)),
      noiseAmperes: maybe(around(0, 1)),
      gainStandardUncertainty: maybe(around(0, 0.1)),
    });
    neverNaN(fc.tuple(series(40), options), ([log, one]) => {
      const measured = measureLoadSteps(log, given(one));
      return isRefusal(measured) ? measured : [measured, combineLoadSteps(measured.steps)];
    });
  });

  it("alignment and the line", () => {
    neverNaN(
      fc.tuple(series(40).map(withoutTemperature), around(-1, 1), maybe(around(0.01, 60))),
      ([log, lag, mostGapSeconds]) => alignCurrent(log, lag, given({ mostGapSeconds })),
    );
    neverNaN(fc.tuple(series(40), around(-1, 1)), ([log, seconds]) => fitOhmicResistance(log, { seconds }));
    const range = fc.record({
      firstLagSeconds: around(-0.05, 0),
      lastLagSeconds: around(0, 0.1),
      stepSeconds: maybe(around(0.005, 0.1)),
    });
    neverNaN(fc.tuple(series(40), range), ([log, one]) => findOhmicResistance(log, given(one)), 500);
  });

  it("charge factor and capacity", () => {
    neverNaN(fc.tuple(estimateAround(0, 30), estimateAround(0, 30)), ([inAmpereHours, outAmpereHours]) =>
      chargeFactor({ inAmpereHours, outAmpereHours }),
    );
    const totals = fc.record({
      chargeInAmpereHours: around(0, 30),
      chargeOutAmpereHours: around(0, 30),
      chargeVarianceAmpereSecondsSquared: around(0, 1e4),
      longestGapSeconds: around(0, 600),
    });
    const segment = fc.record({ fromSeconds: around(0, 10), toSeconds: around(10, 1e5), totals });
    neverNaN(fc.tuple(fc.array(segment, { maxLength: 3 }), maybe(around(0, 1))), ([segments, zero]) =>
      chargeMovedInSegments(segments, given({ amperesStandardUncertainty: zero })),
    );
    const options = fc.record({
      endVolts: around(8, 11),
      startedFull: maybe(fc.boolean()),
      loadAmperes: maybe(around(0.01, 4)),
      acceptLowerBound: fc.boolean(),
      temperatureProfile: maybe(fc.constant("coefficient-slow" as const)),
      amperesStandardUncertainty: maybe(around(0, 1)),
      gainStandardUncertainty: maybe(around(0, 0.1)),
      voltsStandardUncertainty: maybe(around(0, 0.1)),
    });
    neverNaN(fc.tuple(series(40), options), ([log, one]) => capacityAtRate(log, given(one)));
  });

  it("crank, charging voltage, ripple and draw", () => {
    const crank = fc.record({
      dropVolts: maybe(around(0.1, 2)),
      inrushSeconds: maybe(around(0.01, 0.3)),
      holdSeconds: maybe(around(0, 0.2)),
      leastSamplesPerSecond: maybe(around(10, 200)),
      acceptUpperBound: fc.boolean(),
    });
    neverNaN(fc.tuple(series(60), crank), ([log, one]) => measureCrank(log, given(one)));
    const charging = fc.record({
      mostAmperes: maybe(around(1, 30)),
      leastVolts: maybe(around(8, 14)),
      mostScatterVolts: maybe(around(0.1, 5)),
      leastRangeKelvin: maybe(around(1, 20)),
      temperatureGapSeconds: maybe(around(1, 5000)),
      voltsStandardUncertainty: maybe(around(0, 0.1)),
    });
    neverNaN(fc.tuple(series(100), charging), ([log, one]) => measureChargingVoltage(log, given(one)));
    const ripple = fc.record({ rippleHertz: around(5, 80), meterNoiseVolts: maybe(around(0, 3)) });
    const evenSeries = fc.integer({ min: 60, max: 300 }).chain((rows) =>
      fc.array(fc.constantFrom(14, 14.1, 14.2), { minLength: rows, maxLength: rows }).map((volts) => ({
        seconds: Float64Array.from(volts, (_, i) => i / 100),
        volts: Float64Array.from(volts),
      })),
    );
    neverNaN(fc.tuple(evenSeries, ripple), ([log, one]) => measureRipple(log, given(one)), 500);
    const draw = fc.record({
      windowSeconds: maybe(around(0.05, 300)),
      toleranceAmperes: maybe(around(0.001, 10)),
      toleranceShare: maybe(around(0, 1)),
      wakeUpAmperes: maybe(around(0.01, 5)),
      lastStageMinutes: maybe(around(0, 100)),
      amperesStandardUncertainty: maybe(around(0, 1)),
    });
    neverNaN(fc.tuple(series(40), draw), ([log, one]) => measureSettledDraw(log, given(one)));
  });
});
