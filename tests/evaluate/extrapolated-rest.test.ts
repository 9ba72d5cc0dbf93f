import type { BatteryRecord } from "crankworthy/evaluate";
import { evaluate, tryEvaluate } from "crankworthy/evaluate";
import { expect, it } from "vitest";

const record: BatteryRecord = {
  identity: { chemistry: "agm", rating: { standard: "en-50342-1:2015", amperes: 760 } },
  conditions: { temperatureCelsius: 25, lastEvent: "drive", hoursAtRest: 0.4 },
  measurements: { restVolts: 12.7, voltsStandardUncertainty: 0.03 },
};

it("an extrapolated rest voltage needs no rest of its own: less is uncertain, and it says where it comes from", () => {
  const short = evaluate(record);
  const settled = evaluate({ ...record, conditions: { ...record.conditions, restVoltsExtrapolated: true } });
  const width = (one: typeof short) => one.charge!.interval.upper - one.charge!.interval.lower;
  expect(width(settled)).toBeLessThan(width(short));
  expect(settled.charge!.stateOfCharge.value).toBeGreaterThan(short.charge!.stateOfCharge.value);
  expect(settled.findings.map(({ code }) => code)).toContain("rest-extrapolated");
});

it("without its uncertainty it is refused as input", () => {
  const result = tryEvaluate({
    ...record,
    conditions: { temperatureCelsius: 25, restVoltsExtrapolated: true },
    measurements: { restVolts: 12.7 },
  });
  expect(result.ok).toBe(false);
  if (!result.ok) expect(result.issues.map(({ path }) => path)).toEqual(["conditions.restVoltsExtrapolated"]);
});
