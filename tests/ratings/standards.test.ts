import { ratingStandards } from "crankworthy/ratings";
import { describe, expect, it } from "vitest";
import { bibliography } from "../../src/sources/index.js";

describe("ratingStandards", () => {
  it("defines 18 standards, each with a source in the bibliography", () => {
    expect(Object.keys(ratingStandards)).toHaveLength(18);
    for (const { source } of Object.values(ratingStandards)) expect(bibliography).toHaveProperty(source);
  });

  it("leaves out what is not established", () => {
    for (const id of ["iec-60095-1:2006", "iec-60095-1:2018", "gost-959-91", "unstated"] as const) {
      expect(ratingStandards[id]).not.toHaveProperty("firstStage");
    }
    expect(ratingStandards["en-50342-1:unstated"]).not.toHaveProperty("secondStage");
  });

  it("second stages are consistent: total = first stage at the second current + stage", () => {
    for (const { firstStage, secondStage } of Object.values(ratingStandards)) {
      if (!secondStage) continue;
      const first = firstStage!.seconds / secondStage.currentShare;
      expect(Math.abs(first + secondStage.seconds - secondStage.totalSeconds)).toBeLessThan(0.5);
      expect(secondStage.endVolts).toBeLessThan(firstStage!.endVolts);
    }
  });

  it("keeps the trap out: CCA at -18 °C, CA and MCA at 0 °C", () => {
    expect(ratingStandards["sae-j537"].temperatureCelsius).toBe(-18);
    expect(ratingStandards["bci-ca"].temperatureCelsius).toBe(0);
    expect(ratingStandards["bci-mca"].temperatureCelsius).toBe(0);
  });
});
