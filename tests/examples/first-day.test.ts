import { execFile } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { answerStep, type DraftRecord, type GuidedStepCode, nextStep } from "crankworthy/guidance";
import { describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("../../", import.meta.url));
const read = (name: string): string => readFileSync(`${root}examples/first-day/${name}`, "utf8");
const { id, answers } = JSON.parse(read("answers.json")) as {
  id: string;
  answers: Partial<Record<GuidedStepCode, { said: string; values: Record<string, unknown> }[]>>;
};

/** The steps asked for, and where they end. */
function walk(given: DraftRecord = { id }) {
  const left = structuredClone(answers);
  const asked: GuidedStepCode[] = [];
  const risks: number[] = [];
  const exclude: GuidedStepCode[] = [];
  let draft = given;
  for (;;) {
    const guidance = nextStep(draft, { exclude });
    if (!guidance.ok) throw new Error(JSON.stringify(guidance.issues));
    risks.push(guidance.riskNow);
    if (guidance.done) return { asked, risks, end: guidance, left, exclude };
    const { code } = guidance.step;
    asked.push(code);
    const answer = left[code]?.shift();
    if (answer) draft = answerStep(draft, guidance.step, answer.values);
    else exclude.push(code);
  }
}

describe("the first day", () => {
  const { asked, risks, end, left } = walk();

  it("leads from the look-over through a charge to a settled claim", () => {
    expect(asked.slice(0, 2)).toEqual(["look-over", "read-label"]);
    expect(asked.indexOf("measure-temperature")).toBeLessThan(asked.indexOf("charge"));
    expect(asked.indexOf("charge")).toBeLessThan(asked.indexOf("give-purchase-and-terms"));
    expect(end.because).toBe("settled");
    expect(end.evaluation?.verdict).toMatchObject({ condition: "unserviceable", action: "retire" });
    expect(end.evaluation?.warranty?.settlement?.outcome).toBe("prorated");
  });

  it("ends with far less risk than it began with", () => {
    expect(risks[0]).toBeGreaterThan(0.5);
    expect(risks.at(-1)).toBeLessThan(0.02);
  });

  it("tells no answer that nobody asks for", () => {
    expect(Object.values(left).flat()).toEqual([]);
  });

  it("would end at the look-over with a cracked case", () => {
    const cracked = nextStep({ conditions: { damage: ["cracked"], ice: false } });
    expect(cracked.ok && cracked.done && cracked.because).toBe("hazard");
  });

  it("ends as well for somebody who can only look and read the label", () => {
    const { "look-over": looked, "read-label": label } = structuredClone(answers);
    const draft = { ...looked![0]!.values, ...label![0]!.values };
    const exclude: GuidedStepCode[] = [];
    let guidance = nextStep(answerStep({}, { clear: [] }, draft));
    while (guidance.ok && !guidance.done) {
      exclude.push(guidance.step.code);
      guidance = nextStep(answerStep({}, { clear: [] }, draft), { exclude });
    }
    expect(guidance.ok && guidance.done && guidance.because).toBe("not-evaluable");
  });

  const built = existsSync(`${root}dist/guidance.js`);
  it.skipIf(!built)(
    `prints expected.txt${built ? "" : " — SKIPPED: no current dist, run npm run build first"}`,
    async () => {
      const printed = await new Promise<string>((resolve, reject) => {
        execFile(process.execPath, [`${root}examples/run-example.mjs`, "first-day"], (error, stdout) =>
          error ? reject(error) : resolve(stdout),
        );
      });
      expect(printed).toBe(read("expected.txt"));
    },
  );
});
