import { type InputIssue, issue, picture } from "./issue.js";

/** Lifts a stored record from one schema version to the next. */
export interface Migration {
  readonly from: number;
  /** What a user of old records should know, in one sentence. */
  readonly note: string;
  readonly lift: (record: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>;
}

/** Version of the record that this library reads without help. */
export const RECORD_SCHEMA_VERSION = 1;

/** Every step from an older version; version 1 is the first, so there is none yet. */
const MIGRATIONS: readonly Migration[] = [];

/** A record of the present version, and the steps that led there; or why it cannot be one. */
export type MigratedRecord =
  | { readonly ok: true; readonly record: unknown; readonly notes: readonly string[] }
  | { readonly ok: false; readonly issues: readonly InputIssue[] };

/**
 * Brings a stored record to the schema version of this library, step by step. Nothing is checked or filled in:
 * hand the result to `evaluate`.
 *
 * A record without `schemaVersion` is of version 1, as they were before the field was written. A newer version than this
 * library knows is an issue, never read as an old one.
 *
 * @param stored a record as it was stored
 * @param migrations the steps to use; default: those of this library
 * @param target version to reach
 * @example
 * ```ts
 * import { migrateRecord } from "crankworthy/evaluate";
 * migrateRecord({ identity: { chemistry: "agm" }, measurements: {} }).notes; // => []
 * migrateRecord({ schemaVersion: 9 }).issues[0].expected; // => "a schema version up to 1"
 * ```
 */
export function migrateRecord(
  stored: unknown,
  migrations: readonly Migration[] = MIGRATIONS,
  target: number = RECORD_SCHEMA_VERSION,
): MigratedRecord {
  if (typeof stored !== "object" || stored === null || Array.isArray(stored))
    return { ok: false, issues: [issue("wrong-type", "", picture(stored), "an object")] };
  let record = stored as Readonly<Record<string, unknown>>;
  const written = Object.hasOwn(record, "schemaVersion") ? record.schemaVersion : 1;
  const refuse = (expected: string): MigratedRecord => ({
    ok: false,
    issues: [issue("not-a-choice", "schemaVersion", picture(written), expected)],
  });
  if (!Number.isInteger(written) || (written as number) > target || (written as number) < 0)
    return refuse(`a schema version up to ${target}`);
  const notes: string[] = [];
  for (let version = written as number; version < target; version++) {
    const step = migrations.find(({ from }) => from === version);
    if (!step) return refuse(`a schema version from which a migration leads to ${target}`);
    record = { ...step.lift(record), schemaVersion: version + 1 };
    notes.push(step.note);
  }
  return { ok: true, record, notes };
}
