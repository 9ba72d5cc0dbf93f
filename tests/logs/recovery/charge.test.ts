import { chargeMoved, type LogSeries, measureChargingVoltage, measureRipple } from "crankworthy/logs";
import { isRefusal } from "crankworthy/numeric";
import { describe, it } from "vitest";
import { type Draw, expectRecovered, type Question, recover, recoverAll } from "./recover.js";

const ZERO_ERROR_AMPERES = 0.05;
const VOLTMETER_VOLTS = 0.02;

/** Half an hour of changing loads, then a charge until it tapers. */
const cycle = (draw: Draw) => ({
  battery: { stateOfCharge: draw.between(0.6, 0.9) },
  phases: [
    {
      kind: "load-steps" as const,
      seconds: 1800,
      amperes: [2, 30],
      random: true,
      holdSeconds: draw.between(20, 60),
    },
    {
      kind: "charge" as const,
      seconds: 2400,
      amperes: draw.between(5, 20),
      volts: 14.4,
      intervalSeconds: 10,
    },
  ],
  instrument: {
    intervalSeconds: 5,
    noiseAmperes: draw.logBetween(0.01, 0.2),
    offsetAmperes: draw.normal(ZERO_ERROR_AMPERES),
  },
});
const counted = { amperesStandardUncertainty: ZERO_ERROR_AMPERES };

describe("1000 invented logs: charge", () => {
  it("ampere-hours out and in", () => {
    const moved = (series: LogSeries, side: "outAmpereHours" | "inAmpereHours") => {
      const charges = chargeMoved(series, counted);
      return isRefusal(charges) ? charges : charges[side];
    };
    const [out, into] = recoverAll({ plan: cycle }, [
      {
        name: "charge out",
        measure: (series) => moved(series, "outAmpereHours"),
        truth: ({ truth }) => truth.chargeOutAmpereHours,
      },
      {
        name: "charge in",
        measure: (series) => moved(series, "inAmpereHours"),
        truth: ({ truth }) => truth.chargeInAmpereHours,
      },
    ]);
    expectRecovered(out!, { mostRelativeWidth: 0.05 });
    expectRecovered(into!, { mostRelativeWidth: 0.1 });
  });

  it("ampere-hours out, noise alone and no zero error", () => {
    const recovered = recover({
      name: "charge out, steady load, noise alone",
      plan: (draw) => ({
        phases: [{ kind: "discharge", seconds: 3600, amperes: draw.between(1, 10), intervalSeconds: 10 }],
        instrument: { noiseAmperes: draw.logBetween(0.01, 0.2) },
      }),
      measure: (series) => {
        const moved = chargeMoved(series);
        return isRefusal(moved) ? moved : moved.outAmpereHours;
      },
      truth: ({ truth }) => truth.chargeOutAmpereHours,
    });
    expectRecovered(recovered, { mostRelativeWidth: 0.05 });
  });

  /** A drive: the regulator follows the temperature, the voltmeter has an error of its own. */
  const drive = (draw: Draw) => ({
    battery: { stateOfCharge: draw.between(0.85, 0.95), temperatureCelsius: draw.between(-10, 5) },
    phases: [
      {
        kind: "engine-running" as const,
        seconds: 1800,
        volts: draw.between(14, 14.6),
        voltsPerKelvin: -draw.between(0.005, 0.02),
        amperes: 60,
        temperatureCelsius: draw.between(20, 40),
        ripplePeakToPeakVolts: draw.between(0.01, 0.2),
      },
    ],
    instrument: {
      intervalSeconds: 5,
      noiseVolts: draw.logBetween(0.001, 0.02),
      offsetVolts: draw.normal(VOLTMETER_VOLTS),
    },
  });

  it("charging voltage", () => {
    const recovered = recover({
      name: "charging voltage, steady temperature",
      plan: (draw) => {
        const { battery, phases, instrument } = drive(draw);
        const [{ temperatureCelsius: _, ...running }] = phases as [(typeof phases)[0]];
        return { battery: { ...battery, temperatureCelsius: 25 }, phases: [running], instrument };
      },
      measure: (series) => {
        const charging = measureChargingVoltage(series, { voltsStandardUncertainty: VOLTMETER_VOLTS });
        return isRefusal(charging) ? charging : charging.regulatedVolts;
      },
      truth: (_log, { phases }) => (phases[0] as { volts: number }).volts,
    });
    expectRecovered(recovered, { mostRelativeWidth: 0.01 });
  });

  it("charging voltage without a voltmeter's error", () => {
    const recovered = recover({
      name: "charging voltage, scatter alone",
      plan: (draw) => {
        const { battery, phases, instrument } = drive(draw);
        const [{ temperatureCelsius: _, ...running }] = phases as [(typeof phases)[0]];
        return {
          battery: { ...battery, temperatureCelsius: 25 },
          phases: [running],
          instrument: { ...instrument, offsetVolts: 0 },
        };
      },
      measure: (series) => {
        const charging = measureChargingVoltage(series);
        return isRefusal(charging) ? charging : charging.regulatedVolts;
      },
      truth: (_log, { phases }) => (phases[0] as { volts: number }).volts,
    });
    expectRecovered(recovered, { mostRelativeWidth: 0.01 });
  });

  it("charging voltage against temperature", () => {
    const recovered = recover({
      name: "charging voltage, slope with temperature",
      plan: drive,
      measure: (series) => {
        const charging = measureChargingVoltage(series, { voltsStandardUncertainty: VOLTMETER_VOLTS });
        return isRefusal(charging) ? charging : charging.slopeVoltsPerKelvin;
      },
      truth: (_log, { phases }) => (phases[0] as { voltsPerKelvin: number }).voltsPerKelvin,
    });
    expectRecovered(recovered, { mostRelativeWidth: 0.3 });
  });

  const rippling = (draw: Draw) => {
    const rippleHertz = draw.between(300, 1200);
    return {
      battery: { stateOfCharge: 0.9 },
      phases: [
        {
          kind: "engine-running" as const,
          seconds: 60 / rippleHertz,
          volts: 14.2,
          amperes: 500,
          ripplePeakToPeakVolts: draw.logBetween(0.05, 0.6),
          rippleHertz,
          intervalSeconds: 1 / (rippleHertz * draw.between(10.5, 25)),
        },
      ],
      instrument: { noiseVolts: draw.logBetween(0.0005, 0.005) },
    };
  };
  type Rippling = ReturnType<typeof rippling>["phases"][0];
  const settings = ({
    phases,
    instrument,
  }: {
    phases: readonly unknown[];
    instrument?: { noiseVolts?: number };
  }) => ({
    rippleHertz: (phases[0] as Rippling).rippleHertz,
    meterNoiseVolts: instrument!.noiseVolts!,
  });

  const height = ({ phases }: { phases: readonly unknown[] }) =>
    (phases[0] as Rippling).ripplePeakToPeakVolts;
  const peaks: Question["measure"] = (series, _log, plan) => {
    const ripple = measureRipple(series, settings(plan));
    return isRefusal(ripple) ? ripple : ripple.peakToPeakVolts;
  };

  it("ripple, noise of the meter given", () => {
    const [rms, high] = recoverAll({ plan: rippling }, [
      {
        name: "ripple, root mean square",
        measure: (series, _log, plan) => {
          const ripple = measureRipple(series, settings(plan));
          return isRefusal(ripple) ? ripple : ripple.rmsVolts;
        },
        truth: (_log, plan) => height(plan) / Math.sqrt(8),
      },
      { name: "ripple, peak to peak", measure: peaks, truth: (_log, plan) => height(plan) },
    ]);
    expectRecovered(rms!, { mostRelativeWidth: 0.1 });
    expectRecovered(high!, { mostRelativeWidth: 0.2 });
  });

  it("ripple, peak to peak, meter without noise", () => {
    const recovered = recover({
      name: "ripple, peak to peak, meter without noise",
      plan: (draw) => ({ ...rippling(draw), instrument: { noiseVolts: 0 } }),
      measure: peaks,
      truth: (_log, plan) => height(plan),
    });
    expectRecovered(recovered, { mostRelativeWidth: 0.2 });
  });
});
