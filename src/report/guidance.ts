import type { Guidance, GuidedStep, UntakenStep } from "../guidance/index.js";
import type { Caution } from "../verdict/index.js";
import { fillTemplate } from "./format.js";
import { englishGuidance, type GuidanceMessages } from "./guidance.en.data.js";
import { english } from "./messages.en.data.js";
import type { Messages } from "./messages.js";
import { pageWidth, wrap } from "./text.js";
import { voiceOf } from "./voice.js";

/** How to render guidance. */
export interface GuidanceTextOptions {
  /** Catalogue of numbers and words, default English. */
  readonly messages?: Messages;
  /** Catalogue of the guidance, default English. */
  readonly guidance?: GuidanceMessages;
  /** Columns, a whole number ≥ 20; default 80. */
  readonly width?: number;
}

/** Below this a drop is shown as none [probability]: a tenth of a per cent. */
const SHOWN_DROP = 0.001;

/**
 * One step of the guidance as text: what to do, why, and what it is worth.
 *
 * @param step from `nextStep`
 * @param options catalogues, width [columns] (≥ 20, default 80)
 * @returns lines separated by `\n`, no newline at the end
 * @throws RangeError when the width is not a whole number of 20 or more
 * @example
 * ```ts
 * import { nextStep } from "crankworthy/guidance";
 * import { renderStep } from "crankworthy/report";
 * const guidance = nextStep({});
 * const text = guidance.ok && !guidance.done ? renderStep(guidance.step) : "";
 * text.startsWith("Look it over before touching anything"); // => true
 * ```
 */
export function renderStep(step: GuidedStep, options: GuidanceTextOptions = {}): string {
  const { guidance = englishGuidance, width = 80 } = options;
  const messages = voiceOf(options.messages ?? english);
  pageWidth(width);
  const { standard } = step.parameters;
  const parameters = {
    ...step.parameters,
    ...(standard !== undefined && { standard: messages.standard[standard as keyof Messages["standard"]] }),
  };
  const drop = step.expectedRiskDrop;
  const risk = fillTemplate(messages, drop < SHOWN_DROP ? guidance.prepares : guidance.risk, {
    riskNow: step.riskNow,
    drop,
  });
  return [
    fillTemplate(messages, guidance.step[step.code], parameters),
    fillTemplate(messages, guidance.why, { reason: guidance.reason[step.why.code] }),
    risk,
  ]
    .flatMap((text) => wrap(text, width))
    .join("\n");
}

/**
 * One caution of a step as text.
 *
 * @param caution from `nextStep`
 * @param options catalogue of the report, width [columns] (≥ 20, default 80)
 */
export function renderCaution(
  caution: Caution,
  { messages = english, width = 80 }: Pick<GuidanceTextOptions, "messages" | "width"> = {},
): string {
  pageWidth(width);
  const text = fillTemplate(voiceOf(messages), messages.caution[caution.code], caution.parameters ?? {});
  return wrap(text, width).join("\n");
}

/**
 * Why the guidance ends, as text; the answer itself is the ticket of its evaluation.
 *
 * @param end from `nextStep`, with `done` true
 * @param options catalogues, width [columns] (≥ 20, default 80)
 */
export function renderEnd(
  end: Pick<Extract<Guidance, { readonly done: true }>, "because" | "riskNow"> & {
    readonly untaken?: readonly UntakenStep[];
  },
  options: GuidanceTextOptions = {},
): string {
  const { guidance = englishGuidance, width = 80 } = options;
  const messages = voiceOf(options.messages ?? english);
  pageWidth(width);
  const texts = [guidance.end[end.because]];
  for (const { why } of end.untaken ?? [])
    texts.push(fillTemplate(messages, guidance.untaken, { reason: guidance.reason[why.code] }));
  if (end.because === "settled" || end.because === "nothing-left")
    texts.push(fillTemplate(messages, guidance.residual, { riskNow: end.riskNow }));
  return texts.flatMap((text) => wrap(text, width)).join("\n");
}
