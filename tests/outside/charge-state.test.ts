import { suites } from "./charge-state.outside.js";
import { testSuites } from "./run-suites.js";

testSuites(suites);
