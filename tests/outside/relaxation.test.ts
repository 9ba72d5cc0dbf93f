import { suites } from "./relaxation.outside.js";
import { testSuites } from "./run-suites.js";

testSuites(suites);
