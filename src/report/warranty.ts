import type { Evaluation } from "../evaluate/index.js";
import type { Settlement, SettlementLine } from "../warranty/index.js";
import { fill, fillTemplate } from "./format.js";
import { line, type ReportLine } from "./line.js";
import type { ExplanationCode } from "./messages.js";
import type { Voice } from "./voice.js";

/** What the warranty pays and why. */
export function warrantyLines({ warranty }: Evaluation, messages: Voice): ReportLine[] {
  if (!warranty) return [];
  const { eligibility, settlement } = warranty;
  const lines = [line(messages.eligibility[eligibility.answer])];
  const shown = new Set<string>(["excluded", "not-yet-claimable"]);
  const reasons = (codes: Settlement["reasons"]): void => {
    for (const code of codes)
      if (!shown.has(code)) {
        shown.add(code);
        lines.push(line(messages.settlement[code], "item"));
      }
  };
  reasons(eligibility.evidence);
  if (!settlement) return lines;
  lines.push(line(messages.outcome[settlement.outcome]));
  reasons(settlement.reasons);
  term(settlement);
  const { currency, shelfAge, replacementCover, alternatives, outcome } = settlement;
  if (shelfAge)
    lines.push(line(fill(messages, "shelf", { lower: shelfAge.lowerDays, upper: shelfAge.upperDays })));
  for (const one of settlement.lines)
    lines.push(line(amountText(one, currency, messages), "item", { [`warranty.${one.kind}`]: one.amount }));
  if (replacementCover) lines.push(line(fill(messages, "replacement", { ...replacementCover })));
  if (alternatives)
    for (const [phrase, one] of [
      ["worst", alternatives.lower],
      ["best", alternatives.upper],
    ] as const) {
      // With one result only the dates differ.
      if (outcome === "cannot-tell") {
        const parameters = {
          outcome: messages.outcome[one.outcome],
          total: money(one.total, messages),
          currency,
        };
        lines.push(line(fill(messages, phrase, parameters), "text", { "warranty.total": one.total }));
      }
      term(one);
      if (outcome === "cannot-tell") reasons(one.reasons);
    }
  return lines;

  function term({ startedOn, lastCoveredDay, elapsed }: Settlement): void {
    if (startedOn && lastCoveredDay)
      lines.push(
        line(
          fill(messages, "term", {
            startedOn,
            lastCoveredDay,
            // After the end of the term, or under a longer legal period, the share says nothing.
            ...(elapsed && elapsed.used <= elapsed.whole && elapsed),
          }),
          "text",
          elapsed && elapsed.used <= elapsed.whole ? { "warranty.used": elapsed.used } : undefined,
        ),
      );
  }
}

function amountText(
  { kind, amount, explanation }: SettlementLine,
  currency: string,
  messages: Voice,
): string {
  const { code, formula, parameters } = explanation;
  const template = Object.hasOwn(messages.explanation, code)
    ? messages.explanation[code as ExplanationCode]
    : code;
  return fill(messages, "amount", {
    line: messages.line[kind],
    amount: money(amount, messages),
    currency,
    why: fillTemplate(messages, template, { ...parameters, currency }),
    formula,
  });
}

// Amounts are rounded already: only the mark may change.
function money(amount: string | undefined, { asIs }: Voice): string | undefined {
  return amount === undefined ? undefined : asIs(amount);
}
