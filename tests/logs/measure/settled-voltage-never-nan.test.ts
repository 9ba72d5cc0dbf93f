import { fitPeukert, type LogSeries, selfDischargeFromRests, settledRestVoltage } from "crankworthy/logs";
import fc from "fast-check";
import { describe, it } from "vitest";
import { around, either, estimateAround, given, maybe, neverNaN } from "../../fuzz/strange-numbers.js";

const series: fc.Arbitrary<LogSeries> = fc
  .tuple(
    fc.array(fc.tuple(fc.constantFrom(0, 1, 60, 600, 1e5), fc.constantFrom(11.2, 11.3, 11.31, 12.6, 13.1)), {
      maxLength: 15,
    }),
    fc.nat(60),
    around(9, 15),
  )
  .map(([rows, at, volts]) => {
    let time = 0;
    return {
      seconds: Float64Array.from(rows, ([step]) => {
        time += step;
        return time;
      }),
      volts: Float64Array.from(rows, ([, one], i) => (i === at ? volts : one)),
      amperes: new Float64Array(rows.length),
    };
  });

describe("relaxation, Peukert and self-discharge give no NaN, whatever they are given", () => {
  it("settled voltage", () => {
    const options = fc.record({
      before: maybe(either("charging", "discharging")),
      restFromSeconds: maybe(around(-100, 0)),
      atRestSeconds: maybe(around(600, 1e5)),
      voltsStandardUncertainty: maybe(around(0.001, 0.1)),
      skipSeconds: maybe(around(0, 100)),
      slowSeconds: maybe(fc.record({ lower: around(10, 3000), upper: around(4000, 1e5) })),
    });
    neverNaN(fc.tuple(series, options), ([log, one]) => settledRestVoltage(log, given(one)), 500);
  });

  it("Peukert", () => {
    const quantity = fc.oneof(around(0.5, 50), estimateAround(0.5, 50));
    const run = fc.record({ amperes: quantity, hours: quantity, order: around(0, 10) });
    neverNaN(fc.array(run, { minLength: 2, maxLength: 6 }), fitPeukert);
  });

  it("self-discharge", () => {
    const reading = fc
      .record({
        days: around(0, 100),
        volts: estimateAround(12, 12.9),
        temperatureCelsius: maybe(estimateAround(-10, 40)),
        rest: maybe(fc.nat(2)),
      })
      .map(given);
    const options = fc
      .record({
        chemistry: either("flooded", "flooded-calcium", "efb", "agm", "gel", "unknown"),
        settleDays: maybe(around(0, 10)),
        leastDays: maybe(around(1, 20)),
      })
      .map(given);
    neverNaN(fc.tuple(fc.array(reading, { maxLength: 8 }), options), ([rests, one]) =>
      selfDischargeFromRests(rests as never, one as never),
    );
  });
});
