import { judgeLoadTest, type LoadTestInput } from "../bench/index.js";
import { type Estimate, isRefusal, type Mutable } from "../numeric/index.js";
import type { LoadTestEvidence } from "../verdict/index.js";
import type { ChargeSection, IdentitySection, LoadTestSection } from "./evaluation.js";
import type { BatteryRecord } from "./record.js";
import { voltmeterUncertainty } from "./system.js";
import { note, refused, type Workbook } from "./workbook.js";

/** Outcome of the load test, for the reader and for the rules. */
export interface LoadTestOutcome {
  readonly section: LoadTestSection;
  readonly evidence: LoadTestEvidence;
}

/** Judges the adjustable-load test against the limit for its temperature. */
export function loadTest(
  record: BatteryRecord,
  { rating, capacityAmpereHours }: IdentitySection,
  charge: ChargeSection | undefined,
  temperature: Estimate | undefined,
  book: Workbook,
): LoadTestOutcome | undefined {
  const { measurements } = record;
  const reading = measurements.loadTest;
  if (!reading) return undefined;
  const input: Mutable<LoadTestInput> = {
    volts: reading.volts,
    voltsStandardUncertainty: voltmeterUncertainty(measurements),
    loadAmperes: reading.loadAmperes,
    seconds: reading.seconds,
  };
  if (temperature) input.temperatureCelsius = temperature;
  if (charge?.bound === "two-sided") input.stateOfCharge = charge.stateOfCharge;
  // Half the cold-cranking rating is meant in the 7.2 V standards; other ratings leave the rule by capacity.
  if (rating && (rating.standard === "sae-j537" || rating.standard === "jis-d-5301:2006"))
    input.ratedCrankingAmperes = rating.amperes.value;
  if (capacityAmpereHours) input.capacityAmpereHours = capacityAmpereHours.value;
  const judged = judgeLoadTest(input, book.derivation);
  if (isRefusal(judged)) {
    refused(book, "measurements.loadTest", judged);
    note(book, "load-test-not-valid", "warning", { reasons: judged.code });
    return undefined;
  }
  const { limitVolts, marginVolts, passProbability, invalidReasons, passStands, failStands } = judged;
  return {
    section: { limitVolts: limitVolts.value, marginVolts, passProbability, invalidReasons },
    evidence: {
      passProbability,
      marginVolts,
      limitVolts: limitVolts.value,
      passStands,
      failStands,
      invalidReasons,
      repeated: reading.repeated === true,
    },
  };
}
