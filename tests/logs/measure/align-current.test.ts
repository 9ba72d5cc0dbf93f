import { alignCurrent, type LogSeries } from "crankworthy/logs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { given } from "../datasets.js";

function ramp(step: number, rows: number): LogSeries {
  const seconds = Float64Array.from({ length: rows }, (_, i) => i * step);
  return { seconds, volts: seconds.map(() => 12), amperes: seconds.map((t) => 3 * t - 7) };
}

describe("alignCurrent", () => {
  it("takes a straight line of current at its own time, whatever the lag and the spacing of rows", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.5, max: 1.5, noNaN: true }), { minLength: 5, maxLength: 30 }),
        fc.double({ min: -2, max: 2, noNaN: true }),
        (steps, lag) => {
          let time = 0;
          const seconds = Float64Array.from(steps, (step) => {
            time += step;
            return time;
          });
          const series = { seconds, volts: seconds, amperes: seconds.map((t) => 3 * (t - lag)) };
          const { series: aligned, rowsLeftOut } = given(alignCurrent(series, lag));
          expect(aligned.seconds.length + rowsLeftOut).toBe(seconds.length);
          aligned.amperes.forEach((current, i) => {
            expect(current).toBeCloseTo(3 * aligned.seconds[i]!, 4);
          });
        },
      ),
    );
  });

  it("a lag of whole rows moves values without changing them", () => {
    const { series } = given(alignCurrent(ramp(0.02, 100), 0.1));
    expect([...series.amperes]).toEqual([...ramp(0.02, 100).amperes.subarray(5)]);
  });

  it("draws no line across missing rows, and keeps the temperature of its row", () => {
    const whole = ramp(1, 20);
    const keep = (column: Float64Array) => column.filter((_, i) => i < 8 || i >= 12);
    const holed = {
      seconds: keep(whole.seconds),
      volts: keep(whole.volts),
      amperes: keep(whole.amperes),
      temperatureCelsius: keep(whole.seconds),
    };
    const { series, rowsLeftOut } = given(alignCurrent(holed, 0.5));
    expect([...series.seconds]).not.toContain(7);
    // The row before the hole, and the last row.
    expect(rowsLeftOut).toBe(2);
    expect(series.temperatureCelsius).toEqual(series.seconds);
  });

  it("refuses when nothing remains", () => {
    expect(alignCurrent(ramp(1, 5), 100)).toMatchObject({ code: "too-few-rows" });
  });
});
