import { alignCurrent, combineLoadSteps, type LogSeries, measureLoadSteps } from "crankworthy/logs";
import { describe, expect, it } from "vitest";
import { given, present, ROBOT, readRobot, readVrla, SKIPPED, VRLA } from "../datasets.js";
import { coverage, rounded, seeded } from "./recovery.js";

interface Made {
  readonly hertz: number;
  readonly ohms: number;
  readonly polarisationOhms: number;
  readonly tauSeconds: number;
  readonly noiseVolts?: number;
  readonly noiseAmperes?: number;
  readonly edge?: boolean;
  readonly seed?: number;
  readonly loads?: number;
}

/** Loads of 60 A for half a second, every second: ohmic drop and one slow exponential. */
function battery(made: Made): LogSeries {
  const { hertz, ohms, polarisationOhms, tauSeconds, noiseVolts = 0, noiseAmperes = 0, loads = 4 } = made;
  const random = seeded(made.seed ?? 1);
  const rows = hertz * (loads + 1);
  const seconds = Float64Array.from({ length: rows }, (_, i) => i / hertz);
  const load = (t: number) => (t % 1 >= 0.5 - 1e-9 && t > 0.1 ? -60 : 0);
  let slow = 0;
  const volts = new Float64Array(rows);
  const fine = 50;
  for (let i = 0; i < rows; i++) {
    const current = load(seconds[i]!);
    volts[i] = 12.6 + ohms * current + slow + noiseVolts * random.normal();
    for (let k = 0; k < fine; k++)
      slow += ((polarisationOhms * current - slow) * 1) / (hertz * fine * tauSeconds);
  }
  if (made.edge)
    for (let i = 1; i < rows; i++)
      if (load(seconds[i]!) !== load(seconds[i - 1]!)) volts[i] = (volts[i]! + volts[i - 1]!) / 2;
  return {
    seconds,
    volts: volts.map((one) => rounded(one, 0.001)),
    amperes: seconds.map((t) => rounded(load(t) + noiseAmperes * random.normal(), 0.05)),
  };
}

const OPTIONS = { leastStepAmperes: 20 };

describe("load steps", () => {
  it("the interval of each step, and of all together, holds the ohmic resistance", () => {
    const make = (seed: number) => {
      const random = seeded(seed + 7);
      const ohms = 0.004 + 0.02 * random.even();
      const series = battery({
        hertz: 50 + Math.round(150 * random.even()),
        ohms,
        polarisationOhms: ohms * (0.2 + 0.8 * random.even()),
        tauSeconds: 0.5 + 2 * random.even(),
        noiseVolts: 0.004,
        noiseAmperes: 0.2,
        seed,
      });
      return { truth: ohms, measured: given(measureLoadSteps(series, OPTIONS)) };
    };
    expect(
      coverage(300, (seed) => {
        const { truth, measured } = make(seed);
        return { truth, got: measured.steps[seed % measured.steps.length]!.resistanceOhms };
      }),
    ).toBeGreaterThan(0.93);
    expect(
      coverage(300, (seed) => {
        const { truth, measured } = make(seed);
        return { truth, got: given(combineLoadSteps(measured.steps)).resistanceOhms };
      }),
    ).toBeGreaterThan(0.93);
  });

  it("its uncertainty is not so wide that it says nothing", () => {
    const series = battery({
      hertz: 100,
      ohms: 0.01,
      polarisationOhms: 0.004,
      tauSeconds: 1,
      noiseVolts: 0.002,
      noiseAmperes: 0.1,
      loads: 10,
    });
    const all = given(combineLoadSteps(given(measureLoadSteps(series, OPTIONS)).steps));
    // Eleven times on, ten times off.
    expect(all.steps).toBe(21);
    expect(all.consistent).toBe(true);
    expect(all.resistanceOhms.standardUncertainty / all.resistanceOhms.value).toBeLessThan(0.05);
  });

  it("leaves out an edge row whose voltage is the mean of before and after", () => {
    const made = { hertz: 100, ohms: 0.01, polarisationOhms: 0.001, tauSeconds: 1 };
    for (const step of given(measureLoadSteps(battery({ ...made, edge: true }), OPTIONS)).steps) {
      expect(step.edgeRows).toBeGreaterThan(0);
      expect(Math.abs(step.resistanceOhms.value / 0.01 - 1)).toBeLessThan(0.02);
    }
    expect(given(measureLoadSteps(battery(made), OPTIONS)).steps[0]!.edgeRows).toBe(0);
  });

  it("refuses rows too far apart; asked for, gives a total resistance and calls it so", () => {
    const slow = battery({ hertz: 4, ohms: 0.01, polarisationOhms: 0.02, tauSeconds: 0.3 });
    expect(measureLoadSteps(slow, OPTIONS)).toMatchObject({ code: "sampling-too-slow" });
    const accepted = given(measureLoadSteps(slow, { ...OPTIONS, acceptPolarisation: true }));
    for (const step of accepted.steps) expect(step.includes).toBe("polarisation");
    expect(given(combineLoadSteps(accepted.steps)).includes).toBe("polarisation");
  });

  it("refuses a steady current and the wrong sign", () => {
    const series = battery({ hertz: 100, ohms: 0.01, polarisationOhms: 0, tauSeconds: 1 });
    expect(measureLoadSteps(series, { leastStepAmperes: 100 })).toMatchObject({ code: "no-step" });
    const turned = { ...series, amperes: series.amperes.map((one) => -one) };
    expect(measureLoadSteps(turned, OPTIONS)).toMatchObject({ code: "not-ohmic" });
  });

  it("a gain error is in every step alike and does not average out", () => {
    const series = battery({ hertz: 100, ohms: 0.01, polarisationOhms: 0, tauSeconds: 1, loads: 20 });
    const { steps } = given(measureLoadSteps(series, { ...OPTIONS, gainStandardUncertainty: 0.02 }));
    expect(given(combineLoadSteps(steps)).resistanceOhms.standardUncertainty).toBeCloseTo(0.0002, 6);
  });

  it("steps without noise that disagree are as uncertain as they scatter", () => {
    const { steps } = given(
      measureLoadSteps(battery({ hertz: 100, ohms: 0.01, polarisationOhms: 0, tauSeconds: 1 }), OPTIONS),
    );
    const step = steps[0]!;
    const noNoise = { noise: 0, resolution: 0, gain: 0 };
    const made = [11.9, 20, 31, 44, 60, 72, 85].map((milliohms, i) => {
      const drift = i === 6 ? 0 : 1e-5;
      return {
        ...step,
        resistanceOhms: { value: milliohms / 1000, standardUncertainty: drift },
        contributionsOhms: { ...noNoise, drift },
      };
    });
    const all = given(combineLoadSteps(made));
    expect(all.consistent).toBe(false);
    // Mean 46.3 mΩ, standard deviation 27.26 mΩ of seven.
    expect(all.resistanceOhms.value).toBeCloseTo(0.0463, 4);
    expect(all.resistanceOhms.standardUncertainty).toBeCloseTo(0.02726 / Math.sqrt(7), 5);
    for (const one of made)
      expect(Math.abs(one.resistanceOhms.value - all.resistanceOhms.value)).toBeLessThan(
        4 * all.resistanceOhms.standardUncertainty,
      );
  });

  it("the interval holds the truth where steps scatter more than they say", () => {
    const { steps } = given(
      measureLoadSteps(battery({ hertz: 100, ohms: 0.01, polarisationOhms: 0, tauSeconds: 1 }), OPTIONS),
    );
    const share = coverage(300, (seed) => {
      const random = seeded(seed);
      const made = Array.from({ length: 30 }, () => {
        const noise = 1e-5 * 10 ** (2 * random.even());
        const value = 0.02 + Math.hypot(noise, 0.001) * random.normal();
        return {
          ...steps[0]!,
          resistanceOhms: { value, standardUncertainty: noise },
          contributionsOhms: { noise, resolution: 0, drift: 0, gain: 0 },
        };
      });
      return { truth: 0.02, got: given(combineLoadSteps(made)).resistanceOhms };
    });
    expect(share).toBeGreaterThan(0.91);
    expect(share).toBeLessThan(0.99);
  });

  it("combines more steps than a call has arguments", () => {
    const { steps } = given(
      measureLoadSteps(battery({ hertz: 100, ohms: 0.01, polarisationOhms: 0, tauSeconds: 1 }), OPTIONS),
    );
    const many = Array.from({ length: 200_000 }, (_, i) => steps[i % steps.length]!);
    expect(given(combineLoadSteps(many)).steps).toBe(200_000);
  });

  it("steps that disagree are said to", () => {
    const { steps } = given(
      measureLoadSteps(
        battery({ hertz: 100, ohms: 0.01, polarisationOhms: 0, tauSeconds: 1, noiseVolts: 0.001 }),
        OPTIONS,
      ),
    );
    const twice = steps.map((step) => ({
      ...step,
      resistanceOhms: { ...step.resistanceOhms, value: 2 * step.resistanceOhms.value },
    }));
    expect(given(combineLoadSteps(steps)).consistent).toBe(true);
    const mixed = given(combineLoadSteps([...steps, ...twice]));
    expect(mixed.consistent).toBe(false);
    expect(mixed.birgeRatio).toBeGreaterThan(1.5);
    expect(combineLoadSteps([])).toMatchObject({ code: "no-step" });
  });
});

describe.skipIf(!present(VRLA))(
  `12 V 17 Ah VRLA telemetry, repository valentinsulzer/faster-lead-acid (${SKIPPED} when absent)`,
  () => {
    it("discharge_A_3.0A.csv: rows a minute apart give no ohmic resistance; accepted, edge rows at 12.949 and 10.799 V are left out", () => {
      const { series } = readVrla("discharge_A_3.0A.csv");
      expect(measureLoadSteps(series, { leastStepAmperes: 1 })).toMatchObject({ code: "sampling-too-slow" });
      const accepted = given(measureLoadSteps(series, { leastStepAmperes: 1, acceptPolarisation: true }));
      expect(accepted.steps).toHaveLength(2);
      // From 13.131 V at rest to 12.612 V a minute under load; back from 10.556 to 11.263 V after ten minutes.
      expect(accepted.steps[0]!.changeVolts.value).toBeCloseTo(12.6125 - 13.1306, 3);
      expect(accepted.steps[1]!.changeVolts.value).toBeCloseTo(11.2631 - 10.5556, 3);
      for (const step of accepted.steps) expect(step.edgeRows).toBe(3);
    });
  },
);

describe.skipIf(!present(ROBOT))(
  `robot log agm12v18ah_robot_match_20220319.csv, repository orangelight/DSLOG-Reader (${SKIPPED} when absent)`,
  () => {
    it("steps give less than the line through loads of a second and more (22.4 mΩ), and say how far they scatter", () => {
      const { series } = given(alignCurrent(readRobot().series, 0.1));
      const { steps } = given(measureLoadSteps(series, { leastStepAmperes: 40 }));
      const all = given(combineLoadSteps(steps));
      expect(all.steps).toBeGreaterThan(100);
      expect(all.includes).toBe("ohmic");
      expect(all.resistanceOhms.value).toBeLessThan(0.0224);
      expect(all.resistanceOhms.value + 3 * all.resistanceOhms.standardUncertainty).toBeGreaterThan(0.0224);
    });
  },
);
