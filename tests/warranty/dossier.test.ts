import { createHash, createHmac } from "node:crypto";
import { evaluate } from "crankworthy";
import {
  canonicalJson,
  type Dossier,
  type DossierContent,
  type SealKey,
  sealDossier,
  settleClaim,
  verifyDossier,
} from "crankworthy/warranty";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { repeatedKey } from "../../src/warranty/repeated-key.js";
import { purchase, terms } from "./terms-for-tests.js";

const key = "a key of the desk, thirty-two bytes";
const record = {
  id: "CLM2025000123J",
  identity: { chemistry: "flooded", rating: { standard: "sae-j537", amperes: 600 } },
  conditions: { inspectedOn: "2024-03-01", temperatureCelsius: 21, chargeCompleted: true },
  measurements: { restVolts: 12.64, cranking: { standard: "sae-j537", amperes: [290, 296, 288] } },
  warranty: { terms, purchase },
} as const;
const content: DossierContent = {
  record,
  evaluation: evaluate(record),
  terms,
  settlement: settleClaim({ terms, purchase, claimedOn: "2024-03-01" }),
  libraryVersion: "0.1.0",
  tableVersions: { ratings: "1" },
};

async function sealed(options: { key?: SealKey } = {}, what = content): Promise<Dossier> {
  const dossier = await sealDossier(what, options);
  if ("refused" in dossier) throw new Error(dossier.reason);
  return dossier;
}
type Loose = Record<string, Record<string, unknown>>;
const copy = (dossier: Dossier) => structuredClone(dossier) as unknown as Loose;
const asDossier = (loose: unknown) => loose as Dossier;
/** What somebody with the library, but without the key, can do. */
async function forged(original: Dossier, change: (copy: Loose) => void): Promise<Dossier> {
  const altered = copy(original);
  change(altered);
  const { seal, format, ...rest } = altered;
  const anew = await sealed({}, rest as unknown as DossierContent);
  return asDossier({ ...anew, seal: { ...anew.seal, keyed: original.seal.keyed } });
}

describe("sealDossier and verifyDossier", () => {
  it("leave an untouched dossier intact, as object and as text, with key and without", async () => {
    for (const options of [{}, { key }, { key: new Uint8Array(32).fill(7) }]) {
      const dossier = await sealed(options);
      const text = canonicalJson(dossier) as string;
      for (const given of [dossier, text]) {
        const check = await verifyDossier(given, options);
        expect(check).toMatchObject({ answer: "intact", digestHolds: true, changes: [] });
        expect(check.keyedSeal).toBe(options.key ? "holds" : "none");
      }
      expect((await verifyDossier(text)).keyedSeal).toBe(options.key ? "not-checked" : "none");
    }
  });

  it("hash what they say: Node's own SHA-256 and HMAC as second opinion", async () => {
    const { seal, ...parts } = await sealed({ key });
    const { sha256, keyed, ...open } = seal;
    const digest = (value: unknown) =>
      createHash("sha256")
        .update(canonicalJson(value) as string)
        .digest("hex");
    const mark = (value: unknown) =>
      createHmac("sha256", key)
        .update(canonicalJson(value) as string)
        .digest("hex");
    expect(sha256).toBe(digest({ ...parts, seal: open }));
    expect(open.sections["record.measurements"]).toBe(digest(["record.measurements", record.measurements]));
    const { hmac, ...openKeyed } = keyed!;
    expect(hmac).toBe(mark({ ...parts, seal: { ...seal, keyed: openKeyed } }));
    expect(openKeyed.sections.terms).toBe(mark(["terms", terms]));
  });

  it("name the changed, added and removed sections", async () => {
    const dossier = await sealed();
    const altered = copy(dossier);
    altered.record!.measurements = { restVolts: 12.1 };
    altered.settlement!.total = "0.00";
    altered.terms!.cap = "10.00";
    delete altered.record!.conditions;
    delete altered.tableVersions;
    const { answer, changes, digestHolds } = await verifyDossier(asDossier(altered));
    expect(answer).toBe("changed");
    expect(digestHolds).toBe(false);
    const lines = changes.map(({ path, kind, shownBy }) => `${kind} ${path} ${shownBy}`);
    expect(lines.sort()).toEqual([
      "added terms.cap digest",
      "changed record.measurements digest",
      "changed settlement.total digest",
      "removed record.conditions digest",
      "removed tableVersions digest",
    ]);
  });

  it("find any change of any one leaf", async () => {
    const dossier = await sealed({ key });
    const { seal: _, ...parts } = dossier;
    const leaves: (readonly (string | number)[])[] = [];
    const walk = (value: unknown, path: readonly (string | number)[]): void => {
      if (typeof value !== "object" || value === null) leaves.push(path);
      else for (const [name, inner] of Object.entries(value)) walk(inner, [...path, name]);
    };
    walk(parts, []);
    expect(leaves.length).toBeGreaterThan(80);
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...leaves), async (leaf) => {
        const altered = copy(dossier);
        const parent = leaf
          .slice(0, -1)
          .reduce<Record<string, unknown>>((at, name) => at[name] as never, altered);
        const last = leaf.at(-1)!;
        parent[last] = parent[last] === "other" ? "another" : "other";
        const check = await verifyDossier(asDossier(altered));
        if (leaf[0] === "format") {
          expect(check.answer).toBe("not-a-dossier");
          return;
        }
        expect(check.changes).toHaveLength(1);
        expect(leaf.join(".").startsWith(check.changes[0]!.path)).toBe(true);
      }),
      { numRuns: 120 },
    );
  });

  it("with a key, name the section whose hashes were computed anew", async () => {
    const dossier = await sealed({ key });
    const altered = await forged(dossier, ({ record }) => {
      record!.warranty = { terms, purchase: { ...purchase, soldOn: "2023-01-15" } };
    });
    // Without the key nothing shows: this is what a hash cannot do.
    expect(await verifyDossier(altered)).toMatchObject({ answer: "intact", keyedSeal: "not-checked" });
    expect(await verifyDossier(altered, { key })).toMatchObject({
      answer: "changed",
      digestHolds: true,
      keyedSeal: "broken",
      changes: [{ path: "record.warranty", kind: "changed", shownBy: "keyed" }],
    });
  });

  it("see a genuine section of another dossier put in, marks and all", async () => {
    const [first, second] = [
      await sealed({ key }),
      await sealed({ key }, { ...content, record: { ...record, id: "B" } }),
    ];
    const mixed = await forged(first, ({ record }) => {
      record!.id = "B" as never;
    });
    const marks = { ...first.seal.keyed!.sections };
    for (const path of ["record", "record.id"]) marks[path] = second.seal.keyed!.sections[path]!;
    const keyed = { ...first.seal.keyed!, sections: marks };
    const check = await verifyDossier({ ...mixed, seal: { ...mixed.seal, keyed } }, { key });
    expect(check).toMatchObject({ answer: "changed", changes: [{ path: "seal", shownBy: "keyed" }] });
  });

  it("tell a missing keyed seal and another key from a change", async () => {
    const dossier = await sealed({ key });
    const { keyed: _, ...unkeyed } = dossier.seal;
    expect(await verifyDossier({ ...dossier, seal: unkeyed }, { key })).toMatchObject({
      answer: "not-authentic",
      keyedSeal: "missing",
    });
    expect(await verifyDossier(dossier, { key: "some other key of the desk" })).toMatchObject({
      answer: "not-authentic",
      keyedSeal: "other-key",
      digestHolds: true,
    });
  });

  it("find a changed seal", async () => {
    const dossier = await sealed({ key });
    const zeros = "0".repeat(64);
    const seal = { ...dossier.seal, sha256: zeros };
    expect((await verifyDossier({ ...dossier, seal })).changes).toEqual([
      { path: "seal", kind: "changed", shownBy: "digest" },
    ]);
    const keyed = { ...dossier.seal.keyed!, hmac: zeros };
    expect((await verifyDossier({ ...dossier, seal: { ...dossier.seal, keyed } }, { key })).changes).toEqual([
      { path: "seal", kind: "changed", shownBy: "keyed" },
    ]);
  });

  it("keep the content of a reformatted text, and say that it was reformatted", async () => {
    const dossier = await sealed({ key });
    const check = await verifyDossier(JSON.stringify(dossier, null, 2), { key });
    expect(check).toMatchObject({ answer: "intact", canonicalText: false });
    expect((await verifyDossier(canonicalJson(dossier) as string)).canonicalText).toBe(true);
  });

  it("copy: what the caller changes afterwards does not reach the dossier", async () => {
    const own = structuredClone(record) as { measurements: { restVolts: number } };
    const dossier = await sealed({}, { ...content, record: own });
    own.measurements.restVolts = 1;
    expect((await verifyDossier(dossier)).answer).toBe("intact");
  });

  it("take a key without a value for a missing key, but not a hole in a list", async () => {
    const { id, ...withoutId } = record;
    const one = await sealed({}, { ...content, record: { ...withoutId, id: undefined } });
    const other = await sealed({}, { ...content, record: withoutId });
    expect(one).toEqual(other);
    const holes = { ...record, measurements: { cellGravities: [1.26, undefined] } };
    expect(await sealDossier({ ...content, record: holes })).toMatchObject({
      path: "record.measurements.cellGravities[1]",
    });
  });

  it("refuse what JSON cannot carry, with its path", async () => {
    const bad = { ...record, measurements: { restVolts: Number.NaN } };
    expect(await sealDossier({ ...content, record: bad })).toMatchObject({
      refused: true,
      path: "record.measurements.restVolts",
    });
  });

  it.each<[string, unknown]>([
    ["no JSON", "{"],
    ["null", "null"],
    ["a list", "[]"],
    ["a number", "1"],
    ["another format", '{"format":"other"}'],
    ["no parts", '{"format":"crankworthy-dossier/1"}'],
    ["no seal", '{"format":"crankworthy-dossier/1","record":{},"evaluation":{}}'],
    [
      "a seal of another shape",
      '{"format":"crankworthy-dossier/1","record":{},"evaluation":{},"seal":{"sections":{"a":1},"sha256":"0"}}',
    ],
    ["levels without end", `${"[".repeat(100_000)}${"]".repeat(100_000)}`],
    ["an object that is no data", { format: "crankworthy-dossier/1", record: new Date(0) }],
    ["nothing", undefined],
  ])("answer not-a-dossier with a reason: %s", async (_, given) => {
    const check = await verifyDossier(given as string, { key });
    expect(check.answer).toBe("not-a-dossier");
    expect(check.reason).toMatch(/\w+ .*\.$/);
  });

  it("are not led astray by names that every object inherits", async () => {
    const dossier = await sealed({ key });
    const altered = JSON.parse(
      (canonicalJson(dossier) as string).replace(/^\{/, '{"constructor":{"x":1},"__proto__":{"valueOf":2},'),
    );
    const { answer, changes } = await verifyDossier(altered, { key });
    expect(answer).toBe("changed");
    expect(changes.map(({ path, kind }) => `${kind} ${path}`).sort()).toEqual([
      "added __proto__",
      "added constructor",
    ]);
  });

  it.each(["", "short", new Uint8Array(15)])("throw for a key that is too short: %j", async (short) => {
    await expect(sealDossier(content, { key: short })).rejects.toThrow(/^key: received \d+ bytes/);
    await expect(verifyDossier(await sealed(), { key: short })).rejects.toThrow(RangeError);
  });
});

describe("a text that says two things", () => {
  const nothing = { digestHolds: false, keyedSeal: "none", changes: [] };

  it.each([
    ["a value", '"restVolts":12.64', '"restVolts":11,"restVolts":12.64', "record.measurements.restVolts"],
    [
      "the same value",
      '"restVolts":12.64',
      '"restVolts":12.64 , "restVolts" :12.64',
      "record.measurements.restVolts",
    ],
    [
      "a key with an escape",
      '"restVolts":12.64',
      '"rest\\u0056olts":11,"restVolts":12.64',
      "record.measurements.restVolts",
    ],
    ["a part", '"record":{', '"record":{"id":"another"},"record":{', "record"],
    ["in a list", '"lines":[{', '"lines":[{"kind":"basis",', "settlement.lines.0.kind"],
    ["a mark", '"sha256":', '"sha256":"","sha256":', "seal.sha256"],
  ])("%s written twice is refused, with key and without", async (_, found, instead, path) => {
    const text = canonicalJson(await sealed({ key })) as string;
    const at = text.lastIndexOf(found);
    expect(at).toBeGreaterThan(0);
    const twice = text.slice(0, at) + instead + text.slice(at + found.length);
    expect(() => JSON.parse(twice)).not.toThrow();
    for (const options of [{}, { key }]) {
      const reason = `The text says two things: ${path} is written twice.`;
      expect(await verifyDossier(twice, options)).toEqual({ answer: "not-a-dossier", ...nothing, reason });
    }
  });

  it("white space, another order, and like keys in different objects do no harm", async () => {
    const what = {
      ...content,
      record: { ...record, notes: ['","id":"7"', '\\"', { id: 1 }, { id: 1 }, [[{ id: 2 }]]] },
    };
    const dossier = await sealed({ key }, what);
    const turned = Object.fromEntries(Object.entries(dossier).reverse());
    for (const text of [JSON.stringify(dossier, null, 2), JSON.stringify(turned)]) {
      expect(await verifyDossier(text, { key })).toMatchObject({ answer: "intact", canonicalText: false });
    }
  });

  it("never takes a text without repetition for one with it", () => {
    fc.assert(fc.property(fc.json(), (text) => repeatedKey(text) === undefined));
  });

  it("takes time in proportion to the text", () => {
    const text = `{${Array.from({ length: 200_000 }, (_, i) => `"${i}":"\\\\"`).join(",")},"7":0}`;
    expect(repeatedKey(text)).toBe("7");
  });
});
