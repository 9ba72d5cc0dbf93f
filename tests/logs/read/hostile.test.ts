import { gzipSync } from "node:zlib";
import { type DelimitedFormat, isLogInputError, openLog } from "crankworthy/logs";
import { isStreamError } from "crankworthy/streams";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BY_POSITION, readAll } from "./rows.js";

const NAMED = {
  time: { column: "time", unit: "s" },
  voltage: { column: "Spannung °V", unit: "V" },
  current: { column: "i", unit: "A", positive: "charging" },
} as const;
const FORMAT: DelimitedFormat = { columns: NAMED };
// 24 characters in 26 bytes, as ° and ä take two.
const HEADER = "time,Spannung °V,i,säge\n";
const bytes = (text: string) => Buffer.byteLength(text);
const good = (rows: number) => Array.from({ length: rows }, (_, i) => `${i},12.6,0,ö\n`).join("");

/** The error of a table, read in small pieces, so that it lies in one of its own. */
const errorOf = async (table: string | Uint8Array, format = FORMAT, pieceBytes = 64): Promise<unknown> => {
  try {
    await readAll(table, format, { pieceBytes });
  } catch (error) {
    return error;
  }
  throw new Error("was read without an error");
};

describe("a bad line is named with row, line and byte", () => {
  it.each([
    ["0,12.6V,0,x", "bad-cell", "Spannung °V", '"12.6V"'],
    ["x,12.6,0,x", "bad-cell", "time", '"x"'],
    ["0,12.6,0", "too-few-cells", undefined, '3 cells in "0,12.6,0"'],
    ["0", "too-few-cells", undefined, '1 cells in "0"'],
    ["0,12.6,0,x,y", "too-many-cells", undefined, '5 cells in "0,12.6,0,x,y"'],
    ["0,12.6,0,x,", "too-many-cells", undefined, '5 cells in "0,12.6,0,x,"'],
    ["0;12.6;0;x", "mixed-delimiters", undefined, '1 cells in "0;12.6;0;x"'],
    ['0,"12.6"5,0,x', "malformed-quotes", undefined, '"0,\\"12.6\\"5,0,x"'],
    [HEADER.trimEnd(), "repeated-header", undefined, `the header "${HEADER.trimEnd()}" again`],
    [`\ufeff${HEADER.trimEnd()}`, "repeated-header", undefined, `the header "${HEADER.trimEnd()}" again`],
  ])("%s", async (line, code, column, received) => {
    for (const before of [0, 1, 50])
      for (const after of ["", "\n", "\n1,12.6,0,x\n"])
        for (const pieceBytes of [16, 64, 100_000]) {
          const head = HEADER + good(before);
          const error = await errorOf(head + line + after, FORMAT, pieceBytes);
          expect(error).toSatisfy(isLogInputError);
          expect(error).toMatchObject({
            code,
            received,
            row: before + 1,
            line: before + 2,
            byteOffset: bytes(head),
          });
          expect((error as { column?: string }).column).toBe(column);
        }
  });

  it("also where the header is longer than what a message shows, or a number becomes infinite in its unit", async () => {
    const names = ["time", "Spannung °V", "i", ...Array.from({ length: 500 }, (_, i) => `column ${i}`)].join(
      ",",
    );
    const row = `0,12.6,0${",".repeat(500)}\n`;
    expect(await errorOf(`${names}\n${row}${names}\n${row}`)).toMatchObject({
      code: "repeated-header",
      row: 2,
    });
    const format: DelimitedFormat = { columns: { ...NAMED, time: { column: "time", unit: "h" } } };
    expect(await errorOf(`${HEADER}1e308,12,0,\n`, format)).toMatchObject({
      code: "bad-cell",
      column: "time",
    });
  });

  it("in one sentence", async () => {
    const error = await errorOf(`${HEADER}0,12.6,0,ö\n1,12.6,zero,ö\n`);
    expect((error as Error).message).toBe(
      'line 3, row 2, byte 38, column "i": received "zero", expected a number [A] or a missing mark',
    );
  });

  it("with the bytes of the encoding it was written in", async () => {
    const table = `${HEADER}0,12.6,0,ö\n1,12.6,zero,ö\n`;
    const at = table.indexOf("1,12.6,zero");
    const utf16 = readAll(Buffer.from(`\ufeff${table}`, "utf16le"), FORMAT, { encoding: "utf-16le" });
    await expect(utf16).rejects.toMatchObject({ byteOffset: 2 + 2 * at });
    const latin = readAll(Buffer.from(table, "latin1"), FORMAT, { encoding: "windows-1252" });
    await expect(latin).rejects.toMatchObject({ byteOffset: at });
  });

  it("behind a quoted line end, counting lines of the file", async () => {
    const head = `${HEADER}0,12.6,0,"a\nb"\n\n`;
    expect(await errorOf(`${head}1,?,0,\n`)).toMatchObject({ row: 2, line: 5, byteOffset: bytes(head) });
  });

  it("where every row lacks what its neighbours would make good", async () => {
    // Three rows of one, two and three cells are six cells, as two rows of three.
    const format: DelimitedFormat = { columns: BY_POSITION, headerRowCount: 0 };
    expect(await errorOf("1,2,3\n4,5\n6\n7,8,9\n", format)).toMatchObject({
      code: "too-few-cells",
      row: 2,
      byteOffset: 6,
    });
    const spread: DelimitedFormat = {
      headerRowCount: 0,
      columns: { time: { column: 0, unit: "s" }, voltage: { column: 2, unit: "V" } },
    };
    expect(await errorOf("1,2,3\n4\n5,6,7\n", spread)).toMatchObject({
      code: "too-few-cells",
      row: 2,
      byteOffset: 6,
    });
    expect(await errorOf("1,2,3\n4,5\n6,7\n", spread)).toMatchObject({
      code: "too-few-cells",
      row: 2,
      byteOffset: 6,
    });
  });
});

describe("a head that is not as the format says", () => {
  it("lacks a column: the headers and the nearest one are named", async () => {
    expect(await errorOf("time,Spannung V,i\n0,12,0\n")).toMatchObject({
      code: "missing-column",
      column: "Spannung °V",
      line: 1,
      byteOffset: 0,
      received: 'the headers "time", "Spannung V", "i"',
      expected: 'a header "Spannung °V"; the nearest is "Spannung V"',
    });
  });

  it("has a column twice", async () => {
    expect(await errorOf("time,Spannung °V,i,i\n")).toMatchObject({ code: "ambiguous-column", column: "i" });
  });

  it("is divided by another delimiter", async () => {
    expect(await errorOf("x\ntime;Spannung °V;i\n0;12;0\n", { ...FORMAT, skipRows: 1 })).toMatchObject({
      code: "wrong-delimiter",
      line: 2,
      byteOffset: 2,
      expected: 'a header divided by ","',
    });
    expect(await errorOf("0;12;0\n", { columns: BY_POSITION, headerRowCount: 0 })).toMatchObject({
      code: "wrong-delimiter",
      row: 1,
      byteOffset: 0,
    });
  });

  it("has no cell at the position asked for", async () => {
    expect(await errorOf("0,12\n", { columns: BY_POSITION, headerRowCount: 0 })).toMatchObject({
      code: "missing-column",
      column: 2,
      row: 1,
      byteOffset: 0,
    });
  });

  it("is not there", async () => {
    expect(await errorOf("")).toMatchObject({ code: "empty-input", byteOffset: 0 });
    expect(await errorOf("", { columns: BY_POSITION, headerRowCount: 0 })).toMatchObject({
      code: "empty-input",
    });
    expect(await errorOf("\n\n")).toMatchObject({ code: "no-header", byteOffset: 2 });
    expect(await errorOf(HEADER, { ...FORMAT, headerRowCount: 2 })).toMatchObject({
      code: "no-header",
      byteOffset: bytes(HEADER),
      expected: "2 lines of head",
    });
    await expect(openLog("", { jsonLines: true, columns: BY_POSITION })).rejects.toMatchObject({
      code: "empty-input",
    });
  });

  it("without an end to its line is too long, not too much", async () => {
    expect(await errorOf(Buffer.alloc(3_000_000, "time"))).toSatisfy(isStreamError);
  });
});

describe("a million columns", () => {
  const wide = Buffer.from(`${"0,".repeat(1_000_000)}0\n`);

  it.each([
    ["in the header", "", "too-many-columns", {}],
    [
      "in the first row, without a header",
      "",
      "too-many-columns",
      { columns: BY_POSITION, headerRowCount: 0 },
    ],
    ["in a row", HEADER + good(2), "too-many-cells", {}],
  ])("%s", async (_, head, code, change) => {
    const table = Buffer.concat([Buffer.from(head), wide]);
    const before = process.memoryUsage().heapUsed;
    const wanted = { ...FORMAT, ...change };
    await expect(readAll(table, wanted, { mostLineBytes: 10_000_000 })).rejects.toMatchObject({
      code,
      byteOffset: bytes(head),
      received: expect.stringContaining("1000001 c"),
    });
    // The line itself and its decoding; a text for each cell would take 30 MB and more.
    expect(process.memoryUsage().heapUsed - before).toBeLessThan(30e6);
  });

  it("one thousand are read", async () => {
    const names = Array.from({ length: 1000 }, (_, i) => `c${i}`);
    const columns = { time: { column: "c7", unit: "s" }, voltage: { column: "c998", unit: "V" } } as const;
    const table = `${names.join(",")}\n${names.map((_, i) => i).join(",")}\n`;
    expect(await readAll(table, { columns })).toMatchObject({ seconds: [7], volts: [998] });
  });
});

describe("badCells: count", () => {
  const format: DelimitedFormat = { ...FORMAT, badCells: "count" };

  it("reads bad cells as not sampled and bad rows as rows without a sample, and keeps their places", async () => {
    const lines = ["0,12.6,0,x", "1,bad,worse,x", "2,12.6", "3,12.5,1,x", "4,12,1,x,y"];
    const table = `${HEADER}${lines.join("\n")}\n`;
    const { seconds, volts, tally } = await readAll(table, format);
    expect(seconds).toEqual([0, 1, Number.NaN, 3, Number.NaN]);
    expect(volts).toEqual([12.6, Number.NaN, Number.NaN, 12.5, Number.NaN]);
    expect(tally).toMatchObject({ rows: 5, badCells: 2, badRows: 2 });
    expect(
      tally.problems.map(({ code, row, line, column, byteOffset }) => [code, row, line, column, byteOffset]),
    ).toEqual([
      ["bad-cell", 2, 3, "Spannung °V", bytes(HEADER) + 11],
      ["bad-cell", 2, 3, "i", bytes(HEADER) + 11],
      ["too-few-cells", 3, 4, undefined, bytes(HEADER) + 25],
      ["too-many-cells", 5, 6, undefined, bytes(HEADER) + 43],
    ]);
  });

  it("keeps the first hundred places and counts all", async () => {
    const { tally } = await readAll(HEADER + "0,?,0,x\n".repeat(1000), format);
    expect([tally.badCells, tally.problems.length, tally.problems[99]!.row]).toEqual([1000, 100, 100]);
  });

  it("does not count away a second header or quotes that are none", async () => {
    await expect(readAll(HEADER + HEADER, format)).rejects.toMatchObject({ code: "repeated-header" });
    await expect(readAll(`${HEADER}0,"12"6,0,x\n`, format)).rejects.toMatchObject({
      code: "malformed-quotes",
    });
  });

  it("good and missing and bad cells add up to all", async () => {
    const cell = fc.constantFrom("1", "-2.5", "", "x", "1e2", '"3"', '"y"');
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 50 }),
        async (rows) => {
          const table = rows.map((row) => `${row.join(",")}\n`).join("");
          const { volts, amperes, seconds, tally } = await readAll(
            table,
            { columns: BY_POSITION, headerRowCount: 0, badCells: "count" },
            { pieceBytes: 30 },
          );
          const texts = rows.flat();
          const bad = texts.filter((text) => /[xy]/.test(text)).length;
          const missing = texts.filter((text) => text === "").length;
          const sampled = [...seconds, ...volts, ...amperes].filter((value) => !Number.isNaN(value)).length;
          expect([tally.badCells, sampled]).toEqual([bad, texts.length - bad - missing]);
        },
      ),
    );
  });
});

describe("JSON Lines", () => {
  const format = {
    jsonLines: true,
    columns: { time: { column: "t", unit: "s" }, voltage: { column: "v", unit: "V" } },
  } as const;
  const head = '{"t":0,"v":12,"note":"°"}\n';

  it.each([
    ["{", "not-json", undefined],
    ["12", "not-json", undefined],
    ["null", "not-json", undefined],
    ['{"t":1,"v":12} x', "not-json", undefined],
    ['{"t":1,"v":"12V"}', "bad-cell", "v"],
    ['{"t":1,"v":1e999}', "bad-cell", "v"],
    ['{"t":1,"v":true}', "bad-cell", "v"],
    ['{"t":1,"v":[12]}', "bad-cell", "v"],
  ])("%s", async (line, code, column) => {
    const error = { code, row: 2, line: 2, byteOffset: bytes(head), ...(column ? { column } : {}) };
    await expect(readAll(`${head}${line}\n${head}`, format)).rejects.toMatchObject(error);
    const { tally, volts } = await readAll(`${head}${line}\n${head}`, { ...format, badCells: "count" });
    expect([tally.rows, tally.badCells + tally.badRows]).toEqual([3, 1]);
    expect(volts).toEqual([12, Number.NaN, 12]);
  });

  it("a cell nested thousands deep is named, not printed", async () => {
    const deep = `${"[".repeat(5000)}${"]".repeat(5000)}`;
    const cases = [
      [deep, "an array"],
      ['{"a":1}', "an object"],
      ["true", "true"],
      ['"12V"', '"12V"'],
    ];
    for (const [cell, received] of cases)
      await expect(readAll(`${head}{"t":1,"v":${cell}}\n`, format)).rejects.toMatchObject({
        code: "bad-cell",
        row: 2,
        line: 2,
        column: "v",
        byteOffset: bytes(head),
        received,
      });
  });

  it("a key that no row has is a mistake, not a log without samples", async () => {
    await expect(readAll('{"t":0,"V":12}\n{"t":1,"u":12}\n', format)).rejects.toMatchObject({
      code: "missing-column",
      column: "v",
      received: 'the keys "t", "V", "u"',
      expected: expect.stringContaining('a key "v"'),
    });
  });

  it("inherited names are no keys", async () => {
    const columns = { ...format.columns, time: { column: "constructor", unit: "s" } } as const;
    await expect(readAll('{"t":0,"v":12}\n', { ...format, columns })).rejects.toMatchObject({
      code: "missing-column",
    });
  });
});

describe("errors of the text come through", () => {
  it.each([
    ["a NUL", Buffer.from(`${HEADER}0,12\0,0,x\n`), "nul-byte"],
    ["UTF-16 without a word", Buffer.from(`\ufeff${HEADER}`, "utf16le"), "other-encoding"],
    ["a truncated gzip", gzipSync(HEADER + good(5000)).subarray(0, 500), "truncated-gzip"],
    ["a quote never closed", Buffer.from(`${HEADER}0,12,0,"x\n1,12,0,x\n`), "quote-not-closed"],
  ])("%s", async (_, table, code) => {
    await expect(readAll(table, FORMAT)).rejects.toMatchObject({ name: "StreamError", code });
  });
});

describe("whatever comes", () => {
  it("ends in rows or in one of the two errors, and row and byte are those of the file", async () => {
    const piece = fc.constantFrom(
      "0",
      "1.5",
      ",",
      ",",
      ";",
      "\n",
      "\n",
      '"',
      "-",
      "x",
      "°",
      " ",
      "\r\n",
      "e",
      HEADER,
    );
    await fc.assert(
      fc.asyncProperty(
        fc.array(piece, { maxLength: 60 }).map((parts) => parts.join("")),
        fc.boolean(),
        fc.integer({ min: 1, max: 100 }),
        async (text, header, pieceBytes) => {
          const format: DelimitedFormat = header ? FORMAT : { columns: BY_POSITION, headerRowCount: 0 };
          const table = header ? HEADER + text : text;
          try {
            await readAll(table, format, { pieceBytes });
          } catch (error) {
            if (!isLogInputError(error)) {
              expect(error).toSatisfy(isStreamError);
              return;
            }
            expect(error.byteOffset).toBeLessThanOrEqual(bytes(table));
            const before = Buffer.from(table).subarray(0, error.byteOffset).toString();
            expect(error.line).toBe(before.split("\n").length);
            if (error.row !== undefined) expect(before === "" || before.endsWith("\n")).toBe(true);
          }
        },
      ),
      { numRuns: 1000 },
    );
  });
});
