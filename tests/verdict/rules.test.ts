import { decide, type Evidence, rules } from "crankworthy/verdict";
import { describe, expect, it } from "vitest";

/** A full battery of known ability 1.0 with nothing wrong: no rule but `ability` fires. */
const sound: Evidence = {
  damage: [],
  frozen: "no",
  electrolyteLow: false,
  system: "twelve-volt",
  systemVolts: 12.7,
  chargeCompleted: true,
  charge: { stateOfCharge: { value: 0.98, standardUncertainty: 0.09 }, bound: "two-sided" },
  abilities: [{ from: "cranking-estimate", ratio: { value: 1, standardUncertainty: 0.05 } }],
};

const ratio = (value: number, standardUncertainty = 0.04): Pick<Evidence, "abilities"> => ({
  abilities: [{ from: "cranking-estimate", ratio: { value, standardUncertainty } }],
});
const charge = (
  value: number,
  bound: "two-sided" | "upper" = "two-sided",
): Pick<Evidence, "charge" | "chargeCompleted"> => ({
  charge: { stateOfCharge: { value, standardUncertainty: 0.1 }, bound },
  chargeCompleted: false,
});
const test = (passProbability: number, repeated = false): Pick<Evidence, "loadTest"> => ({
  loadTest: {
    passProbability,
    marginVolts: { value: passProbability - 0.5, standardUncertainty: 0.05 },
    limitVolts: 9.6,
    passStands: true,
    failStands: true,
    invalidReasons: [],
    repeated,
  },
});
const codes = (evidence: Evidence): string[] => decide(evidence).findings.map((one) => one.code);

// [rule, evidence in which it alone decides, condition, action, evidence in which it must not fire, its findings]
const table: [string, Evidence, string, string, Evidence, string[]][] = [
  ["damaged-case", { ...sound, damage: ["leaking"] }, "unserviceable", "isolate", sound, ["case-damaged"]],
  [
    "frozen",
    { ...sound, frozen: "seen" },
    "not-established",
    "isolate",
    sound,
    ["frozen-seen", "frozen-possible"],
  ],
  [
    "low-electrolyte",
    { ...sound, ...ratio(0.4), electrolyteLow: true },
    "not-established",
    "charge-then-repeat",
    { ...sound, ...ratio(0.4) },
    ["electrolyte-low"],
  ],
  [
    "system-voltage",
    { ...sound, system: "other", systemVolts: 25 },
    "not-established",
    "stop",
    sound,
    ["other-system-voltage", "reversed-polarity", "no-voltage", "system-voltage-unclear"],
  ],
  [
    "scattered-readings",
    { ...sound, scatter: { relative: 0.2, limit: 0.1 } },
    "not-established",
    "repeat",
    { ...sound, scatter: { relative: 0.05, limit: 0.1 } },
    ["readings-scatter"],
  ],
  [
    "contact-spread",
    { ...sound, ...ratio(0.5), contact: { between: 0.08, within: 0.01, limit: 0.02 } },
    "not-established",
    "repeat",
    { ...sound, ...ratio(0.5), contact: { between: 0.015, within: 0.01, limit: 0.02 } },
    ["contact-spread"],
  ],
  [
    "missing-cell",
    { ...sound, ...ratio(0.4), missingCell: { cells: 1, shortfallVolts: 2.1 } },
    "internally-failed",
    "retire",
    sound,
    ["cell-missing", "cell-missing-unproven"],
  ],
  [
    "cell-spread",
    { ...sound, cells: { spread: 0.09, exceedProbability: 0.99, weakestCell: 3, mixed: true } },
    "internally-failed",
    "retire",
    { ...sound, cells: { spread: 0.02, exceedProbability: 0.01, weakestCell: 3, mixed: true } },
    ["cell-spread", "cell-spread-unproven"],
  ],
  [
    "too-little-charge",
    { ...sound, ...ratio(0.7), ...charge(0.3) },
    "not-established",
    "charge-then-repeat",
    { ...sound, ...ratio(0.7) },
    ["charge-low", "charge-not-established", "ability-not-judged", "missing-charge-measurement"],
  ],
  [
    "in-vehicle-reading",
    { ...sound, ...ratio(0.5), inVehicle: { loadOn: false, wiringFault: true } },
    "not-established",
    "repeat",
    { ...sound, ...ratio(0.5), inVehicle: { loadOn: false, wiringFault: false } },
    ["low-reading-in-vehicle"],
  ],
  [
    "conflicting-evidence",
    { ...sound, ...ratio(0.5), ...test(0.99) },
    "not-established",
    "repeat",
    { ...sound, ...ratio(1), ...test(0.99) },
    ["ability-evidence-disagrees"],
  ],
  [
    "load-test",
    { ...sound, abilities: [], ...test(0.01, true) },
    "unserviceable",
    "retire",
    sound,
    [
      "load-test-passed",
      "load-test-failed",
      "load-test-failed-again",
      "load-test-undecided",
      "load-test-not-valid",
    ],
  ],
  [
    "ability",
    { ...sound, ...ratio(0.45) },
    "unserviceable",
    "retire",
    { ...sound, abilities: [], ...test(0.99) },
    ["ability-above", "ability-below", "ability-worn", "ability-between"],
  ],
  [
    "no-ability-evidence",
    { ...sound, abilities: [] },
    "not-established",
    "repeat",
    sound,
    ["missing-ability-measurement"],
  ],
];

describe("rules", () => {
  it("each code once", () => expect(new Set(rules.map((rule) => rule.code)).size).toBe(rules.length));

  for (const [rule, deciding, condition, action, silent, ownFindings] of table) {
    it(`${rule} decides alone`, () => {
      const verdict = decide(deciding);
      expect(verdict.decidedBy).toBe(rule);
      expect([verdict.condition, verdict.action]).toEqual([condition, action]);
      expect(verdict.findings.some((one) => ownFindings.includes(one.code))).toBe(true);
    });
    it(`${rule} stays silent`, () => {
      const verdict = decide(silent);
      expect(verdict.decidedBy).not.toBe(rule);
      expect(verdict.findings.filter((one) => ownFindings.includes(one.code))).toEqual([]);
    });
  }

  it("rules that only inform are covered too", () => {
    const informing = rules.map((rule) => rule.code).filter((code) => !table.some(([rule]) => rule === code));
    expect(informing).toEqual(["requirement"]);
    expect(codes({ ...sound, electrolyteLow: true })).toContain("electrolyte-low");
    expect(codes(sound)).not.toContain("electrolyte-low");
    expect(codes({ ...sound, startProbability: 0.99 })).toContain("requirement-met");
    expect(codes({ ...sound, startProbability: 0.01 })).toContain("requirement-not-met");
    expect(codes({ ...sound, startProbability: 0.6 })).toContain("requirement-undecided");
    expect(codes(sound).filter((code) => code.startsWith("requirement"))).toEqual([]);
  });
});

describe("precedence and promises", () => {
  it("a sound battery is kept", () => {
    expect(decide(sound)).toMatchObject({ condition: "serviceable", action: "keep", decidedBy: "ability" });
  });

  it("low charge is never a defect", () => {
    const verdict = decide({ ...sound, ...ratio(0.3), ...charge(0.2) });
    expect(verdict.condition).toBe("not-established");
    expect(verdict.findings.filter((one) => one.severity === "defect")).toEqual([]);
  });

  it("an ability shown at low charge counts, and the battery is charged before it goes back", () => {
    expect(decide({ ...sound, ...charge(0.5) })).toMatchObject({
      condition: "serviceable",
      action: "charge-then-keep",
    });
  });

  it("no charge evidence at all condemns nothing", () => {
    const { charge: _none, ...rest } = { ...sound, ...ratio(0.3), chargeCompleted: false };
    expect(decide(rest)).toMatchObject({ condition: "not-established", action: "charge-then-repeat" });
  });

  it("no failed cell from one uncharged reading", () => {
    const verdict = decide({
      ...sound,
      ...ratio(0.3),
      ...charge(-1),
      missingCell: { cells: 1, shortfallVolts: 2.1 },
    });
    expect(verdict.condition).toBe("not-established");
    expect(verdict.action).toBe("charge-then-repeat");
    expect(verdict.findings.map((one) => one.code)).toContain("cell-missing-unproven");
  });

  it("a first failed load test leads to charging, not to the scrap heap", () => {
    expect(decide({ ...sound, abilities: [], ...test(0.01) })).toMatchObject({
      condition: "not-established",
      action: "charge-then-repeat",
    });
  });

  it("between the guard bands nothing is decided", () => {
    for (const value of [0.76, 0.8, 0.84])
      expect(decide({ ...sound, ...ratio(value) })).toMatchObject({
        condition: "not-established",
        action: "repeat",
      });
  });

  it("worn: kept while it starts the engine, retired when it does not", () => {
    const worn = { ...sound, ...ratio(0.7, 0.02) };
    expect(decide(worn)).toMatchObject({ condition: "worn", action: "keep" });
    expect(decide({ ...worn, startProbability: 0.97 })).toMatchObject({ condition: "worn", action: "keep" });
    expect(decide({ ...worn, startProbability: 0.1 })).toMatchObject({ condition: "worn", action: "retire" });
  });

  it("findings of later rules survive an earlier decision", () => {
    const verdict = decide({ ...sound, ...ratio(0.3), damage: ["swollen"], electrolyteLow: true });
    expect(verdict.action).toBe("isolate");
    expect(verdict.findings.map((one) => one.code)).toEqual(
      expect.arrayContaining(["case-damaged", "electrolyte-low", "ability-below"]),
    );
  });

  it("surface charge lets a pass count, not a fail", () => {
    expect(decide({ ...sound, ...charge(1.1, "upper") })).toMatchObject({ condition: "serviceable" });
    expect(decide({ ...sound, ...ratio(0.4), ...charge(1.1, "upper") })).toMatchObject({
      condition: "not-established",
      action: "repeat",
    });
    expect(decide({ ...sound, ...ratio(0.4), ...charge(0.3, "upper") })).toMatchObject({
      action: "charge-then-repeat",
    });
  });

  it("a fault of the vehicle condemns no battery: not by the reading, not by a first load test beside it", () => {
    const vehicle = [
      { loadOn: true, wiringFault: false },
      { loadOn: false, wiringFault: true },
    ];
    for (const inVehicle of vehicle)
      for (const beside of [{}, test(0.01), test(0.99)]) {
        const verdict = decide({ ...sound, ...ratio(0.3), ...beside, inVehicle });
        expect(verdict).toMatchObject({ condition: "not-established", decidedBy: "in-vehicle-reading" });
        expect(verdict.findings.filter((one) => one.severity === "defect")).toEqual([]);
      }
  });

  it("a second failed load test at the posts condemns also in the vehicle, and a good reading there counts", () => {
    const inVehicle = { loadOn: true, wiringFault: true };
    expect(decide({ ...sound, ...ratio(0.3), ...test(0.01, true), inVehicle }).action).toBe("retire");
    expect(decide({ ...sound, inVehicle })).toMatchObject({ condition: "serviceable", action: "keep" });
  });

  it("short of charge, the charge comes before the bench", () => {
    const inVehicle = { loadOn: false, wiringFault: true };
    expect(decide({ ...sound, ...ratio(0.3), ...charge(0.3), inVehicle }).action).toBe("charge-then-repeat");
  });

  it("bad contacts only lower a reading: one that reaches the limit counts", () => {
    const verdict = decide({ ...sound, contact: { between: 0.08, within: 0.01, limit: 0.02 } });
    expect(verdict).toMatchObject({ condition: "serviceable", decidedBy: "ability" });
    expect(verdict.findings.map((one) => one.code)).toContain("contact-spread");
  });

  it("a completed charge is doubted when the voltage speaks against it", () => {
    const verdict = decide({ ...sound, ...ratio(0.4), ...charge(0.3), chargeCompleted: true });
    expect(verdict.condition).toBe("not-established");
    expect(verdict.findings.map((one) => one.code)).toContain("charge-history-contradicted");
  });
});
