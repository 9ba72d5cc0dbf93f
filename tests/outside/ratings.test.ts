import { suites } from "./ratings.outside.js";
import { testSuites } from "./run-suites.js";

testSuites(suites);
