import { readdirSync, readFileSync } from "node:fs";
import type { StandardSchemaV1 } from "@standard-schema/spec";
import {
  type BatteryRecord,
  evaluate,
  type Migration,
  migrateRecord,
  RECORD_SCHEMA_VERSION,
  standardRecordSchema,
} from "crankworthy/evaluate";
import { describe, expect, it } from "vitest";

describe("stored records", () => {
  // Stored under version 1; these files never change again, whatever becomes of the schema.
  const files = readdirSync("tests/schemas/stored-v1");
  it.each(files)("%s: every record of schema version 1 can still be evaluated", (file) => {
    const lines = readFileSync(`tests/schemas/stored-v1/${file}`, "utf8").split("\n").filter(Boolean);
    expect(lines.length).toBeGreaterThan(3);
    for (const line of lines) {
      const migrated = migrateRecord(JSON.parse(line));
      if (!migrated.ok) throw new Error(migrated.issues[0]!.message);
      expect(evaluate(migrated.record).schemaVersion).toBe(RECORD_SCHEMA_VERSION);
    }
  });
});

describe("migrations", () => {
  const steps: readonly Migration[] = [
    {
      from: 1,
      note: "volts became restVolts",
      lift: ({ volts, ...rest }) => ({ ...rest, restVolts: volts }),
    },
    { from: 2, note: "place is a list", lift: ({ place, ...rest }) => ({ ...rest, place: [place] }) },
  ];

  it("are taken one after the other, and told", () => {
    const old = Object.freeze({ volts: 12.5, place: "bench" });
    expect(migrateRecord(old, steps, 3)).toEqual({
      ok: true,
      record: { restVolts: 12.5, place: ["bench"], schemaVersion: 3 },
      notes: ["volts became restVolts", "place is a list"],
    });
    expect(migrateRecord({ schemaVersion: 2, place: "bench" }, steps, 3)).toMatchObject({
      record: { place: ["bench"] },
      notes: ["place is a list"],
    });
    expect(migrateRecord({ schemaVersion: 3 }, steps, 3)).toMatchObject({ notes: [] });
  });

  it("a version nobody knows, a gap in the steps, and what is no record are issues", () => {
    for (const version of [4, -1, 1.5, "1", null])
      expect(migrateRecord({ schemaVersion: version }, steps, 3)).toMatchObject({ ok: false });
    expect(migrateRecord({ schemaVersion: 1 }, steps.slice(1), 3)).toMatchObject({ ok: false });
    for (const wrong of [undefined, null, 3, "x", []])
      expect(migrateRecord(wrong)).toMatchObject({ ok: false });
  });
});

describe("Standard Schema", () => {
  // A compile error where the interface is not that of the specification.
  const schema: StandardSchemaV1<BatteryRecord, BatteryRecord> = standardRecordSchema;
  const record = {
    identity: { chemistry: "agm", rating: { standard: "sae-j537", amperes: 600 } },
    measurements: { cellGravities: [1.26, 1.25] },
  };

  it("hands a good record through", async () => {
    expect(await schema["~standard"].validate(record)).toEqual({ value: record });
  });

  it("tells what is wrong with its path, indexes as numbers", async () => {
    const result = await schema["~standard"].validate({
      ...record,
      measurements: { cellGravities: [1.26, 1260] },
    });
    expect(result.issues?.map(({ path }) => path)).toEqual([["measurements", "cellGravities", 1]]);
    expect(result.issues?.[0]?.message).toContain("1260");
  });
});
