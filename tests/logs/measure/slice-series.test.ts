import { type LogSeries, sliceSeries } from "crankworthy/logs";
import { describe, expect, it } from "vitest";

const series: LogSeries = {
  seconds: Float64Array.of(0, 1, 1, 2, 3),
  volts: Float64Array.of(1, 2, 3, 4, 5),
  amperes: Float64Array.of(0, 0, 0, 0, 0),
  temperatureCelsius: Float64Array.of(9, 8, 7, 6, 5),
};

describe("sliceSeries", () => {
  it("holds both ends, and all rows of the same time", () => {
    expect([...sliceSeries(series, 1, 2).volts]).toEqual([2, 3, 4]);
    expect([...sliceSeries(series, 0.5, 1.5).temperatureCelsius!]).toEqual([8, 7]);
    expect(sliceSeries(series, 4, 9).seconds).toHaveLength(0);
  });

  it("stops times the wrong way round", () => {
    expect(() => sliceSeries(series, 2, 1)).toThrow(RangeError);
  });
});
