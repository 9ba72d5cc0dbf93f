import { existsSync, readFileSync } from "node:fs";
import type { LeastSquaresModel } from "crankworthy/numeric";

/**
 * NIST Statistical Reference Datasets, nonlinear regression (public domain): certified to 11 digits. As carried by the
 * repository lmfit/lmfit-py, folder NIST_STRD.
 */
const FOLDER = "../shared/datasets/nist-strd-nonlinear";

export interface NistProblem {
  readonly name: string;
  readonly starts: readonly [readonly number[], readonly number[]];
  readonly certified: readonly {
    readonly text: string;
    readonly value: number;
    readonly deviation: number;
  }[];
  readonly residualSumOfSquares: number;
  readonly degreesOfFreedom: number;
  readonly xs: readonly (readonly number[])[];
  readonly ys: readonly number[];
  readonly model: LeastSquaresModel<readonly number[]>;
}

const { exp } = Math;
const MODELS: Readonly<Record<string, LeastSquaresModel<readonly number[]>>> = {
  Chwirut2: ([x], [b1, b2, b3]) => exp(-b1! * x!) / (b2! + b3! * x!),
  DanWood: ([x], [b1, b2]) => b1! * x! ** b2!,
  Lanczos3: ([x], [b1, b2, b3, b4, b5, b6]) =>
    b1! * exp(-b2! * x!) + b3! * exp(-b4! * x!) + b5! * exp(-b6! * x!),
  Misra1a: ([x], [b1, b2]) => b1! * (1 - exp(-b2! * x!)),
  Misra1b: ([x], [b1, b2]) => b1! * (1 - (1 + (b2! * x!) / 2) ** -2),
  Nelson: ([x1, x2], [b1, b2, b3]) => b1! - b2! * x1! * exp(-b3! * x2!),
};

export const NIST_NAMES = Object.keys(MODELS);
export const nistPresent = existsSync(FOLDER);

export function readNist(name: string): NistProblem {
  const lines = readFileSync(`${FOLDER}/${name}.dat`, "utf8").split(/\r?\n/);
  const rows = lines
    .slice(40, 60)
    .map((line) => /^\s*b\d+\s*=\s*(\S+)\s+(\S+)\s+(\S+)\s+(\S+)/.exec(line))
    .filter((row) => row !== null);
  const after = (label: string) =>
    Number(
      lines
        .find((line) => line.startsWith(label))!
        .split(":")[1]!
        .trim(),
    );
  const table = lines
    .slice(60)
    .map((line) => line.trim().split(/\s+/).map(Number))
    .filter((row) => row.length > 1);
  return {
    name,
    starts: [rows.map((row) => Number(row[1])), rows.map((row) => Number(row[2]))],
    certified: rows.map((row) => ({ text: row[3]!, value: Number(row[3]), deviation: Number(row[4]) })),
    residualSumOfSquares: after("Residual Sum of Squares"),
    degreesOfFreedom: after("Degrees of Freedom"),
    xs: table.map((row) => row.slice(1)),
    // Nelson's model is that of log(y).
    ys: table.map(([y]) => (name === "Nelson" ? Math.log(y!) : y!)),
    model: MODELS[name]!,
  };
}

/** Digits that agree: −log10 of the relative difference. */
export function agreeingDigits(ours: number, certified: number): number {
  return ours === certified ? 16 : -Math.log10(Math.abs(ours / certified - 1));
}
