import { execFile } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { type BatteryRecord, evaluate } from "crankworthy";
import { describe, expect, it } from "vitest";

const example = fileURLToPath(new URL("../../examples/no-start/", import.meta.url));
const read = (name: string): string => readFileSync(join(example, name), "utf8");
const cars = read("records.jsonl")
  .trim()
  .split("\n")
  .map((line) => evaluate(JSON.parse(line) as BatteryRecord));
const supported = (index: number): string[] =>
  cars[index]!.causes!.filter((one) => one.support === "supported").map((one) => one.code);

describe("four cars that do not start", () => {
  it("four causes, one each, and a discharge beside one of them", () => {
    expect(cars.map((_, index) => supported(index))).toEqual([
      ["battery"],
      ["connection"],
      ["charging-circuit", "only-discharged"],
      ["drain"],
    ]);
  });

  it("only the car whose battery is behind it loses its battery", () => {
    expect(cars.map((one) => one.verdict.action)).toEqual([
      "retire",
      "repeat",
      "charge-then-keep",
      "charge-then-repeat",
    ]);
  });

  it("no cause is both supported and doubted here", () => {
    for (const { findings } of cars)
      expect(
        findings.map((one) => one.code).filter((code) => /causes-conflict|cause-unclear/.test(code)),
      ).toEqual([]);
  });

  it("the README names each with its cause, condition and action", () => {
    const rows = read("README.md")
      .split("\n")
      .filter((line) => /^\| `\d-/.test(line))
      .map((line) => line.split("|").map((cell) => cell.trim().replaceAll("`", "")));
    expect(rows.map(([, id, , behind, outcome]) => `${id}: ${behind}; ${outcome}`)).toEqual(
      cars.map(
        ({ id, verdict }, index) =>
          `${id}: ${supported(index).join(", ")}; ${verdict.condition}, ${verdict.action}`,
      ),
    );
  });
});

const built = existsSync(fileURLToPath(new URL("../../dist/index.js", import.meta.url)));

describe.skipIf(!built)("npm run example no-start (skipped without dist: run npm run build first)", () => {
  it.each(["UTC", "Pacific/Kiritimati"])("prints what expected.txt holds, in %s", async (zone) => {
    const { stdout, stderr } = await promisify(execFile)(process.execPath, [join(example, "run.mjs")], {
      env: { ...process.env, TZ: zone },
    });
    expect(stderr).toBe("");
    expect(stdout).toBe(read("expected.txt"));
  });
});
