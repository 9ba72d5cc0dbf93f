import { checkLog, type LogQuestion } from "crankworthy/logs";
import { describe, expect, it } from "vitest";

function slow(step: number, questions: readonly LogQuestion[], restStep = step): unknown[] {
  const rows = 300;
  let time = 0;
  const amperes = Float64Array.from({ length: rows }, (_, i) => (i < 200 ? 0 : -20));
  const seconds = amperes.map((one) => (time += one ? step : restStep));
  const volts = amperes.map((one, i) => 12.6 + 0.01 * one + 0.001 * (i % 5));
  const { defects } = checkLog([{ firstRow: 1, rows, seconds, volts, amperes }], { questions });
  return defects.filter((one) => one.code === "sampling-too-slow").map((one) => one.question);
}

describe("sampling against the question", () => {
  it.each([
    ["crank", 0.01],
    ["ripple", 1e-4],
    ["load-step", 0.1],
    ["charge", 60],
    ["capacity", 60],
    ["rest", 600],
    ["parasitic-draw", 60],
    ["self-discharge", 86_400],
  ] as const)("%s is answered at %d s and not at twice that", (question, seconds) => {
    expect(slow(seconds, [question])).toEqual([]);
    expect(slow(2 * seconds, [question])).toEqual([question]);
  });

  it("looks at the rows under load for what happens under load, and at rest for the rest", () => {
    expect(slow(0.001, ["crank", "rest"], 600)).toEqual([]);
    expect(slow(0.001, ["parasitic-draw"], 600)).toEqual(["parasitic-draw"]);
    expect(slow(60, ["crank", "ripple", "rest"], 1)).toEqual(["crank", "ripple"]);
  });

  it("is not asked without a question", () => {
    expect(slow(1e5, [])).toEqual([]);
  });
});
