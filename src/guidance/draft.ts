import { schemeIssues } from "../evaluate/age.js";
import { contradictions } from "../evaluate/contradictions.js";
import type { InputIssue } from "../evaluate/issue.js";
import { type ParseResult, parseRecord } from "../evaluate/parse.js";
import type { BatteryRecord, RecordIdentity } from "../evaluate/record.js";
import type { GuidedStepCode } from "./types.js";

/**
 * A {@link BatteryRecord} on its way: the label may be unread and nothing measured yet. What is there has the record's own
 * names, units and ranges; a measurement, a sale or a set of terms is there as a whole or not at all.
 */
export type DraftRecord = Partial<Omit<BatteryRecord, "identity">> & {
  readonly identity?: Partial<RecordIdentity>;
  /** Steps answered so far, in their order, as `answerStep` notes them; no part of the record. */
  readonly tried?: readonly GuidedStepCode[];
};

/**
 * The record of a draft, for `evaluate`: without the list of steps that were answered.
 *
 * @param draft as `answerStep` gives it; it is not changed
 */
export function recordOfDraft({ tried: _, ...record }: DraftRecord): Omit<DraftRecord, "tried"> {
  return record;
}

/** A draft whose values are right, with its gaps closed for the type only and named here. */
export interface CheckedDraft {
  readonly record: BatteryRecord;
  /** A chemistry (also "unknown") and a rating or label code are there. */
  readonly labelRead: boolean;
  readonly measured: boolean;
}

/** What a draft may lack; `contradictions` and the schema call it missing under these paths. */
const MAY_LACK: ReadonlySet<string> = /* @__PURE__ */ new Set([
  "identity",
  "identity.chemistry",
  "measurements",
]);
const stands = ({ code, path }: InputIssue): boolean => code !== "missing" || !MAY_LACK.has(path);

/**
 * Checks what a draft holds, as a record is checked; only what it lacks is no issue.
 *
 * @param input anything
 */
export function checkDraft(
  input: unknown,
):
  | { readonly ok: true; readonly draft: CheckedDraft }
  | { readonly ok: false; readonly issues: readonly InputIssue[] } {
  const whole = parseRecord(input);
  const parsed = whole.ok ? whole : completed(input as DraftRecord, whole.issues);
  if (!parsed.ok) return parsed;
  const { record } = parsed;
  const found = [...contradictions(record), ...schemeIssues(record)];
  const issues = found.filter(stands);
  if (issues.length > 0) return { ok: false, issues };
  const lacking = [...found, ...(whole.ok ? [] : whole.issues)].map(({ path }) => path);
  return {
    ok: true,
    draft: {
      record,
      labelRead: !lacking.includes("identity") && !lacking.includes("identity.chemistry"),
      measured: !lacking.includes("measurements"),
    },
  };
}

function completed(draft: DraftRecord, issues: readonly InputIssue[]): ParseResult {
  const wrong = issues.filter(stands);
  if (wrong.length > 0) return { ok: false, issues: wrong };
  return parseRecord({
    ...draft,
    identity: { chemistry: "unknown", ...draft.identity },
    measurements: { ...draft.measurements },
  });
}

/** Fields by their path, such as `conditions.ice`. */
export type FieldValues = Readonly<Record<string, unknown>>;

/** Rooms are named by these. */
const ROOM = ["ventilation.roomCubicMetres", "ventilation.airFlowCubicMetresPerHour"] as const;

/** Of what a step makes untrue, the paths that its answer has made untrue: a danger goes only with what removes it. */
export function clearedBy(values: FieldValues, clear: readonly string[]): readonly string[] {
  const watered = values["conditions.waterAdded"] === true;
  const moved = ROOM.some((path) => values[path] !== undefined);
  return clear.filter((path) => {
    if (path === "conditions.electrolyteLow") return watered;
    return moved || !ROOM.some((room) => room === path);
  });
}

/** A copy with fields taken out first and others set; paths have two parts. */
export function changed<Draft extends DraftRecord>(
  draft: Draft,
  values: FieldValues,
  clear: readonly string[] = [],
): Draft {
  const copy = { ...draft } as Record<string, unknown>;
  const copied = new Set<string>();
  const part = (path: string): readonly [Record<string, unknown>, string] => {
    const [section = "", field = ""] = path.split(".");
    if (!copied.has(section)) {
      copied.add(section);
      copy[section] = { ...(copy[section] as object | undefined) };
    }
    return [copy[section] as Record<string, unknown>, field];
  };
  for (const path of clear) {
    const section = draft[path.split(".")[0] as keyof Draft] as object | undefined;
    if (!section || !Object.hasOwn(section, path.split(".")[1] ?? "")) continue;
    const [target, field] = part(path);
    delete target[field];
  }
  for (const [path, value] of Object.entries(values)) {
    const [target, field] = part(path);
    target[field] = value;
  }
  return copy as unknown as Draft;
}
