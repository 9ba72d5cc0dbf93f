import {
  alignCurrent,
  combineLoadSteps,
  estimateLag,
  findOhmicResistance,
  fitOhmicResistance,
  type LogSeries,
  measureLoadSteps,
  type SyntheticLog,
} from "crankworthy/logs";
import { isRefusal } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";
import { type Draw, expectRecovered, recover, recoverAll } from "./recover.js";

const battery = (draw: Draw) => ({
  resistanceOhms: draw.logBetween(0.003, 0.03),
  fastSeconds: draw.between(20, 60),
  stateOfCharge: draw.between(0.5, 0.95),
});
const loads = (draw: Draw) => [draw.between(0, 10), draw.between(60, 150)];
const meter = (draw: Draw) => ({
  noiseVolts: draw.logBetween(0.0005, 0.01),
  noiseAmperes: draw.logBetween(0.02, 0.2),
});

describe("1000 invented logs: resistance", () => {
  it("from one load step", () => {
    const recovered = recover({
      name: "resistance, one step",
      plan: (draw) => ({
        battery: battery(draw),
        phases: [
          { kind: "load-steps", seconds: 1.2, amperes: loads(draw), holdSeconds: 0.6, intervalSeconds: 0.01 },
        ],
        instrument: meter(draw),
      }),
      measure: (series) => {
        const measured = measureLoadSteps(series, { leastStepAmperes: 20 });
        return isRefusal(measured) ? measured : measured.steps[0]!.resistanceOhms;
      },
      truth: ({ truth }) => truth.resistanceOhms,
    });
    expectRecovered(recovered, { mostRelativeWidth: 0.1 });
  });

  it("from ten load steps together", () => {
    const recovered = recover({
      name: "resistance, ten steps",
      plan: (draw) => ({
        battery: battery(draw),
        phases: [
          { kind: "load-steps", seconds: 5.5, amperes: loads(draw), holdSeconds: 0.5, intervalSeconds: 0.01 },
        ],
        instrument: meter(draw),
      }),
      measure: (series) => {
        const measured = measureLoadSteps(series, { leastStepAmperes: 20 });
        if (isRefusal(measured)) return measured;
        const combined = combineLoadSteps(measured.steps);
        return isRefusal(combined) ? combined : combined.resistanceOhms;
      },
      truth: ({ truth }) => truth.resistanceOhms,
    });
    expectRecovered(recovered, { mostRelativeWidth: 0.1 });
  });

  it("from load steps with a late current, aligned by the estimated lag", () => {
    const recovered = recover({
      name: "resistance, steps after alignment",
      plan: (draw) => ({
        battery: battery(draw),
        phases: [
          {
            kind: "load-steps",
            seconds: 24,
            amperes: [0, 100],
            random: true,
            holdSeconds: 0.4,
            intervalSeconds: 0.02,
          },
        ],
        instrument: { ...meter(draw), currentLagSeconds: 0.02 * Math.round(draw.between(0, 8)) },
      }),
      measure: (series) => {
        const lag = estimateLag(series);
        if (isRefusal(lag)) return lag;
        const aligned = alignCurrent(series, lag.lagSeconds.value);
        if (isRefusal(aligned)) return aligned;
        const measured = measureLoadSteps(aligned.series, { leastStepAmperes: 20 });
        if (isRefusal(measured)) return measured;
        const combined = combineLoadSteps(measured.steps);
        return isRefusal(combined) ? combined : combined.resistanceOhms;
      },
      truth: ({ truth }) => truth.resistanceOhms,
    });
    expectRecovered(recovered, { mostRelativeWidth: 0.1 });
  });

  interface Case {
    readonly relaxes?: boolean;
    /** The lag falls between two rows. */
    readonly betweenRows?: boolean;
  }
  const regression = ({ relaxes = false, betweenRows = false }: Case) => ({
    plan: (draw: Draw) => {
      const lagRows = draw.between(0, 8);
      return {
        battery: { ...battery(draw), ...(relaxes ? {} : { fastOhms: 0, slowOhms: 0 }) },
        phases: [
          {
            kind: "load-steps" as const,
            seconds: 20,
            amperes: [0, 100],
            random: true,
            holdSeconds: draw.between(0.1, 0.3),
            intervalSeconds: 0.02,
          },
        ],
        instrument: {
          ...meter(draw),
          currentLagSeconds: 0.02 * (betweenRows ? lagRows : Math.round(lagRows)),
        },
      };
    },
    truth: ({ truth }: SyntheticLog) => truth.resistanceOhms,
  });
  // Resistance and lag are two questions about one search.
  let search: { series: LogSeries; found: ReturnType<typeof findOhmicResistance> } | undefined;
  const find = (series: LogSeries) => {
    if (search?.series !== series) search = { series, found: findOhmicResistance(series) };
    return search.found;
  };
  const searched = (series: LogSeries) => {
    const found = find(series);
    return isRefusal(found) ? found : found.resistanceOhms;
  };
  /** The lag with its uncertainty, as `estimateLag` gives it. */
  const atEstimatedLag = (series: LogSeries) => {
    const lag = estimateLag(series);
    if (isRefusal(lag)) return lag;
    const { value: seconds, standardUncertainty } = lag.lagSeconds;
    const found = fitOhmicResistance(series, { seconds, standardUncertainty });
    return isRefusal(found) ? found : found.resistanceOhms;
  };
  const foundLag = (series: LogSeries) => {
    const found = find(series);
    return isRefusal(found) ? found : found.foundLagSeconds;
  };

  for (const [words, kind] of [
    ["lag of whole rows", {}],
    ["lag of whole rows, relaxing battery", { relaxes: true }],
    ["lag between rows", { betweenRows: true }],
  ] as const)
    it(`by regression, ${words}`, () => {
      const { plan, truth } = regression(kind);
      const [sought, estimated, lag] = recoverAll({ plan }, [
        { name: `resistance by regression, ${words}, searched`, measure: searched, truth },
        { name: `resistance by regression, ${words}, at the estimated lag`, measure: atEstimatedLag, truth },
        {
          name: `lag by regression, ${words}`,
          measure: foundLag,
          truth: (log) => log.truth.currentLagSeconds,
        },
      ]);
      expectRecovered(sought!, { mostRelativeWidth: 0.05 });
      expectRecovered(estimated!, { mostRelativeWidth: 0.15 });
      // A hold of a whole number of rows shows the lag to a row only, and no log tells that it is one.
      expect(lag!.coverage, JSON.stringify(lag)).toBeGreaterThanOrEqual(0.9);
    });

  it("lag between current and voltage", () => {
    const recovered = recover({
      name: "lag",
      plan: (draw) => ({
        battery: battery(draw),
        phases: [
          {
            kind: "load-steps",
            seconds: 20,
            amperes: [0, 100],
            random: true,
            holdSeconds: draw.between(0.1, 0.5),
            intervalSeconds: 0.02,
          },
        ],
        instrument: { ...meter(draw), currentLagSeconds: draw.between(-0.05, 0.3) },
      }),
      measure: (series) => {
        const lag = estimateLag(series);
        return isRefusal(lag) ? lag : lag.lagSeconds;
      },
      truth: ({ truth }) => truth.currentLagSeconds,
    });
    expectRecovered(recovered, { mostRelativeWidth: 0.5 });
  });
});
