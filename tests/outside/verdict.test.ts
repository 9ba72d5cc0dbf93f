import { testSuites } from "./run-suites.js";
import { suites } from "./verdict.outside.js";

testSuites(suites);
