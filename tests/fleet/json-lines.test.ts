import { readFileSync } from "node:fs";
import { evaluateJsonLines, type LineResult } from "crankworthy/fleet";
import { lines, StreamError } from "crankworthy/streams";
import { expect, it } from "vitest";

const path = "examples/counter-day/records.jsonl";

async function all(source: Parameters<typeof evaluateJsonLines>[0]): Promise<LineResult[]> {
  const results: LineResult[] = [];
  for await (const result of evaluateJsonLines(source)) results.push(result);
  return results;
}

it("lines of a file, in pieces of any size, give what lines of text give", async () => {
  const expected = await all(readFileSync(path, "utf8").split("\n"));
  expect(expected.length).toBeGreaterThan(20);
  for (const pieceBytes of [300, 262_144])
    expect(await all(lines({ path }, { pieceBytes }))).toEqual(expected);
});

it("numbers are those of the source, also where it begins further down", async () => {
  const results = await all([
    { text: "", line: 7, byteOffset: 90 },
    { text: "{}", line: 8, byteOffset: 91 },
  ]);
  expect(results.map(({ line, ok }) => [line, ok])).toEqual([[8, false]]);
});

it("a source that cannot be read on stops the run and says where", async () => {
  await expect(all(lines('{}\n{"a":\0}'))).rejects.toBeInstanceOf(StreamError);
});
