import { isLogInputError } from "crankworthy/logs";
import { addMinutes, format } from "date-fns";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readAll } from "./rows.js";

const table = (unit: "iso-8601" | "local-clock") =>
  ({ headerRowCount: 0, columns: { time: { column: 0, unit }, voltage: { column: 1, unit: "V" } } }) as const;

const read = (texts: readonly string[], unit: "iso-8601" | "local-clock") =>
  readAll(texts.map((text) => `${text},12.6\n`).join(""), table(unit));

const instant = fc.date({
  min: new Date("1970-01-01T00:00:00Z"),
  max: new Date("2399-12-31T23:59:59.999Z"),
  noInvalidDate: true,
});

describe("dates and times", () => {
  it("an instant in UTC is that of Date, and elapsed time its difference, exact to the millisecond", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(instant, { minLength: 1, maxLength: 10 }), async (dates) => {
        const { seconds, clock } = await read(
          dates.map((date) => date.toISOString()),
          "iso-8601",
        );
        expect(clock).toEqual(dates.map((date) => date.getTime() / 1000));
        dates.forEach((date, i) => {
          expect(Math.abs(seconds[i]! - (date.getTime() - dates[0]!.getTime()) / 1000)).toBeLessThan(2e-6);
        });
      }),
    );
  });

  it("offsets of any form are taken off", async () => {
    await fc.assert(
      fc.asyncProperty(instant, fc.integer({ min: -14 * 60, max: 14 * 60 }), async (date, minutes) => {
        const local = addMinutes(date, minutes).toISOString().slice(0, -1);
        const two = (value: number) => String(Math.trunc(Math.abs(value))).padStart(2, "0");
        const [sign, hours, rest] = [minutes < 0 ? "-" : "+", two(minutes / 60), two(minutes % 60)];
        const texts = [`${local}${sign}${hours}:${rest}`, `${local.replace("T", " ")}${sign}${hours}${rest}`];
        if (rest === "00") texts.push(`${local}${sign}${hours}`);
        const { clock } = await read(texts, "iso-8601");
        expect(clock).toEqual(texts.map(() => date.getTime() / 1000));
      }),
    );
  });

  it("a local clock counts by its face, whatever the zone of the machine", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(instant, { minLength: 1, maxLength: 10 }), async (dates) => {
        // date-fns writes in the machine's zone; what counts is the face, read back as UTC.
        const faces = dates.map((date) => format(date, "yyyy-MM-dd HH:mm:ss.SSS"));
        const { seconds, clock, tally } = await read(faces, "local-clock");
        const face = (text: string) => Date.parse(`${text.replace(" ", "T")}Z`) / 1000;
        faces.forEach((text, i) => {
          expect(Math.abs(seconds[i]! - (face(text) - face(faces[0]!)))).toBeLessThan(2e-6);
        });
        expect(clock).toBeUndefined();
        expect(tally.timeZero).toBe(faces[0]);
      }),
    );
  });

  it("tenths stay tenths", async () => {
    const { seconds } = await read(["2017-03-25 07:00:06.900", "2017-03-25 07:00:07.0"], "local-clock");
    expect(seconds[1]).toBeCloseTo(0.1, 15);
  });

  it("seconds and their fraction may be left out, and a comma divides as well", async () => {
    const texts = ["2024-02-29 10:00", "2024-02-29T10:00:30", "2024-02-29T10:01:00.25"];
    expect((await read(texts, "local-clock")).seconds).toEqual([0, 30, 60.25]);
    const semicolons = { ...table("local-clock"), delimiter: ";" } as const;
    const { seconds } = await readAll("2024-02-29 10:00:00,5;12\n2024-02-29 10:00:01,75;12\n", semicolons);
    expect(seconds).toEqual([0, 1.25]);
  });

  it.each([
    "2023-02-29 10:00:00",
    "2023-02-31 10:00:00",
    "2023-13-01 10:00:00",
    "2023-00-01 10:00:00",
    "2023-01-00 10:00:00",
    "2023-01-01 24:00:00",
    "2023-01-01 10:60:00",
    "2023-01-01 10:00:60",
    "2023-01-01 10:00:0",
    "2023-01-01 10:00:00.",
    "2023-01-01 10:00:00.1x",
    "2023-1-1 10:00:00",
    "2023-01-01_10:00:00",
    "01.02.2023 10:00:00",
    "2023-01-01",
    "2023-01-01 10:00:00Z",
    "2023-01-01 10:00:00+01:00",
  ])("%s is no local clock", async (text) => {
    await expect(read(["2023-01-01 00:00", text], "local-clock")).rejects.toMatchObject({
      code: "bad-cell",
      row: 2,
      line: 2,
      column: 0,
      byteOffset: 22,
      expected: "a date and time without a zone, as 2017-01-02 03:04:05.678",
    });
  });

  it.each([
    "2023-01-01T10:00:00",
    "2023-01-01T10:00:00+1",
    "2023-01-01T10:00:00+24:00",
    "2023-01-01T10:00:00+01:60",
  ])("%s is no instant", async (text) => {
    await expect(read([text], "iso-8601")).rejects.toSatisfy(isLogInputError);
  });

  it("is not sampled where the cell is empty", async () => {
    const { seconds, clock } = await read(["", "2023-01-01T10:00Z", "", "2023-01-01T10:01Z"], "iso-8601");
    expect(seconds).toEqual([Number.NaN, 0, Number.NaN, 60]);
    expect(clock![3]! - clock![1]!).toBe(60);
  });
});
