import type { BatteryRecord, Evaluation } from "crankworthy/evaluate";
import { tryEvaluate } from "crankworthy/evaluate";
import fc from "fast-check";
import { copyOf, fullRecord } from "../evaluate/sample.js";

// Values that lie in the range of the field, and lead to its edges.
const chosen: Readonly<Record<string, readonly unknown[]>> = {
  "identity.chemistry": ["flooded", "flooded-calcium", "efb", "agm", "gel", "unknown"],
  "identity.rating": [
    undefined,
    ...["hca", "unstated", "en-50342-1:unstated", "en-50342-1:2006-level-2", "iec-60095-1:2018"].map(
      (standard) => ({ standard, amperes: 500 }),
    ),
    { standard: "gost-959-91", amperes: 400 },
    { standard: "jis-d-5301:pre-2006", amperes: 400 },
  ],
  "identity.labelCode": [
    undefined,
    { scheme: "etn", text: "560 999 054" },
    { scheme: "etn", text: "500 001 001" },
    { scheme: "jis-d-5301", text: "55B24L" },
    { scheme: "jis-d-5301", text: "999Z99X" },
    { scheme: "bci", text: "35" },
    { scheme: "bci", text: "9999" },
    { scheme: "din-72310", text: "00000" },
  ],
  "identity.nominalVolts": [undefined, 12],
  "identity.capacityAmpereHours": [undefined, 1, 60, 390],
  "identity.reserveCapacityMinutes": [undefined, 98],
  "identity.dateCode.text": ["0324", "", "D0", "ZZZZZZZZZZ", "日", "9999", "x".repeat(70), "2031-01"],
  "conditions.temperatureCelsius": [undefined, -50, -30, -10, 5, 21, 45, 60],
  "conditions.lastEvent": ["charge", "drive", "discharge"],
  "conditions.hoursAtRest": [0, 0.2, 26],
  "conditions.chargeCompleted": [true, false],
  "conditions.electrolyteLow": [true, false],
  "conditions.damage": [[], ["cracked"]],
  "measurements.restVolts": [undefined, 6.1, 9, 10.4, 11.6, 12.2, 12.64, 13.3, 14.5],
  "measurements.cranking.standard": [
    "sae-j537",
    "hca",
    "unstated",
    "bci-ca",
    "en-50342-1:unstated",
    "iec-60095-1:unstated",
    "iec-60095-1:2006",
    "jis-d-5301:pre-2006",
    "gb-t-5008-1",
    "din-43539-2",
  ],
  "measurements.cellGravities": [
    undefined,
    [1.26],
    [1.1, 1.12, 1.1, 1.1, 1.1, 1.1],
    [1.37, 1.36],
    [0.9, 1.2],
  ],
  "measurements.gravityTemperatureCelsius": [undefined, -20, 22, 60],
  "measurements.loadTest.loadAmperes": [20, 300],
  "vehicle.starting.crankingVolts": [undefined, 8, 10.6],
  "vehicle.starting.inrush": ["left-out", "included"],
  "vehicle.starting.engineTemperatureCelsius": [undefined, -30, 0, 60],
  "vehicle.starting.crankingAmperes": [undefined, 0.01, 95],
  "vehicle.starting.positiveDropVolts": [-0.3, 0.2],
  "vehicle.charging.control": ["fixed-regulator", "computer-controlled", "unknown"],
  "vehicle.charging.engineRpm": [undefined, 900, 2500],
  "vehicle.charging.regulatorTemperatureCelsius": [undefined, -40, 35, 95],
  "vehicle.charging.positiveDropVolts": [-0.2, 0.12],
  "vehicle.charging.outputAmperes": [undefined, 0.01, 22],
  "vehicle.charging.ripple.method": ["true-rms", "peak-to-peak", "meter-on-ac"],
  "vehicle.charging.ripple.place": ["battery-posts", "alternator-output"],
  "vehicle.charging.ripple.limit": ["default-look-further", "output-250-mv"],
  "vehicle.draw.drawAmperes": [0, 0.0001, 0.024, 0.4, 12],
  "vehicle.draw.settledMinutes": [1, 70],
  "requirement.coldestMorningCelsius": [-50, -12, 40],
  requirement: [undefined],
  vehicle: [undefined],
  ventilation: [undefined],
};

function put(record: object, path: string, value: unknown): void {
  const keys = path.split(".");
  let holder = record as Record<string, unknown>;
  for (const key of keys.slice(0, -1)) {
    if (typeof holder[key] !== "object" || holder[key] === null) return;
    holder = holder[key] as Record<string, unknown>;
  }
  holder[keys.at(-1)!] = value;
}

/** Evaluations of sound and unsound records, the same at every run: each path and value above occurs many times. */
export function generatedEvaluations(count: number): Evaluation[] {
  const change = fc.constantFrom(
    ...Object.entries(chosen).flatMap(([path, values]) => values.map((value) => [path, value] as const)),
  );
  const changes = fc.sample(fc.array(change, { minLength: 1, maxLength: 6 }), { numRuns: count, seed: 7 });
  return changes.flatMap((one) => {
    const record = copyOf(fullRecord) as unknown as BatteryRecord;
    for (const [path, value] of one) put(record, path, value);
    const result = tryEvaluate(JSON.parse(JSON.stringify(record)));
    return result.ok ? [result.evaluation] : [];
  });
}
