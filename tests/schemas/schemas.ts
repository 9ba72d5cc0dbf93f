import { recordSchema } from "crankworthy/evaluate";
import { createGenerator } from "ts-json-schema-generator";
import { z } from "zod";
import { ranges } from "../../src/evaluate/ranges.data.js";

// Input is described by the schema that checks it; output, which nothing parses, by the types that the compiler checks.

type Json = { [key: string]: unknown };
const ADDRESS = "https://crankworthy.example/schemas";
const DIALECT = "https://json-schema.org/draft/2020-12/schema";

/** Units stand in the table of ranges, not in the schema: they become the descriptions. */
function describeUnits(node: Json, path: string): void {
  const range = (ranges as Record<string, { unit: string }>)[path];
  if (range && node.type === "number") node.description = range.unit;
  for (const [key, value] of Object.entries((node.properties ?? {}) as Record<string, Json>))
    describeUnits(value, path === "" ? key : `${path}.${key}`);
  if (node.items) describeUnits(node.items as Json, path);
  for (const one of (node.anyOf ?? []) as Json[]) describeUnits(one, path);
}

function input(schema: z.ZodType, name: string, title: string): Json {
  const { $schema: _, ...made } = z.toJSONSchema(schema, { target: "draft-2020-12", io: "input" }) as Json;
  describeUnits(made, name === "record" ? "" : "warranty.terms");
  return { $schema: DIALECT, $id: `${ADDRESS}/${name}.schema.json`, title, ...made };
}

/** Draft 7 wrote tuples as a list of items; 2020-12 has a word of its own for them. */
function modern(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(modern);
  if (typeof node !== "object" || node === null) return node;
  const { items, additionalItems, ...rest } = node as Json;
  const made: Json = Object.fromEntries(Object.entries(rest).map(([key, value]) => [key, modern(value)]));
  if (Array.isArray(items)) {
    made.prefixItems = items.map(modern);
    made.items = additionalItems === undefined ? false : modern(additionalItems);
  } else if (items !== undefined) made.items = modern(items);
  return made;
}

function output(path: string, type: string, name: string, title: string): Json {
  const made = createGenerator({
    path,
    type,
    tsconfig: "tsconfig.json",
    skipTypeCheck: true,
    topRef: false,
    additionalProperties: false,
  }).createSchema(type) as Json;
  const { $schema: _, definitions, ...rest } = made;
  const text = JSON.stringify({ ...rest, $defs: definitions }).replaceAll("#/definitions/", "#/$defs/");
  const body = modern(JSON.parse(text)) as Json;
  // What a label code tells differs by scheme; the common part is described, the rest is allowed.
  const label = ((body.$defs as Json | undefined)?.LabelReading ?? {}) as Json;
  delete label.additionalProperties;
  return { $schema: DIALECT, $id: `${ADDRESS}/${name}.schema.json`, title, ...body };
}

/** Every published schema by the name of its file. */
export function schemas(): Record<string, Json> {
  const terms = recordSchema.shape.warranty.unwrap().shape.terms;
  return {
    record: input(recordSchema, "record", "Record of one battery on one day"),
    terms: input(terms, "terms", "Warranty terms"),
    evaluation: output("src/evaluate/evaluation.ts", "Evaluation", "evaluation", "Evaluation of one record"),
    settlement: output("src/warranty/settlement.ts", "Settlement", "settlement", "Settlement of one claim"),
  };
}

export const schemaPath = (name: string): string => `docs/schemas/${name}.schema.json`;
export const schemaText = (schema: Json): string => `${JSON.stringify(schema, undefined, 2)}\n`;
