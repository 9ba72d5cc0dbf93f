import { createReadStream } from "node:fs";
import { readText } from "crankworthy/streams";
import { parse as csvParse } from "csv-parse";
import Papa from "papaparse";
import { inferSchema, initParser } from "udsv";

/** Reads the whole file; says how many data rows it saw, where it looks at rows at all. */
export type Contender = (path: string) => Promise<number | undefined>;

const CELLS = 4;

function counter(): { readonly row: (row: readonly unknown[]) => void; readonly rows: () => number } {
  let cells = 0;
  return {
    row: (row) => {
      cells += row.length;
    },
    rows: () => cells / CELLS,
  };
}

// Every parser only has to hand out the cells of each row; what a program would do with them is not counted.
export const contenders: Readonly<Record<string, Contender>> = {
  "bytes alone (createReadStream)": async (path) => {
    let bytes = 0;
    for await (const chunk of createReadStream(path)) bytes += (chunk as Uint8Array).length;
    if (bytes === 0) throw new Error("empty");
    return undefined;
  },

  readText: async (path) => {
    let characters = 0;
    for await (const { text } of readText({ path })) characters += text.length;
    if (characters === 0) throw new Error("empty");
    return undefined;
  },

  "udsv stringArrs, own chunks": async (path) => {
    const seen = counter();
    let parser: ReturnType<typeof initParser> | undefined;
    for await (const chunk of createReadStream(path, "utf8")) {
      parser ??= initParser(inferSchema(chunk as string));
      parser.chunk<string[]>(chunk as string, parser.stringArrs, seen.row);
    }
    parser?.end();
    return seen.rows();
  },

  "udsv stringArrs, readText": async (path) => {
    const seen = counter();
    let parser: ReturnType<typeof initParser> | undefined;
    for await (const { text } of readText({ path })) {
      parser ??= initParser(inferSchema(text));
      parser.chunk<string[]>(text, parser.stringArrs, seen.row);
    }
    parser?.end();
    return seen.rows();
  },

  "udsv typedArrs, readText": async (path) => {
    const seen = counter();
    let parser: ReturnType<typeof initParser> | undefined;
    for await (const { text } of readText({ path })) {
      parser ??= initParser(inferSchema(text));
      parser.chunk<unknown[]>(text, parser.typedArrs, seen.row);
    }
    parser?.end();
    return seen.rows();
  },

  "csv-parse": async (path) => {
    const seen = counter();
    const parser = createReadStream(path).pipe(csvParse({ cast: false, from_line: 2 }));
    for await (const row of parser) seen.row(row as string[]);
    return seen.rows();
  },

  "csv-parse, data events": (path) =>
    new Promise((resolve, reject) => {
      const seen = counter();
      createReadStream(path)
        .on("error", reject)
        .pipe(csvParse({ cast: false, from_line: 2 }))
        .on("data", seen.row)
        .on("end", () => resolve(seen.rows()))
        .on("error", reject);
    }),

  "papaparse, Node stream": (path) =>
    new Promise((resolve, reject) => {
      const seen = counter();
      createReadStream(path)
        .on("error", reject)
        .pipe(Papa.parse(Papa.NODE_STREAM_INPUT, { delimiter: "," }))
        .on("data", seen.row)
        .on("end", () => resolve(seen.rows() - 1))
        .on("error", reject);
    }),

  "papaparse, chunk callback": (path) =>
    new Promise((resolve, reject) => {
      const seen = counter();
      Papa.parse<string[]>(createReadStream(path), {
        delimiter: ",",
        skipEmptyLines: true,
        chunk: ({ data }) => {
          for (const row of data) seen.row(row);
        },
        complete: () => resolve(seen.rows() - 1),
        error: reject,
      });
    }),
};
