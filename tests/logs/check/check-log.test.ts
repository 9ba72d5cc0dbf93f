import { checkLog, createLogCheck } from "crankworthy/logs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { PLANTS } from "./defects-planted.js";
import { check, chunksOf, found, soundLog } from "./made-log.js";

const ROWS = 6000;
// Whole blocks are 4096 rows: places on both sides of an edge, and anywhere.
const place = fc.oneof(fc.integer({ min: 50, max: ROWS - 500 }), fc.integer({ min: 3990, max: 4110 }));
const seed = fc.nat(1000);

describe("checkLog", () => {
  it("finds nothing in a sound log", () => {
    fc.assert(
      fc.property(seed, fc.integer({ min: 1, max: 2 * ROWS }), (one, rows) => {
        const quality = check(soundLog(one, rows));
        expect(quality.defects).toEqual([]);
        expect(quality).toMatchObject({
          rows,
          completeRows: rows,
          span: { fromSeconds: 0, toSeconds: rows - 1 },
        });
        if (rows > 1)
          expect(quality.sampling).toMatchObject({
            medianSeconds: 1,
            leastSeconds: 1,
            mostSeconds: 1,
            kind: "regular",
          });
      }),
      { numRuns: 60 },
    );
  });

  describe.each(PLANTS)("$name", ({ code, severity, channel, spoil }) => {
    it(`is ${code}, at its rows, and no other error`, () => {
      fc.assert(
        fc.property(seed, place, (one, at) => {
          const log = soundLog(one, ROWS);
          const rows = spoil(log, at);
          const quality = check(log);
          const here = quality.defects.filter((defect) => defect.code === code);
          expect(here.length).toBeGreaterThan(0);
          for (const defect of here) {
            expect(defect.severity).toBe(severity);
            expect(defect.channel).toBe(channel ?? defect.channel);
          }
          if (rows) {
            expect(here.map((defect) => [defect.firstRow, defect.lastRow])).toEqual([rows]);
            const { greatest, ...total } = quality.totals.find((defect) => defect.code === code)!;
            expect(Number.isFinite(greatest)).toBe(true);
            expect(total).toMatchObject({ severity, ranges: 1, rangesLeftOut: 0, rows: here[0]!.count });
          } else if (code !== "idle-current")
            expect(here.map((defect) => [defect.firstRow, defect.lastRow])).toEqual([
              [1, log.seconds.length],
            ]);
          expect(found(quality, "error").filter((defect) => !defect.startsWith(code))).toEqual([]);
        }),
        { numRuns: 25 },
      );
    });

    it("is the same however the rows are cut into chunks", () => {
      const lengths = fc.array(fc.oneof(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 1, max: 6000 })), {
        minLength: 1,
        maxLength: 8,
      });
      fc.assert(
        fc.property(
          seed,
          place,
          lengths,
          fc.integer({ min: 1, max: 9000 }),
          fc.boolean(),
          (one, at, cuts, last, numbered) => {
            const log = soundLog(one, ROWS);
            spoil(log, at);
            const options = { questions: ["crank"] } as const;
            const whole = check(log, options);
            expect(whole.defects.length).toBeGreaterThan(1);
            expect(checkLog(chunksOf(log, [...cuts, last], numbered), options)).toEqual(whole);
          },
        ),
        { numRuns: 12 },
      );
    });
  });

  it("is the same for single rows, with strange numbers anywhere", () => {
    const strange = fc.constantFrom(Number.NaN, Infinity, -Infinity, 0, 999, -12, 1e308, 32.767, 85, 5000);
    const spots = fc.array(fc.tuple(fc.nat(4), fc.nat(4999), strange), { maxLength: 60 });
    fc.assert(
      fc.property(
        seed,
        spots,
        fc.array(fc.integer({ min: 1, max: 999 }), { minLength: 1, maxLength: 40 }),
        (one, all, cuts) => {
          const log = soundLog(one, 5000);
          const names = ["seconds", "volts", "amperes", "temperatureCelsius", "clockSeconds"] as const;
          for (const [column, row, value] of all) log[names[column]!][row] = value;
          const whole = check(log);
          expect(checkLog(chunksOf(log, cuts), {})).toEqual(whole);
          expect(checkLog(chunksOf(log, [1]), {})).toEqual(whole);
        },
      ),
      { numRuns: 40 },
    );
  });

  it("lists a bounded number of stretches and counts the rest", () => {
    const log = soundLog(1, 3000);
    for (let i = 10; i < 2900; i += 10) log.volts[i] = 999;
    const quality = check(log, { rangesPerDefect: 20 });
    expect(quality.defects.filter((one) => one.code === "sentinel-number")).toHaveLength(20);
    expect(quality.totals.find((one) => one.code === "sentinel-number")).toEqual({
      code: "sentinel-number",
      severity: "error",
      rows: 289,
      ranges: 289,
      rangesLeftOut: 269,
      greatest: 999,
      channel: "volts",
    });
  });

  it("counts what is missing, per column", () => {
    const log = soundLog(1, 100);
    log.volts[3] = log.amperes[3] = log.amperes[7] = log.seconds[9] = Number.NaN;
    const { missing, completeRows } = check(log);
    expect(missing).toEqual({ seconds: 1, volts: 1, amperes: 2, temperatureCelsius: 0, clockSeconds: 0 });
    expect(completeRows).toBe(97);
    const one = checkLog([{ ...chunksOf(log, [100])[0]!, temperatureCelsius: undefined as never }]);
    expect(one.missing.temperatureCelsius).toBe(100);
  });

  it("says little about an empty log, and nothing it does not know", () => {
    const quality = checkLog([]);
    expect(quality).toEqual({
      rows: 0,
      completeRows: 0,
      missing: { seconds: 0, volts: 0, amperes: 0, temperatureCelsius: 0, clockSeconds: 0 },
      defects: [],
      totals: [],
    });
  });

  it("leaves the caller's arrays alone and keeps none of them", () => {
    const log = soundLog(1, 5000);
    log.volts[100] = 999;
    const [chunk] = chunksOf(log, [5000]);
    const copy = structuredClone(chunk!);
    const one = createLogCheck();
    one.push(chunk!);
    expect(chunk).toEqual(copy);
    for (const column of [chunk!.seconds, chunk!.volts, chunk!.amperes]) column.fill(Number.NaN);
    expect(one.finish()).toEqual(check(log));
  });

  it("throws for a mistake of the programmer", () => {
    expect(() => createLogCheck({ questions: ["cranks" as never] })).toThrow(/questions: received cranks/);
    expect(() => createLogCheck({ rangesPerDefect: 0 })).toThrow(/rangesPerDefect/);
    expect(() => createLogCheck({ stuckRows: 3 })).toThrow(/stuckRows/);
    expect(() => createLogCheck({ lag: { firstSeconds: 1, lastSeconds: 0 } })).toThrow(/lastSeconds/);
    const chunk = { ...chunksOf(soundLog(1, 5), [5])[0]!, volts: new Float64Array(4) };
    expect(() => checkLog([chunk])).toThrow(/chunk\.volts: received 4 values, expected 5/);
  });
});
