import { readFileSync } from "node:fs";
import { evaluate, LIBRARY_VERSION, reopenDossier } from "crankworthy/evaluate";
import { canonicalJson, type Dossier, sealDossier } from "crankworthy/warranty";
import { describe, expect, it } from "vitest";

const key = "a key of the desk, thirty-two bytes";
const day = readFileSync("examples/counter-day/records.jsonl", "utf8")
  .split("\n")
  .filter((line) => line !== "")
  .map((line) => JSON.parse(line));
const claim = day.find(({ id }) => id === "13-quarry-loader");

async function sealed(record: object, options = {}, libraryVersion = LIBRARY_VERSION): Promise<Dossier> {
  const dossier = await sealDossier(
    { record, evaluation: evaluate(record, options), libraryVersion, ...options },
    { key },
  );
  if ("refused" in dossier) throw new Error(dossier.reason);
  return dossier;
}

describe("reopenDossier", () => {
  it("moves nothing for any record of the day, with and without derivation", async () => {
    for (const record of day)
      for (const explain of [false, true]) {
        const evaluation = evaluate(record, { explain });
        const dossier = await sealDossier({ record, evaluation, libraryVersion: LIBRARY_VERSION }, { key });
        const { check, differences, after } = await reopenDossier(canonicalJson(dossier) as string, { key });
        expect(check.answer, record.id).toBe("intact");
        expect(differences, record.id).toEqual([]);
        expect(after?.derivation !== undefined).toBe(explain);
      }
  });

  it("shows every number of an evaluation that a version made differently, and both versions", async () => {
    const evaluation = structuredClone(evaluate(claim)) as unknown as {
      warranty: { settlement: { lines: { amount: string }[] } };
    };
    evaluation.warranty.settlement.lines[1]!.amount = "0.01";
    const dossier = await sealDossier({ record: claim, evaluation, libraryVersion: "0.0.9" }, { key });
    const { check, versions, differences } = await reopenDossier(dossier as Dossier, { key });
    expect(check.answer).toBe("intact");
    expect(versions).toEqual({ sealed: "0.0.9", opened: LIBRARY_VERSION });
    expect(differences).toHaveLength(1);
    expect(differences[0]).toMatchObject({
      path: "warranty.settlement.lines[rebate].amount",
      before: "0.01",
    });
  });

  it("evaluates under the sealed policy", async () => {
    const policy = { serviceableFraction: 0.95, unserviceableFraction: 0.9 };
    const dossier = await sealDossier(
      { record: day[0], evaluation: evaluate(day[0], { policy }), policy, libraryVersion: LIBRARY_VERSION },
      { key },
    );
    expect((await reopenDossier(dossier as Dossier, { key })).differences).toEqual([]);
    const { policy: _, ...without } = dossier as Dossier;
    expect((await reopenDossier(without as Dossier)).differences.length).toBeGreaterThan(0);
  });

  it("evaluates an altered record, and says that it is altered", async () => {
    const dossier = await sealed(claim);
    const purchase = { ...claim.warranty.purchase, soldOn: "2025-09-09" };
    const altered = { ...dossier, record: { ...claim, warranty: { ...claim.warranty, purchase } } };
    const { check, differences } = await reopenDossier(altered, { key });
    expect(check.changes.map(({ path }) => path)).toEqual(["record.warranty"]);
    const outcome = differences.find(({ path }) => path === "warranty.settlement.outcome");
    expect(outcome).toMatchObject({ before: "prorated", after: "free-replacement" });
  });

  it("hands on the issues of a record that this version does not take", async () => {
    const dossier = await sealed(claim);
    const altered = { ...dossier, record: { ...claim, measurements: { restVolts: 12_600 } } };
    const { issues, after, before, differences } = await reopenDossier(altered);
    expect(issues?.map(({ path }) => path)).toEqual(["measurements.restVolts"]);
    expect(after).toBeUndefined();
    expect(before).toBeDefined();
    expect(differences).toEqual([]);
  });

  it("names a sealed policy that this version does not know", async () => {
    const dossier = await sealed(claim);
    const policy = { serviceablePart: 0.9 };
    const { issues, after } = await reopenDossier({ ...dossier, policy });
    expect(issues).toMatchObject([{ code: "out-of-range", path: "policy" }]);
    expect(issues![0]!.message).toContain("serviceablePart");
    expect(after).toBeUndefined();
  });

  it("answers for a text that is no dossier", async () => {
    const { check, versions, differences } = await reopenDossier("[]");
    expect(check.answer).toBe("not-a-dossier");
    expect(versions).toEqual({ opened: LIBRARY_VERSION });
    expect(differences).toEqual([]);
  });

  it("survives parts of any shape", async () => {
    const frame = await sealed(claim);
    for (const policy of ["x", 3, [], null])
      for (const evaluation of [{}, { derivation: 7 }, { findings: 3, verdict: null }]) {
        const odd = { ...frame, evaluation, policy } as unknown as Dossier;
        expect((await reopenDossier(odd)).check.answer).toBe("changed");
      }
  });
});
