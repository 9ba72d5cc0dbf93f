import { judgeLoadTest, loadTestFromRecord } from "crankworthy/bench";
import { isRefusal } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";

const rows = Array.from({ length: 21 }, (_, i) => i);
const under = (seconds: number) => (seconds > 0 ? 10.4 - 0.02 * seconds : 12.6);
const record = {
  seconds: rows,
  volts: rows.map(under),
  amperes: rows.map((s) => (s > 0 ? 300 : 0)),
  loadOnSeconds: 0.5,
};

describe("a load test from its record", () => {
  it("reads the voltage 15 s after the load came on, and the load", () => {
    const reading = loadTestFromRecord(record);
    if (isRefusal(reading)) throw new Error(reading.code);
    expect(reading.volts).toBeCloseTo(10.4 - 0.02 * 15.5, 10);
    expect(reading).toMatchObject({ seconds: 15, loadAmperes: 300, loadDeviation: 0 });
  });

  it("is judged like a single reading", () => {
    const reading = loadTestFromRecord(record);
    if (isRefusal(reading)) throw new Error(reading.code);
    const judged = judgeLoadTest({
      ...reading,
      loadAmperes: reading.loadAmperes!,
      voltsStandardUncertainty: 0.01,
      temperatureCelsius: { value: 22, standardUncertainty: 1 },
      stateOfCharge: { value: 0.95, standardUncertainty: 0.05 },
      ratedCrankingAmperes: 600,
    });
    expect("passProbability" in judged && judged.passProbability).toBeGreaterThan(0.99);
  });

  it("refuses a record that ends early or has a hole where it matters", () => {
    const short = {
      ...record,
      seconds: rows.slice(0, 12),
      volts: record.volts.slice(0, 12),
      amperes: undefined,
    };
    const { amperes: _none, ...voltsOnly } = short;
    expect(loadTestFromRecord(voltsOnly)).toMatchObject({ refused: true, code: "record-too-short" });
    const keep = rows.filter((s) => s < 12 || s > 18);
    expect(loadTestFromRecord({ seconds: keep, volts: keep.map(under), loadOnSeconds: 0.5 })).toMatchObject({
      code: "record-gap",
    });
  });

  it("throws on rows that are no record", () => {
    expect(() => loadTestFromRecord({ ...record, volts: [1] })).toThrow(RangeError);
    expect(() => loadTestFromRecord({ seconds: [0, 2, 1], volts: [12, 12, 12], loadOnSeconds: 0 })).toThrow(
      RangeError,
    );
    expect(() => loadTestFromRecord({ seconds: [0, 1], volts: [12, Number.NaN], loadOnSeconds: 0 })).toThrow(
      RangeError,
    );
  });
});
