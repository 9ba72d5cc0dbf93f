import { evaluate, type InputIssue, isInputError, parseRecord, tryEvaluate } from "crankworthy/evaluate";
import { describe, expect, it } from "vitest";
import { copyOf, fullRecord } from "./sample.js";

type Change = (record: Record<string, Record<string, unknown>>) => void;

function issuesOf(change: Change): readonly InputIssue[] {
  const record = copyOf(fullRecord) as never;
  change(record);
  const result = tryEvaluate(record);
  return result.ok ? [] : result.issues;
}

function only(change: Change): InputIssue {
  const issues = issuesOf(change);
  expect(issues).toHaveLength(1);
  return issues[0]!;
}

describe("a record with every part filled in", () => {
  it("is accepted", () => expect(issuesOf(() => {})).toEqual([]));
  it("is accepted deep-frozen, and not changed", () => {
    const frozen = deepFreeze(copyOf(fullRecord));
    expect(tryEvaluate(frozen).ok).toBe(true);
    expect(frozen).toEqual(fullRecord);
  });
});

describe("wrong units by magnitude: refused with a hint, never converted", () => {
  it.each<[string, Change, string]>([
    ["measurements.restVolts", (r) => (r.measurements!.restVolts = 12_640), "millivolts"],
    ["conditions.temperatureCelsius", (r) => (r.conditions!.temperatureCelsius = 77), "°F"],
    ["conditions.temperatureCelsius", (r) => (r.conditions!.temperatureCelsius = 294), "kelvin"],
    ["measurements.cellGravities[2]", (r) => (r.measurements!.cellGravities = [1.26, 1.26, 1265]), "kg/m³"],
    ["identity.capacityAmpereHours", (r) => (r.identity!.capacityAmpereHours = 60_000), "mAh"],
    [
      "measurements.resistance.milliohms",
      (r) => ((r.measurements!.resistance as Record<string, unknown>).milliohms = 0.0051),
      "ohms",
    ],
    [
      "measurements.cranking.relativeStandardUncertainty",
      (r) => ((r.measurements!.cranking as Record<string, unknown>).relativeStandardUncertainty = 4),
      "percent",
    ],
    [
      "measurements.loadTest.seconds",
      (r) => ((r.measurements!.loadTest as Record<string, unknown>).seconds = 15_000),
      "milliseconds",
    ],
    [
      "measurements.voltsStandardUncertainty",
      (r) => (r.measurements!.voltsStandardUncertainty = 10),
      "millivolts",
    ],
  ])("%s", (path, change, hint) => {
    const issue = only(change);
    expect(issue).toMatchObject({ code: "wrong-unit", path });
    expect(issue.message).toContain(hint);
  });
});

describe("values that are none", () => {
  it.each<[InputIssue["code"], string, Change]>([
    ["not-finite", "measurements.restVolts", (r) => (r.measurements!.restVolts = Number.NaN)],
    ["not-finite", "measurements.restVolts", (r) => (r.measurements!.restVolts = Number.POSITIVE_INFINITY)],
    ["out-of-range", "identity.capacityAmpereHours", (r) => (r.identity!.capacityAmpereHours = -60)],
    ["wrong-type", "measurements.restVolts", (r) => (r.measurements!.restVolts = "12.6")],
    ["not-a-date", "conditions.inspectedOn", (r) => (r.conditions!.inspectedOn = "2026-02-29")],
    ["not-a-date", "conditions.inspectedOn", (r) => (r.conditions!.inspectedOn = "20.11.2026")],
    ["not-a-choice", "identity.chemistry", (r) => (r.identity!.chemistry = "AGM")],
    ["too-long", "id", (r) => (r.id = "x".repeat(1_000_000) as never)],
    ["too-long", "identity.dateCode.text", (r) => (r.identity!.dateCode = { text: "9".repeat(100_000) })],
    ["wrong-type", "conditions.ice", (r) => (r.conditions!.ice = 1)],
    ["missing", "identity.chemistry", (r) => delete r.identity!.chemistry],
    [
      "not-a-choice",
      "identity.dateCode.scheme",
      (r) => (r.identity!.dateCode = { text: "0324", scheme: "__proto__" }),
    ],
  ])("%s %s", (code, path, change) => {
    const issue = only(change);
    expect([issue.code, issue.path]).toEqual([code, path]);
    expect(issue.message.length).toBeLessThan(600);
  });

  it.each([null, undefined, 0, "", [], true, Symbol("x"), () => {}, new Map(), 10n])(
    "%s is no record",
    (value) => {
      const result = tryEvaluate(value);
      expect(result.ok).toBe(false);
    },
  );
});

describe("keys nobody knows", () => {
  it("names the nearest known one", () => {
    const issue = only((r) => (r.measurements!.restVolt = 12));
    expect(issue).toMatchObject({ code: "unknown-key", path: "measurements.restVolt" });
    expect(issue.expected).toContain("restVolts");
  });

  it("refuses keys that would pollute a prototype, at any depth", () => {
    for (const text of [
      '{"__proto__":{"polluted":1}}',
      '{"identity":{"__proto__":{"polluted":1}}}',
      '{"identity":{"constructor":{"prototype":{"polluted":1}}}}',
      '{"warranty":{"terms":{"useClasses":{"__proto__":{"excluded":true}}}}}',
    ]) {
      const merged = mergeJson(JSON.stringify(fullRecord), text);
      const result = tryEvaluate(JSON.parse(merged));
      expect(result.ok).toBe(false);
      expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    }
  });

  it("lists twenty and counts the rest", () => {
    const many = Object.fromEntries(Array.from({ length: 5000 }, (_, i) => [`key${i}`, i]));
    const result = parseRecord({ ...fullRecord, ...many });
    expect(result.ok).toBe(false);
    if (!result.ok) {
      expect(result.issues).toHaveLength(21);
      expect(result.issues.at(-1)!.received).toContain("4980");
    }
  });
});

describe("contradictory fields", () => {
  it.each<[string, Change]>([
    ["measurements.cellGravities", (r) => (r.identity!.chemistry = "agm")],
    [
      "warranty.purchase.soldOn",
      (r) => ((r.warranty!.purchase as Record<string, unknown>).soldOn = "2027-01-01"),
    ],
    ["warranty.terms.totalMonths", (r) => ((r.warranty!.terms as Record<string, unknown>).totalMonths = 12)],
    ["identity.capacityAmpereHours", (r) => (r.identity!.capacityAmpereHours = 75)],
    ["identity.nominalVolts", (r) => (r.identity!.nominalVolts = 6)],
    ["identity.acid.emptyGravity", (r) => (r.identity!.acid = { fullGravity: 1.2, emptyGravity: 1.25 })],
    ["conditions.chargeCompleted", (r) => (r.conditions!.lastEvent = "discharge")],
    ["conditions.hoursAtRest", (r) => delete r.conditions!.lastEvent],
    [
      "measurements.conductance",
      (r) =>
        (r.measurements!.conductance = {
          siemens: 200,
          referenceSiemens: 200,
          referenceBasis: "own-baseline",
        }),
    ],
    ["warranty.purchase.receipt", (r) => delete (r.warranty!.purchase as Record<string, unknown>).soldOn],
  ])("%s", (path, change) => {
    expect(issuesOf(change).map((issue) => issue.path)).toContain(path);
  });

  it("an EN current that differs from the one in the type number", () => {
    const result = tryEvaluate({
      identity: {
        chemistry: "efb",
        labelCode: { scheme: "etn", text: "560 901 068" },
        rating: { standard: "en-50342-1:2015", amperes: 540 },
      },
      measurements: { restVolts: 12.6 },
    });
    expect(result.ok ? [] : result.issues.map((issue) => issue.path)).toEqual(["identity.rating.amperes"]);
  });
});

describe("what is required", () => {
  it("a rating or a label code, and one measurement: both at once", () => {
    const result = tryEvaluate({ identity: { chemistry: "gel" }, measurements: {} });
    expect(result.ok ? [] : result.issues.map((issue) => issue.path)).toEqual(["identity", "measurements"]);
  });

  it("conventions on which practice differs, with the conventions that exist", () => {
    const issue = only((r) => delete (r.warranty!.terms as Record<string, unknown>).prorationOrigin);
    expect(issue.code).toBe("missing-convention");
    expect(issue.expected).toContain("purchase");
    expect(issue.expected).toContain("end-of-free-period");
  });

  it("money as text", () => {
    const issue = only((r) => ((r.warranty!.purchase as Record<string, unknown>).pricePaid = 129.99));
    expect(issue).toMatchObject({ code: "wrong-type", path: "warranty.purchase.pricePaid" });
    expect(issue.message).toContain('"129.99"');
  });

  it("and nothing else: the smallest record is evaluated, and what is missing is said", () => {
    const { findings, verdict } = evaluate({
      identity: { chemistry: "unknown", rating: { standard: "unstated", amperes: 500 } },
      measurements: { restVolts: 12.5 },
    });
    const codes = findings.map((one) => one.code);
    expect(codes).toEqual(
      expect.arrayContaining([
        "chemistry-unknown",
        "missing-temperature",
        "missing-rest-history",
        "missing-ability-measurement",
      ]),
    );
    expect(verdict.condition).toBe("not-established");
  });
});

describe("the throwing and the non-throwing twin", () => {
  it("carry the same issues, told apart by name and not by class", () => {
    const broken = { identity: {}, measurements: { restVolts: 12_600 }, extra: 1 };
    const result = tryEvaluate(broken);
    let thrown: unknown;
    try {
      evaluate(broken);
    } catch (error) {
      thrown = error;
    }
    expect(isInputError(thrown)).toBe(true);
    expect(isInputError(Object.assign(new Error("x"), { name: "InputError", issues: [] }))).toBe(true);
    expect(isInputError(new Error("x"))).toBe(false);
    if (!result.ok && isInputError(thrown)) expect(thrown.issues).toEqual(result.issues);
  });
});

function deepFreeze<T>(value: T): T {
  if (typeof value === "object" && value !== null) {
    for (const inner of Object.values(value)) deepFreeze(inner);
    Object.freeze(value);
  }
  return value;
}

// Merges on the text level, so that "__proto__" stays an own key.
function mergeJson(base: string, patch: string): string {
  const merge = (a: string, b: string): string => {
    const left = JSON.parse(a) as Record<string, unknown>;
    const right = JSON.parse(b) as Record<string, unknown>;
    const parts: string[] = [];
    const keys = new Set([...Object.keys(left), ...Object.getOwnPropertyNames(right)]);
    for (const key of keys) {
      const l = Object.hasOwn(left, key) ? JSON.stringify(left[key]) : undefined;
      const r = Object.hasOwn(right, key)
        ? JSON.stringify(Object.getOwnPropertyDescriptor(right, key)!.value)
        : undefined;
      const both = l?.startsWith("{") && r?.startsWith("{") && key !== "__proto__";
      parts.push(`${JSON.stringify(key)}:${both ? merge(l!, r!) : (r ?? l)}`);
    }
    return `{${parts.join(",")}}`;
  };
  return merge(base, patch);
}
