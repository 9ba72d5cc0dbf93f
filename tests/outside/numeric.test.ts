import { suites } from "./numeric.outside.js";
import { testSuites } from "./run-suites.js";

testSuites(suites);
