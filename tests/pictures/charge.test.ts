import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BatteryRecord, evaluate } from "../../src/evaluate/index.js";
import { isRefusal } from "../../src/numeric/index.js";
import { chargePicture } from "../../src/pictures/index.js";
import { renderTicket } from "../../src/report/index.js";
import { worn } from "./evaluations.js";
import { all, descriptionOf, expectSoundPicture } from "./read-svg.js";

const withVolts = (restVolts: number, more: Partial<BatteryRecord["conditions"]> = {}): BatteryRecord => ({
  identity: { chemistry: "efb", rating: { standard: "en-50342-1:2015", amperes: 680 } },
  conditions: { lastEvent: "discharge", hoursAtRest: 30, temperatureCelsius: 25, ...more },
  measurements: { restVolts },
});

describe("chargePicture", () => {
  it("reads the charge off the curve: the mark lies on it, above its own value", () => {
    const { cellGravities: _, ...measurements } = worn.measurements;
    const root = expectSoundPicture(chargePicture(evaluate({ ...worn, measurements })));
    const [mark, under] = all(root, "circle").map(({ attributes }) => attributes);
    expect(under!.cx).toBe(mark!.cx);
    const curve = all(root, "path")[1]!
      .attributes.d!.match(/[\d.-]+,[\d.-]+/g)!
      .map((pair) => pair.split(",").map(Number));
    const after = curve.findIndex(([x]) => x! >= Number(mark!.cx));
    const [[x0, y0], [x1, y1]] = [curve[after - 1]!, curve[after]!] as [[number, number], [number, number]];
    const y = y0 + ((y1 - y0) * (Number(mark!.cx) - x0)) / (x1 - x0);
    expect(Math.abs(y - Number(mark!.cy))).toBeLessThan(0.3);
  });

  it("tells voltage, gravities and both together, each with its interval", () => {
    const root = expectSoundPicture(chargePicture(evaluate(worn)));
    const told = descriptionOf(root);
    for (const start of ["From the voltage: 76\u00a0% (", "From the gravities: ", "From both together: "])
      expect(told).toContain(start);
    // Three lanes and the mark on the curve.
    expect(all(root, "circle")).toHaveLength(4);
  });

  it("gives back the curve's own uncertainty as the width of the band", () => {
    expect(descriptionOf(expectSoundPicture(chargePicture(evaluate(withVolts(12.4)))))).toContain(
      "within 18 points",
    );
    // Exhausted: the reading is less certain, the band is not.
    expect(descriptionOf(expectSoundPicture(chargePicture(evaluate(withVolts(11.75)))))).toContain(
      "within 18 points",
    );
  });

  it("names no end of an interval beyond empty and full, and draws an open end for a bound", () => {
    const low = descriptionOf(expectSoundPicture(chargePicture(evaluate(withVolts(11.75)))));
    expect(low).toMatch(/From the voltage: 0\u00a0% \(\d+\u00a0% or less\)/);
    const surface = withVolts(13.3, { lastEvent: "charge", hoursAtRest: 0.3 });
    const root = expectSoundPicture(chargePicture(evaluate(surface)));
    expect(descriptionOf(root)).toContain("surface charge may hide that it is less");
    expect(all(root, "path").some(({ attributes }) => attributes.d!.split("L").length === 3)).toBe(true);
  });

  it("tells of a bound its upper end, as the report does", () => {
    const record = withVolts(12.4, { lastEvent: "charge", hoursAtRest: 0.2, temperatureCelsius: 20 });
    const evaluation = evaluate({ ...record, identity: { ...record.identity, chemistry: "flooded" } });
    const told = descriptionOf(expectSoundPicture(chargePicture(evaluation)));
    expect(told).toContain("From the voltage: at most 87\u00a0%;");
    expect(renderTicket(evaluation)).toMatch(/At most 87\s%/);
  });

  it.each([
    [11.21, "0\u00a0% (11\u00a0% or less)"],
    [12.95, "100\u00a0% (100\u00a0% or more)"],
  ])("tells no charge below empty or above full, and draws none: %d V", (volts, words) => {
    const record = withVolts(volts, { temperatureCelsius: 20 });
    const evaluation = evaluate({ ...record, identity: { ...record.identity, chemistry: "flooded" } });
    const root = expectSoundPicture(chargePicture(evaluation));
    expect(descriptionOf(root)).toContain(`From the voltage: ${words}`);
    for (const { attributes } of all(root, "line"))
      for (const x of [Number(attributes.x1), Number(attributes.x2)]) expect(x).toBeLessThanOrEqual(706);
    // Mark on the curve, and the lane's.
    expect(all(root, "circle")).toHaveLength(2);
  });

  it("refuses without a rest voltage", () => {
    const { restVolts: _, ...measurements } = worn.measurements;
    expect(chargePicture(evaluate({ ...worn, measurements }))).toMatchObject({
      refused: true,
      code: "no-rest-voltage",
    });
  });

  it("is sound for every voltage that gives a charge, at every width", () => {
    let drawn = 0;
    fc.assert(
      fc.property(
        fc.double({ min: 11, max: 13.6, noNaN: true }),
        fc.double({ min: -20, max: 50, noNaN: true }),
        fc.constantFrom("flooded" as const, "agm" as const, "unknown" as const),
        fc.integer({ min: 280, max: 1200 }),
        (volts, temperatureCelsius, chemistry, width) => {
          const record = withVolts(volts, { temperatureCelsius });
          const svg = chargePicture(evaluate({ ...record, identity: { ...record.identity, chemistry } }), {
            width,
          });
          if (isRefusal(svg)) return;
          drawn++;
          expectSoundPicture(svg);
        },
      ),
      { numRuns: 100 },
    );
    expect(drawn).toBeGreaterThan(50);
  });
});
