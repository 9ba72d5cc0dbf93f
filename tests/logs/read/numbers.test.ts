import { isLogInputError } from "crankworthy/logs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BY_POSITION, readAll } from "./rows.js";

const digits = (least: number, most: number) =>
  fc.string({ unit: fc.constantFrom(..."0123456789"), minLength: least, maxLength: most });

// Decimal texts of every length, around 9 digits (32-bit integers), 2⁵³ and 22 places, where the way of reading changes.
const decimal = fc
  .tuple(fc.constantFrom("", "-"), digits(0, 20), fc.constantFrom("", "."), digits(0, 26))
  .map(([sign, whole, point, places]) => sign + whole + (point === "" ? "" : point + places))
  .filter((text) => /\d/.test(text));

/** The text as the third of three columns, alone on its row: nothing else sends it to another way of reading. */
const readOne = async (text: string): Promise<number> => {
  const { amperes } = await readAll(`0,12,${text}\n`, { columns: BY_POSITION, headerRowCount: 0 });
  return amperes[0]!;
};

describe("numbers", () => {
  it("are those of Number(text), bit for bit, except that −0 becomes 0", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(decimal, { minLength: 1, maxLength: 20 }), async (texts) => {
        const table = texts.map((text, i) => `${i},12,${text}\n`).join("");
        const { amperes } = await readAll(table, { columns: BY_POSITION, headerRowCount: 0 });
        expect(amperes).toEqual(texts.map((text) => Number(text) + 0));
      }),
      { numRuns: 500 },
    );
  });

  it.each([
    ["9007199254740991", 2 ** 53 - 1],
    ["9007199254740993", 2 ** 53],
    ["0.1234567890123456789012", 0.12345678901234568],
    ["123456789", 123456789],
    ["1234567890", 1234567890],
    ["99999999.9", 99999999.9],
    ["-0.000", 0],
    ["+12.5", 12.5],
    ["1.25e1", 12.5],
    ["-1E-3", -0.001],
    [" 12.5\t", 12.5],
    ["5.", 5],
    [".5", 0.5],
  ])("%j is %d", async (text, value) => {
    expect(await readOne(text)).toBe(value);
  });

  it.each([
    "-",
    ".",
    "-.",
    "--1",
    "1-",
    "1.2.3",
    "1e",
    "0x10",
    "Infinity",
    "NaN",
    "1e999",
    "1 2",
    "١٢",
    "1_000",
    "12V",
  ])("%j is none", async (text) => {
    await expect(readOne(text)).rejects.toSatisfy(isLogInputError);
  });

  it("with a decimal comma, a full stop is not guessed at", async () => {
    const format = { columns: BY_POSITION, headerRowCount: 0, delimiter: ";", decimalChar: "," } as const;
    expect((await readAll("0;12,61;-1,5e1\n0,5;-,5;3,\n", format)).volts).toEqual([12.61, -0.5]);
    await expect(readAll("0;12.61;1\n", format)).rejects.toMatchObject({ code: "bad-cell", column: 1 });
    await expect(readAll("0;1.234,5;1\n", format)).rejects.toMatchObject({ code: "bad-cell", column: 1 });
  });

  it("a decimal comma under a delimiting comma stands in quotes only", async () => {
    const format = { columns: BY_POSITION, headerRowCount: 0, decimalChar: "," } as const;
    expect((await readAll('0,"12,61",1\n1,12,1\n', format)).volts).toEqual([12.61, 12]);
    await expect(readAll("0,12,1\n0,12,61,1\n", format)).rejects.toMatchObject({ code: "too-many-cells" });
    await expect(readAll("0,12,1\n0,12\n", format)).rejects.toMatchObject({ code: "too-few-cells" });
  });
});
