import { existsSync, readdirSync, readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { evaluate, parseRecord } from "crankworthy";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { records } from "../report/records.js";
import { schemaPath, schemas, schemaText } from "./schemas.js";

const published = Object.fromEntries(
  readdirSync("docs/schemas").map((file) => [
    file.replace(".schema.json", ""),
    JSON.parse(readFileSync(`docs/schemas/${file}`, "utf8")),
  ]),
);
const ajv = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true });
const validate = Object.fromEntries(
  Object.entries(published).map(([name, schema]) => [name, ajv.compile(schema)]),
);
const problems = (name: string, value: unknown) => {
  validate[name]!(JSON.parse(JSON.stringify(value)));
  return (validate[name]!.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
};

const lines = (path: string): unknown[] =>
  readFileSync(path, "utf8")
    .split("\n")
    .filter((line) => line.trim() !== "")
    .map((line) => JSON.parse(line));
const examples = [
  ...Object.values(records),
  ...readdirSync("examples")
    .map((name) => `examples/${name}/records.jsonl`)
    .filter((path) => existsSync(path))
    .flatMap(lines),
  ...readdirSync("tests/schemas/stored-v1").flatMap((file) => lines(`tests/schemas/stored-v1/${file}`)),
];

describe("the published JSON Schemas", () => {
  it.each(Object.entries(schemas()))(
    "%s is what the code makes (npm run schemas writes it)",
    (name, schema) => {
      expect(readFileSync(schemaPath(name), "utf8")).toBe(schemaText(schema));
    },
  );

  it("hold for every record of tests and examples, its evaluation, its terms and its settlement", () => {
    expect(examples.length).toBeGreaterThan(60);
    let settlements = 0;
    for (const record of examples) {
      const parsed = parseRecord(record);
      if (!parsed.ok) throw new Error(parsed.issues.map(({ message }) => message).join("\n"));
      expect(problems("record", record)).toEqual([]);
      const evaluation = evaluate(parsed.record, { explain: true });
      expect(problems("evaluation", evaluation)).toEqual([]);
      if (parsed.record.warranty) expect(problems("terms", parsed.record.warranty.terms)).toEqual([]);
      if (!evaluation.warranty?.settlement) continue;
      settlements++;
      expect(problems("settlement", evaluation.warranty.settlement)).toEqual([]);
    }
    expect(settlements).toBeGreaterThan(5);
  });

  it("refuse what the record's own check refuses: a wrong key, a wrong type, a value out of range", () => {
    const good = records.good as unknown as { measurements: object };
    const wrong: unknown[] = [
      { ...good, colour: "green" },
      { ...good, measurements: { ...good.measurements, restVolts: "12.6" } },
      { ...good, measurements: { ...good.measurements, restVolts: 126 } },
      { measurements: good.measurements },
    ];
    for (const record of wrong) {
      expect(parseRecord(record).ok).toBe(false);
      expect(problems("record", record)).not.toEqual([]);
    }
  });

  it("never refuse a record that the check accepts, whatever single number of it is changed", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...Object.values(records)),
        fc.double(),
        fc.nat(),
        (record, number, which) => {
          const copy = structuredClone(record) as unknown as Record<string, Record<string, unknown>>;
          const numbers = Object.entries(copy).flatMap(([section, fields]) =>
            Object.entries(fields ?? {})
              .filter(([, value]) => typeof value === "number")
              .map(([field]) => [section, field] as const),
          );
          fc.pre(numbers.length > 0);
          const [section, field] = numbers[which % numbers.length]!;
          copy[section]![field] = number;
          if (parseRecord(copy).ok) expect(problems("record", copy)).toEqual([]);
        },
      ),
    );
  });
});
