import { area, line as lineThrough } from "d3-shape";
import type { BatteryRecord, Evaluation } from "../evaluate/index.js";
import {
  COVERAGE_FACTOR_95,
  type Estimate,
  type Interval,
  isRefusal,
  type Refusal,
  refuse,
} from "../numeric/index.js";
import { type ColdMorning, type ColdStart, coldStartMargin } from "../temperature/index.js";
import { bottomAxis, numberTicks, type Plot, padded, scaleOver, valueAxis } from "./axes.js";
import type { Hatch, Hatches } from "./hatch.js";
import { textWidth } from "./measure.js";
import { MARGIN, page } from "./page.js";
import { label, line, stroke } from "./paint.js";
import { type PictureOptions, type Sheet, sheetFor } from "./sheet.js";
import type { Ink } from "./style.data.js";
import { element } from "./svg.js";
import { intervalText, type Told, tell } from "./told.js";
import { whisker } from "./whisker.js";

/** What {@link coldStartPicture} needs. */
export interface ColdStartPictured {
  readonly evaluation: Pick<Evaluation, "id" | "coldStart">;
  /** The record the evaluation was made from: it says what the engine asks for. */
  readonly record: Pick<BatteryRecord, "requirement">;
}

/** Temperatures at which both curves are computed; they bend at four of the tables' own at most. */
const STEPS = 60;

/**
 * Cold start as a picture: what the battery gives and what the engine asks against temperature, and the coldest morning.
 *
 * Scope: a charged battery and the tables that `evaluate` uses. Hatched is the 95 % interval of each current; the lowest start and its
 * interval stand below.
 *
 * @param pictured see {@link ColdStartPictured}
 * @param options see {@link PictureOptions}
 * @returns one `svg` element as text
 *
 * Refuses `no-cold-start` when the evaluation has no cold start, or the morning lies outside the temperature tables.
 * @throws RangeError for an option out of range
 * @example
 * ```ts
 * import { evaluate } from "crankworthy/evaluate";
 * import { coldStartPicture } from "crankworthy/pictures";
 * const record = {
 *   identity: { chemistry: "flooded", rating: { standard: "sae-j537", amperes: 600 } },
 *   measurements: { cranking: { standard: "sae-j537", amperes: 440, relativeStandardUncertainty: 0.04 } },
 *   requirement: { crankingAmperes: 170, atCelsius: 20, coldestMorningCelsius: -12 },
 * } as const;
 * const svg = coldStartPicture({ evaluation: evaluate(record), record });
 * typeof svg === "string" && svg.includes("Chance that it starts:"); // => true
 * ```
 */
export function coldStartPicture(
  { evaluation, record }: ColdStartPictured,
  options: PictureOptions = {},
): string | Refusal<"no-cold-start"> {
  const sheet = sheetFor(options);
  const { coldStart: start, id } = evaluation;
  const asked = record.requirement;
  const morning = start?.atColdestMorning;
  if (!start || !asked || !morning || isRefusal(morning))
    return refuse(
      "no-cold-start",
      "The evaluation does not tell what battery and engine do on the coldest morning.",
      "An ability, what the engine asks for, and a coldest morning within the temperature tables.",
    );
  const { coldestMorningCelsius: coldest, atCelsius } = asked;
  const rated = ratedCurrents(morning, coldest, atCelsius);
  const { coveredCelsius } = start;
  const at = (celsius: number): ColdMorning => coldMorning(rated.ability, rated.demand, celsius, atCelsius)!;
  const curve = Array.from({ length: STEPS + 1 }, (_, i) => {
    const celsius =
      i === STEPS
        ? coveredCelsius.upper
        : coveredCelsius.lower + ((coveredCelsius.upper - coveredCelsius.lower) * i) / STEPS;
    return { celsius, ...at(celsius) };
  });
  const half = ({ standardUncertainty }: Estimate) => COVERAGE_FACTOR_95 * standardUncertainty;
  const highest = Math.max(
    ...curve.flatMap(({ abilityAmperes: a, demandAmperes: d }) => [a.value + half(a), d.value + half(d)]),
  );
  const axis = { lower: 0, upper: padded({ lower: 0, upper: highest }, 0.04, 1).upper };
  const amperes = (value: number) => sheet.quantity(value, 0, "A");
  const { marginAmperes: margin, abilityAmperes: ability, demandAmperes: demand } = morning;
  const sentences: Told[] = [
    { text: lowestText(sheet, start), bold: true },
    {
      text: sheet.say("start.morning", {
        celsius: celsiusText(sheet, coldest),
        ability: amperes(ability.value),
        demand: amperes(demand.value),
      }),
    },
    { text: sheet.say("start.margin", { margin: amperes(margin.value), spread: amperes(half(margin)) }) },
    { text: sheet.say("start.chance", { chance: sheet.chance(morning.startProbability) }) },
    { text: sheet.say("start.bands"), soft: true },
    { text: sheet.say("interval.note"), soft: true },
  ];
  const named = id === undefined ? [] : [sheet.say("battery", { id })];

  return page(sheet, {
    kind: "cold-start",
    title: sheet.say("start.title"),
    subtitles: named,
    description: [
      ...named.map((one) => `${one}.`),
      ...sentences.map(({ text }) => (text.endsWith(".") ? text : `${text}.`)),
      sheet.say("axis.range", {
        name: sheet.say("start.axis"),
        lower: celsiusText(sheet, coveredCelsius.lower),
        upper: celsiusText(sheet, coveredCelsius.upper),
      }),
      sheet.say("axis.range", {
        name: sheet.say("start.amperes"),
        lower: amperes(axis.lower),
        upper: amperes(axis.upper),
      }),
    ].join(" "),
    draw,
  });

  function draw(top: number, hatches: Hatches): { markup: string; bottom: number } {
    const plot: Plot = {
      left: MARGIN + 40,
      right: sheet.width - MARGIN,
      top: top + 24,
      bottom: top + 24 + (sheet.narrow ? 210 : 280),
    };
    const x = scaleOver(coveredCelsius, plot.left, plot.right);
    const y = scaleOver(axis, plot.bottom, plot.top);
    let markup = label(sheet, MARGIN, top + 12, sheet.say("start.amperes"), { bold: true });
    markup += valueAxis(sheet, y, plot, 5);
    const sides: readonly (readonly ["abilityAmperes" | "demandAmperes", Ink, Hatch, string | undefined])[] =
      [
        ["abilityAmperes", "first", "rising", undefined],
        ["demandAmperes", "second", "falling", "7 3"],
      ];
    for (const [key, , hatch] of sides) {
      const d = area<(typeof curve)[number]>()
        .x((one) => x(one.celsius))
        .y0((one) => y(Math.max(0, one[key].value - half(one[key]))))
        .y1((one) => y(one[key].value + half(one[key])))
        .digits(1)(curve);
      markup += element("path", { d: d ?? "", fill: hatches.fill(hatch, "rule") });
    }
    for (const [key, ink, , dash] of sides) {
      const middle = lineThrough<(typeof curve)[number]>()
        .x((one) => x(one.celsius))
        .y((one) => y(one[key].value))
        .digits(1)(curve);
      markup += element("path", { d: middle ?? "", ...stroke(sheet, ink, 2, dash) });
    }
    // Names stand at the warm end, where the two are farthest apart; the one below its curve, the other above.
    for (const [key, ink] of sides) {
      const battery = key === "abilityAmperes";
      const name = sheet.say(battery ? "start.ability" : "start.demand");
      const from = at(x.invert(plot.right - 6 - textWidth(name, 13)))[key].value;
      markup += label(sheet, plot.right - 6, y(from) + (battery ? 18 : -8), name, {
        anchor: "end",
        italic: true,
        rim: true,
        ink,
      });
    }

    // The morning: both currents, and the margin between them.
    const px = x(coldest);
    markup += line(sheet, [px, plot.top, px, plot.bottom], "ink", 1.2, "5 3");
    markup += line(sheet, [px, y(ability.value), px, y(demand.value)], "ink", 2.6);
    for (const { value } of [ability, demand])
      markup += element("circle", { cx: px, cy: y(value), r: 4, class: "f-ink", fill: sheet.palette.ink });
    markup += label(
      sheet,
      px + (px > (plot.left + plot.right) / 2 ? -6 : 6),
      plot.top + 12,
      celsiusText(sheet, coldest),
      {
        rim: true,
        anchor: px > (plot.left + plot.right) / 2 ? "end" : "start",
      },
    );

    let bottom = plot.bottom;
    const { lowestStartCelsius: lowest, intervalCelsius } = start!;
    if ("value" in lowest) {
      const ends: { lower?: number; upper?: number } = {};
      if (intervalCelsius.lower !== undefined) ends.lower = x(intervalCelsius.lower);
      if (intervalCelsius.upper !== undefined) ends.upper = x(intervalCelsius.upper);
      const crossing = y(at(lowest.value).demandAmperes.value);
      markup += line(sheet, [x(lowest.value), crossing, x(lowest.value), plot.bottom + 12], "soft", 1, "2 3");
      markup += whisker(sheet, plot.bottom + 14, x(lowest.value), ends, plot);
      bottom += 26;
    }
    const below = bottomAxis(
      sheet,
      x,
      { ...plot, bottom },
      numberTicks(sheet, x, sheet.narrow ? 6 : 10),
      sheet.say("start.axis"),
    );
    markup += below.markup;
    const last = tell(sheet, hatches, below.bottom + 2, sentences);
    return { markup: markup + last.markup, bottom: last.bottom };
  }
}

function coldMorning(
  abilityAmperes: Estimate,
  demandAmperes: Estimate,
  coldestMorningCelsius: number,
  demandReferenceCelsius: number,
): ColdMorning | undefined {
  const found = coldStartMargin({
    abilityAmperes,
    demandAmperes,
    demandReferenceCelsius,
    coldestMorningCelsius,
  });
  const morning = isRefusal(found) ? undefined : found.atColdestMorning;
  return morning && !isRefusal(morning) ? morning : undefined;
}

// The evaluation holds the currents of one morning. Currents of 1 A without uncertainty show what the tables do to them there;
// dividing that out leaves the currents at the tables' own temperatures, and those give every other morning.
function ratedCurrents(
  morning: ColdMorning,
  celsius: number,
  reference: number,
): { readonly ability: Estimate; readonly demand: Estimate } {
  const one = { value: 1, standardUncertainty: 0 };
  const table = coldMorning(one, one, celsius, reference)!;
  const back = (seen: Estimate, ratio: Estimate): Estimate => {
    const value = seen.value / ratio.value;
    const own = (seen.standardUncertainty / seen.value) ** 2 - (ratio.standardUncertainty / ratio.value) ** 2;
    return { value, standardUncertainty: value * Math.sqrt(Math.max(0, own)) };
  };
  return {
    ability: back(morning.abilityAmperes, table.abilityAmperes),
    demand: back(morning.demandAmperes, table.demandAmperes),
  };
}

function celsiusText(sheet: Sheet, celsius: number): string {
  return sheet.quantity(celsius, Number.isInteger(celsius) ? 0 : 1, "°C");
}

function lowestText(sheet: Sheet, { lowestStartCelsius: lowest, intervalCelsius }: ColdStart): string {
  if ("bound" in lowest)
    return sheet.say(`start.lowest-${lowest.bound}`, { celsius: celsiusText(sheet, lowest.celsius) });
  const value = sheet.quantity(lowest.value, 0, "°C");
  const { lower, upper } = intervalCelsius;
  const interval: Partial<Interval> = intervalCelsius;
  // Both ends may lie outside the tables: then there is no more to say than the value.
  if (lower === undefined && upper === undefined) return sheet.say("start.lowest", { value, interval: "—" });
  return sheet.say("start.lowest", { value, interval: intervalText(sheet, interval, 0, "°C") });
}
