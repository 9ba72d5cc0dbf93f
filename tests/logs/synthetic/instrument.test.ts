import { createHash } from "node:crypto";
import { type LogChunk, type SyntheticPlan, syntheticLog, writeDelimited } from "crankworthy/logs";
import { describe, expect, it } from "vitest";

const drive = {
  phases: [
    { kind: "rest", seconds: 60 },
    { kind: "crank", seconds: 1, crankingAmperes: 180, intervalSeconds: 0.005 },
    { kind: "engine-running", seconds: 600, volts: 14.3, amperes: 70, temperatureCelsius: 45 },
    {
      kind: "load-steps",
      seconds: 30,
      amperes: [0, 60],
      holdSeconds: 2.5,
      random: true,
      intervalSeconds: 0.1,
    },
    { kind: "rest", seconds: 300 },
  ],
  instrument: { clockStartSeconds: 1_750_000_000, currentLagSeconds: 0.05 },
} as const satisfies SyntheticPlan;
const first = (plan: SyntheticPlan, seed = 1): LogChunk => [...syntheticLog(plan, seed).chunks][0]!;
const stepped = (instrument: SyntheticPlan["instrument"]): SyntheticPlan => ({
  phases: [
    { kind: "rest", seconds: 100 },
    { kind: "discharge", seconds: 100, amperes: 10 },
    { kind: "rest", seconds: 100 },
  ],
  instrument: { noiseVolts: 0, noiseAmperes: 0, resolutionVolts: 0, resolutionAmperes: 0, ...instrument },
});

describe("the instrument of a synthetic log", () => {
  it("writes the same bytes for a seed, on every machine", () => {
    const text = [...writeDelimited(syntheticLog(drive, 20260101).chunks)].join("");
    // Only operations that IEEE 754 fixes are used: another number here is another log, and breaks whoever relies on a seed.
    expect(createHash("sha256").update(text).digest("hex")).toBe(
      "112d2db5407f8aa164e811085668d4f9190ac493f8f799ca646fa4724aa8dd55",
    );
    expect([...writeDelimited(syntheticLog(drive, 20260102).chunks)].join("")).not.toBe(text);
  });

  it("can be read twice", () => {
    const { chunks } = syntheticLog(drive, 3);
    expect([...chunks]).toEqual([...chunks]);
  });

  it("gives back its numbers through text", () => {
    const log = syntheticLog(drive, 5);
    const lines = [...writeDelimited(log.chunks)].join("").trimEnd().split("\n");
    expect(lines[0]).toBe("Test Time / s,Voltage / V,Current / A,Temperature T1 / degC,Unix Time / s");
    let row = 1;
    for (const chunk of log.chunks)
      for (let i = 0; i < chunk.rows; i++) {
        const cells = lines[row++]!.split(",").map((cell) => (cell === "" ? Number.NaN : Number(cell)));
        const { seconds, volts, amperes, temperatureCelsius, clockSeconds } = chunk;
        expect(cells).toEqual(
          [seconds, volts, amperes, temperatureCelsius!, clockSeconds!].map((one) => one[i]),
        );
      }
    expect(row).toBe(lines.length);
    // What a logger writes is short.
    expect(Math.max(...lines.slice(1).map((line) => line.length))).toBeLessThan(50);
  });

  it("rounds to its resolution, a decimal one to the decimal number", () => {
    const { volts, amperes } = first({
      ...drive,
      instrument: { resolutionVolts: 1 / 256, resolutionAmperes: 0.05 },
    });
    for (const one of volts) expect(one * 256).toBe(Math.round(one * 256));
    for (const one of amperes) expect(one).toBe(Number(one.toFixed(2)));
    expect(amperes.some((one) => Object.is(one, -0))).toBe(false);
  });

  it("adds noise, and an offset, to what is", () => {
    const quiet = first(stepped({}));
    const loud = first(stepped({ noiseVolts: 0.01, noiseAmperes: 0.1, offsetVolts: 0.5, offsetAmperes: -1 }));
    const differences = (key: "volts" | "amperes") => Array.from(loud[key], (one, i) => one - quiet[key][i]!);
    for (const [key, offset, noise] of [
      ["volts", 0.5, 0.01],
      ["amperes", -1, 0.1],
    ] as const) {
      const all = differences(key);
      const mean = all.reduce((a, b) => a + b, 0) / all.length;
      const deviation = Math.sqrt(all.reduce((a, b) => a + (b - mean) ** 2, 0) / (all.length - 1));
      expect(Math.abs(mean - offset)).toBeLessThan(4 * (noise / Math.sqrt(all.length)));
      expect(deviation / noise).toBeGreaterThan(0.85);
      expect(deviation / noise).toBeLessThan(1.15);
    }
  });

  it("writes two rows with a mean voltage at every jump of the current", () => {
    const chunk = first(stepped({ intervalSeconds: 10, edgeRowsSeconds: 0.2 }));
    const plain = first(stepped({ intervalSeconds: 10 }));
    const at = chunk.seconds.indexOf(99.9);
    expect([...chunk.seconds.subarray(at - 1, at + 3)]).toEqual([90, 99.9, 100.1, 110]);
    expect([...chunk.amperes.subarray(at, at + 2)]).toEqual([0, -10]);
    expect(chunk.volts[at]).toBe(chunk.volts[at + 1]);
    const loaded = plain.volts[plain.seconds.indexOf(100)]!;
    expect(chunk.volts[at]).toBeCloseTo((plain.volts[0]! + loaded) / 2, 6);
    expect(chunk.seconds.indexOf(200.1)).toBeGreaterThan(0);
    expect(chunk.rows).toBe(plain.rows + 2);
  });

  it("writes only what changed where it is told to", () => {
    const changeDriven = { volts: 0.01, amperes: 0.5, longestSeconds: 60 };
    const { seconds, volts } = first(stepped({ changeDriven }));
    expect(seconds.length).toBeLessThan(60);
    expect([...seconds.subarray(0, 3)]).toEqual([0, 60, 100]);
    for (let i = 1; i < seconds.length; i++) {
      expect(seconds[i]! - seconds[i - 1]!).toBeLessThanOrEqual(60);
      expect(Number.isNaN(volts[i]!)).toBe(false);
    }
  });

  it("reads voltage, current and temperature on rows of their own where it is told to", () => {
    const chunk = first(
      stepped({
        changeDriven: { volts: 0.01, amperes: 0.5, longestSeconds: 60, ownRows: true },
        temperatureEverySeconds: 45,
      }),
    );
    const kinds = Array.from(
      chunk.seconds,
      (_, i) =>
        [chunk.volts[i]!, chunk.amperes[i]!, chunk.temperatureCelsius![i]!].filter(
          (one) => !Number.isNaN(one),
        ).length,
    );
    expect(new Set(kinds)).toEqual(new Set([1]));
    const temperatures = Array.from(chunk.seconds).filter(
      (_, i) => !Number.isNaN(chunk.temperatureCelsius![i]!),
    );
    expect(temperatures).toEqual([0, 45, 90, 135, 180, 225, 270]);
    const jump = chunk.amperes.findIndex((one) => one < -5);
    expect(chunk.seconds[jump]).toBe(100.5);
  });

  it("cuts a long log into chunks", () => {
    const log = syntheticLog({ phases: [{ kind: "rest", seconds: 40_000 }] }, 1);
    expect(Array.from(log.chunks, ({ firstRow, rows }) => [firstRow, rows])).toEqual([
      [1, 16_384],
      [16_385, 16_384],
      [32_769, 7233],
    ]);
  });

  it("stops a plan that cannot be", () => {
    const rest = { kind: "rest", seconds: 10 } as const;
    const wrong: [SyntheticPlan, RegExp][] = [
      [{ phases: [] }, /plan\.phases: received none/],
      [{ phases: [{ kind: "rest", seconds: 0 }] }, /plan\.phases\[0\]\.seconds/],
      [{ phases: [{ kind: "nap", seconds: 1 } as never] }, /plan\.phases\[0\]\.kind/],
      [{ phases: [rest], battery: { resistanceOhms: 0 } }, /plan\.battery\.resistanceOhms/],
      [{ phases: [rest], battery: { stateOfCharge: 1.2 } }, /plan\.battery\.stateOfCharge/],
      [{ phases: [rest], instrument: { intervalSeconds: Number.NaN } }, /intervalSeconds/],
      [{ phases: [rest], instrument: { noiseVolts: -1 } }, /noiseVolts/],
      [{ phases: [{ kind: "discharge", seconds: 1, amperes: -3 }] }, /plan\.phases\[0\]\.amperes/],
      [{ phases: [{ kind: "load-steps", seconds: 1, amperes: [1], holdSeconds: 1 }] }, /two loads/],
    ];
    for (const [plan, message] of wrong) expect(() => syntheticLog(plan, 1)).toThrow(message);
    expect(() => syntheticLog({ phases: [rest] }, 0.5)).toThrow(/seed/);
  });
});

describe("writing delimited text", () => {
  it("writes the header alone for nothing, and nothing for what was not sampled", () => {
    expect([...writeDelimited([])].join("")).toBe("Test Time / s,Voltage / V,Current / A\n");
    const chunk: LogChunk = {
      firstRow: 1,
      rows: 2,
      seconds: Float64Array.of(0, 1),
      volts: Float64Array.of(12.5, Number.NaN),
      amperes: Float64Array.of(Number.NaN, -3),
    };
    expect([...writeDelimited([chunk])].join("")).toBe(
      "Test Time / s,Voltage / V,Current / A\n0,12.5,\n1,,-3\n",
    );
  });
});
