import { testSuites } from "./run-suites.js";
import { suites } from "./vehicle.outside.js";

testSuites(suites);
