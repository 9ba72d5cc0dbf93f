import { testSuites } from "./run-suites.js";
import { suites } from "./workshop.outside.js";

testSuites(suites);
