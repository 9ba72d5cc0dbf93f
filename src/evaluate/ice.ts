import {
  freezingPointCelsius,
  type GravityChargeReading,
  type VoltageChargeReading,
} from "../charge-state/index.js";
import { type Estimate, isRefusal, normalCdf } from "../numeric/index.js";

/** Ice is reckoned with from this probability on. Our choice: a missed one can burst a case; below it the step before any
 *  charge in the cold still is to warm the battery and look. */
const ICE_PROBABILITY = 0.15;

/** Below the voltages that acid can give, what is left is nearly water. Gravity 25/25, our choice. */
const NEARLY_WATER: Estimate = { value: 1.05, standardUncertainty: 0.03 };
/** An empty battery with six cells rests here or above [V]: 1.95 V a cell (computed). */
export const EMPTY_VOLTS = 11.7;

/** Temperature and the freezing point it may have passed [°C]. */
export interface IceSign {
  readonly temperatureCelsius: number;
  readonly freezingPointCelsius: number;
}

/** Whether the acid that the readings tell of may be ice, the weakest cell first; nothing when that is improbable. */
export function iceSign(
  temperature: Estimate | undefined,
  voltage: VoltageChargeReading | undefined,
  gravity: GravityChargeReading | undefined,
  restVolts: number | undefined,
): IceSign | undefined {
  // Acid freezes below 0 °C; two uncertainties above that nothing needs to be computed.
  if (!temperature || temperature.value > 2 * temperature.standardUncertainty) return undefined;
  const weakest = gravity?.cells[gravity.weakestIndex];
  if (weakest) return iceAt(temperature, weakest);
  if (!voltage)
    return restVolts !== undefined && restVolts < EMPTY_VOLTS ? iceAt(temperature, NEARLY_WATER) : undefined;
  // An upper bound of the charge understates the risk, and is still a bound to act on.
  const { acid, stateOfCharge, relativeDensity25 } = voltage;
  const span = acid.fullGravity - acid.emptyGravity;
  return iceAt(temperature, {
    value: relativeDensity25,
    standardUncertainty: span * stateOfCharge.standardUncertainty,
  });
}

function iceAt(temperature: Estimate, gravity: Estimate): IceSign | undefined {
  const point = freezingPointCelsius({ relativeDensity25: gravity.value });
  if (isRefusal(point) || point.relation === "below") return undefined;
  const weaker = freezingPointCelsius({
    relativeDensity25: Math.max(1, gravity.value - gravity.standardUncertainty),
  });
  const fromGravity = isRefusal(weaker) ? 0 : weaker.celsius.value - point.celsius.value;
  const uncertainty = Math.hypot(
    temperature.standardUncertainty,
    point.celsius.standardUncertainty,
    fromGravity,
  );
  const probability = normalCdf((point.celsius.value - temperature.value) / uncertainty);
  if (probability < ICE_PROBABILITY) return undefined;
  return { temperatureCelsius: temperature.value, freezingPointCelsius: point.celsius.value };
}
