import {
  freezingPointCelsius,
  type GravityChargeReading,
  type VoltageChargeReading,
} from "../charge-state/index.js";
import { type Estimate, isRefusal, normalCdf } from "../numeric/index.js";

/** Ice is reckoned with from this probability on: a missed one can burst a case. Our choice. */
const ICE_PROBABILITY = 0.05;

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
): IceSign | undefined {
  // Acid freezes below 0 °C; two uncertainties above that nothing needs to be computed.
  if (!temperature || temperature.value > 2 * temperature.standardUncertainty) return undefined;
  const weakest = gravity?.cells[gravity.weakestIndex];
  if (weakest) return iceAt(temperature, weakest);
  if (!voltage || voltage.bound === "upper") return undefined;
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
