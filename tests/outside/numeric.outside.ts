import { normalCdf, normalQuantile, pchip } from "crankworthy/numeric";
import values from "./reference-values.json" with { type: "json" };
import type { OutsideSuite } from "./suite.js";

const SCIPY =
  "SciPy 1.17.1 and NumPy 2.4.6 as an independent implementation (tests/outside/reference-values.json)";

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
];
