import { type CapacityOptions, capacityAtRate, findFinalRest, type LogSeries } from "crankworthy/logs";
import { describe, expect, it } from "vitest";
import { given, present, readVrla, SKIPPED, VRLA } from "../datasets.js";
import { coverage, seeded } from "./recovery.js";

/** Rest, then a steady load until the voltage has fallen to 10 V, then rest. */
function discharge(hours: number, amperes: number, seed: number, zero = 0, gain = 1): LogSeries {
  const random = seeded(seed);
  const [t, v, i]: number[][] = [[], [], []];
  for (let at = 0; at < (hours + 2) * 3600; at += 30 + 60 * random.even()) {
    const under = at - 3600;
    const loaded = under >= 0 && under <= hours * 3600;
    t!.push(at);
    v!.push(loaded ? 12.5 - (2.5 * under) / (hours * 3600) : 12.6);
    i!.push((loaded ? -amperes : 0) * gain + zero);
  }
  return { seconds: Float64Array.from(t!), volts: Float64Array.from(v!), amperes: Float64Array.from(i!) };
}

const FULL: CapacityOptions = { endVolts: 10.5, startedFull: true };

describe("capacityAtRate", () => {
  it("its interval holds the charge to the end voltage", () => {
    const share = coverage(300, (seed) => {
      const random = seeded(seed + 3);
      const hours = 2 + 18 * random.even();
      const series = discharge(hours, 3, seed, 0.02 * random.normal(), 1 + 0.005 * random.normal());
      const got = given(
        capacityAtRate(series, {
          ...FULL,
          amperesStandardUncertainty: 0.02,
          gainStandardUncertainty: 0.005,
        }),
      );
      return { truth: 3 * hours * 0.8, got: got.ampereHours };
    });
    expect(share).toBeGreaterThan(0.93);
  });

  it("cuts at the crossing between rows, not at the row", () => {
    const got = given(capacityAtRate(discharge(10, 2, 1), FULL));
    // From 12.5 V to 10.5 V of the 2.5 V in ten hours.
    expect(Math.abs(got.hours.value - 8)).toBeLessThan(0.03);
    expect(got.dischargeAmperes.value).toBeCloseTo(2, 9);
    expect(got.bound).toBe("two-sided");
    expect(got.doubts).toEqual([]);
  });

  it("refuses an unfinished discharge and an unknown start; asked for, gives a lower bound with its reasons", () => {
    const series = discharge(10, 2, 1);
    expect(capacityAtRate(series, { endVolts: 10.5 })).toMatchObject({ code: "start-not-known" });
    expect(capacityAtRate(series, { endVolts: 10.5, startedFull: false })).toMatchObject({
      code: "start-not-full",
    });
    const short = { ...FULL, endVolts: 9.6 };
    expect(capacityAtRate(series, short)).toMatchObject({ code: "end-voltage-not-reached" });
    const bound = given(capacityAtRate(series, { ...short, startedFull: false, acceptLowerBound: true }));
    expect(bound.bound).toBe("lower");
    expect(bound.reasons).toEqual(["end-voltage-not-reached", "start-not-full"]);
    expect(bound.ampereHours.value).toBeLessThanOrEqual(20);
    expect(capacityAtRate({ ...series, amperes: series.amperes.map(() => 0) }, FULL)).toMatchObject({
      code: "no-discharge",
    });
  });

  it("notices an interruption and a changing current", () => {
    const series = discharge(10, 2, 1);
    const paused = { ...series, amperes: series.amperes.map((I, k) => (k > 100 && k < 110 ? 0 : I)) };
    expect(given(capacityAtRate(paused, FULL)).doubts).toContain("interrupted");
    const changing = { ...series, amperes: series.amperes.map((I, k) => (k % 2 ? I : 1.5 * I)) };
    expect(given(capacityAtRate(changing, FULL)).doubts).toContain("current-not-steady");
  });

  it("refers to 25 °C only by a named profile and with a temperature", () => {
    const series = discharge(10, 2, 1);
    const warm = { ...series, temperatureCelsius: series.seconds.map(() => 15) };
    expect(given(capacityAtRate(warm, FULL))).not.toHaveProperty("ampereHoursAt25Celsius");
    expect(
      given(capacityAtRate(series, { ...FULL, temperatureProfile: "coefficient-slow" })),
    ).not.toHaveProperty("ampereHoursAt25Celsius");
    const got = given(capacityAtRate(warm, { ...FULL, temperatureProfile: "coefficient-slow" }));
    expect(got.temperatureCelsius?.value).toBe(15);
    expect(given(got.ampereHoursAt25Celsius!).value).toBeCloseTo(got.ampereHours.value / 0.94, 9);
  });
});

// Median current [A], time under load [h], charge [Ah], end-of-rest voltage [V]: from the description of the data set. Window: first to
// last loaded row, which an end voltage below all rows gives.
const RUNS = [
  ["discharge_A_3.0A.csv", 3.043, 6.486, 19.74, "11.445"],
  ["discharge_A_2.5A.csv", 2.54, 7.811, 19.84, "11.383"],
  ["discharge_A_1.5A.csv", 1.536, 12.554, 19.28, "11.232"],
  ["discharge_A_1.0A_first.csv", 1.033, 18.357, 18.97, "11.097"],
  ["discharge_A_0.5A.csv", 0.531, 34.827, 18.46, "10.981"],
] as const;

describe.skipIf(!present(VRLA))(
  `12 V 17 Ah VRLA telemetry, repository valentinsulzer/faster-lead-acid (${SKIPPED} when absent)`,
  () => {
    it.each(RUNS)(
      "%s: %f A, %f h, %f Ah within 0.5 %%, rest ends at %s V",
      (file, current, hours, charge, volts) => {
        const { series } = readVrla(file);
        const got = given(
          capacityAtRate(series, { endVolts: 10.3, startedFull: true, acceptLowerBound: true }),
        );
        expect(got.bound).toBe("lower");
        expect(Math.abs(got.dischargeAmperes.value / current - 1)).toBeLessThan(0.005);
        expect(Math.abs(got.hours.value / hours - 1)).toBeLessThan(0.005);
        expect(Math.abs(got.ampereHours.value / charge - 1)).toBeLessThan(0.005);
        expect(got.doubts).toEqual([]);
        const rest = given(findFinalRest(series, { restAmperes: 0.25, leastSeconds: 600 }));
        expect(rest.lastVolts.toFixed(3)).toBe(volts);
      },
    );

    it("discharge_A_3.0A.csv reaches 10.6 V in its rows, not 10.5 V", () => {
      const { series } = readVrla("discharge_A_3.0A.csv");
      expect(given(capacityAtRate(series, { endVolts: 10.6, startedFull: true })).bound).toBe("two-sided");
      expect(capacityAtRate(series, { endVolts: 10.5, startedFull: true })).toMatchObject({
        code: "end-voltage-not-reached",
      });
    });
  },
);
