import { existsSync, readFileSync } from "node:fs";
import { type Chemistry, chargeFromRestVoltage } from "crankworthy/charge-state";
import { interval95, isRefusal, rootSumSquare } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";

const DATA = "../shared/datasets";
const MODULES = `${DATA}/ocv-resistance-vs-soc-tables/tables.csv`;
const RUNS = `${DATA}/vrla-12v-17ah-discharge`;
const skipped = (path: string) => (existsSync(path) ? "" : ` — SKIPPED: ${path} is not here`);

type Point = readonly [charge: number, volts: number];

function modules(): Map<string, Point[]> {
  const found = new Map<string, Point[]>();
  for (const line of readFileSync(MODULES, "utf8").trim().split("\n").slice(1)) {
    const [name, charge, volts] = line.split(",");
    found.set(name!, [...(found.get(name!) ?? []), [Number(charge), Number(volts)]]);
  }
  return found;
}

function chargeAt(table: readonly Point[], volts: number): number | undefined {
  for (let i = 1; i < table.length; i++) {
    const [c0, v0] = table[i - 1]!;
    const [c1, v1] = table[i]!;
    if (volts >= v0 && volts <= v1) return c0 + ((c1 - c0) * (volts - v0)) / (v1 - v0);
  }
  return undefined;
}

function settled(volts: number, chemistry: Chemistry) {
  return chargeFromRestVoltage({
    volts,
    voltsStandardUncertainty: 0.005,
    chemistry,
    temperatureCelsius: 22,
    rest: { lastEvent: "discharge", hoursAtRest: 24 },
  });
}

function coverage(chemistry: Chemistry, names: RegExp, voltages: readonly number[]) {
  const missed: string[] = [];
  const off: number[] = [];
  let width = 0;
  let inside = 0;
  for (const [name, table] of modules()) {
    if (!names.test(name)) continue;
    for (const volts of voltages) {
      const charge = chargeAt(table, volts);
      if (charge === undefined) continue;
      const reading = settled(volts, chemistry);
      if (isRefusal(reading)) throw new Error(reading.code);
      const interval = interval95(reading.stateOfCharge);
      off.push(charge - reading.stateOfCharge.value);
      width += interval.upper - interval.lower;
      if (charge >= interval.lower && charge <= interval.upper) inside++;
      else missed.push(`${name} at ${volts}`);
    }
  }
  return { inside, points: off.length, missed, meanWidth: width / off.length, off };
}

const FOUR = [12.0, 12.2, 12.4, 12.6];
const MANY = [11.8, 11.9, 12.0, 12.1, 12.2, 12.3, 12.4, 12.5, 12.6, 12.7, 12.8];
const USABLE = /^(?!leadacid28ah)/;

// Tables of github.com/geraldo-reboucas/adv-vehicle-sim, data/energy_storage, commit b3777b3c: four modules of 1998-2000 whose make and acid are not told, at about 22 °C; rest is not told either and
// taken as complete, so the interval is the narrowest this library states.
describe.skipIf(!existsSync(MODULES))(`measured modules${skipped(MODULES)}`, () => {
  it("type unknown, as the tables are: 15 of 16 charges inside the stated 95 %, mean width 0.51-0.52", () => {
    const { inside, points, missed, meanWidth } = coverage("unknown", USABLE, FOUR);
    expect([inside, points]).toEqual([15, 16]);
    expect(missed).toEqual(["vrla18ah at 12.6"]);
    expect(meanWidth).toBeCloseTo(0.515, 2);
  });

  it("taken as AGM: 14 of 16 inside, mean width 0.51; both misses are one module of very strong acid", () => {
    const { inside, points, missed, meanWidth } = coverage("agm", USABLE, FOUR);
    expect([inside, points]).toEqual([14, 16]);
    expect(missed.every((miss) => miss.startsWith("vrla18ah"))).toBe(true);
    expect(meanWidth).toBeCloseTo(0.51, 2);
  });

  it("each by what its table tells, valve-regulated or unknown: at least 14 of 16 inside", () => {
    const sealed = coverage("agm", /^vrla/, FOUR);
    const untold = coverage("unknown", /^leadacid(?!28)/, FOUR);
    expect(sealed.points + untold.points).toBe(16);
    expect(sealed.inside + untold.inside).toBeGreaterThanOrEqual(14);
    expect([...sealed.missed, ...untold.missed].every((miss) => miss.startsWith("vrla18ah"))).toBe(true);
  });

  it("AGM misses lie on the safe side: no module holds more charge than the interval says, 11.8-12.8 V", () => {
    const { off, missed, points } = coverage("agm", USABLE, MANY);
    expect(points).toBe(44);
    expect(missed.length).toBeLessThanOrEqual(10);
    expect(Math.max(...off)).toBeLessThan(0.18);
  });

  it("a weak-acid curve does not cover modules of strong acid, and the stated curves say which is which", () => {
    const rms = (chemistry: Chemistry) => {
      const { off } = coverage(chemistry, USABLE, FOUR);
      return rootSumSquare(...off) / Math.sqrt(off.length);
    };
    expect(rms("agm")).toBeLessThan(rms("flooded-calcium"));
    expect(rms("flooded-calcium")).toBeLessThan(rms("flooded"));
    expect(rms("agm")).toBeCloseTo(0.13, 1);
    expect(rms("flooded")).toBeCloseTo(0.2, 1);
  });

  it("the outlier module is told apart: two of its rest voltages belong to no acid, and most charges lie outside", () => {
    const outlier = modules().get("leadacid28ah")!;
    const refused = outlier.filter(([, volts]) => isRefusal(settled(volts, "unknown")));
    expect(refused).toEqual([
      [0, 6],
      [0.2, 8.9],
    ]);
    expect(refused.map(([, volts]) => settled(volts, "unknown"))).toMatchObject([
      { code: "voltage-below-acid-range" },
      { code: "voltage-below-acid-range" },
    ]);
    expect(coverage("unknown", /leadacid28ah/, FOUR).missed.length).toBe(3);
    for (const [name, table] of modules()) {
      if (name === "leadacid28ah") continue;
      expect(table.filter(([, volts]) => volts < 13.1 && isRefusal(settled(volts, "unknown")))).toEqual([]);
    }
  });
});

interface Run {
  readonly file: string;
  readonly removedAmpereHours: number;
  readonly volts: number;
  readonly hoursAtRest: number;
}

// Charge removed and voltage at the end of the rest, computed from the open record github.com/valentinsulzer/
// faster-lead-acid, inputs/telemetry_*.csv, commit 92ad5793 (BSD-3-Clause); recomputed below where it is at hand.
const runs: readonly Run[] = [
  { file: "3.0A", removedAmpereHours: 19.74, volts: 11.445, hoursAtRest: 6000 / 3600 },
  { file: "2.5A", removedAmpereHours: 19.84, volts: 11.383, hoursAtRest: 5400 / 3600 },
  { file: "1.5A", removedAmpereHours: 19.28, volts: 11.232, hoursAtRest: 4881 / 3600 },
  { file: "1.0A_first", removedAmpereHours: 18.97, volts: 11.097, hoursAtRest: 4800 / 3600 },
  { file: "0.5A", removedAmpereHours: 18.46, volts: 10.981, hoursAtRest: 4200 / 3600 },
];

function afterDischarge(run: Run, hoursAtRest = run.hoursAtRest, volts = run.volts) {
  const reading = chargeFromRestVoltage({
    volts,
    voltsStandardUncertainty: 0.005,
    chemistry: "agm",
    temperatureCelsius: 22,
    rest: { lastEvent: "discharge", hoursAtRest },
  });
  if (isRefusal(reading)) throw new Error(reading.code);
  return reading;
}

// What is the truth? Each run went to the cut-off, so nothing usable was left: about 0 on the scale of what this
// battery can give. On that scale 1 − removed/19.84 (the most it gave) is 0.00-0.07, of which the larger values belong
// to the last and slowest runs, which also rest lowest: they began less full, not ended fuller. On the scale of the
// nominal 17 Ah the same runs end at −0.09 to −0.17. Both scales are in use, so the interval has to hold both.
describe("12 V 17 Ah valve-regulated battery after full discharges", () => {
  it.each(runs)("$file: the stated 95 % interval holds the truth on either scale", (run) => {
    const reading = afterDischarge(run);
    const { lower, upper } = interval95(reading.stateOfCharge);
    for (const truth of [0, 1 - run.removedAmpereHours / 19.84, 1 - run.removedAmpereHours / 17]) {
      expect(truth).toBeGreaterThan(lower);
      expect(truth).toBeLessThan(upper);
    }
    expect(reading.notes).toContain("below-empty");
    // It must still say "flat": never as much as a fifth full.
    expect(upper).toBeLessThan(0.2);
  });

  it("without the widening below empty only what the EMF line itself says would be left, and it would be wrong", () => {
    const covered = runs.filter((run) => {
      const { value } = afterDischarge(run).stateOfCharge;
      return value + 1.96 * 0.0921 >= 1 - run.removedAmpereHours / 19.84;
    });
    expect(covered.length).toBe(0);
  });
});

interface Sample {
  readonly seconds: number;
  readonly volts: number;
  readonly amperes: number;
}

function samples(file: string): Sample[] {
  return readFileSync(`${RUNS}/discharge_A_${file}.csv`, "utf8")
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => line.split(","))
    .filter((cells) => cells[1] && cells[2])
    .map(([time, volts, amperes]) => ({
      seconds: Date.parse(`${time!.replace(" ", "T")}Z`) / 1000,
      volts: Number(volts),
      amperes: Number(amperes),
    }))
    .sort((a, b) => a.seconds - b.seconds);
}

describe.skipIf(!existsSync(RUNS))(`the same, from the record itself${skipped(RUNS)}`, () => {
  it.each(runs)("$file: charge removed, end of rest and coverage from 10 min on", (run) => {
    const all = samples(run.file);
    const loaded = all.filter(({ amperes }) => amperes > 0.25);
    const first = all.indexOf(loaded[0]!);
    const last = all.indexOf(loaded.at(-1)!);
    let ampereSeconds = 0;
    for (let i = first + 1; i <= last; i++) {
      const [a, b] = [all[i - 1]!, all[i]!];
      ampereSeconds += ((a.amperes + b.amperes) / 2) * (b.seconds - a.seconds);
    }
    expect(ampereSeconds / 3600).toBeCloseTo(run.removedAmpereHours, 1);
    const rest = all.slice(last + 1);
    expect(rest.at(-1)!.volts).toBeCloseTo(run.volts, 2);
    const end = all[last]!.seconds;
    const truth = 1 - run.removedAmpereHours / 19.84;
    const checked = rest.filter(({ seconds }) => seconds - end >= 600);
    expect(checked.length).toBeGreaterThan(3);
    for (const { seconds, volts } of checked) {
      const { lower, upper } = interval95(afterDischarge(run, (seconds - end) / 3600, volts).stateOfCharge);
      expect(truth).toBeGreaterThan(lower);
      expect(truth).toBeLessThan(upper);
    }
  });

  it.each(runs)(
    "$file: before it, fully charged and resting at 13.0-13.4 V, nothing denies that it is full",
    (run) => {
      const all = samples(run.file);
      const rested = all.slice(0, all.findIndex(({ amperes }) => amperes > 0.25) - 1);
      expect(rested.length).toBeGreaterThan(3);
      for (const { volts } of rested) {
        const reading = chargeFromRestVoltage({
          volts,
          voltsStandardUncertainty: 0.005,
          chemistry: "agm",
          temperatureCelsius: 24,
          rest: { lastEvent: "charge" },
        });
        if (isRefusal(reading)) expect(reading.code).toBe("voltage-above-acid-range");
        else {
          expect(reading.bound).toBe("upper");
          expect(interval95(reading.stateOfCharge).upper).toBeGreaterThan(1);
        }
      }
    },
  );
});
