import { type BatteryRecord, evaluate } from "crankworthy/evaluate";
import { describe, expect, it } from "vitest";

const flooded = (conditions: NonNullable<BatteryRecord["conditions"]>, restVolts: number): BatteryRecord => ({
  identity: { chemistry: "flooded", rating: { standard: "sae-j537", amperes: 600 } },
  conditions,
  measurements: { restVolts },
});
const codes = (list: readonly { readonly code: string }[]) => list.map(({ code }) => code);

describe("orders that agree with each other", () => {
  it("a battery that may be frozen is not to be warmed and charged soon", () => {
    const { findings, verdict } = evaluate(
      flooded({ temperatureCelsius: -12, lastEvent: "discharge", hoursAtRest: 24 }, 11.95),
    );
    expect(verdict.action).toBe("isolate");
    expect(codes(findings)).toContain("frozen-possible");
    expect(codes(findings)).not.toContain("near-freezing");
  });

  it("a hot battery on a charger is switched off and cooled, not cleaned", () => {
    const { nextSteps } = evaluate(
      flooded({ temperatureCelsius: 55, lastEvent: "charge", hoursAtRest: 0 }, 14.9),
    );
    expect(codes(nextSteps)).toContain("end-charging");
    expect(codes(nextSteps)).not.toContain("check-connection");
  });

  it("a small battery is not charged with what a large one may have", () => {
    const { chargePlan } = evaluate({
      identity: {
        chemistry: "gel",
        rating: { standard: "sae-j537", amperes: 200 },
        capacityAmpereHours: 20,
      },
      conditions: { temperatureCelsius: 20, lastEvent: "discharge", hoursAtRest: 10 },
      measurements: { restVolts: 12 },
    });
    const stop = chargePlan!.stop.find(({ code }) => code === "charge-current")!;
    expect(stop.value).toBe(chargePlan!.currentAmperes.upper);
    expect(stop.value).toBeLessThan(5);
  });

  it("a smell of rotten eggs warns of the gas, sealed or not", () => {
    const { cautions } = evaluate(flooded({ damage: ["sulfur-smell"] }, 12.4));
    expect(codes(cautions)).toContain("toxic-gas");
  });
});
