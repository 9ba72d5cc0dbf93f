/**
 * Every sentence and word a picture can show, and the names of what stands in its braces. A catalogue in another
 * language has the same keys; numbers and units come in already written.
 */
export const pictureWordArguments = {
  lang: [],
  "chance.hundred": ["n"],
  "chance.thousand": ["n"],
  "chance.above": [],
  "chance.below": [],
  "interval.two": ["lower", "upper"],
  "interval.least": ["lower"],
  "interval.most": ["upper"],
  "interval.note": [],
  "axis.range": ["name", "lower", "upper"],
  more: ["count"],
  battery: ["id"],

  "trace.title": [],
  "trace.rows": ["rows", "time"],
  "trace.voltage": [],
  "trace.current": [],
  "trace.time": ["unit"],
  "trace.charging": [],
  "trace.discharging": [],
  "trace.voltage-range": ["lower", "upper"],
  "trace.current-range": ["lower", "upper"],
  "trace.voltage-missing": [],
  "trace.current-missing": [],
  "trace.gap": [],
  "trace.gaps": ["name", "count", "longest"],
  "trace.back": ["count"],
  "trace.without-time": ["count"],
  "trace.beyond-values": ["count"],
  "trace.beyond-axis": ["name", "lower", "upper"],
  "trace.segments": [],
  "trace.segment": ["name", "from", "to"],
  "trace.kind": ["name", "count", "time"],
  "trace.narrow": [],
  "kind.rest": [],
  "kind.discharge": [],
  "kind.charge-constant-current": [],
  "kind.charge-constant-voltage": [],
  "kind.crank": [],
  "kind.load-step": [],
  "kind.engine-running": [],
  "kind.unclassified": [],
  "letter.rest": [],
  "letter.discharge": [],
  "letter.charge-constant-current": [],
  "letter.charge-constant-voltage": [],
  "letter.crank": [],
  "letter.load-step": [],
  "letter.engine-running": [],
  "letter.unclassified": [],

  "charge.title": [],
  "charge.axis": [],
  "charge.volts": [],
  "charge.curve": [],
  "charge.band": ["points"],
  "charge.settled": ["volts", "spread"],
  "charge.voltage": ["value", "interval"],
  "charge.gravity": ["value", "interval"],
  "charge.voltage-and-gravity": ["value", "interval"],
  "charge.upper": ["value"],

  "ability.title": [],
  "ability.axis": [],
  "ability.cranking-estimate": [],
  "ability.internal-resistance": [],
  "ability.conductance": [],
  "ability.density": [],
  "ability.unserviceable": [],
  "ability.worn": [],
  "ability.serviceable": [],
  "ability.reading": ["value", "interval"],
  "ability.accept": ["limit", "from", "chance"],
  "ability.reject": ["limit", "below", "chance"],
  "ability.reaches": ["limit", "chance"],
  "ability.misses": ["limit", "chance"],
  "ability.verdict": ["condition", "action"],
  "condition.serviceable": [],
  "condition.worn": [],
  "condition.unserviceable": [],
  "condition.internally-failed": [],
  "condition.not-established": [],
  "action.keep": [],
  "action.charge-then-keep": [],
  "action.charge-then-repeat": [],
  "action.repeat": [],
  "action.retire": [],
  "action.isolate": [],
  "action.stop": [],

  "start.title": [],
  "start.axis": [],
  "start.amperes": [],
  "start.ability": [],
  "start.demand": [],
  "start.bands": [],
  "start.lowest": ["value", "interval"],
  "start.lowest-at-or-below": ["celsius"],
  "start.lowest-above": ["celsius"],
  "start.morning": ["celsius", "ability", "demand"],
  "start.margin": ["margin", "spread"],
  "start.chance": ["chance"],

  "warranty.title": [],
  "warranty.axis": [],
  "warranty.inspected": ["date"],
  "warranty.made": ["text", "from", "to"],
  "warranty.made-also": ["text", "from", "to"],
  "warranty.made-more": ["count"],
  "warranty.not-dated": [],
  "warranty.sold": ["date"],
  "warranty.sold-no-receipt": ["date"],
  "warranty.installed": ["date"],
  "warranty.start": ["date"],
  "warranty.start-between": ["from", "to"],
  "warranty.free": ["from", "to"],
  "warranty.prorated": ["from", "to"],
  "warranty.end-between": ["from", "to"],
  "warranty.statutory": ["to"],
  "warranty.claim": ["date"],
  "warranty.no-term": [],
  "warranty.outcome.free-replacement": [],
  "warranty.outcome.prorated": [],
  "warranty.outcome.not-covered": [],
  "warranty.outcome.cannot-tell": [],
  "warranty.not-yet": [],
} as const satisfies Readonly<Record<string, readonly string[]>>;

/** Name of a sentence or word of a picture. */
export type PictureWord = keyof typeof pictureWordArguments;

/** Every word of the pictures in one language; `{name}` stands where {@link pictureWordArguments} says so. */
export type PictureWords = Readonly<Record<PictureWord, string>>;

type ArgumentsOf<Word extends PictureWord> = (typeof pictureWordArguments)[Word][number];

/** Fills a sentence; a value is never read as a template. */
export type Say = <Word extends PictureWord>(
  word: Word,
  ...values: ArgumentsOf<Word> extends never ? [] : [Readonly<Record<ArgumentsOf<Word>, string>>]
) => string;

/** The voice of a catalogue. Each value stands between two `mark`s: where sentences run from right to left, a name or number
 *  written the other way then pulls nothing of the sentence along. */
export function sayIn(words: PictureWords, mark = ""): Say {
  return (word, ...values) => {
    const given: Readonly<Record<string, string>> = values[0] ?? {};
    return words[word].replace(/\{(\w+)\}/g, (whole, name: string) =>
      Object.hasOwn(given, name) ? `${mark}${given[name]!}${mark}` : whole,
    );
  };
}
