import { type Evaluation, evaluate } from "crankworthy/evaluate";
import { renderDerivation, renderJson, renderTicket } from "crankworthy/report";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { changed, evaluations, good, records } from "./records.js";

/** The same evaluation, its keys put in another order. */
function shuffled<T>(value: T): T {
  if (Array.isArray(value)) return value.map(shuffled) as T;
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value).reverse();
  return Object.fromEntries(
    entries.map(([key, inner]) => [key, key === "inputs" ? inner : shuffled(inner)]),
  ) as T;
}

describe("renderJson", () => {
  it.each(Object.entries(records))(
    "%s comes back as it was, and every renderer says the same of it",
    (_, record) => {
      const evaluation = evaluate(record, { explain: true });
      const back = JSON.parse(renderJson(evaluation)) as Evaluation;
      // JSON knows no undefined and no minus zero.
      expect(back).toEqual(JSON.parse(JSON.stringify(evaluation)));
      expect(renderTicket(back)).toBe(renderTicket(evaluation));
      expect(renderDerivation(back)).toBe(renderDerivation(evaluation));
      expect(renderJson(back)).toBe(renderJson(evaluation));
    },
  );

  it.each(Object.entries(evaluations))(
    "%s: the text does not depend on how the object was built",
    (_, evaluation) => {
      expect(renderJson(shuffled(evaluation))).toBe(renderJson(evaluation));
    },
  );

  it("the version comes first, then the alphabet", () => {
    const keys = Object.keys(JSON.parse(renderJson(evaluations.claim!)) as object);
    expect(keys[0]).toBe("schemaVersion");
    expect(keys.slice(1)).toEqual(keys.slice(1).sort());
  });

  it("no number that is none gets out: its place is named", () => {
    const [step] = evaluate(good, { explain: true }).derivation!;
    const bad: Evaluation = { ...evaluations.good!, derivation: [{ ...step!, inputs: { x: Number.NaN } }] };
    expect(() => renderJson(bad)).toThrow(
      new RangeError("derivation[0].inputs.x: received NaN, expected a finite number"),
    );
  });

  it("what is undefined is left out and minus zero is zero", () => {
    const { id: _, ...rest } = evaluations.good!;
    const odd = { ...rest, verdict: { ...rest.verdict, serviceableProbability: -0 }, inspectedOn: undefined };
    const text = renderJson(odd as unknown as Evaluation, { indent: 0 });
    expect(text).toContain('"serviceableProbability":0,');
    expect(text).not.toMatch(/undefined|null|inspectedOn|-0[,}]/);
  });

  it("any name comes back, and none ends a script it may stand in", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", minLength: 1, maxLength: 60 }), (name) => {
        const id = `</script><!--${name}`;
        const text = renderJson({ ...evaluations.good!, id });
        expect(text).not.toContain("<");
        expect((JSON.parse(text) as Evaluation).id).toBe(id);
      }),
    );
    expect(JSON.parse(renderJson(evaluate(changed({ id: "a" })))).id).toBe("a");
  });

  it.each([-1, 9, 1.5, Number.NaN])("an indent of %s is a mistake", (indent) => {
    expect(() => renderJson(evaluations.good!, { indent })).toThrow(RangeError);
  });
});
