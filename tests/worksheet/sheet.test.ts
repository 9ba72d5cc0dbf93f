import { type InputIssue, tryEvaluate } from "crankworthy";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Field } from "../../examples/worksheet/fields.data.js";
import { fieldOf } from "../../examples/worksheet/issues.js";
import {
  decimalMark,
  fields,
  listFrom,
  numberFrom,
  recordOf,
  valuesOf,
} from "../../examples/worksheet/sheet.js";
import { startRecord } from "../../examples/worksheet/start.data.js";

const issuesOf = (record: unknown): readonly InputIssue[] => {
  const result = tryEvaluate(record);
  return result.ok ? [] : result.issues;
};

/** A record with one value at a path and nothing beside it. */
function recordWith(path: string, value: unknown): unknown {
  return path.split(".").reduceRight<unknown>((inner, key) => ({ [key]: inner }), value);
}

describe("fields of the worksheet", () => {
  it.each(fields.map((field) => [field.path, field] as const))(
    "%s is a place of the record",
    (path, field) => {
      const issues = issuesOf(recordWith(path, { none: 1 }));
      expect(issues.some((one) => one.path === path || one.path.startsWith(`${path}.`))).toBe(true);
      expect(issues.filter((one) => one.code === "unknown-key" && one.path !== `${path}.none`)).toEqual([]);
      for (const value of optionsOf(field)) {
        const asked = issuesOf(recordWith(path, field.kind === "set" ? [value] : value));
        expect(asked.filter((one) => one.code === "not-a-choice" && one.path.startsWith(path))).toEqual([]);
      }
    },
  );

  it.each(fields.filter((field) => "slide" in field).map((field) => [field.path, field] as const))(
    "the slider of %s stays within what the library reads",
    (path, field) => {
      if (!("slide" in field) || !field.slide) return;
      const [from, to] = field.slide;
      for (const value of [from, to]) {
        const issues = issuesOf(recordWith(path, value)).filter((one) => one.path === path);
        expect(issues.filter(({ code }) => code === "out-of-range" || code === "wrong-unit")).toEqual([]);
      }
    },
  );

  it("finds the field of every issue that a sheet can have", () => {
    expect(fieldOf("measurements.cellGravities[2]")?.path).toBe("measurements.cellGravities");
    expect(fieldOf("identity")?.path).toBe("identity.rating.standard");
    expect(fieldOf("measurements")?.path).toBe("measurements.restVolts");
    expect(fieldOf("warranty.terms.core.depositInExchange")?.path).toBe(
      "warranty.terms.core.depositInExchange",
    );
    expect(fieldOf("")).toBeUndefined();
  });
});

function optionsOf(field: Field): readonly unknown[] {
  if (field.kind === "set") return field.options;
  if (field.kind !== "choice") return [];
  return field.options.map((one) =>
    field.as === "number" ? Number(one) : field.as === "boolean" ? one === "true" : one,
  );
}

describe("values and record", () => {
  it.each([".", ","] as const)("the example comes back as it was, with %s as decimal mark", (mark) => {
    const { values, leftOut } = valuesOf(startRecord, mark);
    expect(leftOut).toEqual([]);
    expect(recordOf(values, mark)).toEqual(startRecord);
  });

  it("a blank sheet lacks what a record needs, nothing else", () => {
    expect(issuesOf(recordOf(new Map(), ".")).map((one) => one.code)).toEqual(["missing"]);
  });

  it("leaves wrong text to the library, and never reads a mark of another language as a number", () => {
    expect(numberFrom("12,58", ",")).toBe(12.58);
    expect(numberFrom("12,58", ".")).toBe("12,58");
    expect(numberFrom("1e999", ".")).toBe(Number.POSITIVE_INFINITY);
    expect(issuesOf(recordOf(new Map([["measurements.restVolts", "12 V"]]), "."))).toContainEqual(
      expect.objectContaining({ path: "measurements.restVolts", code: "wrong-type" }),
    );
    expect(["en-GB", "de", "fr", "es", "ja", "ar"].map(decimalMark)).toEqual([".", ",", ",", ",", ".", "."]);
  });

  it("does not make two readings of a number with a comma for its thousands", () => {
    expect(listFrom("1,200", ".")).toEqual(["1,200"]);
    expect(listFrom("436, 440 441;438 ,437, ", ".")).toEqual([436, 440, 441, 438, 437]);
    expect(listFrom("1,23 1,24; 1,25", ",")).toEqual([1.23, 1.24, 1.25]);
    const amperes = "measurements.cranking.amperes";
    const one = issuesOf(recordOf(new Map([[amperes, "1,200"]]), "."));
    expect(one).toContainEqual(expect.objectContaining({ path: amperes }));
    const several = issuesOf(recordOf(new Map([[amperes, "1,200 1190"]]), "."));
    expect(several).toContainEqual(expect.objectContaining({ path: `${amperes}[0]`, code: "wrong-type" }));
  });

  it("names what it has no place for", () => {
    const record = { ...startRecord, vehicle: { starting: { crankingVolts: 10.2 } }, "x\u0000": 1 };
    expect(valuesOf(record, ".").leftOut).toEqual(["vehicle.starting.crankingVolts", "x\u0000"]);
  });

  it("whatever comes in, a sheet comes out, and it gives the same record again", () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.constantFrom(...fields), (value, field) => {
        for (const given of [value, recordWith(field.path, value)]) {
          const once = recordOf(valuesOf(given, ".").values, ".");
          expect(recordOf(valuesOf(once, ".").values, ".")).toEqual(once);
        }
      }),
    );
    expect(Object.hasOwn(Object.prototype, "identity")).toBe(false);
  });
});
