import { crankingTime } from "../vehicle/index.js";
import {
  type Action,
  type Cause,
  type Facts,
  type Finding,
  type FindingCode,
  finding,
  weighCauses,
} from "../verdict/index.js";
import type { NextStep } from "./evaluation.js";

/** Weighs the causes and leaves what they brought to light among the findings. */
export function causesOf(
  findings: Finding[],
  { chargeSufficient, chargeProbability }: Facts,
): readonly Cause[] {
  if (chargeSufficient)
    findings.push(
      finding(
        "charge-sufficient",
        "note",
        chargeProbability === undefined ? {} : { probability: chargeProbability },
      ),
    );
  const weighed = weighCauses(findings);
  findings.push(...weighed.findings);
  return weighed.causes;
}

const step = (code: NextStep["code"], parameters: NextStep["parameters"] = {}): NextStep => ({
  code,
  parameters,
});

/** Before these the vehicle is put right, so that the battery does not come back. */
const LAST: ReadonlySet<NextStep["code"]> = /* @__PURE__ */ new Set([
  "hand-back",
  "look-again-before-winter",
] as const);

/**
 * Adds what the causes ask for: repairs on the vehicle before the battery is handed back, or the measurement that would
 * settle what is open. None where the battery is a hazard or the method does not apply.
 */
export function withCauseSteps(
  steps: readonly NextStep[],
  action: Action,
  causes: readonly Cause[],
  findings: readonly Finding[],
): NextStep[] {
  if (action === "isolate" || action === "stop") return [...steps];
  const has = (code: FindingCode): boolean => findings.some((one) => one.code === code);
  const supported = (code: Cause["code"]): boolean =>
    causes.some((one) => one.code === code && one.support === "supported");
  const added: NextStep[] = [];
  if (supported("connection")) added.push(step("repair-connection"));
  if (supported("charging-circuit")) added.push(step("repair-charging-circuit"));
  if (supported("drain") && has("draw-high")) added.push(step("find-consumer"));
  if (has("draw-not-settled")) added.push(step("let-modules-sleep", sleepMinutes(findings)));
  if (has("starter-or-engine")) added.push(step("look-at-starter"));
  for (const { code, evidence } of findings)
    if (code === "causes-conflict") added.push(step("settle-cause", evidence));
  // A low voltage while cranking with nobody having looked at the cables.
  const dropsOpen = causes.some((one) => one.code === "connection" && one.because.length === 0);
  if (dropsOpen && has("cranking-voltage-low") && !supported("battery")) {
    const { longestSeconds: seconds, pauseSeconds } = crankingTime();
    added.push(step("measure-voltage-drops", { seconds, pauseSeconds: pauseSeconds ?? seconds }));
  }
  const from = steps.findIndex(({ code }) => LAST.has(code));
  return from < 0 ? [...steps, ...added] : [...steps.slice(0, from), ...added, ...steps.slice(from)];
}

function sleepMinutes(findings: readonly Finding[]): NextStep["parameters"] {
  const { neededMinutes } = findings.find(({ code }) => code === "draw-not-settled")?.evidence ?? {};
  return neededMinutes === undefined ? {} : { neededMinutes };
}
