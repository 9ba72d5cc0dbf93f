import { gzipSync } from "node:zlib";
import { type DelimitedFormat, openLog } from "crankworthy/logs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BY_POSITION, readAll } from "./rows.js";

const NAN = Number.NaN;
const NAMED = {
  time: { column: "t", unit: "s" },
  voltage: { column: "v", unit: "V" },
  current: { column: "i", unit: "A", positive: "charging" },
} as const;

describe("openLog, delimited", () => {
  it("converts units, turns the sign, and finds columns by name wherever they stand", async () => {
    const { seconds, volts, amperes, celsius } = await readAll(
      "temp|note|i|v|t\n68|a|300|12600|2\n|b|-300||3\n",
      {
        delimiter: "|",
        columns: {
          time: { column: "t", unit: "min" },
          voltage: { column: "v", unit: "mV" },
          current: { column: "i", unit: "mA", positive: "discharging" },
          temperature: { column: "temp", unit: "degF" },
        },
      },
    );
    expect({ seconds, volts, amperes, celsius }).toEqual({
      seconds: [120, 180],
      volts: [12.6, NAN],
      amperes: [-0.3, 0.3],
      celsius: [20, NAN],
    });
  });

  it.each([
    ["ms", 0.0015],
    ["s", 1.5],
    ["min", 90],
    ["h", 5400],
    ["d", 129_600],
  ] as const)("time in %s", async (unit, seconds) => {
    const columns = { ...BY_POSITION, time: { column: 0, unit } };
    expect((await readAll("1.5,12,0\n", { columns, headerRowCount: 0 })).seconds).toEqual([seconds]);
  });

  it("kelvins, and a second clock in ms or with an offset", async () => {
    const columns = {
      ...BY_POSITION,
      temperature: { column: 3, unit: "K" },
      clock: { column: 4, unit: "ms" },
    } as const;
    const one = await readAll("0,12,0,293.15,1700000000500\n", { columns, headerRowCount: 0 });
    expect([one.celsius, one.clock]).toEqual([[20], [1_700_000_000.5]]);
    const other = { ...columns, clock: { column: 4, unit: "iso-8601" } } as const;
    const two = await readAll("0,12,0,293.15,1970-01-01T01:00:00.5+01:00\n", {
      columns: other,
      headerRowCount: 0,
    });
    expect([two.seconds, two.clock]).toEqual([[0], [0.5]]);
  });

  it("a log without a current has none in any row", async () => {
    const { current: _, ...columns } = NAMED;
    expect((await readAll("t,v\n0,12.6\n1,12.5\n", { columns })).amperes).toEqual([NAN, NAN]);
  });

  it("marks of the format hold for all columns, marks of a column for that one; numbers by value", async () => {
    const columns = { ...NAMED, voltage: { ...NAMED.voltage, null: ["999.99"] } };
    const table = "t,v,i\n0,999.99,NaN\n1,999.990,999.99\n2, ,--\n3,12.5,1\n";
    const { volts, amperes } = await readAll(table, { columns, null: ["NaN", "--"] });
    expect(volts).toEqual([NAN, NAN, NAN, 12.5]);
    expect(amperes).toEqual([NAN, 999.99, NAN, 1]);
  });

  it("an empty cell is missing, whatever else is", async () => {
    const { volts } = await readAll("t,v,i\n0,,1\n1,NaN,1\n", { columns: NAMED, null: ["NaN"] });
    expect(volts).toEqual([NAN, NAN]);
  });

  it("lines before the header, a header of several lines, comments and blank lines are no rows", async () => {
    const table =
      "Logger 7\nSerial; 12\n# made by hand\ntime,volts,amps\nt,v,i\n\n0,12.6,0\n#1,99,99\n\n1,12.5,-1\n";
    const { volts, tally } = await readAll(table, {
      columns: NAMED,
      skipRows: 2,
      headerRowCount: 2,
      commentPrefix: "#",
    });
    expect([volts, tally.rows]).toEqual([[12.6, 12.5], 2]);
  });

  it("runs of blanks divide cells, also before the first one", async () => {
    const { volts, amperes } = await readAll('  t   v\ti\n   0  12.6   1 \r\n10\t12.5 "-1"\n', {
      columns: NAMED,
      delimiter: "spaces",
    });
    expect([volts, amperes]).toEqual([
      [12.6, 12.5],
      [1, -1],
    ]);
  });

  it("cells in quotes hold delimiters, line ends and quotes", async () => {
    const table = 't,"the ""v"", in volts",i,note\n0,"12.6",1,"a,\nb"\n"1",12.5,"-1",""\n';
    const columns = { ...NAMED, voltage: { column: 'the "v", in volts', unit: "V" } } as const;
    expect((await readAll(table, { columns })).volts).toEqual([12.6, 12.5]);
  });

  it("without a quote character a quote is a character like others", async () => {
    const { volts } = await readAll('t,v,i,note\n0,12.6,1,5" plug\n', { columns: NAMED, quoteChar: null });
    expect(volts).toEqual([12.6]);
  });

  it("names what it read and what it left over", async () => {
    const { header, close } = await openLog("t, v ,i,note\n", { columns: NAMED });
    await close();
    expect(header).toEqual({
      names: ["t", "v", "i", "note"],
      columns: [
        { quantity: "time", position: 0, header: "t", unit: "s" },
        { quantity: "voltage", position: 1, header: "v", unit: "V" },
        { quantity: "current", position: 2, header: "i", unit: "A" },
      ],
      terms: [],
      leftOver: ["note"],
      timeFrom: "elapsed",
    });
  });

  it("takes \\r\\n, \\r, a byte order mark, gzip, UTF-16 and a last line without an end", async () => {
    const table = "t,v,i\n0,12.6,1\n1,12.5,-1";
    const utf16 = Buffer.from(`\ufeff${table}`, "utf16le");
    const inputs = [
      [table.replaceAll("\n", "\r\n")],
      [table.replaceAll("\n", "\r")],
      [`\ufeff${table}`],
      [gzipSync(table)],
      [utf16, { encoding: "utf-16le" }],
    ] as const;
    for (const [input, options] of inputs)
      expect((await readAll(input, { columns: NAMED }, options)).volts).toEqual([12.6, 12.5]);
  });

  it("a header alone has no rows and gives no chunk", async () => {
    const { chunkRows, tally } = await readAll("t,v,i\n", { columns: NAMED });
    expect([chunkRows, tally]).toEqual([[], { rows: 0, badCells: 0, badRows: 0, problems: [] }]);
  });

  it("chunks have equal length but for the last, wherever the pieces of the text end", async () => {
    const table = `t,v,i\n${Array.from({ length: 25 }, (_, i) => `${i},12.${i},0\n`).join("")}`;
    for (const pieceBytes of [8, 50, 1000]) {
      const { chunkRows, seconds } = await readAll(table, { columns: NAMED }, { pieceBytes, chunkRows: 10 });
      expect(chunkRows).toEqual([10, 10, 5]);
      expect(seconds).toEqual(Array.from({ length: 25 }, (_, i) => i));
    }
  });

  it("closes the source when the loop is left, and when the chunks are not wanted", async () => {
    const closed: string[] = [];
    async function* source(name: string) {
      try {
        for (let i = 0; ; i++) yield i === 0 ? "t,v,i\n" : `${i},12,0\n`;
      } finally {
        closed.push(name);
      }
    }
    const options = { pieceBytes: 10, chunkRows: 1 };
    for await (const chunk of (await openLog(source("left"), { columns: NAMED }, options)).chunks)
      if (chunk.firstRow === 3) break;
    await (await openLog(source("unwanted"), { columns: NAMED }, options)).close();
    await expect(openLog(source("wrong"), { columns: NAMED, delimiter: ";" }, options)).rejects.toThrow();
    expect(closed).toEqual(["left", "unwanted", "wrong"]);
  });

  it("stops at the signal with its reason, and tells progress", async () => {
    const abort = new AbortController();
    const table = `t,v,i\n${"1,12,0\n".repeat(100)}`;
    const seen: number[] = [];
    const log = await openLog(
      table,
      { columns: NAMED },
      {
        signal: abort.signal,
        pieceBytes: 50,
        chunkRows: 5,
        onProgress: ({ bytesRead }) => seen.push(bytesRead),
      },
    );
    const loop = async () => {
      for await (const chunk of log.chunks) if (chunk.firstRow > 10) abort.abort(new Error("enough"));
    };
    await expect(loop()).rejects.toThrow("enough");
    expect(seen.length).toBeGreaterThan(1);
  });

  it("a format that cannot be is a mistake of the programmer", async () => {
    const wrong = (format: unknown) => openLog("", format as DelimitedFormat);
    await expect(wrong({ columns: { ...NAMED, voltage: { column: "v", unit: "kV" } } })).rejects.toThrow(
      "columns.voltage.unit: received kV, expected one of mV, V",
    );
    await expect(wrong({ columns: NAMED, headerRowCount: 0 })).rejects.toThrow("columns.time.column");
    await expect(wrong({ columns: NAMED, delimeter: ";" })).rejects.toThrow("format: received delimeter");
    await expect(wrong({ columns: { time: NAMED.time } })).rejects.toThrow("columns.voltage");
    await expect(wrong({ columns: { ...NAMED, power: NAMED.voltage } })).rejects.toThrow(RangeError);
    await expect(wrong({ columns: { ...NAMED, time: { column: -1, unit: "s" } } })).rejects.toThrow(
      RangeError,
    );
    await expect(wrong({ columns: "bdf", headerRowCount: 0 })).rejects.toThrow(RangeError);
    await expect(wrong({ columns: NAMED, skipRows: 1.5 })).rejects.toThrow("a whole number");
    await expect(openLog("", "bdf", { chunkRows: 0 })).rejects.toThrow("options.chunkRows");
  });
});

describe("the ways of reading agree", () => {
  const cell = fc.oneof(
    fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((value) => value.toFixed(4)),
    fc.constantFrom("", "NaN", "1e3", " 7 ", "0.1", "-0.0", "12345678901234567890"),
  );
  // Whatever else a row holds sends its piece to one way or another.
  const note = fc.constantFrom("", "x", '"a,b"', '"say ""ah"""', "ä", '"two\nlines"');
  const expected = (text: string) => (["", "NaN"].includes(text) ? NAN : Number(text) + 0);

  it("with an independent reading of the cells, in pieces of any size, whatever is between and behind them", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(cell, note, cell, cell, note), { minLength: 1, maxLength: 40 }),
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 1, max: 9 }),
        fc.constantFrom("\n", "\r\n", "\n\n"),
        async (rows, pieceBytes, chunkRows, end) => {
          const table = rows.map((row) => row.join(",") + end).join("");
          const columns = {
            time: { column: 0, unit: "s" },
            voltage: { column: 2, unit: "V" },
            current: { column: 3, unit: "A", positive: "charging" },
          } as const;
          const format = { columns, headerRowCount: 0, null: ["NaN"] };
          const all = await readAll(table, format, { pieceBytes, chunkRows });
          expect([all.seconds, all.volts, all.amperes]).toEqual(
            [0, 2, 3].map((at) => rows.map((row) => expected(row[at]!))),
          );
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe("openLog, JSON Lines", () => {
  it("reads objects by key and arrays by position, numbers or strings", async () => {
    const format = { jsonLines: true, columns: NAMED } as const;
    const objects = '{"t":0,"v":12.6,"i":"-1.5","x":[1]}\n\n{"i":null,"v":"","t":1}\n{"t":2,"v":12.5,"i":0}';
    expect(await readAll(objects, format)).toMatchObject({
      seconds: [0, 1, 2],
      volts: [12.6, NAN, 12.5],
      amperes: [-1.5, NAN, 0],
    });
    const arrays = { jsonLines: true, columns: BY_POSITION, null: ["-9999"] } as const;
    expect((await readAll("[0,12.6,1]\n[1,-9999,1]\n[2,12.5]\n", arrays)).volts).toEqual([12.6, NAN, 12.5]);
  });

  it("reads dates", async () => {
    const columns = { ...NAMED, time: { column: "t", unit: "iso-8601" } } as const;
    const text = '{"t":"2024-01-01T00:00:00Z","v":12,"i":0}\n{"t":"2024-01-01T00:00:01.5Z","v":12,"i":0}\n';
    const { seconds, clock } = await readAll(text, { jsonLines: true, columns });
    expect([seconds, clock]).toEqual([
      [0, 1.5],
      [1_704_067_200, 1_704_067_201.5],
    ]);
    await expect(readAll('{"t":0,"v":12,"i":0}\n', { jsonLines: true, columns })).rejects.toMatchObject({
      code: "bad-cell",
      column: "t",
    });
  });
});
