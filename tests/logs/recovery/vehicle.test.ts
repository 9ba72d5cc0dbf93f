import { measureCrank, measureSettledDraw } from "crankworthy/logs";
import { isRefusal } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";
import { type Draw, expectRecovered, recover } from "./recover.js";

const cranking = (draw: Draw, samplesPerSecond: number) => ({
  battery: {
    resistanceOhms: draw.between(0.004, 0.01),
    stateOfCharge: draw.between(0.5, 0.95),
  },
  phases: [
    { kind: "rest" as const, seconds: draw.between(0.3, 0.4) },
    {
      kind: "crank" as const,
      seconds: draw.between(0.5, 1),
      crankingAmperes: draw.between(100, 250),
      inrushAmperes: draw.between(100, 500),
      rippleShare: draw.between(0.05, 0.25),
      rippleHertz: draw.between(5, 10),
    },
    { kind: "rest" as const, seconds: 0.2 },
  ],
  instrument: { intervalSeconds: 1 / samplesPerSecond, noiseVolts: draw.logBetween(0.001, 0.01) },
});

describe("1000 invented logs: vehicle", () => {
  for (const [words, least, most] of [
    ["100 to 200 rows a second", 101, 200],
    ["500 to 1000 rows a second", 500, 1000],
  ] as const)
    it(`least voltage of a crank, ${words}`, () => {
      const recovered = recover({
        name: `crank minimum, ${words}`,
        plan: (draw) => cranking(draw, draw.between(least, most)),
        measure: (series) => {
          const crank = measureCrank(series);
          return isRefusal(crank) ? crank : crank.minimumVolts;
        },
        truth: ({ truth }) => truth.segments[1]!.leastVolts,
      });
      expectRecovered(recovered, { mostRelativeWidth: 0.06 });
    });

  it("least voltage of a crank sampled too slowly: an upper bound that holds", () => {
    const recovered = recover({
      name: "crank minimum, 5 to 50 rows a second, upper bound",
      plan: (draw) => cranking(draw, draw.between(5, 50)),
      measure: (series) => {
        const crank = measureCrank(series, { acceptUpperBound: true });
        return isRefusal(crank) ? crank : crank.minimumVolts;
      },
      truth: ({ truth }) => truth.segments[1]!.leastVolts,
      holds: ({ value, standardUncertainty: u }, truth) => truth <= value + 1.96 * u,
    });
    expect(recovered.coverage, JSON.stringify(recovered)).toBeGreaterThanOrEqual(0.93);
  });

  const parked = (draw: Draw, wakeUps: boolean) => ({
    phases: [
      {
        kind: "parked" as const,
        seconds: 3 * 3600,
        settledAmperes: draw.logBetween(0.01, 0.1),
        stairs: [
          { amperes: draw.between(2, 8), untilSeconds: draw.between(60, 300) },
          { amperes: draw.between(0.3, 1), untilSeconds: draw.between(600, 2400) },
        ],
        ...(wakeUps
          ? {
              wakeUps: {
                everySeconds: draw.between(1800, 3600),
                forSeconds: draw.between(10, 60),
                amperes: 1,
              },
            }
          : {}),
      },
    ],
    instrument: {
      intervalSeconds: 10,
      noiseAmperes: draw.logBetween(0.001, 0.01),
      resolutionAmperes: 0.001,
      offsetAmperes: draw.normal(0.003),
    },
  });
  for (const wakeUps of [false, true]) {
    const words = wakeUps ? "with wake-ups" : "without wake-ups";
    it(`settled draw, ${words}`, () => {
      const recovered = recover({
        name: `settled draw, ${words}`,
        plan: (draw) => parked(draw, wakeUps),
        measure: (series) => {
          const draw = measureSettledDraw(series, { amperesStandardUncertainty: 0.003 });
          return isRefusal(draw) ? draw : draw.drawAmperes;
        },
        truth: (_log, { phases }) => (phases[0] as { settledAmperes: number }).settledAmperes,
      });
      expectRecovered(recovered, { leastAnswered: 0.9, mostRelativeWidth: 0.5 });
    });
  }

  it("settled draw, meter without a zero error", () => {
    const recovered = recover({
      name: "settled draw, scatter alone",
      plan: (draw) => {
        const { phases, instrument } = parked(draw, false);
        return { phases, instrument: { ...instrument, offsetAmperes: 0 } };
      },
      measure: (series) => {
        const draw = measureSettledDraw(series);
        return isRefusal(draw) ? draw : draw.drawAmperes;
      },
      truth: (_log, { phases }) => (phases[0] as { settledAmperes: number }).settledAmperes,
    });
    expectRecovered(recovered, { leastAnswered: 0.9, mostRelativeWidth: 0.2 });
  });
});
