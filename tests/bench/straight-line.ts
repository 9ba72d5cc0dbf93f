import type { BatteryRecord } from "crankworthy/evaluate";

// What somebody would write in an afternoon: the same headline numbers by plain arithmetic, without validation,
// uncertainty, refusals or findings. It exists to show what the rest costs; nothing is judged by it.

const FLOODED = [11.89, 12.06, 12.24, 12.45, 12.65] as const;
const SEALED = [11.8, 12, 12.3, 12.6, 12.85] as const;
const TO_SAE: Readonly<Record<string, number>> = {
  "sae-j537": 1,
  "jis-d-5301:2006": 1,
  "en-50342-1:2015": 1.08,
  "din-43539-2": 1.7,
};

export interface StraightLine {
  readonly stateOfCharge: number;
  readonly ratio: number;
  readonly condition: string;
  readonly months: number;
  readonly rebate: number;
}

export function straightLine(record: BatteryRecord): StraightLine {
  const { identity, measurements, conditions, warranty } = record;
  const table = identity.chemistry === "agm" || identity.chemistry === "gel" ? SEALED : FLOODED;
  const volts = (measurements.restVolts ?? 12.6) + 0.0012 * (25 - (conditions?.temperatureCelsius ?? 25));
  let i = 0;
  while (i < 3 && volts > table[i + 1]!) i++;
  const stateOfCharge = (i + (volts - table[i]!) / (table[i + 1]! - table[i]!)) / 4;
  const cranking = measurements.cranking;
  const amperes = Array.isArray(cranking?.amperes)
    ? cranking.amperes.reduce((a, b) => a + b, 0) / cranking.amperes.length
    : ((cranking?.amperes as number | undefined) ?? 0);
  const rated = identity.rating;
  const ratio = rated
    ? (amperes * (TO_SAE[cranking?.standard ?? ""] ?? 1)) / (rated.amperes * (TO_SAE[rated.standard] ?? 1))
    : 0;
  const condition = ratio >= 0.8 ? "serviceable" : ratio >= 0.6 ? "worn" : "unserviceable";
  let months = 0;
  let rebate = 0;
  if (warranty?.purchase.soldOn) {
    const on = warranty.claimedOn ?? conditions?.inspectedOn ?? warranty.purchase.soldOn;
    const [y0, m0, d0] = warranty.purchase.soldOn.split("-").map(Number);
    const [y1, m1, d1] = on.split("-").map(Number);
    months = (y1! - y0!) * 12 + (m1! - m0!) - (d1! < d0! ? 1 : 0);
    const price = Number(warranty.purchase.pricePaid ?? 0);
    const { freeMonths, totalMonths } = warranty.terms;
    rebate =
      months < freeMonths
        ? price
        : Math.round(price * Math.max(0, 1 - months / Math.max(1, totalMonths)) * 100) / 100;
  }
  return { stateOfCharge, ratio, condition, months, rebate };
}
