import type { VoltageChargeReading } from "../charge-state/index.js";
import type { Evaluation } from "../evaluate/index.js";
import { type Estimate, type Interval, interval95 } from "../numeric/index.js";
import type { Sheet } from "./sheet.js";
import { intervalText } from "./told.js";

/** One way the charge was found, with its words. */
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
    const interval = interval95(one);
    const told = {
      ...(interval.lower > 0 && { lower: 100 * interval.lower }),
      ...(interval.upper < 1 && { upper: 100 * interval.upper }),
    };
    const named = told.lower === undefined && told.upper === undefined ? scaled(interval) : told;
    const text = sheet.say(word, { value: percent(one.value), interval: intervalText(sheet, named, 0, "%") });
    return { text, value: one.value, interval };
  };
  const { value } = voltage.stateOfCharge;
  const lanes: Lane[] =
    voltage.bound === "upper"
      ? [
          {
            text: sheet.say("charge.upper", { value: percent(value) }),
            value,
            interval: { upper: interval95(voltage.stateOfCharge).upper },
          },
        ]
      : [lane("charge.voltage", voltage.stateOfCharge)];
  if (charge.gravity) lanes.push(lane("charge.gravity", charge.gravity.stateOfCharge));
  if (charge.combined) lanes.push(lane("charge.voltage-and-gravity", charge.stateOfCharge));
  return lanes;
}

function scaled({ lower, upper }: Interval): Interval {
  return { lower: 100 * lower, upper: 100 * upper };
}
