import type { SegmentTotals } from "../segments.js";
import { addInterval } from "./run.js";
import {
  type Border,
  CELSIUS_ROWS,
  CHARGE_IN,
  CHARGE_OUT,
  FIRST_VOLTS,
  FROM,
  LAST_AMPERES,
  LAST_VOLTS,
  LEAST_AMPERES,
  LEAST_VOLTS,
  LEAST_VOLTS_ROW,
  LONGEST_GAP,
  MOST_AMPERES,
  MOST_VOLTS,
  NOISE,
  ROWS,
  type Run,
  SUM_AMPERES,
  SUM_CELSIUS,
  SUM_VOLTS,
  TO,
  VARIANCE,
  VOLT_SECONDS,
} from "./run-slots.js";

/** Sums of a run; the interval up to the border counts in charge, variance and longest gap. */
export function totalsOfRun(run: Run, border: Border | undefined): SegmentTotals {
  const seconds = run[TO]! - run[FROM]!;
  const rows = run[ROWS]!;
  const meanAmperes = seconds > 0 ? (run[CHARGE_IN]! - run[CHARGE_OUT]!) / seconds : run[SUM_AMPERES]! / rows;
  const meanVolts = seconds > 0 ? run[VOLT_SECONDS]! / seconds : run[SUM_VOLTS]! / rows;
  if (border) addInterval(run, border.seconds - run[TO]!, run[LAST_AMPERES]!, border.amperes);
  return {
    rows,
    chargeInAmpereHours: run[CHARGE_IN]! / 3600,
    chargeOutAmpereHours: run[CHARGE_OUT]! / 3600,
    chargeVarianceAmpereSecondsSquared: run[VARIANCE]!,
    chargeNoiseAmpereSecondsSquared: run[NOISE]!,
    meanVolts,
    leastVolts: run[LEAST_VOLTS]!,
    leastVoltsRow: run[LEAST_VOLTS_ROW]!,
    mostVolts: run[MOST_VOLTS]!,
    firstVolts: run[FIRST_VOLTS]!,
    lastVolts: run[LAST_VOLTS]!,
    meanAmperes,
    leastAmperes: run[LEAST_AMPERES]!,
    mostAmperes: run[MOST_AMPERES]!,
    meanTemperatureCelsius: run[SUM_CELSIUS]! / run[CELSIUS_ROWS]!,
    longestGapSeconds: run[LONGEST_GAP]!,
  };
}
