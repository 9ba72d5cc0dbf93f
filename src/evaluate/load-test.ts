import { judgeLoadTest, type LoadTestInput, loadTestCurrentAmperes } from "../bench/index.js";
import { type Estimate, isRefusal, type Mutable } from "../numeric/index.js";
import { convertRating } from "../ratings/index.js";
import type { LoadTestEvidence } from "../verdict/index.js";
import type { ChargeSection, IdentitySection, LoadTestSection, ReferenceCranking } from "./evaluation.js";
import type { BatteryRecord } from "./record.js";
import { voltmeterUncertainty } from "./system.js";
import { note, refused, type Workbook } from "./workbook.js";

/** Outcome of the load test, for the reader and for the rules. */
export interface LoadTestOutcome {
  readonly section: LoadTestSection;
  readonly evidence: LoadTestEvidence;
}

// "Half the cold-cranking rating" is meant in the 7.2 V standards. EN without its level is within 15 % of them: near
// enough for a load that may be off by 10 %. Where no conversion exists the rule by capacity is left.
function coldCrankingAmperes({ standard, amperes }: ReferenceCranking): number | undefined {
  if (standard === "en-50342-1:unstated") return amperes.value;
  const converted = convertRating({ amperes, from: standard, to: "sae-j537" });
  return isRefusal(converted) ? undefined : converted.value;
}

/** The load to set for this battery [A]; nothing when neither its rating nor its capacity gives one. */
export function testLoadAmperes({ rating, capacityAmpereHours }: IdentitySection): number | undefined {
  const rated = rating && coldCrankingAmperes(rating);
  const load = loadTestCurrentAmperes({
    ...(rated !== undefined && { coldCrankingAmperes: rated }),
    ...(capacityAmpereHours && { capacityAmpereHours: capacityAmpereHours.value }),
  });
  return isRefusal(load) ? undefined : load.amperes;
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
  const rated = rating && coldCrankingAmperes(rating);
  if (rated !== undefined) input.ratedCrankingAmperes = rated;
  const { lastEvent, hoursAtRest, surfaceChargeRemoval } = record.conditions ?? {};
  if (hoursAtRest !== undefined && (lastEvent === "charge" || lastEvent === "drive"))
    input.hoursSinceCharge = hoursAtRest;
  if (surfaceChargeRemoval === "lights" || surfaceChargeRemoval === "load") input.surfaceChargeRemoved = true;
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
