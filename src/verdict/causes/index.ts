import { battery } from "./battery.js";
import type { CauseRule } from "./cause.js";
import { chargingCircuit } from "./charging-circuit.js";
import { connection } from "./connection.js";
import { drain } from "./drain.js";
import { onlyDischarged } from "./only-discharged.js";

/** All causes, in the order in which they are told. More than one may be supported: a drain leaves a battery discharged. */
export const causeRules: readonly CauseRule[] = [battery, connection, chargingCircuit, drain, onlyDischarged];
