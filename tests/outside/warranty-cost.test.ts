import { testSuites } from "./run-suites.js";
import { suites } from "./warranty-cost.outside.js";

testSuites(suites);
