import type { FieldPath, GroupId, PageOption } from "../fields.data.js";

/** Options that the library's own catalogue names. */
type Catalogued =
  | "cracked"
  | "leaking"
  | "swollen"
  | "burnt-post"
  | "loose-post"
  | "sulfur-smell"
  | "completed-clamped"
  | "completed-day-of-month"
  | "started"
  | "calendar"
  | "days";

/** Issue codes of the library that a sheet can bring about. */
export type IssueCode =
  | "missing"
  | "wrong-type"
  | "not-finite"
  | "out-of-range"
  | "wrong-unit"
  | "unknown-key"
  | "not-a-date"
  | "not-a-choice"
  | "too-long"
  | "wrong-format"
  | "contradiction"
  | "missing-convention"
  | "not-json";

/** Everything the page itself says in one language; the answers are in the words of the library's catalogue. */
export interface Words {
  readonly title: string;
  readonly lead: string;
  readonly language: string;
  readonly given: string;
  readonly answers: string;
  readonly toAnswers: string;
  readonly toGiven: string;
  readonly more: string;
  /** `{n}` of them are filled in. */
  readonly moreFilled: string;
  readonly example: string;
  readonly empty: string;
  readonly copy: string;
  readonly copied: string;
  readonly copyByHand: string;
  readonly link: string;
  readonly print: string;
  readonly notGiven: string;
  readonly slider: string;
  readonly invented: string;
  /** `{n}` entries. */
  readonly look: string;
  /** The `{n}`th entry of a list. */
  readonly entry: string;
  readonly conditionAxis: string;
  readonly actionAxis: string;
  readonly before: string;
  readonly workedIn: string;
  readonly linkDamaged: string;
  readonly linkNewer: string;
  readonly linkTooLong: string;
  /** `{names}` */
  readonly linkLeftOut: string;
  readonly group: Readonly<Record<GroupId, string>>;
  readonly field: Readonly<Record<FieldPath, string>>;
  readonly option: Readonly<Record<Exclude<PageOption, Catalogued>, string>>;
  /** Stands before the library's English sentence; English needs none. */
  readonly issue?: Readonly<Record<IssueCode, string>>;
}
