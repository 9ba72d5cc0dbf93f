import {
  type DateCodeRefusal,
  type DateCodeResult,
  DEFAULT_MAX_AGE_YEARS,
  type DecodeOptions,
  decodeContext,
  decodeDateCode,
  encodeDateCode,
  MAX_TEXT_LENGTH,
} from "crankworthy/date-codes";
import { dayNumber, isRefusal, plainDate } from "crankworthy/numeric";
import { bibliography, type DerivationStep } from "crankworthy/sources";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const TODAY = "2025-06-15";

function result(text: string, options: Partial<DecodeOptions> = {}): DateCodeResult {
  const answer = decodeDateCode(text, { inspectedOn: TODAY, ...options });
  if (isRefusal(answer)) throw new Error(`refused: ${answer.code}`);
  return answer;
}

function refusal(text: string, options: Partial<DecodeOptions> = {}): DateCodeRefusal {
  const answer = decodeDateCode(text, { inspectedOn: TODAY, ...options });
  if (!isRefusal(answer)) throw new Error(`not refused: ${JSON.stringify(answer.readings)}`);
  return answer;
}

describe("window", () => {
  it("reaches from the same calendar day years earlier to the inspection and its tolerance", () => {
    const leap = decodeContext({ inspectedOn: "2024-02-29", maxAgeYears: 1, toleranceDays: 3 });
    expect(plainDate(leap.earliestDay)).toBe("2023-02-28");
    expect(plainDate(leap.latestDay)).toBe("2024-03-03");
    const plain = decodeContext({ inspectedOn: TODAY });
    expect(plainDate(plain.earliestDay)).toBe(`${2025 - DEFAULT_MAX_AGE_YEARS}-06-15`);
  });

  it("takes a period by its first day at the late end and by its last day at the early end", () => {
    const read = (text: string, scheme: "yymmdd" | "mmyy") => {
      const answer = decodeDateCode(text, { inspectedOn: TODAY, maxAgeYears: 10, schemes: [scheme] });
      return isRefusal(answer) ? answer.code : "read";
    };
    expect(read("250615", "yymmdd")).toBe("read");
    expect(read("250616", "yymmdd")).toBe("outside-window");
    expect(read("150615", "yymmdd")).toBe("read");
    expect(read("150614", "yymmdd")).toBe("outside-window");
    expect(read("0625", "mmyy")).toBe("read");
    expect(read("0725", "mmyy")).toBe("outside-window");
    expect(read("0615", "mmyy")).toBe("read");
    expect(read("0515", "mmyy")).toBe("outside-window");
  });

  it("toleranceDays lets in goods dated ahead, and says so", () => {
    const options = { schemes: ["yymmdd"] } as const;
    expect(refusal("250618", options).code).toBe("outside-window");
    const [reading] = result("250618", { ...options, toleranceDays: 3 }).readings;
    expect(reading!.reasons).toContain("dated-ahead");
    expect(reading!.ageDays).toEqual({ lower: -3, upper: -3 });
    const crossing = { inspectedOn: "2024-12-30", toleranceDays: 40, schemes: ["mmyy"] } as const;
    expect(result("0225", crossing).readings[0]!.from).toBe("2025-02-01");
    const twoYears = { inspectedOn: "2024-12-31", toleranceDays: 366, schemes: ["mmyy"] } as const;
    expect(result("0126", twoYears).readings[0]!.from).toBe("2026-01-01");
  });

  it("a week of the year before the earliest counts when its last day is inside", () => {
    const options = { inspectedOn: "2031-01-02", maxAgeYears: 10, schemes: ["yyww"] } as const;
    expect(result("2053", options).readings[0]).toMatchObject({ from: "2020-12-28", to: "2021-01-03" });
    expect(refusal("2052", options).code).toBe("outside-window");
  });

  it("an open decade gives every decade, newest first, and says so", () => {
    const { readings, ambiguous, settledBy } = result("C4", {
      schemes: ["letter-month-no-i"],
      maxAgeYears: 25,
    });
    expect(readings.map(({ from }) => from)).toEqual(["2024-03-01", "2014-03-01", "2004-03-01"]);
    expect(readings.every(({ reasons, rank }) => reasons.includes("open-decade") && rank === 1)).toBe(true);
    expect(ambiguous).toBe(true);
    expect(settledBy).toEqual(["sale-date", "vehicle-year", "second-code"]);
  });

  it("says when a month has not ended", () => {
    const [reading] = result("0625", { schemes: ["mmyy"] }).readings;
    expect(reading!.reasons).toEqual(["ends-after-inspection"]);
    expect(reading!.ageDays).toEqual({ lower: -15, upper: 14 });
  });

  it("throws for options outside their range, naming the argument", () => {
    const throws = (options: Partial<DecodeOptions>) => (message: RegExp) =>
      expect(() => result("0324", options)).toThrow(message);
    throws({ inspectedOn: "2025-02-29" })(/inspectedOn.*2025-02-29/);
    throws({ maxAgeYears: 0 })(/maxAgeYears/);
    throws({ maxAgeYears: Number.NaN })(/maxAgeYears/);
    throws({ toleranceDays: -1 })(/toleranceDays/);
    throws({ weekRule: "us" as "iso" })(/weekRule/);
    throws({ schemes: [] })(/schemes/);
    throws({ schemes: ["toString" as "mmyy"] })(/scheme.*toString/);
    throws({ evidence: { soldOn: "15.6.2025" } })(/soldOn/);
    throws({ evidence: { vehicleYear: 24 } })(/vehicleYear/);
  });
});

describe("text", () => {
  it("is trimmed and raised to upper case without a language", () => {
    expect(result(" b9\t").text).toBe("B9");
    // Upper case of the dotless i is I: taking it would read a Turkish letter as the month of September.
    expect(refusal("ı4").code).toBe("not-ascii");
    expect(refusal("B９").code).toBe("not-ascii");
    expect(refusal("B\n9").code).toBe("not-ascii");
  });

  it("is refused when empty, or too long, however long", () => {
    expect(refusal("  ").code).toBe("empty");
    expect(refusal("0".repeat(MAX_TEXT_LENGTH + 1)).code).toBe("too-long");
    expect(refusal("0".repeat(MAX_TEXT_LENGTH)).code).toBe("no-reading");
    const started = performance.now();
    for (const filler of ["0", "I", " ", "03/", "O"]) {
      const text = filler.repeat(1_000_000);
      expect(refusal(text).code).toBe("too-long");
      expect(result("0324", { evidence: { secondCode: { text } } }).notes).toEqual(["second-code-not-read"]);
    }
    expect(performance.now() - started).toBeLessThan(200);
  });

  it("gives a result or a refusal with words for any text at all", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 80 }), (text) => {
        const answer = decodeDateCode(text, { inspectedOn: TODAY });
        if (isRefusal(answer)) expect(answer.reason.length * answer.wouldHelp.length).toBeGreaterThan(0);
        else expect(answer.readings.length).toBeGreaterThan(0);
      }),
    );
  });
});

describe("refusals tell apart", () => {
  it("no date, a date elsewhere, and a doubtful year letter", () => {
    expect(refusal("2553", { inspectedOn: "2026-06-15", schemes: ["yyww"], weekRule: "iso" }).code).toBe(
      "no-reading",
    );
    expect(refusal("2653", { schemes: ["yyww"] }).code).toBe("outside-window");
    expect(refusal("240230", { schemes: ["yymmdd"] }).code).toBe("no-reading");
    expect(refusal("ZZ9").code).toBe("no-reading");
    expect(refusal("GD", { schemes: ["iec-60062"] }).code).toBe("iec-60062-year-g");
    expect(refusal("G0", { schemes: ["iec-60062"] }).code).toBe("no-reading");
  });

  it("G is read as a month where a scheme has it, with a note on the other scheme", () => {
    const { readings, notes } = result("G4");
    expect(new Set(readings.map(({ from }) => from))).toEqual(new Set(["2024-07-01", "2014-07-01"]));
    expect(notes).toEqual(["iec-60062-year-g-not-read"]);
    expect(result("G4", { schemes: ["letter-month-no-i"] }).notes).toEqual([]);
  });
});

describe("ambiguity", () => {
  it("two schemes that agree on the period are two readings and no ambiguity", () => {
    const { readings, ambiguous } = result("B4", {
      schemes: ["letter-month-no-i", "letter-month-a-to-l"],
      maxAgeYears: 5,
    });
    expect(readings).toHaveLength(2);
    expect(ambiguous).toBe(false);
  });

  it("J is September or October: knowing the scheme would settle it", () => {
    const { readings, ambiguous, settledBy } = result("J4", {
      schemes: ["letter-month-no-i", "letter-month-a-to-l"],
      maxAgeYears: 5,
    });
    expect(readings.map(({ from }) => from)).toEqual(["2024-10-01", "2024-09-01"]);
    expect(ambiguous).toBe(true);
    expect(settledBy).toEqual(["scheme", "sale-date", "second-code"]);
  });

  it("the week rule changes the days, not the kind", () => {
    const days = (weekRule: "iso" | "jan1") =>
      result("2101", { schemes: ["yyww"], weekRule }).readings[0]!.from;
    // 1 January 2021 was a Friday.
    expect(days("iso")).toBe("2021-01-04");
    expect(days("jan1")).toBe("2020-12-28");
  });

  describe("without a week rule", () => {
    const weeks = (text: string, options: Partial<DecodeOptions> = {}) =>
      result(text, { schemes: ["yyww"], ...options }).readings.map(({ from, to, weekRule }) => [
        from,
        to,
        weekRule,
      ]);

    it("both are read where they differ, each under its name", () => {
      expect(weeks("2101")).toEqual([
        ["2021-01-04", "2021-01-10", "iso"],
        ["2020-12-28", "2021-01-03", "jan1"],
      ]);
      const { ambiguous, settledBy } = result("2101", { schemes: ["yyww"] });
      expect([ambiguous, settledBy[0]]).toEqual([true, "scheme"]);
      expect(weeks("2101", { weekRule: "jan1" })).toEqual([["2020-12-28", "2021-01-03", undefined]]);
      const [ofDay] = result("1013", { schemes: ["ywwd"] }).readings;
      expect(ofDay).toMatchObject({ from: "2021-01-06", weekRule: "iso" });
    });

    it("what they agree on counts once", () => {
      expect(weeks("2410")).toEqual([["2024-03-04", "2024-03-10", undefined]]);
      expect(result("2410", { schemes: ["yyww"] }).ambiguous).toBe(false);
    });

    it("the last days of a year are week 53, or 54, counted from 1 January", () => {
      expect(weeks("2453")).toEqual([["2024-12-30", "2024-12-31", "jan1"]]);
      expect(refusal("2453", { schemes: ["yyww"], weekRule: "iso" }).code).toBe("no-reading");
      // 2012 began on a Sunday and had a leap day.
      expect(weeks("1254", { maxAgeYears: 20 })).toEqual([["2012-12-31", "2012-12-31", "jan1"]]);
      expect(refusal("2454", { schemes: ["yyww"] }).code).toBe("no-reading");
      const all = result("2453");
      expect(all.readings.map(({ scheme, from }) => `${scheme} ${from}`)).toEqual([
        "yyww 2024-12-30",
        "ywwd 2022-11-09",
        "ywwd 2022-11-02",
      ]);
      expect(all.ambiguous).toBe(true);
    });

    it("look-alikes are read the same way", () => {
      const { confusables } = refusal("2I01", { schemes: ["yyww"] });
      expect(confusables[0]?.alternativeReadings.map(({ weekRule }) => weekRule)).toEqual(["iso", "jan1"]);
    });

    it("any day coded under either rule is among the readings", () => {
      const days = fc.integer({ min: dayNumber("2014-01-01"), max: dayNumber("2025-06-01") });
      fc.assert(
        fc.property(days, fc.constantFrom("iso", "jan1"), (day, rule) => {
          const made = plainDate(day);
          const found = weeks(encodeDateCode("yyww", made, rule));
          expect(found.some(([from, to]) => from! <= made && made <= to!)).toBe(true);
          expect(new Set(found.map(String)).size).toBe(found.length);
        }),
      );
    });
  });

  it("day 00 stays a month", () => {
    const [reading] = result("240200", { schemes: ["yymmdd"] }).readings;
    expect(reading).toMatchObject({ from: "2024-02-01", to: "2024-02-29", precision: "month" });
    expect(reading!.reasons).toContain("day-not-given");
  });
});

describe("evidence", () => {
  const letter = { schemes: ["letter-month-no-i"] } as const;

  it("a sale before manufacture excludes; a plausible shelf time ranks", () => {
    const { readings, excluded, ambiguous } = result("C4", { ...letter, evidence: { soldOn: "2015-01-10" } });
    expect(readings.map(({ from }) => from)).toEqual(["2014-03-01"]);
    expect(readings[0]!.reasons).toEqual(["open-decade", "shortly-before-sale"]);
    expect(excluded).toEqual([
      { scheme: "letter-month-no-i", from: "2024-03-01", to: "2024-03-31", because: "made-after-sale" },
    ]);
    expect(ambiguous).toBe(false);

    const later = result("C4", { ...letter, evidence: { soldOn: "2024-08-01" } });
    expect(later.readings.map(({ from, rank }) => [from, rank])).toEqual([
      ["2024-03-01", 1],
      ["2014-03-01", 2],
    ]);
    // Doubtful is not impossible: still ambiguous.
    expect(later.ambiguous).toBe(true);
    expect(later.readings[1]!.reasons).toContain("long-before-sale");
  });

  it("a sale inside the period contradicts nothing and narrows nothing", () => {
    const [reading] = result("0324", { schemes: ["mmyy"], evidence: { soldOn: "2024-03-05" } }).readings;
    expect([reading!.from, reading!.to]).toEqual(["2024-03-01", "2024-03-31"]);
  });

  it("tolerance holds for the sale as for the inspection", () => {
    const options = { schemes: ["yymmdd"], evidence: { soldOn: "2024-03-10" } } as const;
    expect(refusal("240312", options).code).toBe("contradicted-by-evidence");
    expect(result("240312", { ...options, toleranceDays: 2 }).readings).toHaveLength(1);
  });

  it("activation excludes what was made later and says nothing about what was made long before", () => {
    const evidence = { activatedOn: "2020-01-01" };
    const { readings, excluded } = result("C4", { ...letter, evidence });
    expect(readings.map(({ from, reasons }) => [from, reasons])).toEqual([["2014-03-01", ["open-decade"]]]);
    expect(excluded.map(({ because }) => because)).toEqual(["made-after-activation"]);
  });

  it("nothing left is a refusal that shows what was excluded", () => {
    const { code, excluded } = refusal("0324", { schemes: ["mmyy"], evidence: { soldOn: "2023-12-31" } });
    expect(code).toBe("contradicted-by-evidence");
    expect(excluded).toHaveLength(1);
  });

  it("the vehicle's year puts an older battery last, and cannot tell an original from a replacement", () => {
    const { readings } = result("C4", { ...letter, evidence: { vehicleYear: 2018 } });
    expect(readings.map(({ from, rank }) => [from, rank])).toEqual([
      ["2024-03-01", 1],
      ["2014-03-01", 2],
    ]);
    expect(readings[1]!.reasons).toContain("older-than-vehicle");
    const original = result("C4", { ...letter, evidence: { vehicleYear: 2014 } }).readings;
    expect(original.map(({ rank }) => rank)).toEqual([1, 1]);
    expect(original[1]!.reasons).toContain("in-vehicle-year");
    expect(original[0]!.reasons).not.toContain("in-vehicle-year");
    const yearBefore = result("C4", { ...letter, evidence: { vehicleYear: 2015 } }).readings;
    expect(yearBefore[1]!.reasons).toContain("in-vehicle-year");
  });

  it("a second code supports what it overlaps", () => {
    const second = { ...letter, evidence: { secondCode: { text: "03/14", scheme: "mmyy" } } } as const;
    const { readings, notes } = result("C4", second);
    expect(readings.map(({ from, rank }) => [from, rank])).toEqual([
      ["2014-03-01", 1],
      ["2024-03-01", 2],
    ]);
    expect(readings[0]!.reasons).toContain("agrees-with-second-code");
    expect(notes).toEqual([]);
    const unread = result("C4", { ...letter, evidence: { secondCode: { text: "??" } } });
    expect(unread.notes).toEqual(["second-code-not-read"]);
    expect(unread.readings).toEqual(result("C4", letter).readings);
  });

  it("never adds, moves or narrows a reading", () => {
    const day = fc.integer({ min: 14_000, max: 20_600 }).map(plainDate);
    fc.assert(
      fc.property(
        fc.stringMatching(/^([A-M][0-9]|[0-9][A-M]|[0-9]{4,6})$/),
        fc.record(
          { soldOn: day, activatedOn: day, vehicleYear: fc.integer({ min: 2000, max: 2026 }) },
          { requiredKeys: [] },
        ),
        (text, evidence) => {
          const key = (one: { scheme: string; from: string; to: string }) =>
            `${one.scheme} ${one.from} ${one.to}`;
          const without = decodeDateCode(text, { inspectedOn: TODAY });
          const heard = decodeDateCode(text, { inspectedOn: TODAY, evidence });
          const before = isRefusal(without) ? [] : without.readings;
          const after = [...(isRefusal(heard) ? [] : heard.readings), ...heard.excluded];
          expect(after.map(key).sort()).toEqual(before.map(key).sort());
          if (!isRefusal(heard)) {
            const ranks = heard.readings.map(({ rank }) => rank);
            expect(ranks[0]).toBe(1);
            expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
          }
        },
      ),
    );
  });
});

describe("look-alikes", () => {
  it("are reported with what they would mean, and not repaired", () => {
    const answer = refusal("O324", { schemes: ["mmyy"] });
    expect(answer.code).toBe("no-reading");
    expect(answer.confusables).toHaveLength(1);
    expect(answer.confusables[0]).toMatchObject({ position: 0, read: "O", couldBe: "0" });
    expect(answer.confusables[0]!.alternativeReadings[0]!.from).toBe("2024-03-01");
  });

  it("work in both directions for the four pairs", () => {
    const pairs = (text: string, scheme: "iec-60062" | "yddd" | "letter-month-a-to-l") => {
      const answer = decodeDateCode(text, { inspectedOn: TODAY, maxAgeYears: 18, schemes: [scheme] });
      return answer.confusables.map(({ position, read, couldBe }) => `${position}${read}${couldBe}`);
    };
    expect(pairs("R0", "iec-60062")).toEqual(["10O"]);
    expect(pairs("RO", "iec-60062")).toEqual([]);
    expect(pairs("53", "iec-60062")).toEqual(["05S"]);
    expect(pairs("I4", "letter-month-a-to-l")).toEqual([]);
    expect(pairs("14", "letter-month-a-to-l")).toEqual(["01I"]);
    expect(pairs("BS", "letter-month-a-to-l")).toEqual(["1S5"]);
    expect(pairs("BZ", "letter-month-a-to-l")).toEqual(["1Z2"]);
    expect(pairs("B8", "letter-month-a-to-l")).toEqual([]);
  });

  it("ask for a closer look", () => {
    const october = result("5D", { schemes: ["digit-letter-no-i", "iec-60062"], maxAgeYears: 14 });
    expect(october.confusables).toMatchObject([{ position: 0, read: "5", couldBe: "S" }]);
    expect(october.confusables[0]!.alternativeReadings[0]!.from).toBe("2024-12-01");
    expect(october.settledBy).toContain("closer-look");
  });
});

describe("templates", () => {
  const template = (text: string, pattern: string) =>
    decodeDateCode(text, {
      inspectedOn: TODAY,
      schemes: [{ scheme: "letter-month-no-i", template: pattern }],
    });

  it("take the marked characters only", () => {
    const answer = template("7b4-2", "?##-?");
    if (isRefusal(answer)) throw new Error(answer.code);
    expect(answer.readings[0]).toMatchObject({ from: "2024-02-01", template: "?##-?" });
    expect(answer.text).toBe("7B4-2");
  });

  it("must fit in length and in literal characters", () => {
    expect(template("7B4-2", "?##?")).toMatchObject({ code: "template-mismatch" });
    expect(template("7B4/2", "?##-?")).toMatchObject({ code: "template-mismatch" });
    expect(template("7N4-2", "?##-?")).toMatchObject({ code: "no-reading" });
    expect(template("pb4", "p##")).toMatchObject({ text: "PB4" });
    expect(() => template("7B4", "???")).toThrow(/template/);
  });

  it("do not confuse the plant's own characters", () => {
    expect(template("0B41", "?##?")).toMatchObject({ text: "0B41", confusables: [] });
    expect(template("0BS1", "?##?")).toMatchObject({
      confusables: [{ position: 2, read: "S", couldBe: "5" }],
    });
    expect(template("OB41", "0##?")).toMatchObject({
      confusables: [{ position: 0, read: "O", couldBe: "0" }],
    });
  });
});

describe("derivation", () => {
  it("shows the window, what was excluded and each reading, with sources of the bibliography", () => {
    const steps: DerivationStep[] = [];
    const options = {
      inspectedOn: TODAY,
      evidence: { soldOn: "2015-01-10" },
      schemes: ["letter-month-no-i"],
    } as const;
    const shown = decodeDateCode("C4", options, steps);
    expect(steps.map(({ quantity, result }) => [quantity, result])).toEqual([
      ["accepted manufacture dates", "2013-06-15..2025-06-15"],
      ["excluded period", "2024-03-01..2024-03-31"],
      ["manufacture period", "2014-03-01..2014-03-31"],
    ]);
    for (const { source, standing } of steps) {
      expect(bibliography).toHaveProperty(source);
      expect(standing).toBe(bibliography[source as keyof typeof bibliography].standing);
    }
    expect(shown).toEqual(decodeDateCode("C4", options));
  });
});
