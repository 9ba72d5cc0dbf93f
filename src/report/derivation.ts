import type { Evaluation } from "../evaluate/index.js";
import { bibliography } from "../sources/index.js";
import { english } from "./messages.en.data.js";
import { derivationLines } from "./steps.js";
import { layOutTicket, type TicketOptions } from "./ticket.js";
import { voiceOf } from "./voice.js";

/**
 * The derivation of every number as numbered steps: quantity = formula, inputs, result ± standard uncertainty, source with
 * edition, locator and standing.
 *
 * @param evaluation from `evaluate(record, { explain: true })`
 * @param options catalogue, width [columns] (≥ 20, default 80), sources (default: the whole bibliography)
 * @returns lines separated by `\n`; a sentence that says so when the evaluation carries no derivation
 * @throws RangeError when the width is not a whole number of 20 or more
 * @example
 * ```ts
 * import { evaluate } from "crankworthy";
 * import { renderDerivation } from "crankworthy/report";
 * const record = {
 *   identity: { chemistry: "flooded", rating: { standard: "din-43539-2", amperes: 300 } },
 *   measurements: { cranking: { standard: "sae-j537", amperes: 510 } },
 * };
 * renderDerivation(evaluate(record)).includes("no derivation"); // => true
 * renderDerivation(evaluate(record, { explain: true })).includes("ratio to rating = measured / label"); // => true
 * ```
 */
export function renderDerivation(
  { derivation }: Pick<Evaluation, "derivation">,
  options: TicketOptions = {},
): string {
  const { messages = english, width = 80, sources = bibliography } = options;
  const { question, phrase } = messages;
  const lines = derivation
    ? derivationLines(derivation, voiceOf(messages), sources)
    : [{ kind: "text", text: phrase.noDerivation } as const];
  return layOutTicket([{ question: "derivation", heading: question.derivation, lines }], width);
}
