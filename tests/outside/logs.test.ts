import { suites } from "./logs.outside.js";
import { testSuites } from "./run-suites.js";

testSuites(suites);
