import { suites } from "./date-codes.outside.js";
import { testSuites } from "./run-suites.js";

testSuites(suites);
