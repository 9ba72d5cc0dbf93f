import { suites } from "./bench.outside.js";
import { testSuites } from "./run-suites.js";

testSuites(suites);
