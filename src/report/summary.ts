import { fixed } from "./format.js";
import { english } from "./messages.en.data.js";
import type { Messages, Sentence } from "./messages.js";
import { clean, columns, pageWidth, wrap } from "./text.js";
import type { TicketOptions } from "./ticket.js";
import { voiceOf } from "./voice.js";

/** Counts over many evaluations, as the room `fleet` makes them. */
export interface DaySummary {
  /** Evaluated records. */
  readonly count: number;
  /** Records that could not be used. */
  readonly refused: number;
  readonly byCondition: Readonly<Record<string, number>>;
  readonly byAction: Readonly<Record<string, number>>;
  readonly byChemistry: Readonly<Record<string, number>>;
  readonly byRatingStandard: Readonly<Record<string, number>>;
  readonly byFinding: Readonly<Record<string, number>>;
}

type Table = Exclude<keyof DaySummary, "count" | "refused">;
const TABLES: readonly Table[] = ["byCondition", "byAction", "byChemistry", "byRatingStandard", "byFinding"];

/**
 * Counts of many batteries as plain text: condition, what to do, kind, rating standard and what was noticed, most
 * frequent first.
 *
 * @param summary counts by code; codes unknown to the catalogue are shown as they are
 * @param options catalogue, width [columns] (≥ 20, default 42)
 * @throws RangeError when the width is not a whole number of 20 or more
 * @example
 * ```ts
 * import { renderDaySummary } from "crankworthy/report";
 * const none = { byAction: {}, byChemistry: {}, byRatingStandard: {}, byFinding: {} };
 * const text = renderDaySummary({ count: 3, refused: 0, byCondition: { worn: 1, serviceable: 2 }, ...none }, { width: 20 });
 * text.split("\n").slice(-2); // => ["  Serviceable      2", "  Worn             1"]
 * ```
 */
export function renderDaySummary(summary: DaySummary, options: TicketOptions = {}): string {
  const { messages = english, width = 42 } = options;
  const { phrase } = messages;
  const voice = voiceOf(messages);
  pageWidth(width);
  const row = (label: string, count: number, indent: string): string => {
    const number = fixed(count, 0, voice);
    const lines = wrap(label, width - number.length - 1, indent);
    const last = lines.pop()!;
    const gap = " ".repeat(Math.max(1, width - columns(last) - number.length));
    return [...lines, last + gap + number].join("\n");
  };
  const head = [
    ...wrap(phrase.dayTitle, width),
    row(phrase.evaluated, summary.count, "  "),
    row(phrase.unusable, summary.refused, "  "),
  ];
  const tables = TABLES.flatMap((table) => {
    const counts = Object.entries(summary[table]).filter(([, count]) => count > 0);
    if (counts.length === 0) return [];
    counts.sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1));
    const rows = counts.map(([code, count]) => row(labelOf(table, code, messages), count, "  "));
    return [[...wrap(phrase[table], width), ...rows].join("\n")];
  });
  return [head.join("\n"), ...tables].join("\n\n");
}

function labelOf(table: Table, code: string, messages: Messages): string {
  const labels: Readonly<Record<Table, Readonly<Record<string, string | Sentence>>>> = {
    byCondition: messages.condition,
    byAction: messages.action,
    byChemistry: messages.chemistry,
    byRatingStandard: messages.standard,
    byFinding: messages.finding,
  };
  const label = Object.hasOwn(labels[table], code) ? labels[table][code]! : clean(code);
  return typeof label === "string" ? label : label[0];
}
