import { readFileSync } from "node:fs";
import { differenceOf, differencesBetween, evaluate } from "crankworthy/evaluate";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const day = readFileSync("examples/counter-day/records.jsonl", "utf8")
  .split("\n")
  .filter((line) => line !== "")
  .map((line) => JSON.parse(line));

describe("differenceOf", () => {
  it("finds nothing between two evaluations of one record, with or without derivation, nor after a trip through JSON", () => {
    for (const record of day) {
      const evaluation = evaluate(record);
      expect(differenceOf(evaluation, evaluate(record, { explain: true }))).toEqual([]);
      expect(differenceOf(evaluation, JSON.parse(JSON.stringify(evaluation)))).toEqual([]);
    }
  });

  it("names verdict, findings and numbers that another policy moves", () => {
    const record = {
      identity: { chemistry: "flooded", rating: { standard: "sae-j537", amperes: 600 } },
      conditions: { temperatureCelsius: 21, lastEvent: "charge", hoursAtRest: 24, chargeCompleted: true },
      measurements: { restVolts: 12.7, cranking: { standard: "sae-j537", amperes: [480, 486, 482] } },
    };
    const [before, after] = [evaluate(record), evaluate(record, { policy: { serviceableFraction: 0.7 } })];
    const moved = new Map(differenceOf(before, after).map((one) => [one.path, one]));
    expect(moved.get("verdict.condition")).toEqual({
      path: "verdict.condition",
      kind: "changed",
      before: before.verdict.condition,
      after: "serviceable",
    });
    const probability = moved.get("verdict.serviceableProbability")!;
    expect(probability.relativeChange).toBeCloseTo(
      after.verdict.serviceableProbability! / before.verdict.serviceableProbability! - 1,
      12,
    );
    expect([...moved.keys()].some((path) => path.startsWith("findings["))).toBe(true);
    expect([...moved.keys()].some((path) => path.startsWith("ability"))).toBe(false);
  });

  it("does not shift what lies behind a new finding", () => {
    const record = day.find(({ id }) => id === "01-post-van");
    const { voltsStandardUncertainty: _, ...measurements } = record.measurements;
    const differences = differenceOf(evaluate(record), evaluate({ ...record, measurements }));
    const came = differences.filter(({ path, kind }) => path.startsWith("findings") && kind !== "changed");
    expect(came.map(({ path, kind }) => `${kind} ${path}`)).toEqual([
      "added findings[missing-voltmeter-uncertainty]",
    ]);
  });
});

describe("differencesBetween", () => {
  it("is empty exactly for equal data", () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 3 }), fc.jsonValue({ maxDepth: 3 }), (a, b) => {
        expect(differencesBetween(a, structuredClone(a))).toEqual([]);
        const equal = JSON.stringify(a) === JSON.stringify(b);
        if (!equal && differencesBetween(a, b).length === 0) expect(sorted(a)).toEqual(sorted(b));
      }),
    );
  });

  it("mirrors: what was added forwards is removed backwards", () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 3 }), fc.jsonValue({ maxDepth: 3 }), (a, b) => {
        const swap = {
          added: "removed",
          removed: "added",
          changed: "changed",
          reordered: "reordered",
        } as const;
        const forwards = differencesBetween(a, b).map(({ path, kind }) => `${kind} ${path}`);
        const backwards = differencesBetween(b, a).map(({ path, kind }) => `${swap[kind]} ${path}`);
        expect(backwards.sort()).toEqual(forwards.sort());
      }),
    );
  });

  it.each<[string, unknown, unknown, object[]]>([
    [
      "a last digit",
      { a: 0.1 + 0.2 },
      { a: 0.3 },
      [{ path: "a", kind: "changed", relativeChange: -1.850371707708594e-16 }],
    ],
    ["from zero", { a: 0 }, { a: 2 }, [{ path: "a", kind: "changed", before: 0, after: 2 }]],
    ["a sign of zero", { a: -0 }, { a: 0 }, []],
    ["a negative before", { a: -4 }, { a: -5 }, [{ path: "a", relativeChange: -0.25 }]],
    ["another type", { a: 1 }, { a: "1" }, [{ path: "a", before: 1, after: "1" }]],
    ["a key without value", { a: undefined }, {}, []],
    ["null is a value", { a: null }, {}, [{ path: "a", kind: "removed", before: null }]],
    ["a whole element", { a: [{ code: "x", n: 1 }] }, { a: [] }, [{ path: "a[x]", kind: "removed" }]],
    [
      "plain lists by index",
      [1, 2, 3],
      [1, 5],
      [
        { path: "[1]", before: 2, after: 5 },
        { path: "[2]", kind: "removed" },
      ],
    ],
    [
      "an order",
      { steps: [{ code: "a" }, { code: "b" }] },
      { steps: [{ code: "b" }, { code: "a" }] },
      [{ path: "steps", kind: "reordered", before: ["a", "b"], after: ["b", "a"] }],
    ],
    [
      "the second of a name",
      [
        { kind: "core", amount: "1" },
        { kind: "core", amount: "2" },
      ],
      [
        { kind: "core", amount: "1" },
        { kind: "core", amount: "3" },
      ],
      [{ path: "[core#2].amount", before: "2", after: "3" }],
    ],
  ])("%s", (_, before, after, expected) => {
    const found = differencesBetween(before, after);
    expect(found).toHaveLength(expected.length);
    expect(found).toMatchObject(expected);
  });
});

/** JSON with keys in order, for data that differ only in it. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== "object" || value === null) return value === 0 ? 0 : value;
  return Object.fromEntries(
    Object.entries(value)
      .map(([key, one]) => [key, sorted(one)] as const)
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );
}
