import {
  effectiveDegreesOfFreedom,
  fitLine,
  normalCdf,
  normalQuantile,
  pchip,
  propagate,
} from "crankworthy/numeric";
import values from "./reference-values.json" with { type: "json" };
import type { OutsideSuite } from "./suite.js";

const SCIPY = `SciPy ${values.made_with.scipy} and NumPy ${values.made_with.numpy} as an independent implementation (tests/outside/reference-values.json)`;

function interpolation(name: string, data: { x: number[]; y: number[]; query: number[][] }): OutsideSuite {
  const curve = pchip(data.x, data.y);
  return {
    title: `Monotone cubic interpolation, ${name}`,
    source: SCIPY,
    unit: "1",
    why: "the same algorithm in float64",
    rows: data.query.map(([x, y]) => ({
      label: `at ${x}`,
      published: y!,
      ours: () => curve(x!),
      allowed: 1e-12,
    })),
  };
}

export const suites: OutsideSuite[] = [
  {
    title: "Normal distribution function",
    source: SCIPY,
    unit: "1",
    why: "float64; issue asks for 1e-12",
    rows: values.normal_cdf.map(([z, p]) => ({
      label: `Φ(${z})`,
      published: p!,
      ours: () => normalCdf(z!),
      allowed: 1e-14,
    })),
  },
  {
    title: "Normal quantile",
    source: SCIPY,
    unit: "1",
    why: "float64; Φ is flat in the tails, so the quantile keeps about 13 digits there",
    rows: values.normal_quantile.map(([p, z]) => ({
      label: `p = ${p}`,
      published: z!,
      ours: () => normalQuantile(p!),
      allowed: 1e-12,
    })),
  },
  interpolation("rising table", values.pchip),
  interpolation("table with flats", values.pchip_flat),
  gumH1(),
  gumH2(),
  gumH3(),
];

function gumH1(): OutsideSuite {
  const { components_nm: c, uc_nm, veff } = values.gum_h1;
  const terms = [
    [c.ls, 18],
    [c.d_rep, 24],
    [c.d_rand, 5],
    [c.d_sys, 8],
    [c.d_alpha, 50],
    [c.d_theta, 2],
  ] as const;
  const components = terms.map(([standardUncertainty, degreesOfFreedom]) => ({
    standardUncertainty,
    degreesOfFreedom,
  }));
  const combined = propagate(
    (parts) => parts.reduce((a, b) => a + b, 0),
    terms.map(([standardUncertainty]) => ({ value: 0, standardUncertainty })),
  );
  return {
    title: "End-gauge calibration budget",
    source: `JCGM 100:2008 (GUM) H.1, inputs as carried by an open metrology package (MIT), recomputed by ${SCIPY}; the guide prints 32 nm and 16`,
    unit: "nm, degrees of freedom",
    why: "first order, sums and products only: float64",
    rows: [
      {
        label: "combined standard uncertainty",
        published: uc_nm,
        ours: () => combined.standardUncertainty,
        allowed: 1e-9,
      },
      {
        label: "effective degrees of freedom",
        published: veff,
        ours: () => effectiveDegreesOfFreedom(components),
        allowed: 1e-9,
      },
    ],
  };
}

function gumH2(): OutsideSuite {
  const { V, I_A, phi_rad, R, X, Z, u } = values.gum_h2;
  const n = V.length;
  const mean = (list: readonly number[]) => list.reduce((a, b) => a + b, 0) / n;
  const series = [V, I_A, phi_rad];
  const covariance = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, one, k) => sum + (one - mean(a)) * (b[k]! - mean(b)), 0) / (n * (n - 1));
  const inputs = series.map((list) => ({
    value: mean(list),
    standardUncertainty: Math.sqrt(covariance(list, list)),
  }));
  const correlation = (i: number, j: number) =>
    covariance(series[i]!, series[j]!) / (inputs[i]!.standardUncertainty * inputs[j]!.standardUncertainty);
  const results = [
    propagate(([v, i, phi]) => (v! / i!) * Math.cos(phi!), inputs, correlation),
    propagate(([v, i, phi]) => (v! / i!) * Math.sin(phi!), inputs, correlation),
    propagate(([v, i]) => v! / i!, inputs, correlation),
  ];
  return {
    title: "Simultaneous resistance and reactance, correlated inputs",
    source: `JCGM 100:2008 (GUM) H.2, inputs as carried by an open metrology package (MIT), recomputed by ${SCIPY}`,
    unit: "Ω",
    why: "values exact; uncertainties by finite steps of one u instead of derivatives, which differ by second order: 1e-6 relative",
    rows: [R, X, Z].flatMap((published, k) => [
      { label: ["R", "X", "Z"][k]!, published, ours: () => results[k]!.value, allowed: 1e-9 },
      {
        label: `u(${["R", "X", "Z"][k]})`,
        published: u[k]!,
        ours: () => results[k]!.standardUncertainty,
        allowed: 1e-6 * u[k]!,
      },
    ]),
  };
}

function gumH3(): OutsideSuite {
  const { t, t0, b, y1, y2, s_y1, s_y2, r, s, b30, u_b30 } = values.gum_h3;
  const line = fitLine(
    t.map((one) => one - t0),
    b,
  );
  const at30 = line.at(10);
  const row = (label: string, published: number, ours: number) => ({
    label,
    published,
    ours: () => ours,
    allowed: 1e-9,
  });
  return {
    title: "Thermometer calibration line and a value read from it",
    source: `JCGM 100:2008 (GUM) H.3, inputs as carried by an open metrology package (MIT), recomputed by ${SCIPY}`,
    unit: "°C",
    why: "the same least squares in float64",
    rows: [
      row("intercept", y1, line.intercept.value),
      row("slope", y2, line.slope.value),
      row("u(intercept)", s_y1, line.intercept.standardUncertainty),
      row("u(slope)", s_y2, line.slope.standardUncertainty),
      row("correlation", r, line.correlation),
      row("residual", s, line.residual),
      row("correction at 30 °C", b30, at30.value),
      row("u of that correction", u_b30, at30.standardUncertainty),
    ],
  };
}
