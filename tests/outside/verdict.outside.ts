import { normalQuantile } from "crankworthy/numeric";
import { conformanceProbability, globalRisks, guardedLimits, withPriorKnowledge } from "crankworthy/verdict";
import values from "./reference-values.json" with { type: "json" };
import type { OutsideSuite } from "./suite.js";

const JCGM =
  "JCGM 106:2012 (ISO/IEC Guide 98-4), inputs from memory, values recomputed in closed form or by quadrature";
const METROLOGY =
  "Open-source metrology library of Sandia National Laboratories (commit d44c2cc12a76): test/test_risk.py and manual, numbers only; draft NCSLI RP-19";

// Process centred on 0 with limits ±1: its standard deviation follows from the share inside.
const processSd = (shareInside: number): number => 1 / normalQuantile((1 + shareInside) / 2);
const centred = (shareInside: number) => {
  const sd = processSd(shareInside);
  return globalRisks({ value: 0, standardUncertainty: sd }, sd / 4, { lower: -1, upper: 1 });
};
const tur3 = (acceptance: number) =>
  globalRisks(
    { value: 0, standardUncertainty: processSd(0.9) },
    1 / 6,
    { lower: -1, upper: 1 },
    { lower: -acceptance, upper: acceptance },
  );
const resistors = globalRisks({ value: 1500, standardUncertainty: 0.12 }, 0.04, {
  lower: 1499.8,
  upper: 1500.2,
});

// Gamma with shape 4 and scale 0.25: x³·exp(-4x)·4⁴/3!
const bearing = values.jcgm106_bearing;
const bearings = (accept: number) =>
  globalRisks(
    { density: (x) => (256 / 6) * x ** 3 * Math.exp(-4 * x), lower: 0, upper: 10 },
    bearing.u,
    { upper: bearing.upper_limit },
    { upper: accept },
  );

export const suites: OutsideSuite[] = [
  {
    title: "Conformance probability",
    source: `${JCGM}: §7.3.3 examples 1 and 2; further rows by SciPy 1.17.1`,
    unit: "1",
    why: "float64 against float64; the printed 0.92 and 0.99 are these values rounded",
    rows: [
      {
        label: "-5.47 V, u 0.05 V, upper limit -5.40 V",
        published: 0.9192,
        ours: () => conformanceProbability({ value: -5.47, standardUncertainty: 0.05 }, { upper: -5.4 }),
        allowed: 5e-5,
      },
      {
        label: "509.7 kPa, u 8.6 kPa, lower limit 490 kPa",
        published: 0.98901,
        ours: () => conformanceProbability({ value: 509.7, standardUncertainty: 8.6 }, { lower: 490 }),
        allowed: 5e-6,
      },
      ...values.conformance_probability.map((row) => {
        const [y, u, lower, upper, p] = row as [number, number, number | null, number | null, number];
        return {
          label: `y ${y}, u ${u}, limits ${lower ?? "-"} to ${upper ?? "-"}`,
          published: p,
          ours: () =>
            conformanceProbability(
              { value: y, standardUncertainty: u },
              { ...(lower !== null && { lower }), ...(upper !== null && { upper }) },
            ),
          allowed: 1e-12,
        };
      }),
    ],
  },
  {
    title: "Guarded limit",
    source: `${JCGM}: §8.3.3.2 example 1, speed limit 100 km/h, u 2 % of the reading, 99.9 %`,
    unit: "km/h",
    why: "printed as 107; recomputed 106.588",
    rows: [
      {
        label: "smallest reading that proves speeding",
        published: 106.588,
        // u grows with the reading: x = T/(1 - z·0.02)
        ours: () => 100 / (1 - (guardedLimits(0, 1, 0.999).acceptFrom as number) * 0.02),
        allowed: 5e-4,
      },
    ],
  },
  {
    title: "Global risks, no guard band",
    source: `${JCGM}: clause 9, resistors N(1500, 0.12) Ω, u 0.04 Ω, limits ±0.2 Ω`,
    unit: "1",
    why: "seven printed digits; Simpson's rule over ±9 standard deviations",
    rows: [
      { label: "outside the limits", published: 0.0955807, ours: () => resistors.outside, allowed: 5e-8 },
      { label: "consumer's risk", published: 0.0189422, ours: () => resistors.consumer, allowed: 5e-8 },
      { label: "producer's risk", published: 0.0372078, ours: () => resistors.producer, allowed: 5e-8 },
    ],
  },
  {
    title: "Consumer's risk of a centred process, u = process σ/4",
    source: METROLOGY,
    unit: "%",
    why: "the printed digits agree with a recomputation within 2e-6 percentage points, so no tighter",
    rows: (
      [
        [60, 4.838603, 8.260082],
        [70, 3.922341, 5.72322],
        [80, 2.85583, 3.632271],
        [90, 1.599953, 1.798804],
        [95, 0.871009, 0.923897],
        [99, 0.199917, 0.202439],
      ] as const
    ).flatMap(([inside, risk, amongAccepted]) => [
      {
        label: `${inside} % in tolerance, joint risk`,
        published: risk,
        ours: () => 100 * centred(inside / 100).consumer,
        allowed: 3e-6,
      },
      {
        label: `${inside} % in tolerance, share of accepted`,
        published: amongAccepted,
        ours: () => 100 * centred(inside / 100).outsideAmongAccepted,
        allowed: 3e-6,
      },
    ]),
  },
  {
    title: "Consumer's risk with and without guard band, test uncertainty ratio 3",
    source: METROLOGY,
    unit: "1",
    why: "seven printed digits",
    rows: [
      { label: "acceptance limits ±1", published: 0.0171415, ours: () => tur3(1).consumer, allowed: 6e-8 },
      {
        label: "acceptance limits ±0.9",
        published: 0.0076132,
        ours: () => tur3(0.9).consumer,
        allowed: 6e-8,
      },
    ],
  },
  {
    title: "Guard bands and prior knowledge for an ability of 80 %",
    source:
      "Worked by hand from the JCGM 106 formulas (computed): limit 80 %, u 4 %; prior N(95, 12), reading 84",
    unit: "%",
    why: "one printed decimal, two for the prior",
    rows: [
      {
        label: "accept from, 95 %",
        published: 86.6,
        ours: () => guardedLimits(80, 4, 0.95).acceptFrom,
        allowed: 0.05,
      },
      {
        label: "accept from, 97.5 %",
        published: 87.8,
        ours: () => guardedLimits(80, 4, 0.975).acceptFrom,
        allowed: 0.05,
      },
      {
        label: "accept from, 99 %",
        published: 89.3,
        ours: () => guardedLimits(80, 4, 0.99).acceptFrom,
        allowed: 0.05,
      },
      {
        label: "defect shown below, 95 %",
        published: 73.4,
        ours: () => guardedLimits(80, 4, 0.95).rejectBelow,
        allowed: 0.05,
      },
      {
        label: "posterior mean",
        published: 85.1,
        ours: () =>
          withPriorKnowledge({ value: 84, standardUncertainty: 4 }, { value: 95, standardUncertainty: 12 })
            .value,
        allowed: 5e-3,
      },
      {
        label: "posterior standard uncertainty",
        published: 3.79,
        ours: () =>
          withPriorKnowledge({ value: 84, standardUncertainty: 4 }, { value: 95, standardUncertainty: 12 })
            .standardUncertainty,
        allowed: 5e-3,
      },
    ],
  },
  {
    title: "Global risks of a skewed population with a guard band",
    source: `${JCGM}: bearing example, prior gamma(4, 0.25), u 0.25, upper limit 2; by SciPy 1.17.1`,
    unit: "1",
    why: "quadrature against quadrature",
    rows: [
      {
        label: "outside",
        published: bearing.P_out_of_tolerance,
        ours: () => bearings(2).outside,
        allowed: 1e-9,
      },
      {
        label: "consumer, no guard band",
        published: bearing.consumer_risk_no_guard,
        ours: () => bearings(2).consumer,
        allowed: 1e-9,
      },
      {
        label: "producer, no guard band",
        published: bearing.producer_risk_no_guard,
        ours: () => bearings(2).producer,
        allowed: 1e-9,
      },
      {
        label: "consumer, guard band",
        published: 0.001,
        ours: () => bearings(bearing.acceptance_limit).consumer,
        allowed: 1e-9,
      },
      {
        label: "producer, guard band",
        published: bearing.producer_risk_with_guard,
        ours: () => bearings(bearing.acceptance_limit).producer,
        allowed: 1e-9,
      },
    ],
  },
];
