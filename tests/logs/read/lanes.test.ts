import fc from "fast-check";
import { expect, it } from "vitest";
import { readAll } from "./rows.js";

const FORMAT = {
  columns: {
    time: { column: "t", unit: "s" },
    voltage: { column: "v", unit: "V" },
    current: { column: "i", unit: "A", positive: "charging" },
  },
} as const;

const decimal = fc
  .tuple(fc.integer({ min: -99_999_999, max: 99_999_999 }), fc.integer({ min: 0, max: 6 }))
  .map(([digits, places]) => (digits / 10 ** places).toFixed(places));
const row = fc.tuple(decimal, fc.option(decimal, { nil: "" }), decimal);

// The first row decides how a piece is read: plain digits, a number with an exponent (the splitting package), a quoted cell
// (the careful way). It is the same number each time.
const FIRST = { digits: "0,12,0", exponent: "0,12e0,0", quoted: '0,"12",0' };

it("rows are the same whichever of the three ways reads them", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(row, { minLength: 1, maxLength: 30 }), async (rows) => {
      const read = async (first: string) => {
        const lines = ["t,v,i", first, ...rows.map((cells) => cells.join(","))];
        const { seconds, volts, amperes, tally } = await readAll(`${lines.join("\n")}\n`, FORMAT);
        return { seconds, volts, amperes, rows: tally.rows };
      };
      const plain = await read(FIRST.digits);
      expect(plain.rows).toBe(rows.length + 1);
      expect(await read(FIRST.exponent)).toEqual(plain);
      expect(await read(FIRST.quoted)).toEqual(plain);
    }),
  );
});
