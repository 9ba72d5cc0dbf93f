import type { GuidanceEnd, GuidedReason, GuidedStepCode } from "../guidance/index.js";

/** What the guidance says, in one language; templates as in {@link Messages}. */
export interface GuidanceMessages {
  readonly step: Readonly<Record<GuidedStepCode, string>>;
  readonly reason: Readonly<Record<GuidedReason, string>>;
  readonly end: Readonly<Record<GuidanceEnd, string>>;
  readonly why: string;
  readonly risk: string;
  /** For a step that by itself takes nothing away. */
  readonly prepares: string;
  readonly residual: string;
  /** Before the reasons why no answer was reached. */
  readonly untaken: string;
}

/** English sentences of the guidance. */
export const englishGuidance: GuidanceMessages = {
  step: {
    "look-over":
      "Look it over before touching anything: cracks, leaks, swelling, burnt or loose posts, a smell of sulfur, ice. Note also whether the acid stands low.",
    "read-label": "Read the label: kind of battery, cranking rating with its standard, or the type code.",
    "check-leads": "Clean the posts, check both leads against the post marks, and take the reading again.",
    "measure-temperature": "Measure the battery's temperature, not that of the room, and say how.",
    "tell-rest-history": "Find out what it did last, charge, drive or discharge, and how many hours ago.",
    "measure-rest-voltage": "Measure the voltage at the posts, with charger and loads off.",
    "draw-off-surface-charge":
      "Draw off the surface charge: lights on for 15 s, then off. Wait 3 to 10 min and measure the voltage again.",
    "measure-gravity":
      "If it has caps that are made to be opened: measure the acid of every cell with a hydrometer, eyes and hands protected. If not, leave this step out.",
    "measure-cranking":
      "Measure the cranking current with a hand-held instrument[, set to the standard {standard}].",
    "repeat-reading": "Repeat the reading until there are {readings:n}, clamps set anew each time.",
    "top-up-water":
      "Where it has caps, cover the plates with distilled water, no more, eyes and hands protected. Never add acid.",
    "warm-up":
      "Let it come to room temperature. Then look again for ice and cracks, and measure its temperature.",
    "cool-down": "Let it cool down below 45 °C. Then look again for swelling, and measure its temperature.",
    "change-room":
      "Take it to a room with more air before it is charged[: {neededCubicMetresPerHour:m³/h} of fresh air, or without a fan {freeVolumeCubicMetres:m³} of free room], and note that room. If there is none, do not charge it.",
    charge:
      "Charge it fully[ with {fromAmperes:n} to {toAmperes:A} up to {endVolts:V}][, about {fromHours:d} to {toHours:h}], in moving air. Let it rest {hours:h}, then measure the voltage. What was read before no longer counts.",
    "load-test": "Do a load test: {loadAmperes:A} for 15 s, and read the voltage at the end.",
    "charge-and-repeat-load-test":
      "Charge it fully[ with {fromAmperes:n} to {toAmperes:A} up to {endVolts:V}], in moving air, let it rest {hours:h}, measure the voltage, and repeat the load test with {loadAmperes:A}.",
    "read-date-code": "Read the date code on case, post or sticker, and note today's date.",
    "give-purchase-and-terms": "Take down the sale, with its receipt, and the terms of the warranty.",
  },
  reason: {
    "hazard-first": "A damaged or frozen battery can hurt whoever measures it; nothing comes before this.",
    "nothing-without-label": "A reading says nothing until it is known what it is held against.",
    "connection-doubtful": "The reading looks like one of clamps or leads, not of the battery.",
    "temperature-unknown":
      "Every reading depends on it, and neither a charger nor a load may be put on without it.",
    "rest-history-unknown":
      "A voltage tells the charge only when it is known how long the battery has rested.",
    "charge-unknown": "The charge decides whether a low reading may be held against the battery.",
    "surface-charge-possible": "Surface charge may hide a battery that is not charged at all.",
    "charge-uncertain": "Acid and voltage together tell the charge better than either alone.",
    "ability-unknown": "Nothing has measured yet what it can deliver.",
    "one-reading-uncertain": "Several readings narrow the answer, and a claim asks for a repeated one.",
    "plates-uncovered": "Plates above the acid heat up on charge, so it may not be charged as it is.",
    "too-cold-to-charge": "It is too cold to be charged, and ice may hide.",
    "too-hot-to-charge": "It is too hot to be charged.",
    "room-without-air": "The room it would be charged in does not carry off the explosive gas of the charge.",
    "too-little-charge": "A low reading at low charge proves nothing against a battery.",
    "ability-between-limits": "The readings leave it open; a heavy load is another kind of evidence.",
    "first-failure-needs-repeat": "A first failed load test may be lack of charge; only the second condemns.",
    "age-unknown":
      "Without a receipt, or with a limit on shelf age, the terms count from the date of manufacture.",
    "claim-open": "The battery leaves service; what the warranty pays depends on sale and terms.",
  },
  end: {
    hazard: "Stop here. Set it apart and measure nothing on it.",
    "other-system": "Stop here. It is not a 12 V battery; this method is not for it.",
    settled: "Nothing more is needed: no further step would change the answer enough.",
    "nothing-left": "No safe step is left that has not been taken. The answer stays open.",
    "not-evaluable": "Without the label or a single reading there is no answer.",
  },
  why: "Why: {reason}",
  risk: "A wrong answer now: {riskNow:p}. This step takes away {drop:p} on average.",
  prepares: "A wrong answer now: {riskNow:p}. This step makes the next one count.",
  residual: "A wrong answer remains possible: {riskNow:p}.",
  untaken: "What stands in the way: {reason}",
};
