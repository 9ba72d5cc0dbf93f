import { defaultAcid, gravityFromVolts } from "crankworthy/charge-state";
import {
  type SettledVoltageBound,
  selfDischargeFromRests,
  settledRestVoltage,
  sliceSeries,
} from "crankworthy/logs";
import { isRefusal, refuse } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";
import { type Draw, expectRecovered, recover } from "./recover.js";

const LOAD_SECONDS = 3600;
/** An hour of load, then a rest; the relaxation's slow end is drawn from what the function assumes unless told otherwise. */
const rest = (draw: Draw, seconds: number, intervalSeconds: number, slowSeconds: number) => ({
  battery: {
    fastSeconds: draw.between(15, 60),
    slowSeconds,
    slowOhms: draw.between(0.02, 0.05),
    stateOfCharge: draw.between(0.6, 0.95),
  },
  phases: [
    {
      kind: "discharge" as const,
      seconds: LOAD_SECONDS,
      amperes: draw.between(3, 8),
      intervalSeconds: 600,
    },
    { kind: "rest" as const, seconds, intervalSeconds },
  ],
  instrument: { noiseVolts: draw.logBetween(0.0005, 0.004), noiseAmperes: 0.005 },
});
const options = {
  before: "discharging",
  restFromSeconds: LOAD_SECONDS,
} as const;

describe("1000 invented logs: rest", () => {
  it("settled voltage where the record is long enough for a value", () => {
    const recovered = recover({
      name: "settled voltage, value",
      plan: (draw) => rest(draw, 4 * 3600, 600, draw.logBetween(1800, 5000)),
      measure: (series) => {
        const settled = settledRestVoltage(sliceSeries(series, LOAD_SECONDS, Infinity), options);
        if (isRefusal(settled)) return settled;
        return settled.kind === "value"
          ? settled.volts
          : refuse(`bound: ${settled.reason}`, "No value.", "A longer record.");
      },
      truth: ({ truth }) => truth.segments.at(-1)!.electromotiveVolts,
    });
    // Far more than 95 % covered: the function adds what recorded rests scatter about any model, and here one of its models is true.
    expectRecovered(recovered, { leastAnswered: 0.5, mostRelativeWidth: 0.01 });
  });

  // Ten rows let two exponentials in, which take six times as long to weigh.
  for (const [rows, intervalSeconds, runs] of [
    [6, 200, 1000],
    [10, 120, 300],
  ] as const)
    it(`settled voltage expected after twenty minutes of ${rows} rows, and the bound`, () => {
      let bounds = 0;
      let held = 0;
      const recovered = recover({
        name: `settled voltage, expected from 20 minutes, ${rows} rows`,
        plan: (draw) => rest(draw, 1200, intervalSeconds, draw.logBetween(1800, 21600)),
        runs,
        measure: (series, { truth }) => {
          const settled = settledRestVoltage(sliceSeries(series, LOAD_SECONDS, Infinity), options);
          if (isRefusal(settled)) return settled;
          if (settled.kind === "value")
            return refuse("value", "20 minutes cannot give one.", "A longer record.");
          bounds++;
          if (holdsBound(settled, truth.segments.at(-1)!.electromotiveVolts)) held++;
          return settled.expected?.volts ?? refuse("nothing expected", "Too wide.", "A longer record.");
        },
        truth: ({ truth }) => truth.segments.at(-1)!.electromotiveVolts,
      });
      expect(held / bounds).toBeGreaterThanOrEqual(0.95);
      expectRecovered(recovered, { leastAnswered: 0.9, mostRelativeWidth: 0.05 });
    });

  it("never a value from a record much shorter than its slow time constant", () => {
    const recovered = recover({
      name: "settled voltage, a value given where the record is a third of the time constant",
      plan: (draw) => rest(draw, 2 * 3600, 600, 21_600),
      runs: 300,
      measure: (series) => {
        const settled = settledRestVoltage(sliceSeries(series, LOAD_SECONDS, Infinity), options);
        if (isRefusal(settled)) return settled;
        return settled.kind === "value" ? settled.volts : refuse("bound", "No value.", "A longer record.");
      },
      truth: ({ truth }) => truth.segments.at(-1)!.electromotiveVolts,
    });
    // Where one is given all the same it must hold.
    const wrong = Math.round(recovered.answered * (1 - recovered.coverage)) || 0;
    expect(wrong / recovered.runs, JSON.stringify(recovered)).toBeLessThanOrEqual(0.05);
  });

  it("self-discharge from weeks of rest", () => {
    const { fullGravity, emptyGravity } = defaultAcid("flooded-calcium");
    const recovered = recover({
      name: "self-discharge",
      plan: (draw) => {
        // The battery's own acid; the straight line of the plan touches its curve where the rest takes place.
        const span = fullGravity + draw.normal(0.01) - (emptyGravity + draw.normal(0.02));
        const volts = draw.between(12.5, 12.75);
        const gravity = (at: number) => Number(gravityFromVolts(at));
        const voltsPerCharge = (0.02 / (gravity(volts + 0.01) - gravity(volts - 0.01))) * span;
        const days = draw.between(20, 60);
        const share = draw.between(0.03, 0.12) * (days / 30);
        return {
          battery: {
            stateOfCharge: 1,
            fullVolts: volts,
            emptyVolts: volts - voltsPerCharge,
            capacityAmpereHours: 60,
            selfDischargeAmperes: (60 * share) / (days * 24),
            temperatureCelsius: 25,
          },
          phases: [{ kind: "rest", seconds: days * 86400, intervalSeconds: 86400 }],
          instrument: { noiseVolts: draw.logBetween(0.0005, 0.003), offsetVolts: draw.normal(0.005) },
        };
      },
      measure: (series, _log, { instrument }) => {
        const standardUncertainty = Math.hypot(instrument!.noiseVolts!, 0.001 / Math.sqrt(12));
        const readings = Array.from(series.seconds, (seconds, i) => ({
          days: seconds / 86400,
          volts: { value: series.volts[i]!, standardUncertainty },
          temperatureCelsius: { value: 25, standardUncertainty: 0 },
        }));
        const loss = selfDischargeFromRests(readings, { chemistry: "flooded-calcium" });
        return isRefusal(loss) ? loss : loss.chargePerMonth;
      },
      truth: ({ truth }) => (truth.selfDischargeAmperes * 24 * 30) / truth.capacityAmpereHours,
    });
    expectRecovered(recovered, { mostRelativeWidth: 0.8 });
  });
});

function holdsBound({ bound }: SettledVoltageBound, truth: number): boolean {
  return "atLeastVolts" in bound ? truth >= bound.atLeastVolts : truth <= bound.atMostVolts;
}
