import { type InputIssue, issue, picture } from "../evaluate/issue.js";
import { type GuidedStepCode, guidedStepCodes } from "./types.js";

/** A step that was answered this often, and is still called for, has not taken: it is not asked for again. Our choice. */
const MOST_ANSWERS = 2;

const READINGS = ["measure-rest-voltage", "draw-off-surface-charge", "measure-gravity"] as const;
const CRANKING = ["measure-cranking", "repeat-reading"] as const;
/** Steps that take readings out again; these may then be asked for anew. They themselves are counted from the beginning. */
const RENEWED: Partial<Readonly<Record<GuidedStepCode, readonly GuidedStepCode[]>>> = {
  "check-leads": ["measure-rest-voltage", ...CRANKING],
  charge: [...READINGS, ...CRANKING],
  "charge-and-repeat-load-test": [...READINGS, "load-test"],
};

/** Steps that were answered often enough, from the answers in their order. */
export function spentSteps(tried: readonly GuidedStepCode[]): ReadonlySet<GuidedStepCode> {
  const counts = new Map<GuidedStepCode, number>();
  for (const code of tried) {
    counts.set(code, (counts.get(code) ?? 0) + 1);
    for (const renewed of RENEWED[code] ?? []) counts.delete(renewed);
  }
  return new Set([...counts].filter(([, count]) => count >= MOST_ANSWERS).map(([code]) => code));
}

/** A draft taken apart: what the record knows of, and which steps were answered. */
export function withoutTried(draft: unknown):
  | {
      readonly ok: true;
      readonly input: unknown;
      readonly tried: readonly GuidedStepCode[];
    }
  | { readonly ok: false; readonly issues: readonly InputIssue[] } {
  if (typeof draft !== "object" || draft === null || Array.isArray(draft) || !Object.hasOwn(draft, "tried"))
    return { ok: true, input: draft, tried: [] };
  const { tried, ...input } = draft as { readonly tried: unknown };
  const codes: readonly unknown[] = guidedStepCodes;
  if (tried === undefined) return { ok: true, input, tried: [] };
  if (!Array.isArray(tried)) {
    return { ok: false, issues: [issue("wrong-type", "tried", picture(tried), "a list of step codes")] };
  }
  const wrong = tried.findIndex((code) => !codes.includes(code));
  if (wrong < 0) return { ok: true, input, tried };
  return {
    ok: false,
    issues: [issue("not-a-choice", `tried[${wrong}]`, picture(tried[wrong]), "the code of a step")],
  };
}
