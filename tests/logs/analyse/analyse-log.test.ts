import { analyseLog, type LogSegment, recordFromLog, syntheticLog, writeDelimited } from "crankworthy/logs";
import { isRefusal } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";
import { given } from "../datasets.js";

const HEAD = "Test Time / s,Voltage / V,Current / A\n";
const identity = { chemistry: "agm", rating: { standard: "sae-j537", amperes: 600 } } as const;

// A vehicle that starts, drives and is parked; invented.
const drive = (seed: number) =>
  syntheticLog(
    {
      battery: { capacityAmpereHours: 70, stateOfCharge: 0.8, resistanceOhms: 0.006 },
      phases: [
        { kind: "rest", seconds: 120, intervalSeconds: 0.5 },
        { kind: "crank", seconds: 1.2, crankingAmperes: 180, intervalSeconds: 0.002 },
        { kind: "engine-running", seconds: 2400, volts: 14.3, amperes: 60, intervalSeconds: 0.5 },
        { kind: "rest", seconds: 3600, intervalSeconds: 30 },
      ],
      instrument: { noiseVolts: 0.002, noiseAmperes: 0.01 },
    },
    seed,
  );

describe("analysing a log in one pass", () => {
  it("a drive: what was measured is near the truth, and the record holds it with its rows", async () => {
    const { chunks, truth } = drive(7);
    const log = await analyseLog([...writeDelimited(chunks)], "bdf", { rule: { ratedAmpereHours: 70 } });
    expect(log.segments.map(({ kind }) => kind)).toEqual(["rest", "crank", "engine-running", "rest"]);
    const crank = log.measurements.find(({ quantity }) => quantity === "crank");
    if (crank?.quantity !== "crank" || isRefusal(crank.result)) throw new Error("no crank");
    const hidden = truth.segments.find(({ kind }) => kind === "crank")!;
    const { minimumVolts } = crank.result as Exclude<typeof crank.result, { refused: true }> & {
      minimumVolts: { value: number; standardUncertainty: number };
    };
    expect(Math.abs(minimumVolts.value - hidden.leastVolts)).toBeLessThan(
      2 * minimumVolts.standardUncertainty + 0.01,
    );

    const { record, origin } = recordFromLog(log, identity, { id: "W-3" });
    expect(record.id).toBe("W-3");
    expect(record.conditions).toMatchObject({ place: "vehicle", lastEvent: "drive" });
    expect(record.vehicle?.starting).toMatchObject({ inrush: "left-out" });
    expect(record.vehicle?.charging?.regulatedVolts).toBeGreaterThan(14);
    expect(origin["vehicle.starting.crankingVolts"]).toMatchObject({
      quantity: "crank",
      firstRow: crank.firstRow,
      lastRow: crank.lastRow,
    });
  });

  it("what the caller knows goes before what the log tells, and is no longer said to come from it", async () => {
    const { chunks } = drive(8);
    const log = await analyseLog([...writeDelimited(chunks)], "bdf");
    const { record, origin } = recordFromLog(log, identity, {
      conditions: { temperatureCelsius: 5 },
      measurements: { restVolts: 12.5 },
    });
    expect(record.measurements.restVolts).toBe(12.5);
    expect(record.conditions?.temperatureCelsius).toBe(5);
    for (const path of ["measurements.restVolts", "conditions.temperatureCelsius", "conditions.lastEvent"])
      expect(origin).not.toHaveProperty([path]);
    expect(record.conditions).not.toHaveProperty("hoursAtRest");
  });

  it("segments beyond the limit are counted, and their charge is kept", async () => {
    const rows = Array.from({ length: 2000 }, (_, i) => `${10 * i},12.4,${Math.floor(i / 50) % 2 ? -5 : 0}`);
    const text = HEAD + rows.join("\n");
    const seen: LogSegment[] = [];
    const all = await analyseLog(text, "bdf");
    const few = await analyseLog(text, "bdf", { mostSegments: 3, onSegment: (one) => seen.push(one) });
    expect(few.segments).toHaveLength(3);
    expect(few.segmentsLeftOut).toBe(all.segments.length - 3);
    expect(seen).toHaveLength(all.segments.length);
    expect(given(few.charge).outAmpereHours.value).toBeCloseTo(given(all.charge).outAmpereHours.value, 9);
  });

  it("few rows kept: a crank is not measured from thinned rows, and says so", async () => {
    const { chunks } = drive(9);
    const log = await analyseLog([...writeDelimited(chunks)], "bdf", {
      mostRowsKept: 1000,
      chunkRows: 100_000,
    });
    const crank = log.measurements.find(({ quantity }) => quantity === "crank");
    expect(crank).toMatchObject({ thinned: true, result: { refused: true, code: "rows-thinned" } });
  });

  it("absurd values are named by the check and measured by nobody", async () => {
    const log = await analyseLog(`${HEAD}0,1e300,0\n1,1e300,-1e300\n2,5,5\n`, "bdf");
    expect(log.quality.defects.some(({ severity }) => severity === "error")).toBe(true);
    expect(log.measurements).toEqual([]);
    expect(log.resistance).toMatchObject({ refused: true, code: "values-not-plausible" });
  });

  it("a pass can be stopped, and tells how far it is", async () => {
    const stop = new AbortController();
    const progress: number[] = [];
    const rows = (async function* () {
      yield HEAD;
      for (let i = 0; ; i++) yield `${i},12.6,0\n`.repeat(1);
    })();
    const running = analyseLog(rows, "bdf", {
      signal: stop.signal,
      chunkRows: 100,
      pieceBytes: 4096,
      onProgress: ({ bytesRead }) => {
        progress.push(bytesRead);
        if (progress.length === 5) stop.abort(new Error("enough"));
      },
    });
    await expect(running).rejects.toThrow("enough");
    expect(progress.length).toBeGreaterThanOrEqual(5);
  });

  it("an empty table has no segments, and every whole-log figure says why it is missing", async () => {
    const log = await analyseLog(HEAD, "bdf");
    expect(log.segments).toEqual([]);
    expect(log.charge).toMatchObject({ refused: true, code: "no-segment" });
    expect(recordFromLog(log, identity)).toMatchObject({ record: { measurements: {} }, origin: {} });
  });
});
