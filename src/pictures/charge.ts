import { area, line as lineThrough } from "d3-shape";
import { meanSlopeVolts, openCircuitVolts, type VoltageChargeReading } from "../charge-state/index.js";
import type { Evaluation } from "../evaluate/index.js";
import { COVERAGE_FACTOR_95, type Estimate, interval95, type Refusal, refuse } from "../numeric/index.js";
import { bottomAxis, numberTicks, type Plot, padded, type Scale, scaleOver, valueAxis } from "./axes.js";
import { lanesOf } from "./charge-lanes.js";
import type { Hatches } from "./hatch.js";
import { textWidth } from "./measure.js";
import { MARGIN, page } from "./page.js";
import { label, line, stroke } from "./paint.js";
import { type PictureOptions, type Sheet, sheetFor } from "./sheet.js";
import { element } from "./svg.js";
import { tell } from "./told.js";
import { whisker } from "./whisker.js";

/** Points of the curve. */
const STEPS = 60;

/**
 * State of charge as a picture: the rest voltage, the curve of the battery's acid with its band, and what is read off.
 *
 * Scope: a reading from a rest voltage, alone or with gravities. The band is what batteries of one kind differ by; the interval
 * below the curve holds the meter, the rest and the temperature as well.
 *
 * @param evaluation an evaluation whose `charge` has a voltage
 * @param options see {@link PictureOptions}
 * @returns one `svg` element as text
 *
 * Refuses `no-rest-voltage` when the evaluation has no state of charge from a rest voltage.
 * @throws RangeError for an option out of range
 * @example
 * ```ts
 * import { evaluate } from "crankworthy/evaluate";
 * import { chargePicture } from "crankworthy/pictures";
 * const evaluation = evaluate({
 *   identity: { chemistry: "flooded", rating: { standard: "sae-j537", amperes: 600 } },
 *   conditions: { lastEvent: "charge", hoursAtRest: 24, temperatureCelsius: 25 },
 *   measurements: { restVolts: 12.46 },
 * });
 * const svg = chargePicture(evaluation);
 * typeof svg === "string" && svg.includes("From the voltage: 75\u00a0%"); // => true
 * ```
 */
export function chargePicture(
  evaluation: Pick<Evaluation, "id" | "charge">,
  options: PictureOptions = {},
): string | Refusal<"no-rest-voltage"> {
  const sheet = sheetFor(options);
  const { id, charge } = evaluation;
  const reading = charge?.voltage;
  if (!charge || !reading)
    return refuse(
      "no-rest-voltage",
      "The evaluation has no state of charge from a rest voltage.",
      "A rest voltage, with what the battery did before and how long it rested.",
    );
  const { acid, settledVoltsAt25Celsius: settled } = reading;
  const voltsAt = (stateOfCharge: number): number => {
    const volts = openCircuitVolts({ stateOfCharge, acid });
    return typeof volts === "number" ? volts : Number.NaN;
  };
  const half = COVERAGE_FACTOR_95 * curveUncertainty(reading);
  const lanes = lanesOf(sheet, charge, reading);

  const inside = { lower: -0.3, upper: 1.3 };
  // The lanes lie between empty and full; the mark on the curve may lie beyond.
  const mark = reading.stateOfCharge.value;
  const domain = {
    lower: Math.max(inside.lower, Math.min(-0.02, mark) - 0.03),
    upper: Math.min(inside.upper, Math.max(1.02, mark) + 0.03),
  };
  // The reading's own point is one of them: near the end of what the acid allows, the curve still reaches it.
  const curve = Array.from({ length: STEPS + 1 }, (_, i) => -0.6 + (2.2 * i) / STEPS)
    .map((at) => ({ charge: at, volts: voltsAt(at) }))
    .concat({ charge: mark, volts: settled.value })
    .filter(({ volts }) => !Number.isNaN(volts))
    .sort((one, other) => one.charge - other.charge);
  const drawnVolts = curve
    .filter(({ charge: at }) => at >= domain.lower && at <= domain.upper)
    .map(({ volts }) => volts);
  const { lower: lowVolts, upper: highVolts } = interval95(settled);
  const axis = padded(
    { lower: Math.min(...drawnVolts, lowVolts), upper: Math.max(...drawnVolts, highVolts) },
    0.06,
    0.2,
  );
  const settledText = sheet.say("charge.settled", {
    volts: sheet.quantity(settled.value, 2, "V"),
    spread: sheet.quantity(COVERAGE_FACTOR_95 * settled.standardUncertainty, 2, "V"),
  });
  const band = sheet.say("charge.band", { points: sheet.number(100 * half, 0) });
  const note = sheet.say("interval.note");
  const percent = (share: number) => sheet.quantity(100 * share, 0, "%");
  const named = id === undefined ? [] : [sheet.say("battery", { id })];

  return page(sheet, {
    kind: "charge",
    title: sheet.say("charge.title"),
    subtitles: named,
    description: [
      ...named.map((one) => `${one}.`),
      `${settledText}.`,
      ...lanes.map(({ text }) => `${text}.`),
      band,
      note,
      sheet.say("axis.range", {
        name: sheet.say("charge.axis"),
        lower: percent(domain.lower),
        upper: percent(domain.upper),
      }),
      sheet.say("axis.range", {
        name: sheet.say("charge.volts"),
        lower: sheet.quantity(axis.lower, 2, "V"),
        upper: sheet.quantity(axis.upper, 2, "V"),
      }),
    ].join(" "),
    draw,
  });

  function draw(top: number, hatches: Hatches): { markup: string; bottom: number } {
    const plot: Plot = {
      left: MARGIN + 40,
      right: sheet.width - MARGIN,
      top: top + 24,
      bottom: top + 24 + (sheet.narrow ? 210 : 290),
    };
    const x = scaleOver({ lower: 100 * domain.lower, upper: 100 * domain.upper }, plot.left, plot.right);
    const y = scaleOver(axis, plot.bottom, plot.top);
    let markup = label(sheet, MARGIN, top + 12, sheet.say("charge.volts"), { bold: true });
    markup += valueAxis(sheet, y, plot, 5);
    for (const end of [0, 100]) markup += line(sheet, [x(end), plot.top, x(end), plot.bottom], "rule", 0.8);
    const clip = hatches.clip("clip", plot);
    markup += element("path", {
      d:
        area<(typeof curve)[number]>()
          .x0((one) => x(100 * (one.charge - half)))
          .x1((one) => x(100 * (one.charge + half)))
          .y((one) => y(one.volts))
          .digits(1)(curve) ?? "",
      fill: hatches.fill("rising", "rule"),
      "clip-path": clip,
    });
    markup += element("path", {
      d:
        lineThrough<(typeof curve)[number]>()
          .x((one) => x(100 * one.charge))
          .y((one) => y(one.volts))
          .digits(1)(curve) ?? "",
      ...stroke(sheet, "first", 2),
      "clip-path": clip,
    });
    markup += curveName(sheet, x, y, voltsAt, half);
    markup += readingLines(sheet, {
      x,
      y,
      plot,
      voltsAt,
      half,
      settled,
      value: mark,
      settledText,
    });

    let bottom = plot.bottom + 4;
    if (sheet.narrow) {
      const first = tell(sheet, hatches, bottom, [{ text: settledText }]);
      markup += first.markup;
      bottom = first.bottom + 4;
    }
    for (const { text, value, interval } of lanes) {
      const scaled = {
        ...(interval.lower !== undefined && { lower: x(100 * interval.lower) }),
        ...(interval.upper !== undefined && { upper: x(100 * interval.upper) }),
      };
      markup += whisker(sheet, bottom + 12, x(100 * value), scaled, plot);
      // Words stand beside the interval where there is room, below it where not.
      const beside = !sheet.rightToLeft && MARGIN + textWidth(text, 13) + 12 < (scaled.lower ?? 0);
      const written = tell(sheet, hatches, bottom + (beside ? 2 : 20), [{ text }]);
      markup += written.markup;
      bottom = written.bottom + 8;
    }
    const below = bottomAxis(
      sheet,
      x,
      { ...plot, bottom: bottom + 4 },
      numberTicks(sheet, x, sheet.narrow ? 5 : 10),
      sheet.say("charge.axis"),
    );
    markup += below.markup;
    const last = tell(sheet, hatches, below.bottom + 2, [
      { text: band, hatch: "rising", hatchInk: "rule", soft: true },
      { text: note, soft: true },
    ]);
    return { markup: markup + last.markup, bottom: last.bottom };
  }
}

// What batteries of one kind differ by, taken back out of the reading's uncertainty.
function curveUncertainty({ stateOfCharge, settledVoltsAt25Celsius, acid }: VoltageChargeReading): number {
  const { value, standardUncertainty } = stateOfCharge;
  const meter = settledVoltsAt25Celsius.standardUncertainty / meanSlopeVolts(acid);
  const below = value < 0 ? (value * value) / 3 : 0;
  return Math.sqrt(Math.max(0, standardUncertainty * standardUncertainty - meter * meter - below));
}

function curveName(
  sheet: Sheet,
  x: Scale,
  y: Scale,
  voltsAt: (charge: number) => number,
  half: number,
): string {
  const at = 0.3;
  return label(sheet, x(100 * (at + half)) + 8, y(voltsAt(at)) + 12, sheet.say("charge.curve"), {
    ink: "first",
    italic: true,
    rim: true,
  });
}

interface ReadOff {
  readonly x: Scale;
  readonly y: Scale;
  readonly plot: Plot;
  readonly voltsAt: (charge: number) => number;
  readonly half: number;
  readonly settled: Estimate;
  readonly value: number;
  readonly settledText: string;
}

// From the voltage across to the curve, then down to the charge; the voltage's own words above its line.
function readingLines(
  sheet: Sheet,
  { x, y, plot, voltsAt, half, settled, value, settledText }: ReadOff,
): string {
  const { lower, upper } = interval95(settled);
  const px = Math.min(plot.right, Math.max(plot.left, x(100 * value)));
  const py = y(settled.value);
  let markup = line(sheet, [plot.left, py, px, py], "ink", 1.2, "5 3");
  markup += line(sheet, [px, py, px, plot.bottom], "ink", 1.2, "5 3");
  for (const end of [lower, upper])
    markup += line(sheet, [plot.left, y(end), plot.left + 8, y(end)], "ink", 1.4);
  markup += line(sheet, [plot.left + 4, y(lower), plot.left + 4, y(upper)], "ink", 1.4);
  markup += element("circle", { cx: px, cy: py, r: 4, class: "f-ink", fill: sheet.palette.ink });
  if (sheet.narrow) return markup;
  // The upper left is free of the curve: as low as the band lets the words stand.
  const end = plot.left + 16 + textWidth(settledText, 13);
  const above = y(voltsAt(x.invert(Math.min(end, plot.right)) / 100 + half));
  const free = Number.isNaN(above) ? plot.top + 13 : above - 6;
  const base = Math.max(plot.top + 13, Math.min(py - 8, free));
  if (py - base > 20) markup += line(sheet, [plot.left + 13, base + 4, plot.left + 13, py], "soft", 0.8);
  return markup + label(sheet, plot.left + 13, base, settledText, { rim: true });
}
