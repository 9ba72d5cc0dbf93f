import type { VoltageChargeReading } from "../charge-state/index.js";
import type { Evaluation } from "../evaluate/index.js";
import { type Estimate, type Interval, interval95 } from "../numeric/index.js";
import type { Sheet } from "./sheet.js";
import { intervalText } from "./told.js";

/** One way the charge was found, with its words. Value and interval stay between empty and full, drawn as told. */
export interface Lane {
  readonly text: string;
  readonly value: number;
  readonly interval: Partial<Interval>;
}

/** The ways the charge was found, the voltage first, what follows from all of them last. */
export function lanesOf(
  sheet: Sheet,
  charge: NonNullable<Evaluation["charge"]>,
  voltage: VoltageChargeReading,
): Lane[] {
  const percent = (share: number) => sheet.quantity(100 * share, 0, "%");
  const lane = (
    word: "charge.voltage" | "charge.gravity" | "charge.voltage-and-gravity",
    one: Estimate,
  ): Lane => {
    const found = interval95(one);
    const value = possible(one.value);
    const interval = { lower: possible(found.lower), upper: possible(found.upper) };
    const told = {
      ...(found.lower > 0 && { lower: 100 * interval.lower }),
      ...(found.upper < 1 && { upper: 100 * interval.upper }),
    };
    const named = told.lower === undefined && told.upper === undefined ? { lower: 0, upper: 100 } : told;
    const text = sheet.say(word, { value: percent(value), interval: intervalText(sheet, named, 0, "%") });
    return { text, value, interval };
  };
  const bound = (one: Estimate): Lane => {
    const upper = possible(interval95(one).upper);
    return {
      text: sheet.say("charge.upper", { value: percent(upper) }),
      value: possible(one.value),
      interval: { upper },
    };
  };
  const lanes = [
    voltage.bound === "upper" ? bound(voltage.stateOfCharge) : lane("charge.voltage", voltage.stateOfCharge),
  ];
  if (charge.gravity) lanes.push(lane("charge.gravity", charge.gravity.stateOfCharge));
  if (charge.combined) lanes.push(lane("charge.voltage-and-gravity", charge.stateOfCharge));
  return lanes;
}

// A voltage beyond the curve's ends says empty or full, not less or more than that.
function possible(share: number): number {
  return Math.min(1, Math.max(0, share));
}
