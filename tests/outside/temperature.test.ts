import { testSuites } from "./run-suites.js";
import { suites } from "./temperature.outside.js";

testSuites(suites);
