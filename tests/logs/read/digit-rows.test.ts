import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createDigitRows } from "../../../src/logs/read/digit-rows.js";
import { createRowSink } from "../../../src/logs/read/row-sink.js";
import { createSplitRows } from "../../../src/logs/read/split-rows.js";
import { BY_POSITION } from "./rows.js";

const make = (create: typeof createDigitRows, cellsPerRow: number) => {
  const sink = createRowSink(BY_POSITION, {}, 1000, false);
  return { sink, read: create(",", [0, 1, 2], cellsPerRow, sink) };
};

describe("rows of digits", () => {
  it("are read without the general way: every number of up to 15 digits, bit for bit", () => {
    const number = fc
      .tuple(
        fc.constantFrom("", "-"),
        fc.integer({ min: 0, max: 999_999_999_999_999 }),
        fc.integer({ min: 0, max: 15 }),
      )
      .map(([sign, digits, places]) => {
        const text = String(digits).padStart(places + 1, "0");
        return places === 0 ? sign + text : `${sign}${text.slice(0, -places)}.${text.slice(-places)}`;
      });
    fc.assert(
      fc.property(fc.array(fc.tuple(number, number, number), { minLength: 1, maxLength: 20 }), (rows) => {
        const { sink, read } = make(createDigitRows, 3);
        expect(read(rows.map((row) => `${row.join(",")}\n`).join(""))).toBe(true);
        const [chunk] = sink.take(true);
        expect([...chunk!.amperes]).toEqual(rows.map((row) => Number(row[2]) + 0));
      }),
      { numRuns: 500 },
    );
  });

  it("knows empty cells, and cells it does not read", () => {
    const { sink, read } = make(createDigitRows, 5);
    expect(read("0,,1,x y,ä\r\n,12,,,\r\n")).toBe(true);
    const [chunk] = sink.take(true);
    expect([...chunk!.volts]).toEqual([Number.NaN, 12]);
    expect([...chunk!.seconds]).toEqual([0, Number.NaN]);
  });
});

describe("rows of digits, with marks", () => {
  it("know the marks of the format and of a column, texts and numbers, also where time is a date", () => {
    const time = { column: 0, unit: "local-clock" } as const;
    const voltage = { ...BY_POSITION.voltage, null: ["-999.9"] };
    const sink = createRowSink({ ...BY_POSITION, time, voltage }, { null: ["NaN", "-"] }, 1000, false);
    sink.push(["2024-01-01 00:00", "12", "0"], [0, 1, 2]);
    const read = createDigitRows(",", [0, 1, 2], 3, sink);
    expect(read("NaN,-999.90,-999.9\n2024-01-01 00:01,-,NaN\r\n")).toBe(true);
    const [chunk] = sink.take(true);
    expect([...chunk!.seconds]).toEqual([0, Number.NaN, 60]);
    expect([...chunk!.volts]).toEqual([12, Number.NaN, Number.NaN]);
    expect([...chunk!.amperes]).toEqual([0, -999.9, Number.NaN]);
    for (const wrong of ["nan,12,0", "2024-01-01 00:02,--,0", "2024-01-01 00:02,NaN?,0"])
      expect(read(`${wrong}\n`)).toBe(false);
  });
});

// What a table is not, each at the end of good rows, at their start, and alone.
const WRONG = [
  "1,2",
  "1",
  "1,2,3,4",
  "1,2,3,",
  "a,2,3",
  "1,NaN?,3",
  "1,2,3x",
  "1,-,3",
  "1,.,3",
  "1 2,2,3",
  "1;2;3",
];

describe.each([
  ["rows of digits", createDigitRows],
  ["rows split by udsv", createSplitRows],
] as const)("%s", (_, create) => {
  it.each(WRONG)("gives up at %j and comes to an end", (line) => {
    const good = "1,2,3\n4,5,6\n";
    for (const text of [
      `${good}${line}`,
      `${line}\n${good}`,
      line,
      `${good}${line}\n${good}`,
      `\n${good}${line}`,
    ])
      expect(make(create, 3).read(text)).toBe(false);
  });

  it("does not take a line feed in a cell it does not read for part of the row", () => {
    const sink = createRowSink(BY_POSITION, {}, 1000, false);
    // Cells 0, 2 and 4 are read: the short rows would add up to one of five cells.
    const read = create(",", [0, 2, 4], 5, sink);
    expect(read("1,2,3,4,5\n1,2\n3,4,5,6\n1,2,3,4,5\n")).toBe(false);
  });
});
