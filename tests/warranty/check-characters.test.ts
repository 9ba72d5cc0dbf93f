import {
  type CheckSystem,
  checkCharacters,
  claimReference,
  hasValidCheck,
  likelyTypos,
  readClaimReference,
} from "crankworthy/warranty";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const SYSTEMS: [CheckSystem, string][] = [
  ["mod-11-2", "0123456789"],
  ["mod-11-10", "0123456789"],
  ["mod-37-2", "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"],
  ["mod-37-36", "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"],
  ["mod-97-10", "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"],
];
const pure = new Set<CheckSystem>(["mod-11-2", "mod-37-2", "mod-97-10"]);

const text = (alphabet: string, max = 20) =>
  fc.string({ unit: fc.constantFrom(...alphabet), minLength: 1, maxLength: max });
const complete = (system: CheckSystem, data: string) => data + (checkCharacters(system, data) as string);

describe.each(SYSTEMS)("%s", (system, alphabet) => {
  it("round trip", () => {
    fc.assert(
      fc.property(text(alphabet), (data) => {
        expect(hasValidCheck(system, complete(system, data))).toBe(true);
      }),
    );
  });

  // MOD 97-10 is made for digits; a letter counts as two, so only digit for digit is guaranteed.
  const letters = system === "mod-97-10" ? "0123456789" : alphabet;
  it("catches every single substitution", () => {
    fc.assert(
      fc.property(text(letters), fc.nat(), fc.constantFrom(...letters), (data, seed, other) => {
        const valid = complete(system, data);
        const at = seed % data.length;
        fc.pre(valid[at] !== other);
        expect(hasValidCheck(system, valid.slice(0, at) + other + valid.slice(at + 1))).toBe(false);
      }),
    );
  });

  it.runIf(pure.has(system))("catches every adjacent transposition", () => {
    fc.assert(
      fc.property(
        text(letters).filter((t) => t.length > 1),
        fc.nat(),
        (data, seed) => {
          const valid = complete(system, data);
          const at = seed % (data.length - 1);
          fc.pre(valid[at] !== valid[at + 1]);
          const swapped = valid.slice(0, at) + valid[at + 1] + valid[at] + valid.slice(at + 2);
          expect(hasValidCheck(system, swapped)).toBe(false);
        },
      ),
    );
  });

  it("likelyTypos finds the slip that was made, and only valid corrections", () => {
    fc.assert(
      fc.property(text(letters, 12), fc.nat(), fc.constantFrom(...letters), (data, seed, other) => {
        const valid = complete(system, data);
        const at = seed % data.length;
        fc.pre(valid[at] !== other);
        const typos = likelyTypos(system, valid.slice(0, at) + other + valid.slice(at + 1));
        expect(typos.some((typo) => typo.corrected === valid)).toBe(true);
        expect(typos.every((typo) => hasValidCheck(system, typo.corrected))).toBe(true);
      }),
      { numRuns: 30 },
    );
  });
});

describe("checkCharacters", () => {
  it.each(["", "12A", "1 2", "١"])("mod-11-2 refuses %j", (data) =>
    expect(checkCharacters("mod-11-2", data)).toMatchObject({ refused: true, code: "foreign-character" }),
  );
  it("is false for a text too short to hold data", () => {
    for (const [system] of SYSTEMS)
      for (const short of ["", "0"]) expect(hasValidCheck(system, short)).toBe(false);
  });
});

describe("claim references", () => {
  it("folds case, spaces and hyphens, names a look-alike without repairing it", () => {
    expect(readClaimReference("clm 2025-000123 j")).toEqual({
      valid: true,
      folded: "CLM2025000123J",
      typos: [],
    });
    const read = readClaimReference("CLM2O25000123J");
    expect(read.valid).toBe(false);
    expect(read.folded).toBe("CLM2O25000123J");
    expect(read.typos[0]).toMatchObject({ kind: "look-alike", position: 5, written: "O", instead: "0" });
  });
  it("does not fold letters outside ASCII", () => expect(readClaimReference("clıj").folded).toBe("CLıJ"));
  it("digits only with MOD 97-10", () => expect(claimReference(["794"], "mod-97-10")).toBe("79444"));
  it("refuses what the system cannot hold", () =>
    expect(claimReference(["CLM-1"])).toMatchObject({ refused: true }));
});
