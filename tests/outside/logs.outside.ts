import { fitOhmicResistance, type LogSeries, measureLoadSteps } from "crankworthy/logs";
import { isRefusal } from "crankworthy/numeric";
import values from "./reference-values.json" with { type: "json" };
import type { OutsideSuite } from "./suite.js";

type TwoPoints = (typeof values.two_point)[number];

/** Two loads by turns, six rows each: the line through them is the two-point formula. */
function turns({ U1, I1, U2, I2 }: TwoPoints): LogSeries {
  const rows = Array.from(
    { length: 12 },
    (_, i) => (i % 2 === 0 ? [U1, -I1] : [U2, -I2]) as [number, number],
  );
  return {
    seconds: Float64Array.from(rows, (_, i) => i),
    volts: Float64Array.from(rows, ([volts]) => volts),
    amperes: Float64Array.from(rows, ([, amperes]) => amperes),
  };
}

function lineThrough(points: TwoPoints) {
  const result = fitOhmicResistance(turns(points), 0);
  if (isRefusal(result)) throw new Error(`refused: ${result.code}`);
  return result;
}

/** The first load for 0.1 s, then the second, at 100 rows a second: one step. */
function stepResistance({ U1, I1, U2, I2 }: TwoPoints): number {
  const seconds = Float64Array.from({ length: 20 }, (_, i) => i / 100);
  const series = {
    seconds,
    volts: seconds.map((_, i) => (i < 10 ? U1 : U2)),
    amperes: seconds.map((_, i) => (i < 10 ? -I1 : -I2)),
  };
  const result = measureLoadSteps(series, { leastStepAmperes: 0.5 * Math.abs(I2 - I1) });
  if (isRefusal(result)) throw new Error(`refused: ${result.code}`);
  return result.steps[0]!.resistanceOhms.value;
}

const label = ({ U1, I1, U2, I2 }: TwoPoints) => `${U1} V at ${I1} A, ${U2} V at ${I2} A`;

export const suites: OutsideSuite[] = [
  {
    title: "Resistance and zero-current voltage from two loads",
    source:
      "Independent float64 computation of R = (U1 − U2)/(I2 − I1) and U0 = U1 + R·I1 in Python (tests/outside/reference-values.json)",
    unit: "Ω; V; A for the short-circuit current U0/R",
    why: "least squares through two repeated points against the closed form, float64: 1e-12 relative",
    rows: values.two_point.flatMap((points) => [
      {
        label: `${label(points)}, R`,
        published: points.Ri,
        ours: () => lineThrough(points).resistanceOhms.value,
        allowed: 1e-12 * points.Ri,
      },
      {
        label: `${label(points)}, U0`,
        published: points.U0,
        ours: () => lineThrough(points).electromotiveVolts.value,
        allowed: 1e-12 * points.U0,
      },
      {
        label: `${label(points)}, U0/R`,
        published: points.Isc,
        ours: () => lineThrough(points).electromotiveVolts.value / lineThrough(points).resistanceOhms.value,
        allowed: 1e-12 * points.Isc,
      },
    ]),
  },
  {
    title: "Resistance from a load step",
    source:
      "Independent float64 computation of R = (U1 − U2)/(I2 − I1) in Python (tests/outside/reference-values.json)",
    unit: "Ω",
    why: "means of equal rows against the closed form, float64: 1e-12 relative",
    rows: values.two_point.map((points) => ({
      label: `${label(points)}, one step`,
      published: points.Ri,
      ours: () => stepResistance(points),
      allowed: 1e-12 * points.Ri,
    })),
  },
];
