// The mail van of Hennaskerry on a winter morning. Island, van and battery are invented, and so is every number: no
// measurement stands behind this log. It shows what the library does with one, not what batteries do.
import { syntheticLog, writeDelimited } from "crankworthy/logs";

/** Parked for the night, glow plugs, engine start, ten minutes of deliveries, two hours outside the post office. */
export const plan = {
  battery: {
    capacityAmpereHours: 74,
    stateOfCharge: 0.84,
    resistanceOhms: 0.0075,
    fastSeconds: 25,
    slowSeconds: 2000,
    slowOhms: 0.006,
    acceptanceOhms: 0.05,
    temperatureCelsius: 4,
  },
  phases: [
    {
      kind: "parked",
      seconds: 2 * 3600,
      settledAmperes: 0.034,
      stairs: [
        { amperes: 6.5, untilSeconds: 90 },
        { amperes: 0.8, untilSeconds: 1140 },
      ],
      wakeUps: { everySeconds: 2700, forSeconds: 20, amperes: 1.4 },
      intervalSeconds: 10,
    },
    { kind: "rest", seconds: 5, intervalSeconds: 0.005 },
    // Glow plugs, switched on and off: the steps tell the resistance, and how late the current is.
    { kind: "load-steps", seconds: 12, amperes: [0, 55], holdSeconds: 0.75, intervalSeconds: 0.005 },
    { kind: "rest", seconds: 2, intervalSeconds: 0.005 },
    {
      kind: "crank",
      seconds: 1.35,
      crankingAmperes: 185,
      inrushAmperes: 330,
      rippleHertz: 6.5,
      intervalSeconds: 0.005,
    },
    {
      kind: "engine-running",
      seconds: 600,
      volts: 14.5,
      voltsPerKelvin: -0.01,
      amperes: 75,
      ripplePeakToPeakVolts: 0.06,
      temperatureCelsius: 9,
      intervalSeconds: 0.5,
    },
    {
      kind: "parked",
      seconds: 2 * 3600,
      settledAmperes: 0.034,
      stairs: [{ amperes: 0.8, untilSeconds: 600 }],
      temperatureCelsius: 6,
      intervalSeconds: 60,
    },
  ],
  instrument: {
    noiseVolts: 0.003,
    noiseAmperes: 0.004,
    resolutionVolts: 0.005,
    resolutionAmperes: 0.002,
    currentLagSeconds: 0.02,
    // 2026-01-14, 04:30 UTC
    clockStartSeconds: 1_768_365_000,
  },
};

/** Another seed is another morning with the same van. */
export const seed = 20260114;

/** The log as pieces of text, the same on every machine; and what it hides. */
export function sample() {
  const { chunks, truth } = syntheticLog(plan, seed);
  return { text: writeDelimited(chunks), truth };
}
