import type { BatteryRecord, Evaluation } from "../evaluate/index.js";
import { dayNumber, type Refusal, refuse } from "../numeric/index.js";
import { bottomAxis, type Scale } from "./axes.js";
import { calendarScale, calendarTicks } from "./calendar-axis.js";
import { type Hatches, hatchedBox } from "./hatch.js";
import { textWidth } from "./measure.js";
import { MARGIN, page } from "./page.js";
import { label, line, paragraph } from "./paint.js";
import { type PictureOptions, type Sheet, sheetFor } from "./sheet.js";
import { element } from "./svg.js";
import { type Told, tell } from "./told.js";
import { claimDay, type Row, warrantyTimeline } from "./warranty-rows.js";
import { rounded } from "./whisker.js";

/** What {@link warrantyPicture} needs. */
export interface WarrantyPictured {
  readonly evaluation: Pick<Evaluation, "id" | "inspectedOn" | "age" | "warranty">;
  /** The record the evaluation was made from: it holds terms and purchase. */
  readonly record: Pick<BatteryRecord, "warranty">;
}

/** Height of a stretch of days [px]. */
const BOX = 13;

/**
 * A claim on a timeline: when the battery was made by its date code, sold and fitted, which period the claim falls into.
 *
 * Scope: dates. A date code is a stretch of days, and where the facts leave more than one start open, the first and the last cover
 * stand one below the other. What is paid is in the settlement.
 *
 * @param pictured see {@link WarrantyPictured}
 * @param options see {@link PictureOptions}
 * @returns one `svg` element as text
 *
 * Refuses `no-warranty` when record or evaluation has no warranty.
 * @throws RangeError for an option out of range or a text that is no date
 * @example
 * ```ts
 * import { evaluate } from "crankworthy/evaluate";
 * import { warrantyPicture } from "crankworthy/pictures";
 * const record = {
 *   identity: { chemistry: "flooded", rating: { standard: "sae-j537", amperes: 600 } },
 *   conditions: { inspectedOn: "2026-11-20" },
 *   measurements: { restVolts: 12.1 },
 *   warranty: {
 *     purchase: { receipt: true, soldOn: "2024-05-06", pricePaid: "120.00" },
 *     terms: {
 *       currency: "EUR", minorUnitDigits: 2, freeMonths: 24, totalMonths: 48, prorationOrigin: "purchase",
 *       monthCount: "completed-clamped", lastCoveredDay: "anniversary", priceBasis: "paid", rounding: "half-up",
 *       replacementTerm: "remaining", exclusions: [], core: { depositInExchange: "waived" },
 *     },
 *   },
 * } as const;
 * const svg = warrantyPicture({ evaluation: evaluate(record), record });
 * typeof svg === "string" && svg.includes("Replacement free of charge"); // => true
 * ```
 */
export function warrantyPicture(
  { evaluation, record }: WarrantyPictured,
  options: PictureOptions = {},
): string | Refusal<"no-warranty"> {
  const sheet = sheetFor(options);
  const claimedOn = claimDay(record, evaluation);
  if (!record.warranty || !evaluation.warranty || claimedOn === undefined)
    return refuse(
      "no-warranty",
      "Record and evaluation hold no warranty claim.",
      "A record with the terms, the purchase and a date of the claim or inspection.",
    );
  const { rows, notes } = warrantyTimeline(sheet, evaluation, record.warranty, claimedOn);
  const outcome = evaluation.warranty.settlement?.outcome;
  const sentences: Told[] = [
    ...notes.map((text) => ({ text })),
    { text: sheet.say(outcome ? `warranty.outcome.${outcome}` : "warranty.not-yet"), bold: true },
  ];
  const named = evaluation.id === undefined ? [] : [sheet.say("battery", { id: evaluation.id })];

  return page(sheet, {
    kind: "warranty",
    title: sheet.say("warranty.title"),
    subtitles: named,
    description: [...named, ...rows.map(({ text }) => text), ...sentences.map(({ text }) => text)]
      .map((text) => (/[.。]$/.test(text) ? text : `${text}.`))
      .join(" "),
    draw,
  });

  function draw(top: number, hatches: Hatches): { markup: string; bottom: number } {
    const edges = { left: MARGIN + 4, right: sheet.width - MARGIN - 4 };
    const days = rows.flatMap(({ from, to }) => [dayNumber(from), dayNumber(to)]);
    const x = calendarScale(days, edges.left, edges.right);
    let markup = "";
    let y = top + 2;
    for (const row of rows) {
      const drawn = drawRow(sheet, hatches, row, x, y, edges);
      markup += drawn.markup;
      y = drawn.bottom;
    }
    const crossing = rows.find((row) => row.crossing);
    const at = crossing && x(dayNumber(crossing.from));
    const axis = bottomAxis(
      sheet,
      x,
      { ...edges, top, bottom: y + 4 },
      calendarTicks(sheet, x.domain()[0]!, x.domain()[1]!, sheet.narrow ? 5 : 10),
      sheet.say("warranty.axis"),
    );
    const under = at === undefined ? "" : line(sheet, [at, top + 4, at, y + 4], "ink", 1.2, "5 3");
    const last = tell(sheet, hatches, axis.bottom + 2, sentences);
    return { markup: under + markup + axis.markup + last.markup, bottom: last.bottom };
  }
}

// Words first, what they speak of below them: as near to it as the page allows.
function drawRow(
  sheet: Sheet,
  hatches: Hatches,
  { text, from, to, hatch }: Row,
  x: Scale,
  top: number,
  edges: { readonly left: number; readonly right: number },
): { readonly markup: string; readonly bottom: number } {
  // The last day belongs to the stretch.
  const start = x(dayNumber(from));
  const end = x(dayNumber(to) + 1);
  const wide = textWidth(text, 13);
  let markup: string;
  let y = top + 14;
  if (start + wide <= edges.right) markup = label(sheet, start, y, text, { rim: true });
  else if (end - wide >= edges.left)
    markup = label(sheet, Math.min(end, edges.right), y, text, { anchor: "end", rim: true });
  else if (edges.right - wide >= edges.left)
    markup = label(sheet, edges.right, y, text, { anchor: "end", rim: true });
  else {
    const written = paragraph(sheet, { x: edges.left, y, width: edges.right - edges.left }, text, {
      rim: true,
    });
    markup = written.markup;
    y = written.nextY - 13 * 1.35;
  }
  y += 5;
  if (hatch) {
    // A stretch of a few days must still be seen.
    const width = Math.max(3, end - start);
    markup += element("rect", {
      x: start,
      y,
      width,
      height: BOX,
      class: "f-paper",
      fill: sheet.palette.paper,
    });
    markup += hatchedBox(sheet, hatches, { x: start, y, width, height: BOX }, hatch);
  } else {
    const d = `M${start},${y}L${start + 5},${y + BOX / 2}L${start},${y + BOX}L${start - 5},${y + BOX / 2}Z`;
    markup += element("path", { d: rounded(d), class: "f-ink", fill: sheet.palette.ink });
  }
  return { markup, bottom: y + BOX + 4 };
}
