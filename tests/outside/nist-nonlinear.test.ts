import { describe } from "vitest";
import { nistPresent } from "../numeric/nist.js";
import { suites } from "./nist-nonlinear.suites.js";
import { testSuites } from "./run-suites.js";

describe.skipIf(!nistPresent)("NIST StRD (skipped: ../shared/datasets is not beside this repository)", () =>
  testSuites(suites),
);
