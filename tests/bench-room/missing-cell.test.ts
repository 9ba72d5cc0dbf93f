import { readMissingCells } from "crankworthy/bench";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const read = (volts: number, chargedBefore = true, situation: "rested" | "on-charge" = "rested") =>
  readMissingCells({ volts, voltsStandardUncertainty: 0.02, chargedBefore, situation });

describe("readMissingCells", () => {
  it("never calls a cell missing without a charge before", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 16, noNaN: true }),
        (volts) => read(volts, false).signature !== "cells-missing",
      ),
    );
  });

  it("loses cells one by one as the voltage falls", () => {
    const volts = fc.double({ min: 0.5, max: 13, noNaN: true });
    fc.assert(
      fc.property(volts, volts, (a, b) => {
        const [low, high] = [read(Math.min(a, b)), read(Math.max(a, b))];
        return low.signature === "between" || high.signature === "between" || low.cells >= high.cells;
      }),
    );
  });

  it("tells one reversed cell from nothing only in words", () => {
    expect(read(10.6).reversedCellPossible).toBe(true);
    expect(read(8.5).reversedCellPossible).toBe(true);
    expect(read(6.4)).toMatchObject({ cells: 3, reversedCellPossible: false });
    expect(read(12.7).reversedCellPossible).toBe(false);
  });

  it("leaves voltages between the signatures open", () => {
    expect(read(11.7).signature).toBe("between");
    expect(read(11.7, false).signature).toBe("ambiguous");
  });

  it("follows a six-cell value the caller knows better", () => {
    const sharp = readMissingCells({
      volts: 10.55,
      voltsStandardUncertainty: 0.01,
      chargedBefore: true,
      sixCellVolts: { value: 12.65, standardUncertainty: 0.02 },
    });
    expect(sharp.signature).toBe("cells-missing");
    expect(sharp.shortfallVolts.value).toBeCloseTo(2.1, 9);
    const overcharged = read(13.2);
    expect(overcharged).toMatchObject({ signature: "six-cells", cells: 0 });
  });

  it("reads 12 V on charge as five cells", () => {
    expect(read(12, true, "on-charge")).toMatchObject({ signature: "cells-missing", cells: 1 });
  });
});
