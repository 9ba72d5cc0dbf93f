import {
  type CauseCode,
  type Causes,
  causeRules,
  type FindingCode,
  finding,
  findingCodes,
  weighCauses,
} from "crankworthy/verdict";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const weigh = (...codes: FindingCode[]): Causes => weighCauses(codes.map((code) => finding(code, "note")));
const supportOf = (cause: CauseCode, ...codes: FindingCode[]): string =>
  weigh(...codes).causes.find((one) => one.code === cause)!.support;

/** What some findings need beside them to count. */
const BESIDE: Partial<Record<`${CauseCode} ${FindingCode}`, FindingCode[]>> = {
  "battery cranking-voltage-low": ["voltage-drops-within", "cranking-current-usual", "charge-sufficient"],
  "only-discharged charge-low": ["ability-above"],
  "only-discharged charge-below-empty": ["load-test-passed"],
};
/** Findings in whose company these must not count. */
const SILENCED: Partial<Record<`${CauseCode} ${FindingCode}`, FindingCode>> = {
  "connection slow-with-low-current": "voltage-drops-within",
  "connection slow-at-full-voltage": "voltage-drops-within",
  "connection voltage-drops-within": "no-turning-at-full-voltage",
  "charging-circuit regulated-voltage-within": "charging-drop-high",
  "charging-circuit charging-rise-enough": "ripple-high",
  "drain draw-expected": "flat-by-drain",
};

describe.each(causeRules)("$code", ({ code: cause, supports, contradicts }) => {
  it.each(supports)("is supported by $code alone, or with what it needs", ({ code }) => {
    const beside = BESIDE[`${cause} ${code}`] ?? [];
    expect(supportOf(cause, code, ...beside)).toBe("supported");
    if (beside.length > 0) expect(supportOf(cause, code)).toBe("open");
  });

  it.each(contradicts)("is contradicted by $code alone", ({ code }) => {
    expect(supportOf(cause, code)).toBe("contradicted");
  });

  it.each([...supports, ...contradicts].filter(({ when }) => when))(
    "$code does not count beside others",
    ({ code }) => {
      const silencing = SILENCED[`${cause} ${code}`];
      const beside = BESIDE[`${cause} ${code}`];
      expect(silencing ?? beside).toBeDefined();
      const with_ = weigh(code, ...(silencing ? [silencing] : [])).causes.find((one) => one.code === cause)!;
      expect(with_.because).not.toContain(code);
    },
  );

  it("stays open when findings speak on both sides, and says what settles it", () => {
    const pro = supports[0]!.code;
    const contra = contradicts.find(({ code }) => code !== pro)!.code;
    const beside = BESIDE[`${cause} ${pro}`] ?? [];
    const { causes, findings } = weigh(pro, contra, ...beside);
    expect(causes.find((one) => one.code === cause)!.support).toBe("open");
    const conflict = findings.find((one) => one.code === "causes-conflict" && one.evidence.cause === cause);
    expect(conflict?.evidence.settleBy).toBeTruthy();
  });

  it("is open, with no reason, when no finding speaks of it", () => {
    const own = new Set([...supports, ...contradicts].map(({ code }) => code));
    const others = findingCodes.filter((code) => !own.has(code));
    expect(weigh(...others).causes.find((one) => one.code === cause)).toEqual({
      code: cause,
      support: "open",
      because: [],
    });
  });
});

describe("all together", () => {
  it("cables and battery proved, and it still cranks badly: starter or engine", () => {
    const { findings } = weigh("cranking-voltage-low", "voltage-drops-within", "ability-above");
    expect(findings.map((one) => one.code)).toEqual(["starter-or-engine"]);
  });

  it("nothing supported: unclear, with what is open", () => {
    const { findings } = weigh("draw-expected", "ability-above");
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      code: "cause-unclear",
      evidence: { open: "connection, charging-circuit, only-discharged" },
    });
  });

  it("a drain and a battery that is only discharged go together", () => {
    const { causes, findings } = weigh("draw-high", "charge-low", "ability-above");
    expect(causes.filter((one) => one.support === "supported").map((one) => one.code)).toEqual([
      "drain",
      "only-discharged",
    ]);
    expect(findings).toEqual([]);
  });

  it("a wiring fault alone never supports the battery", () => {
    const wiring: FindingCode[] = [
      "voltage-drop-high",
      "cranking-voltage-low",
      "slow-with-low-current",
      "low-reading-in-vehicle",
      "charging-drop-high",
      "contact-spread",
    ];
    fc.assert(
      fc.property(fc.subarray(wiring), (codes) => {
        expect(supportOf("battery", ...codes, "charge-sufficient")).toBe("open");
      }),
    );
  });

  it("every reason is a finding that was made; order and repetition change nothing", () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...findingCodes), { maxLength: 12 }), (codes) => {
        const weighed = weigh(...codes);
        for (const { because } of weighed.causes) for (const one of because) expect(codes).toContain(one);
        expect(weigh(...codes, ...codes).causes).toEqual(weighed.causes);
        expect(weigh(...[...codes].reverse()).causes).toEqual(weighed.causes);
      }),
    );
  });
});
