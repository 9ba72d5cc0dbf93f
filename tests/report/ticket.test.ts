import { evaluate } from "crankworthy/evaluate";
import { english, type Messages, renderTicket, reportSections } from "crankworthy/report";
import { bibliography } from "crankworthy/sources";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { columns } from "../../src/report/text.js";
import { changed, evaluations, good, type records, terms } from "./records.js";

const answer = (ticket: string, question: string): string[] =>
  ticket
    .split("\n\n")
    .find((one) => one.startsWith(question))!
    .split("\n")
    .slice(1)
    .map((one) => one.trim());

describe("a whole ticket, written by hand", () => {
  it("exchanged leads: nothing is judged, the leads come first", () => {
    const evaluation = evaluate({
      id: "L-3",
      identity: { chemistry: "agm", nominalVolts: 12, rating: { standard: "en-50342-1:2015", amperes: 760 } },
      conditions: { inspectedOn: "2025-03-04", place: "bench", temperatureCelsius: 20 },
      measurements: { restVolts: -12.5, voltsStandardUncertainty: 0.01 },
    });
    expect(renderTicket(evaluation)).toBe(
      `Battery inspection
  Reference: L-3
  Inspected: 4 Mar 2025

What is it?
  AGM battery, 12 V.
  Rating 760 A EN (2015), as printed.

Can the readings be trusted?
  No. They do not allow a judgement.

How charged is it?
  Not known.

How much of its ability is left?
  Not measured.

What is it fit for, and what to do now?
  Not established. The readings do not
  decide what it is.
  Measure again before deciding.
  Reason: label or voltage is not that of
  a 12 V battery at rest, connected the
  right way round.

What was noticed?
  Warnings:
  - Reading reversed. It reads -12.50 V.
    The leads are probably exchanged.

What to do next?
  1. Exchange the leads and check them
     against the post marks.
  2. Measure again.

What can hurt me?
  - Local safety rules come first.
  - Acid burns. Wear eye protection, apron
    and rubber gloves. Acid in an eye:
    rinse for 15 min, get a doctor.
  - It gives off explosive gas even at
    rest. No flame, spark or smoking
    nearby.
  - No tool, ring or strap across the
    posts: a short burns at once.
  - It is heavy. Lift it upright, with a
    strap or both hands.

How old is it?
  Not known.`,
    );
  });

  it("a good battery: mean, interval and chance worked out by hand", () => {
    const ticket = renderTicket(evaluate(good), { width: 200 });
    // Mean of 585, 590, 588 is 587.7 A, 97.9 % of 600 A. Half the variance of 4.5 % shrinks with three readings:
    // u = 0.979 × 4.5 % × √(1/2 + 1/6) = 3.60 %, so ±7.05 %; (97.9 − 80)/3.6 = 5 standard uncertainties.
    expect(answer(ticket, "How much of its ability")).toEqual([
      "By cranking estimate: 98 % of the rating (from 91 to 105 %). That is 588 A CCA (SAE).",
      "Chance that it reaches the limit of 80 % for serviceable: more than 999 in 1000.",
      "No standard sets these limits; they are a choice.",
    ]);
    expect(answer(ticket, "What is it fit for")).toEqual([
      "Serviceable. It delivers enough of what its rating promises.",
      "Keep it in use.",
      "Reason: the ability measured against the rating.",
    ]);
    expect(answer(ticket, "Can the readings")).toEqual(["Yes. Nothing was found that limits them."]);
  });

  it("a prorated claim: each amount with its calculation, and the total", () => {
    // Bought 2022-06-10, claimed 2025-01-20: 31 completed months; 189.99 × 29/60 = 91.8285.
    const ticket = renderTicket(evaluations.claim!, { width: 200 });
    expect(answer(ticket, "What does the warranty pay?")).toEqual([
      "The battery qualifies for a claim.",
      "- The defect is certain enough.",
      "Replacement at a reduced price.",
      "- The claim lies in the prorated period.",
      "Term from 10 Jun 2022 to 10 Jun 2027, 31 of 60 months used.",
      "- Price: 189.99 USD, price paid",
      "- Rebate: 91.83 USD, 31 of 60 months used since purchase, counted by completed months = 189.99 × (60 − 31) / 60",
      "- New battery: 98.16 USD, its price less the rebate = 189.99 − 91.83",
      "- To pay: 98.16 USD",
      "The replacement is covered from 20 Jan 2025 to 10 Jun 2027.",
    ]);
  });
});

describe("answers", () => {
  const show = (name: keyof typeof records, question: string) =>
    answer(renderTicket(evaluations[name]!, { width: 300 }), question);

  it("show every reading of an ambiguous date code, at most four and the number of the rest", () => {
    expect(show("dateCode", "How old is it?")[0]).toBe('Date code "0322".');
    const { dateCode, ageDays } = evaluations.dateCode!.age!;
    const [first] = dateCode.readings;
    const many = {
      ...evaluations.dateCode!,
      age: { ageDays, dateCode: { ...dateCode, readings: Array(7).fill(first) } },
    };
    const lines = answer(renderTicket(many, { width: 300 }), "How old is it?");
    expect(lines.filter((one) => one.startsWith("- Made"))).toHaveLength(4);
    expect(lines[5]).toBe("- and 3 more");
  });

  it("give an age in months while young, in years later, never below zero", () => {
    expect(show("dateCodeOfAMonth", "How old")[1]).toBe(
      "- Made 1 Dec 2024 to 31 Dec 2024, 0 to 2 months old (yyyy-mm).",
    );
    expect(show("dateCodeToday", "How old")[1]).toBe("- Made 20 Jan 2025, 0 months old (iso-date).");
  });

  it("an upper bound of the charge says that it is one", () => {
    expect(show("surfaceCharge", "How charged")).toEqual([
      "At most 100 %, by rest voltage. Surface charge may hide a lower charge.",
    ]);
  });

  it("group the findings by what they are, hazards first", () => {
    const groups = show("claimExcluded", "What was noticed?").filter((one) => one.endsWith(":"));
    expect(groups).toEqual(["Hazards:", "Defects:"]);
  });

  it("number the steps and give the charge its figures; the temperature it is meant for is said", () => {
    const [charge, rest] = show("chargeLowNoTemperature", "What to do next?");
    expect(charge).toMatch(
      /^1\. Charge it fully with 6 to 8 A up to 14\.\d\d V \(for 20 °C\), about [\d.]+ to [\d.]+ h\./,
    );
    expect(rest).toBe("2. Let it rest for 8 h without charger or load.");
    expect(show("chargeLow", "What to do next?")[0]).not.toContain("for 25 °C");
  });

  it("tell to put right what forbids charging before the charge", () => {
    const [first, second] = show("acidLow", "What to do next?");
    expect(first).toMatch(/^1\. Where it has caps, cover the plates/);
    expect(second).toMatch(/^2\. Charge it fully/);
  });

  it("do not limit the charge of a deeply discharged battery to less than the time it needs", () => {
    const [charge] = show("sealedFlat", "What to do next?");
    expect(charge).toContain("judge it only after 48 h");
    expect(charge).not.toContain("24 h");
  });

  it("both ends of an open claim, and what leaves it open", () => {
    const lines = show("claimNoReceipt", "What does the warranty pay?");
    expect(lines).toContain("- The start of the term is known only as a range.");
    expect(
      lines.filter((one) => /^(Least|Most) for the customer: .* To pay: [\d.]+ USD\.$/.test(one)),
    ).toHaveLength(2);
  });

  it("the used share of a term only while the term runs", () => {
    const term = (name: string) =>
      show(name, "What does the warranty pay?").find((one) => one.startsWith("Term"));
    expect(term("claim")).toBe("Term from 10 Jun 2022 to 10 Jun 2027, 31 of 60 months used.");
    expect(term("claimOver")).toBe("Term from 1 Mar 2015 to 1 Mar 2020.");
    expect(term("claimLaw")).toBe("Term from 10 Jun 2022 to 10 Jun 2027.");
  });

  it("a refusal says what it is about, why, and what would help", () => {
    expect(show("notComparable", "What could not be worked out?")[0]).toMatch(
      /^- Cranking current: .+\. It would help: .+\.$/,
    );
  });

  it("the derivation ends the ticket when there is one, with titles where sources are given", () => {
    const explained = evaluate(good, { explain: true });
    const keys = answer(renderTicket(explained, { width: 300 }), "How was it worked out?");
    const titles = answer(
      renderTicket(explained, { width: 300, sources: bibliography }),
      "How was it worked out?",
    );
    expect(keys).toContain("Source: ratings-choice (computed)");
    expect(titles.some((one) => one.startsWith("Source: Choices of this library on ratings"))).toBe(true);
    expect(titles).toHaveLength(keys.length);
  });
});

describe("width", () => {
  it.each(Object.entries(evaluations))("%s keeps it", (_, evaluation) => {
    for (const width of [20, 32, 42, 80]) {
      const lines = renderTicket(evaluation, { width }).split("\n");
      for (const one of lines) expect(columns(one)).toBeLessThanOrEqual(width);
    }
  });

  it("42 columns unless stated; a width that cannot be is an error", () => {
    expect(renderTicket(evaluations.good!)).toBe(renderTicket(evaluations.good!, { width: 42 }));
    for (const width of [19, 42.5, Number.NaN])
      expect(() => renderTicket(evaluations.good!, { width })).toThrow(/^width: received .*, expected/);
  });
});

describe("text from a record", () => {
  const hostile = [
    "\u001b[2J\u001b[1;31mPAID\u0007",
    "line\r\nbreak\u2028and\u2029more\u0000",
    "\u202egnidaer\u2066 \u200b\u200d\ufeff",
    "x".repeat(100),
    "電".repeat(40),
    "{condition} [{undefined}] $& $1",
    "\ud800 lone",
    "e\u0301".repeat(30),
  ];

  it.each(hostile)("%j changes no line, cursor or column", (text) => {
    const evaluation = evaluate(
      changed({
        id: text,
        identity: {
          labelCode: { scheme: "etn", text: text.slice(0, 40) },
          dateCode: { text: text.slice(0, 40) },
        },
        measurements: { cranking: { standard: "sae-j537", amperes: 280, relativeStandardUncertainty: 0.04 } },
        warranty: {
          terms: {
            ...terms,
            freeMonths: 0,
            totalMonths: 12,
            statutoryFloor: { months: 90, scope: "anyone", citation: text },
          },
          purchase: { receipt: true, soldOn: "2022-06-10", pricePaid: "10.00" },
        },
      }),
      { explain: true },
    );
    const ticket = renderTicket(evaluation);
    const plain = renderTicket(evaluations.good!);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the newline of a line is the one that is allowed
    expect(ticket).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
    for (const one of ticket.split("\n")) expect(columns(one)).toBeLessThanOrEqual(42);
    // No line of the record's making stands where the headings stand.
    const headings = (one: string) => one.split("\n").filter((line) => /^\S/.test(line));
    const known: string[] = ["Battery inspection", ...Object.values(english.question)];
    for (const heading of headings(ticket)) expect(known).toContain(heading);
    expect(headings(plain).length).toBeGreaterThan(7);
  });

  it("of any kind is shown on one reference", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", minLength: 1, maxLength: 120 }), (id) => {
        const [title] = reportSections({ ...evaluations.good!, id }, english);
        expect(title!.lines.every((one) => !one.text.includes("\n"))).toBe(true);
      }),
    );
  });

  it("that cannot be shown at all leaves its line out", () => {
    expect(renderTicket({ ...evaluations.good!, id: "\u0000\u200b" })).not.toContain("Reference");
  });
});

describe("another language", () => {
  it("brings its own words and decimal mark; the sections need no English", () => {
    const other: Messages = {
      ...english,
      language: "de",
      chance: ["{n} von 100", "{n} von 1000", "mehr als 999 von 1000", "weniger als 1 von 1000"],
      phrase: { ...english.phrase, title: "Batterieprüfung" },
    };
    const ticket = renderTicket(evaluations.claim!, { messages: other, width: 200 });
    expect(ticket.startsWith("Batterieprüfung\n")).toBe(true);
    expect(ticket).toContain("mehr als 999 von 1000");
    expect(ticket).toContain("Rebate: 91,83 USD");
  });
});
