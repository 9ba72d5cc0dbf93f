import { recogniseSystem } from "crankworthy/vehicle";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plusMinus } from "./given.js";

const at = (volts: number, label?: 6 | 12 | 24, verified = false) =>
  recogniseSystem(plusMinus(volts, 0.02), label, verified);

describe("recogniseSystem", () => {
  it("is never certain of 6 V without a label", () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 40, noNaN: true }), (volts) => {
        const found = at(volts);
        if (found.certain) expect(found.nominalVolts).not.toBe(6);
      }),
    );
  });

  it("lets the label decide between 6 V and a very flat 12 V", () => {
    expect(at(6.2)).toMatchObject({ ask: "label-decides", candidates: [6, 12] });
    expect(at(6.2, 6)).toMatchObject({ certain: true, nominalVolts: 6, state: "rest" });
    expect(at(6.2, 12)).toMatchObject({ certain: true, nominalVolts: 12, state: "flat-or-failed-cells" });
    expect(at(7.2, 6)).toMatchObject({ nominalVolts: 6, state: "surface-charge-or-charging" });
  });

  it("7.7-11.7 V is 12 V in trouble, never 6 V by itself, and a 6 V label contradicts it", () => {
    expect(at(10.5)).toMatchObject({ ask: "twelve-volts-flat-or-failed", candidates: [12] });
    expect(at(10.5, 12)).toMatchObject({ certain: true, state: "flat-or-failed-cells" });
    expect(at(10.5, 6)).toMatchObject({ certain: false, ask: "label-contradicts" });
  });

  it("asks between 12 and 24 V, above 31 V and near nothing", () => {
    expect(at(18)).toMatchObject({ ask: "between-systems", candidates: [12, 24] });
    expect(at(33)).toMatchObject({ ask: "above-any-system" });
    expect(at(0.5, 12)).toMatchObject({ ask: "almost-no-voltage" });
  });

  it("a 24 V reading under a 12 V label contradicts", () => {
    expect(at(25.2, 12)).toMatchObject({ ask: "label-contradicts", candidates: [24, 12] });
    expect(at(12.6, 24)).toMatchObject({ ask: "label-contradicts", candidates: [12, 24] });
  });

  it("asks on a boundary within two standard uncertainties, unless the label agrees", () => {
    expect(at(11.72)).toMatchObject({ ask: "on-a-boundary" });
    expect(at(11.72, 12)).toMatchObject({ certain: true });
    expect(at(11.8)).toMatchObject({ certain: true });
  });

  it("negative: exchange the leads first; only then reversed; a small negative is just nothing", () => {
    expect(at(-12.5, 12)).toMatchObject({ ask: "exchange-leads-and-repeat" });
    expect(at(-12.5, 12, true)).toMatchObject({ ask: "reversed-battery" });
    expect(at(-1, 12, true)).toMatchObject({ ask: "almost-no-voltage" });
    expect(at(-0.01)).toMatchObject({ ask: "almost-no-voltage" });
  });

  it("above the rest band it tells surface charge or charging", () => {
    expect(at(13.1)).toMatchObject({ nominalVolts: 12, state: "surface-charge-or-charging" });
  });
});
