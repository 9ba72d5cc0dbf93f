import { checkLog, compareTimeScale, estimateLag } from "crankworthy/logs";
import fc from "fast-check";
import { describe, it } from "vitest";
import { around, given, maybe, neverNaN } from "../../fuzz/strange-numbers.js";
import { chunksOf, soundLog } from "./made-log.js";

const NAMES = ["seconds", "volts", "amperes", "temperatureCelsius", "clockSeconds"] as const;
/** A log with strange numbers in some places, sometimes in most. */
const log = fc
  .tuple(
    fc.nat(50),
    fc.integer({ min: 1, max: 400 }),
    fc.array(fc.tuple(fc.nat(4), fc.nat(399), around(-20, 20)), { maxLength: 300 }),
  )
  .map(([seed, rows, places]) => {
    const made = soundLog(seed, rows);
    for (const [column, row, value] of places) if (row < rows) made[NAMES[column]!][row] = value;
    return made;
  });

describe("checks give no NaN, whatever they are given", () => {
  it("check of a log", () => {
    const options = fc.record({
      gapFactor: maybe(around(1.1, 5)),
      loadedAmperes: maybe(around(0.01, 5)),
      setBackIntervals: maybe(around(1, 20)),
      stuckRows: maybe(around(20, 50)),
      idleAmperes: maybe(around(0, 1)),
    });
    neverNaN(fc.tuple(log, options), ([made, one]) => checkLog(chunksOf(made, [97]), given(one)), 1000);
  });

  it("lag and time scale", () => {
    const range = fc.record({ firstSeconds: around(-2, 0), lastSeconds: around(0, 20) });
    neverNaN(fc.tuple(log, maybe(range)), ([made, one]) => estimateLag(chunksOf(made, [400])[0]!, one), 1000);
    neverNaN(
      log,
      (made) => {
        const [chunk] = chunksOf(made, [400]);
        return compareTimeScale(chunk!.seconds, chunk!.clockSeconds!);
      },
      1000,
    );
  });
});
