import { describe, expect, it } from "vitest";
import { type BatteryRecord, evaluate } from "../../src/evaluate/index.js";
import { warrantyPicture } from "../../src/pictures/index.js";
import { worn } from "./evaluations.js";
import { all, descriptionOf, expectSoundPicture, readSvg, shownTexts } from "./read-svg.js";

const picture = (record: BatteryRecord, width = 720) =>
  warrantyPicture({ evaluation: evaluate(record), record }, { width });
const day = (text: string) => text.replaceAll(" ", "\u00a0");
const withPurchase = (
  purchase: NonNullable<BatteryRecord["warranty"]>["purchase"],
  terms = {},
): BatteryRecord => ({
  ...worn,
  warranty: { purchase, terms: { ...worn.warranty.terms, ...terms } },
});

describe("warrantyPicture", () => {
  it("tells manufacture, sale, both periods, the statutory one and the claim, in order", () => {
    const told = descriptionOf(expectSoundPicture(picture(worn)));
    const parts = [
      `Made, by date code C4: ${day("Mar 1, 2024")} to ${day("Mar 31, 2024")}.`,
      `Sold ${day("May 6, 2024")}, with receipt.`,
      `Replacement free of charge: ${day("May 6, 2024")} to ${day("May 6, 2026")}.`,
      `Replacement at a share of the price: ${day("May 7, 2026")} to ${day("May 6, 2028")}.`,
      `Statutory period, as the terms state it: to ${day("May 6, 2026")}.`,
      `Claim ${day("Nov 20, 2026")}.`,
      "The claim is not ready to be settled.",
    ];
    const places = parts.map((part) => told.indexOf(part));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it("draws a day as a mark, a stretch of days as a box to scale", () => {
    const boxes = all(readSvg(picture(worn)), "rect").filter(
      ({ attributes }) => attributes.class === "s-ink",
    );
    const [made, free, prorated] = boxes.map(({ attributes }) => Number(attributes.width));
    // 31 days of March, 731 and 730 days of the periods.
    expect(free! / made!).toBeCloseTo(731 / 31, 0);
    expect(prorated! / free!).toBeCloseTo(730 / 731, 2);
  });

  it("shows every reading of an ambiguous code, the best first, and counts what is not drawn", () => {
    const record = { ...worn, identity: { ...worn.identity, dateCode: { text: "0324" } } };
    const told = descriptionOf(expectSoundPicture(picture(record)));
    expect(told.match(/may also mean/g)).toHaveLength(2);
    expect(told).toMatch(/Further readings of the code, not drawn: \d/);
  });

  it("shows the first and the last cover where the start is an interval", () => {
    const terms = { startWithoutReceipt: { kind: "manufacture-plus-months", months: 6 } };
    const told = descriptionOf(expectSoundPicture(picture(withPurchase({ receipt: false }, terms))));
    expect(told).toContain(`Term starts between ${day("Sep 1, 2024")} and ${day("Sep 30, 2024")}`);
    expect(told).toContain(`Cover ends between ${day("Sep 1, 2028")} and ${day("Sep 30, 2028")}`);
    expect(told.match(/Replacement free of charge/g)).toHaveLength(2);
  });

  it("says that a term without a start cannot be drawn, and that no code was read", () => {
    const { dateCode: _, ...identity } = worn.identity;
    const record = { ...withPurchase({ receipt: false, soldOn: "2024-05-06" }), identity };
    const told = descriptionOf(expectSoundPicture(picture(record)));
    expect(told).toContain(`Said to be sold ${day("May 6, 2024")}, no receipt`);
    expect(told).toContain("The term cannot be drawn");
    expect(told).toContain("No date code was read");
  });

  it("names the outcome of a settled claim", () => {
    const record: BatteryRecord = {
      ...worn,
      conditions: { ...worn.conditions, chargeCompleted: true },
      measurements: { ...worn.measurements, cellGravities: [1.265, 1.265, 1.1, 1.265, 1.265, 1.265] },
    };
    const evaluation = evaluate(record);
    const outcome = evaluation.warranty!.settlement?.outcome;
    expect(outcome).toBeDefined();
    expect(descriptionOf(expectSoundPicture(warrantyPicture({ evaluation, record })))).toContain(
      "The claim is settled",
    );
  });

  it("puts text inside the picture on a phone", () => {
    const root = expectSoundPicture(picture(worn, 300));
    expect(shownTexts(root).length).toBeGreaterThan(10);
  });

  it("refuses a record without a warranty", () => {
    const { warranty: _, ...record } = worn;
    expect(picture(record)).toMatchObject({ refused: true, code: "no-warranty" });
  });
});
