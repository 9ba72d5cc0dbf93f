import { readFileSync } from "node:fs";
import { tryEvaluate } from "crankworthy/evaluate";
import { english, reportSections } from "crankworthy/report";
import { describe, expect, it } from "vitest";
import { evaluations } from "../report/records.js";
import { generatedEvaluations } from "./generated.js";
import { packs } from "./packs.js";
import { codesInSource } from "./refusal-codes.js";

const fromExamples = ["counter-day", "no-start"].flatMap((name) =>
  readFileSync(`examples/${name}/records.jsonl`, "utf8")
    .split("\n")
    .filter((one) => one.trim() !== "")
    .flatMap((one) => {
      const result = tryEvaluate(JSON.parse(one));
      return result.ok ? [result.evaluation] : [];
    }),
);
const all = [...Object.values(evaluations), ...fromExamples, ...generatedEvaluations(4000)];
const refusals = all.flatMap((one) => one.refusals);
const seen = [...new Set(refusals.map((one) => one.code))].sort();
const inSource = codesInSource();

describe("refusals that reach a report", () => {
  it("are all found by reading the source, so that none can be forgotten", () => {
    expect(all.length).toBeGreaterThan(2000);
    expect(seen.length).toBeGreaterThan(25);
    expect(seen.filter((code) => !inSource.includes(code))).toEqual([]);
  });

  it("bring their English along", () => {
    expect(english.refusal).toBeUndefined();
    const [first] = refusals;
    const evaluation = all.find((one) => one.refusals.includes(first!))!;
    const section = reportSections(evaluation, english).find((one) => one.question === "refused")!;
    expect(section.lines[0]!.text).toContain(`: ${first!.reason} It would help: ${first!.wouldHelp}`);
  });

  it("keep their English where a catalogue does not list the code, also one that every object has", () => {
    const evaluation = {
      ...evaluations.good!,
      refusals: [
        { refused: true, about: "vehicle", code: "constructor", reason: "No.", wouldHelp: "Yes." } as const,
      ],
    };
    const sections = reportSections(evaluation, { ...english, refusal: {} });
    const section = sections.find((one) => one.question === "refused")!;
    expect(section.lines.map((one) => one.text)).toEqual(["Vehicle: No. It would help: Yes."]);
  });
});

describe.each(packs)("%s", (_, { messages }) => {
  it("has a text for every code of the rooms that an evaluation calls, and for no other", () => {
    expect(Object.keys(messages.refusal!).sort()).toEqual(inSource);
  });

  it("shows it in place of the English", () => {
    for (const evaluation of all) {
      const section = reportSections(evaluation, messages).find((one) => one.question === "refused");
      expect(section?.lines.length ?? 0).toBe(evaluation.refusals.length);
      evaluation.refusals.forEach(({ code, reason }, index) => {
        const { text } = section!.lines[index]!;
        expect(text).toContain(messages.refusal![code]![0]);
        expect(text).not.toContain(reason);
      });
    }
  });
});
