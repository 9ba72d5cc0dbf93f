import {
  type DateSchemeId,
  dateSchemes,
  decodeContext,
  decodeDateCode,
  encodeDateCode,
  type WeekRule,
} from "crankworthy/date-codes";
import { dayNumber, isRefusal, plainDate } from "crankworthy/numeric";
import { bibliography } from "crankworthy/sources";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const FIRST = dayNumber("1990-01-01");
const LAST = dayNumber("2049-12-31");
const ids = Object.keys(dateSchemes) as DateSchemeId[];
const weekRules: readonly WeekRule[] = ["iso", "jan1"];

describe("every scheme, every day of sixty years", () => {
  const contexts = weekRules.map((weekRule) =>
    Array.from({ length: 60 }, (_, index) =>
      decodeContext({ inspectedOn: `${1990 + index}-12-31`, maxAgeYears: 12, weekRule }),
    ),
  );
  it.each(ids)("%s: the code of a day means a period with this day", (id) => {
    const scheme = dateSchemes[id];
    weekRules.forEach((rule, ruleIndex) => {
      for (let day = FIRST; day <= LAST; day++) {
        const code = scheme.encode(day, rule);
        const context = contexts[ruleIndex]![Number(plainDate(day).slice(0, 4)) - 1990]!;
        const periods = scheme.decode(code, context);
        const holding = periods.filter(({ fromDay, toDay }) => fromDay <= day && day <= toDay);
        if (holding.length !== 1) expect.fail(`${plainDate(day)} as ${code}: ${JSON.stringify(periods)}`);
      }
    });
  });
});

describe("every scheme", () => {
  const arbitraryCode = fc.oneof(
    fc
      .integer({ min: FIRST, max: LAST })
      .chain((day) => fc.constantFrom(...ids).map((id) => dateSchemes[id].encode(day))),
    fc.string({ unit: fc.constantFrom(..."0123456789ABGIJLMOX/-."), maxLength: 10 }),
  );

  it("names a source of the bibliography and stands under its own name", () => {
    for (const id of ids) {
      expect(dateSchemes[id].id).toBe(id);
      expect(bibliography).toHaveProperty(dateSchemes[id].source);
    }
  });

  it("reads back only codes whose every day is printed with the same code, or a form of it", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ids),
        arbitraryCode,
        fc.constantFrom(...weekRules),
        (id, text, weekRule) => {
          const context = decodeContext({ inspectedOn: "2040-06-15", maxAgeYears: 40, weekRule });
          for (const { fromDay, toDay } of dateSchemes[id].decode(text, context)) {
            const bare = text.replace(/[/.-]/g, "");
            for (const day of [fromDay, toDay]) {
              const printed = dateSchemes[id].encode(day, weekRule).replace(/[/.-]/g, "");
              // The last days of a year, numbered on: read, but printed as week 1.
              if (weekRule === "jan1" && id.includes("ww") && /5[34]/.test(bare) && printed !== bare)
                expect(plainDate(day)).toMatch(/-12-(2[6-9]|3.)$/);
              else if (id === "yymmdd" && bare.endsWith("00"))
                expect(printed.slice(0, 4)).toBe(bare.slice(0, 4));
              else expect(printed).toBe(bare);
            }
          }
        },
      ),
      { numRuns: 3000 },
    );
  });

  it("gives whole periods, newest first, that touch the window", () => {
    const length = { day: [1, 1], week: [7, 7], month: [28, 31] } as const;
    fc.assert(
      fc.property(
        fc.constantFrom(...ids),
        arbitraryCode,
        fc.integer({ min: FIRST, max: LAST }),
        fc.integer({ min: 1, max: 45 }),
        (id, text, inspectionDay, maxAgeYears) => {
          const context = decodeContext({ inspectedOn: plainDate(inspectionDay), maxAgeYears });
          let last = Number.POSITIVE_INFINITY;
          for (const { fromDay, toDay, weekRule } of dateSchemes[id].decode(text, context)) {
            expect(fromDay).toBeLessThanOrEqual(inspectionDay);
            expect(toDay).toBeGreaterThanOrEqual(context.earliestDay);
            expect(fromDay).toBeLessThan(last);
            last = fromDay;
            const [shortest, longest] =
              length[id === "yymmdd" && text.endsWith("00") ? "month" : dateSchemes[id].precision];
            // Weeks counted from 1 January end with the year, so the last one may be short.
            const cutOff = weekRule === "jan1" && plainDate(toDay).endsWith("-12-31");
            expect(toDay - fromDay + 1).toBeGreaterThanOrEqual(cutOff ? 1 : shortest);
            expect(toDay - fromDay + 1).toBeLessThanOrEqual(longest);
          }
        },
      ),
      { numRuns: 3000 },
    );
  });

  it("refuses a text of any other shape", () => {
    const context = decodeContext({ inspectedOn: "2040-06-15", maxAgeYears: 60 });
    const shapeless =
      "|0|A|A12|00000|12-2|2024-3-13|2024/03/13|2024-03-13T|03 24|0x24|+324|1e03|٠٣٢٤|-324|3.24";
    for (const text of shapeless.split("|")) {
      expect([text, ids.filter((id) => dateSchemes[id].decode(text, context).length > 0)]).toEqual([
        text,
        [],
      ]);
    }
  });

  it.each([
    ["0024", ["yddd", "ywwd"]],
    ["1300", ["yddd"]],
    ["5400", []],
    ["5424", ["ywwd"]],
    ["1367", ["ywwd"]],
    ["I0", ["letter-month-a-to-l"]],
    ["241301", []],
    ["23366", []],
    ["24366", ["yyddd"]],
    ["00000000", []],
  ] as const)("%s is read by %j only", (text, expected) => {
    const context = decodeContext({ inspectedOn: "2040-06-15", maxAgeYears: 39 });
    expect(ids.filter((id) => dateSchemes[id].decode(text, context).length > 0)).toEqual(expected);
  });
});

describe("month letters", () => {
  const monthOf = (id: DateSchemeId, letter: string): number | undefined => {
    const text = id.startsWith("digit") ? `4${letter}` : `${letter}4`;
    const result = decodeDateCode(text, { inspectedOn: "2025-06-15", maxAgeYears: 5, schemes: [id] });
    return isRefusal(result) ? undefined : Number(result.readings[0]!.from.slice(5, 7));
  };

  it.each(["letter-month", "digit-letter"] as const)("%s: the alphabets part from I on", (order) => {
    const skipped = [..."ABCDEFGHIJKLM"].map((letter) => monthOf(`${order}-no-i`, letter));
    const kept = [..."ABCDEFGHIJKLM"].map((letter) => monthOf(`${order}-a-to-l`, letter));
    expect(skipped).toEqual([1, 2, 3, 4, 5, 6, 7, 8, undefined, 9, 10, 11, 12]);
    expect(kept).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, undefined]);
  });
});

describe("separators", () => {
  const read = (text: string): string => {
    const result = decodeDateCode(text, { inspectedOn: "2025-06-15" });
    return isRefusal(result) ? result.code : result.readings.map(({ from, to }) => `${from} ${to}`).join();
  };
  it("month and year with any of three marks are the same month", () => {
    for (const text of ["03/24", "03-24", "03.24", "03/2024", "03-2024", "03.2024", "2024-03", "2024/03"]) {
      expect([text, read(text)]).toEqual([text, "2024-03-01 2024-03-31"]);
    }
    expect(read("03:24")).toBe("no-reading");
    expect(read("0/324")).toBe("no-reading");
    expect(encodeDateCode("mmyy", "2024-03-13")).toBe("0324");
  });
});
