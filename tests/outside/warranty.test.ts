import { testSuites } from "./run-suites.js";
import { suites } from "./warranty.outside.js";

testSuites(suites);
