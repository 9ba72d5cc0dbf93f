import { execFile } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type BatteryRecord, type Evaluation, evaluate, recordSchema } from "crankworthy";
import { ratingStandards } from "crankworthy/ratings";
import type { Action, Condition, FindingCode } from "crankworthy/verdict";
import type { ProrationOrigin, Settlement } from "crankworthy/warranty";
import { afterAll, describe, expect, it } from "vitest";

const demo = fileURLToPath(new URL("../../examples/counter-day/", import.meta.url));
const read = (name: string): string => readFileSync(join(demo, name), "utf8");
const lines = read("records.jsonl").split("\n").slice(0, -1);
const day: readonly { readonly record: BatteryRecord; readonly evaluation: Evaluation }[] = lines.map(
  (line) => {
    const record = JSON.parse(line) as BatteryRecord;
    return { record, evaluation: evaluate(record) };
  },
);

/** Names of a union type; the compiler refuses a list with a missing or a foreign one. */
const every = <Name extends string>(names: Record<Name, true>): Name[] => Object.keys(names) as Name[];
const distinct = <Value>(values: readonly Value[]): Value[] => [...new Set(values)];
/** Evaluations with all of these findings. */
const found = (...codes: FindingCode[]): Evaluation[] =>
  day
    .map(({ evaluation }) => evaluation)
    .filter(({ findings }) => codes.every((code) => findings.some((one) => one.code === code)));

describe("the day's records", () => {
  const { shape: identity } = recordSchema.shape.identity;
  const conditions = every<Condition>({
    serviceable: true,
    worn: true,
    unserviceable: true,
    "internally-failed": true,
    "not-established": true,
  });
  const actions = every<Action>({
    keep: true,
    "charge-then-keep": true,
    "charge-then-repeat": true,
    repeat: true,
    retire: true,
    isolate: true,
    stop: true,
  });

  it("are 26 to 32, each with an id of its own, numbered in their order", () => {
    expect(day.length).toBeGreaterThanOrEqual(26);
    expect(day.length).toBeLessThanOrEqual(32);
    day.forEach(({ record }, index) => {
      expect(record.id).toMatch(new RegExp(`^${String(index + 1).padStart(2, "0")}-[a-z]+(-[a-z]+)*$`));
    });
    expect(distinct(day.map(({ record }) => record.id)).length).toBe(day.length);
  });

  it("are of one day", () => {
    expect(distinct(day.map(({ evaluation }) => evaluation.inspectedOn)).length).toBe(1);
  });

  it.each(conditions)("meet the condition %s", (condition) => {
    expect(day.map(({ evaluation }) => evaluation.verdict.condition)).toContain(condition);
  });

  it.each(actions)("meet the action %s", (action) => {
    expect(day.map(({ evaluation }) => evaluation.verdict.action)).toContain(action);
  });

  it.each(identity.chemistry.options)("meet the chemistry %s", (chemistry) => {
    expect(day.map(({ record }) => record.identity.chemistry)).toContain(chemistry);
  });

  it.each(Object.keys(ratingStandards))("meet the rating %s on a label or an instrument", (standard) => {
    const seen = day.flatMap(({ record: { identity, measurements }, evaluation }) => [
      identity.rating?.standard,
      evaluation.identity.label?.rating?.standard,
      measurements.cranking?.standard,
    ]);
    expect(seen).toContain(standard);
  });

  it.each(identity.labelCode.unwrap().shape.scheme.options)("meet a label code of %s", (scheme) => {
    expect(day.map(({ evaluation }) => evaluation.identity.label?.scheme)).toContain(scheme);
  });

  it("meet date codes that mean one thing, several things and nothing", () => {
    const codes = day.filter(({ record }) => record.identity.dateCode);
    expect(
      codes.filter(({ evaluation }) => evaluation.age?.dateCode.ambiguous === false).length,
    ).toBeGreaterThan(0);
    // More than one scheme, and one scheme with an open decade.
    const open = codes.flatMap(({ evaluation }) =>
      evaluation.age?.dateCode.ambiguous
        ? [distinct(evaluation.age.dateCode.readings.map((one) => one.scheme))]
        : [],
    );
    expect(open.some((schemes) => schemes.length > 1)).toBe(true);
    expect(open.some((schemes) => schemes.length === 1)).toBe(true);
    expect(found("date-code-refused").length).toBeGreaterThan(0);
  });

  it("meet conversions that are given and conversions that are refused", () => {
    expect(day.some(({ evaluation }) => evaluation.ability.some(({ converted }) => converted))).toBe(true);
    const refusals = day.flatMap(({ evaluation }) => evaluation.refusals);
    const refused = refusals.filter(({ about }) => about === "measurements.cranking").map(({ code }) => code);
    expect(distinct(refused).length).toBeGreaterThan(1);
  });

  it("meet evidence that disagrees, of both kinds", () => {
    const [loadTest] = found("load-test-passed", "ability-evidence-disagrees");
    expect(loadTest?.verdict.action).toBe("repeat");
    const [charge] = found("charge-evidence-disagrees");
    expect(charge?.charge?.combined?.consistent).toBe(false);
  });

  it("meet ice that was seen and ice that the temperature gives away", () => {
    for (const code of ["frozen-seen", "frozen-possible"] as const)
      expect(found(code).map(({ verdict }) => verdict.action)).toEqual(["isolate"]);
  });

  it("meet another system and exchanged leads", () => {
    expect(found("other-system-voltage").map(({ verdict }) => verdict.action)).toContain("stop");
    expect(found("reversed-polarity").map(({ verdict }) => verdict.action)).toContain("repeat");
    expect(found("reversed-after-check").map(({ verdict }) => verdict.action)).toContain("isolate");
  });

  it("meet load tests that pass, fail and fail again", () => {
    const actionsOf = (code: FindingCode) => found(code).map(({ verdict }) => verdict.action);
    expect(actionsOf("load-test-passed")).toContain("keep");
    expect(actionsOf("load-test-failed")).toContain("charge-then-repeat");
    expect(actionsOf("load-test-failed-again")).toContain("retire");
  });

  it("meet a weak cell and a missing cell", () => {
    for (const code of ["cell-spread", "cell-missing"] as const)
      expect(found(code).map(({ verdict }) => verdict.condition)).toContain("internally-failed");
    const weak = day.find(({ evaluation }) => evaluation.findings.some(({ code }) => code === "cell-spread"));
    expect(weak?.record.measurements.cellGravities?.length).toBe(6);
  });

  it("meet resistance and conductance, each with its reference", () => {
    const ways = day.flatMap(({ evaluation }) => evaluation.ability.map(({ from }) => from));
    expect(ways).toContain("internal-resistance");
    expect(ways).toContain("conductance");
  });

  it("meet surface charge, scattered repeats and a vehicle with its loads on", () => {
    for (const code of ["surface-charge", "readings-scatter", "vehicle-loads-possible"] as const)
      expect(
        found(code).map(({ verdict }) => verdict.action),
        code,
      ).toContain("repeat");
  });

  it("meet an engine that will start on the coldest morning and one that will not", () => {
    expect(found("requirement-met").length).toBeGreaterThan(0);
    expect(found("requirement-not-met", "ability-worn").map(({ verdict }) => verdict.action)).toContain(
      "retire",
    );
    expect(found("requirement-met", "ability-worn").map(({ verdict }) => verdict.action)).toContain("keep");
  });

  it("meet every outcome of a claim, both origins of proration and several ways to count months", () => {
    const claims = day.filter(({ evaluation }) => evaluation.warranty);
    const outcomes = claims.map(({ evaluation }) => evaluation.warranty?.settlement?.outcome);
    const all = every<Settlement["outcome"]>({
      "free-replacement": true,
      prorated: true,
      "not-covered": true,
      "cannot-tell": true,
    });
    for (const outcome of all) expect(outcomes).toContain(outcome);
    expect(claims.map(({ evaluation }) => evaluation.warranty?.eligibility.answer)).toContain("not-yet");

    const prorated = claims.filter((_, index) => outcomes[index] === "prorated");
    const origins = prorated.map(({ record }) => record.warranty?.terms.prorationOrigin);
    for (const origin of every<ProrationOrigin>({ purchase: true, "end-of-free-period": true }))
      expect(origins).toContain(origin);
    expect(distinct(claims.map(({ record }) => record.warranty?.terms.monthCount)).length).toBeGreaterThan(3);
  });
});

describe("the README", () => {
  const rows = read("README.md")
    .split("\n")
    .filter((line) => /^\| `\d\d-/.test(line))
    .map((line) => line.split("|").map((cell) => cell.trim().replaceAll("`", "")));

  it("names every record with the condition and the action it comes to", () => {
    expect(rows.map(([, id, , outcome]) => `${id}: ${outcome}`)).toEqual(
      day.map(({ evaluation: { id, verdict } }) => `${id}: ${verdict.condition}, ${verdict.action}`),
    );
  });
});

const built = existsSync(fileURLToPath(new URL("../../dist/index.js", import.meta.url)));

interface Run {
  readonly status: number;
  readonly stdout: string;
  readonly stderr: string;
}

function runDemo(file?: string, zone = "UTC"): Promise<Run> {
  const script = join(demo, "run.mjs");
  return new Promise((resolve, reject) => {
    const env = { ...process.env, TZ: zone };
    execFile(
      process.execPath,
      file === undefined ? [script] : [script, file],
      { env, maxBuffer: 1e8 },
      (error, stdout, stderr) => {
        const status = error ? error.code : 0;
        if (typeof status === "number") resolve({ status, stdout, stderr });
        else reject(error);
      },
    );
  });
}

describe.skipIf(!built)("the demo (skipped without dist: run npm run build first)", () => {
  const folder = mkdtempSync(join(tmpdir(), "counter-day-"));
  afterAll(() => rmSync(folder, { recursive: true }));
  const ownFile = (...content: string[]): string => {
    const path = join(folder, "own.jsonl");
    writeFileSync(path, content.join("\n"));
    return path;
  };
  const [first, second] = lines as [string, string];

  it.each(["UTC", "America/St_Johns", "Pacific/Kiritimati"])(
    "prints what expected.txt holds, in %s",
    async (zone) => {
      const run = await runDemo(undefined, zone);
      expect(run.stderr).toBe("");
      expect(run.stdout).toBe(read("expected.txt"));
      expect(run.status).toBe(0);
    },
  );

  it("reads a file of one's own, with empty lines, Windows line ends and no last line end", async () => {
    const run = await runDemo(ownFile(`${first}\r`, "\r", "", second));
    expect(run.stderr).toBe("");
    expect(run.stdout).toContain("01-post-van");
    expect(run.stdout).toContain("02-district-nurse");
    expect(run.status).toBe(0);
  });

  it("names every issue of every bad line by its number, goes on, and ends with status 1", async () => {
    const wrong = {
      id: "wrong",
      identity: { chemistry: "wet", rating: { standard: "sae-j537", amperes: 600 }, colour: "red" },
      measurements: { restVolts: 12600 },
    };
    const run = await runDemo(ownFile("{ not json", "", JSON.stringify(wrong), "[]", first));
    const reports = run.stderr.split(/^(?=Line )/m).map((report) => report.trimEnd().split("\n"));
    expect(reports.map(([line]) => line)).toEqual([
      "Line 1 was not evaluated:",
      "Line 3 was not evaluated:",
      "Line 4 was not evaluated:",
    ]);
    const [notJson, issues, notRecord] = reports as [string[], string[], string[]];
    expect(notJson[1]).toContain("one JSON object a line");
    expect(issues.length).toBe(4);
    for (const part of ["identity.chemistry", "identity.colour", "measurements.restVolts", "millivolts"])
      expect(issues.join("\n")).toContain(part);
    expect(notRecord.length).toBe(2);
    expect(run.stdout).toContain("01-post-van");
    expect(run.status).toBe(1);
  });

  it("prints no half ticket for a bad record whose fields contradict each other", async () => {
    const { measurements, ...rest } = JSON.parse(first) as BatteryRecord;
    const sealed = {
      ...rest,
      id: "sealed-with-hydrometer",
      identity: { ...rest.identity, chemistry: "agm" },
      measurements: { ...measurements, cellGravities: [1.26] },
    };
    const run = await runDemo(ownFile(JSON.stringify(sealed)));
    expect(run.stderr).toContain("measurements.cellGravities");
    expect(run.stdout).not.toContain("sealed-with-hydrometer");
    expect(run.status).toBe(1);
  });

  it.each([
    ["a missing file", "nowhere.jsonl"],
    ["a folder", "."],
  ])("ends with status 2 for %s", async (_, name) => {
    const run = await runDemo(join(folder, name));
    expect(run.stderr).toContain("could not be read");
    expect(run.stdout).toBe("");
    expect(run.status).toBe(2);
  });
});
