import { fitLeastSquares, isRefusal } from "crankworthy/numeric";
import { NIST_NAMES, nistPresent, readNist } from "../numeric/nist.js";
import type { OutsideSuite } from "./suite.js";

// The data files are no part of the project: without ../shared/datasets there is nothing to compare.
const problems = nistPresent ? NIST_NAMES.map(readNist) : [];

export const suites: OutsideSuite[] = problems.map((problem) => ({
  title: `Nonlinear least squares, NIST ${problem.name}`,
  source:
    "NIST/ITL Statistical Reference Datasets, nonlinear regression, certified values, as carried by lmfit/lmfit-py, NIST_STRD (read)",
  unit: "that of the data set",
  why: "six significant digits of a parameter from either start, four of a standard deviation",
  rows: problem.starts.flatMap((start, which) => {
    const fitted = () => {
      const fit = fitLeastSquares(problem.model, start, problem);
      if (isRefusal(fit)) throw new Error(`refused: ${fit.code}`);
      return fit;
    };
    return problem.certified.flatMap(({ value, deviation }, i) => [
      {
        label: `b${i + 1} from start ${which + 1}`,
        published: value,
        ours: () => fitted().parameters[i]!.value,
        allowed: 1e-6 * Math.abs(value),
      },
      {
        label: `standard deviation of b${i + 1} from start ${which + 1}`,
        published: deviation,
        ours: () => fitted().parameters[i]!.standardUncertainty,
        allowed: 1e-4 * deviation,
      },
    ]);
  }),
}));
