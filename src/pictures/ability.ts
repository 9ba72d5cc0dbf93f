import { area, line as lineThrough } from "d3-shape";
import type { Evaluation } from "../evaluate/index.js";
import { interval95, normalPdf, type Refusal, refuse, wrongArgument } from "../numeric/index.js";
import {
  conformanceProbability,
  type DecisionPolicy,
  defaultPolicy,
  guardedLimits,
  policyWith,
} from "../verdict/index.js";
import { bottomAxis, numberTicks, type Plot, type Scale, scaleOver } from "./axes.js";
import { type Hatch, type Hatches, hatchedBox } from "./hatch.js";
import { textWidth } from "./measure.js";
import { MARGIN, page } from "./page.js";
import { label, labelInside, line, stroke } from "./paint.js";
import { type PictureOptions, sheetFor } from "./sheet.js";
import { element } from "./svg.js";
import { intervalText, type Told, tell } from "./told.js";
import { whisker } from "./whisker.js";

/** Settings of {@link abilityPicture}. */
export interface AbilityPictureOptions extends PictureOptions {
  /** The policy the evaluation was made with, where it was not the default. */
  readonly policy?: Partial<DecisionPolicy>;
}

/** Points of the density. */
const STEPS = 120;
/** Probabilities further apart than this come from two policies. */
const SAME_PROBABILITY = 1e-6;
/** How far the density is drawn [standard uncertainties]. */
const REACH = 3.5;

/**
 * Ability against both limits as a picture: where the true ability may lie, the guard bands, and the probabilities.
 *
 * Scope: the ability the verdict rests on, the first of the evaluation. The area of the density beyond a limit is the chance to lie there
 * (normal model); a guard band is what a reading must keep away from a limit before a word is said.
 *
 * @param evaluation an evaluation with an ability
 * @param options see {@link AbilityPictureOptions}
 * @returns one `svg` element as text
 *
 * Refuses `no-ability` when the evaluation has no ability.
 * @throws RangeError for an option out of range, and for a `policy` whose probabilities are not those of the verdict
 * @example
 * ```ts
 * import { evaluate } from "crankworthy/evaluate";
 * import { abilityPicture } from "crankworthy/pictures";
 * const evaluation = evaluate({
 *   identity: { chemistry: "flooded", rating: { standard: "sae-j537", amperes: 600 } },
 *   measurements: { cranking: { standard: "sae-j537", amperes: 440, relativeStandardUncertainty: 0.04 } },
 * });
 * const svg = abilityPicture(evaluation);
 * typeof svg === "string" && svg.includes("Chance of 80\u00a0% or more: 1 in 100"); // => true
 * ```
 */
export function abilityPicture(
  evaluation: Pick<Evaluation, "id" | "ability" | "verdict">,
  options: AbilityPictureOptions = {},
): string | Refusal<"no-ability"> {
  const sheet = sheetFor(options);
  const policy = options.policy ? policyWith(options.policy) : defaultPolicy;
  const measured = evaluation.ability[0];
  if (!measured)
    return refuse(
      "no-ability",
      "The evaluation has no ability to crank.",
      "A cranking estimate, or a resistance or conductance with its reference.",
    );
  const { ratio, from } = measured;
  const { value, standardUncertainty: u } = ratio;
  const { serviceableFraction: serviceable, unserviceableFraction: unserviceable } = policy;
  const { acceptFrom } = guardedLimits(serviceable, u, policy.acceptProbability);
  const { rejectBelow } = guardedLimits(unserviceable, u, policy.rejectProbability);
  const reaches = conformanceProbability(ratio, { lower: serviceable });
  const misses = 1 - conformanceProbability(ratio, { lower: unserviceable });
  const { serviceableProbability, unserviceableProbability } = evaluation.verdict;
  if (differ(reaches, serviceableProbability) || differ(misses, unserviceableProbability))
    wrongArgument(
      "policy",
      `limits ${serviceable} and ${unserviceable}`,
      "the policy the evaluation was made with",
    );
  const interval = interval95(ratio);

  const percent = (share: number) => sheet.quantity(100 * share, 0, "%");
  const low = Math.min(unserviceable - 0.2, rejectBelow, value - REACH * u);
  const high = Math.max(serviceable + 0.2, acceptFrom, value + REACH * u);
  const domain = { lower: Math.max(0, Math.floor(low * 20) / 20), upper: Math.ceil(high * 20) / 20 };
  const basis = sheet.say(`ability.${from}`);
  const named = evaluation.id === undefined ? [] : [sheet.say("battery", { id: evaluation.id })];
  const readingText = sheet.say("ability.reading", {
    value: percent(value),
    interval: intervalText(sheet, { lower: 100 * interval.lower, upper: 100 * interval.upper }, 0, "%"),
  });
  const { condition, action } = evaluation.verdict;
  const sentences: Told[] = [
    {
      text: sheet.say("ability.accept", {
        limit: percent(serviceable),
        from: percent(acceptFrom),
        chance: sheet.chance(policy.acceptProbability),
      }),
      hatch: "rising",
    },
    {
      text: sheet.say("ability.reject", {
        limit: percent(unserviceable),
        below: percent(rejectBelow),
        chance: sheet.chance(policy.rejectProbability),
      }),
      hatch: "falling",
    },
    {
      text: sheet.say("ability.reaches", { limit: percent(serviceable), chance: sheet.chance(reaches) }),
      hatch: "dots",
    },
    {
      text: sheet.say("ability.misses", { limit: percent(unserviceable), chance: sheet.chance(misses) }),
      hatch: "upright",
    },
    {
      text: sheet.say("ability.verdict", {
        condition: sheet.say(`condition.${condition}`),
        action: sheet.say(`action.${action}`),
      }),
      bold: true,
    },
    { text: sheet.say("interval.note"), soft: true },
  ];

  return page(sheet, {
    kind: "ability",
    title: sheet.say("ability.title"),
    subtitles: [...named, basis],
    description: [
      ...[...named, basis, readingText].map((one) => `${one}.`),
      ...sentences.map(({ text }) => (text.endsWith(".") ? text : `${text}.`)),
      sheet.say("axis.range", {
        name: sheet.say("ability.axis"),
        lower: percent(domain.lower),
        upper: percent(domain.upper),
      }),
    ].join(" "),
    draw,
  });

  function draw(top: number, hatches: Hatches): { markup: string; bottom: number } {
    const left = MARGIN + 6;
    const right = sheet.width - MARGIN - 6;
    const x = scaleOver({ lower: 100 * domain.lower, upper: 100 * domain.upper }, left, right);
    const plot: Plot = { left, right, top: top + 26, bottom: top + 26 + (sheet.narrow ? 110 : 140) };
    const at = (share: number) => x(100 * share);
    let markup = label(sheet, left, top + 12, sheet.say("ability.density"), { italic: true, ink: "soft" });
    markup += density(x, plot, hatches);
    markup += line(sheet, [left, plot.bottom, right, plot.bottom], "ink", 1);

    // The reading under its density, then what each stretch is called, then the guard bands.
    let y = plot.bottom + 16;
    markup += whisker(sheet, y, at(value), { lower: at(interval.lower), upper: at(interval.upper) }, plot);
    if (textWidth(readingText, 14) < right - left) {
      markup += labelInside(sheet, at(value), y + 20, readingText, plot, { bold: true, rim: true });
      y += 34;
    } else {
      const written = tell(sheet, hatches, y + 6, [{ text: readingText, bold: true }]);
      markup += written.markup;
      y = written.bottom + 8;
    }
    const stretches = [
      { from: domain.lower, to: unserviceable, word: "ability.unserviceable" },
      { from: unserviceable, to: serviceable, word: "ability.worn" },
      { from: serviceable, to: domain.upper, word: "ability.serviceable" },
    ] as const;
    const size = sheet.narrow ? 11 : 13;
    let row = 0;
    for (const { from, to, word } of stretches) {
      if (!(to > from)) continue;
      markup += element("rect", {
        x: at(from),
        y,
        width: at(to) - at(from),
        height: 22,
        ...stroke(sheet, "ink", 0.8),
      });
      const text = sheet.say(word);
      const room = at(to) - at(from) > textWidth(text, size) * 0.9;
      // A word wider than its stretch stands below it.
      markup += labelInside(sheet, (at(from) + at(to)) / 2, room ? y + 15.5 : y + 36, text, plot, { size });
      if (!room) row = 18;
    }
    y += 22 + row + 4;
    const bands: readonly (readonly [number, number, Hatch])[] = [
      [rejectBelow, unserviceable, "falling"],
      [serviceable, acceptFrom, "rising"],
    ];
    for (const [from, to, hatch] of bands) {
      const start = Math.max(left, at(from));
      if (at(to) - start > 0.5)
        markup += hatchedBox(sheet, hatches, { x: start, y, width: at(to) - start, height: 14 }, hatch);
    }
    y += 18;
    // Under everything else, so that no word is crossed.
    const limits = [unserviceable, serviceable].map((limit) =>
      line(sheet, [at(limit), plot.top, at(limit), y], "ink", 1.2, "6 3"),
    );
    const axis = bottomAxis(
      sheet,
      x,
      { ...plot, bottom: y },
      numberTicks(sheet, x, sheet.narrow ? 6 : 10),
      sheet.say("ability.axis"),
    );
    markup += axis.markup;
    const last = tell(sheet, hatches, axis.bottom + 2, sentences);
    return { markup: limits.join("") + markup + last.markup, bottom: last.bottom };
  }

  // Normal density, its tails beyond the limits hatched; a certain value is a line.
  function density(x: Scale, plot: Plot, hatches: Hatches): string {
    if (!(u > 0)) return line(sheet, [x(100 * value), plot.top, x(100 * value), plot.bottom], "first", 2);
    const height = plot.bottom - plot.top;
    const level = (one: number) => plot.bottom - (height * normalPdf((one - value) / u)) / normalPdf(0);
    const points = (from: number, to: number): number[] => {
      const start = Math.max(from, value - REACH * u, domain.lower);
      const end = Math.min(to, value + REACH * u, domain.upper);
      if (!(end > start)) return [];
      return Array.from({ length: STEPS + 1 }, (_, i) => start + ((end - start) * i) / STEPS);
    };
    let markup = "";
    for (const [from, to, hatch] of [
      [Number.NEGATIVE_INFINITY, unserviceable, "upright"],
      [serviceable, Number.POSITIVE_INFINITY, "dots"],
    ] as const) {
      const d = area<number>()
        .x((one) => x(100 * one))
        .y0(plot.bottom)
        .y1(level)
        .digits(1)(points(from, to));
      if (d) markup += element("path", { d, fill: hatches.fill(hatch) });
    }
    const d = lineThrough<number>()
      .x((one) => x(100 * one))
      .y(level)
      .digits(1)(points(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY));
    return d ? markup + element("path", { d, ...stroke(sheet, "first", 2) }) : markup;
  }
}

function differ(own: number, ofVerdict: number | undefined): boolean {
  return ofVerdict !== undefined && Math.abs(own - ofVerdict) > SAME_PROBABILITY;
}
