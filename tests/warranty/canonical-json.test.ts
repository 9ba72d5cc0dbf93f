import { canonicalJson } from "crankworthy/warranty";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

/** Keys in any order. */
function shuffled(value: unknown, random: () => number): unknown {
  if (Array.isArray(value)) return value.map((one) => shuffled(one, random));
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value).map(([key, one]) => [key, shuffled(one, random)] as const);
  return Object.fromEntries(entries.sort(() => random() - 0.5));
}
const data = fc.jsonValue({ maxDepth: 5, noUnicodeString: false });

describe("canonicalJson", () => {
  it("is JSON of the same content, and its own canonical form", () => {
    fc.assert(
      fc.property(data, (value) => {
        const text = canonicalJson(value);
        if (typeof text !== "string") {
          expect(text.reason).toContain("surrogate");
          return;
        }
        expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(value)));
        expect(canonicalJson(JSON.parse(text))).toBe(text);
      }),
    );
  });

  it("does not depend on the order of keys", () => {
    fc.assert(
      fc.property(data, fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })), (value, stream) => {
        const random = () => stream.next().value as number;
        expect(canonicalJson(shuffled(value, random))).toEqual(canonicalJson(value));
      }),
    );
  });

  it("orders keys by code units, not by code points: U+1F600 before U+FB33", () => {
    expect(canonicalJson({ "\ufb33": 1, "\u{1f600}": 2, "\u20ac": 3, "1": 4 })).toBe(
      '{"1":4,"\u20ac":3,"\u{1f600}":2,"\ufb33":1}',
    );
  });

  it("takes a key named __proto__ for a key", () => {
    expect(canonicalJson(JSON.parse('{"b":1,"__proto__":{"a":2}}'))).toBe('{"__proto__":{"a":2},"b":1}');
  });

  const circle: Record<string, unknown> = {};
  circle.again = circle;
  it.each<[string, unknown, string]>([
    ["undefined", { a: { b: undefined } }, "a.b"],
    ["undefined itself", undefined, ""],
    ["NaN", { ability: [{ value: 1 }, { value: Number.NaN }] }, "ability[1].value"],
    ["an infinity", [0, Number.NEGATIVE_INFINITY], "[1]"],
    ["a hole in a list", Object.assign(new Array(3), { 0: 1, 2: 3 }), "[1]"],
    ["a function", { a: () => 1 }, "a"],
    ["a symbol", { a: Symbol("a") }, "a"],
    ["a big integer", { a: 10n }, "a"],
    ["a date", { soldOn: new Date(0) }, "soldOn"],
    ["a map", { a: new Map() }, "a"],
    ["half a surrogate pair", { id: "a\ud800" }, "id"],
    ["half a surrogate pair in a key", { "\udc00": 1 }, "\udc00"],
  ])("refuses %s with its path", (_, value, path) => {
    expect(canonicalJson(value)).toMatchObject({ refused: true, code: "not-representable", path });
  });

  it("refuses a circle instead of running for ever", () => {
    expect(canonicalJson(circle)).toMatchObject({
      refused: true,
      path: expect.stringMatching(/^again(\.again)+$/),
    });
  });

  it("does not call toJSON", () => {
    expect(canonicalJson({ a: { toJSON: () => "other" } })).toMatchObject({ path: "a.toJSON" });
  });
});
