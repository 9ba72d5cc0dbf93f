import { type BatteryRecord, type Evaluation, evaluate } from "crankworthy/evaluate";
import {
  type CrankingTimeName,
  crankingTime,
  type DrawProfileName,
  drawLimits,
  judgeChargingRise,
  judgeCrankingCurrent,
  reasonOnCranking,
} from "crankworthy/vehicle";
import { type CautionCode, cautions, defaultPolicy, type FindingCode } from "crankworthy/verdict";
import type { OutsideRow, OutsideSuite } from "./suite.js";

/** A charged 12 V battery of 70 Ah on a record; what the test looks at is put beside it. */
function evaluated(change: Partial<BatteryRecord>): Evaluation {
  return evaluate({
    identity: {
      chemistry: "flooded",
      nominalVolts: 12,
      rating: { standard: "sae-j537", amperes: 600 },
      capacityAmpereHours: 70,
    },
    conditions: {
      temperatureCelsius: 25,
      temperatureMethod: "electrolyte",
      lastEvent: "drive",
      hoursAtRest: 12,
    },
    measurements: { restVolts: 12.6 },
    ...change,
  });
}

const caution = (evaluation: Evaluation, code: CautionCode, name: string): number | string =>
  evaluation.cautions.find((one) => one.code === code)?.parameters?.[name] ?? "not shown";

const retired = (sealed: boolean): string =>
  String(
    cautions({
      action: "retire",
      damage: [],
      frozen: "no",
      sealed,
      chargeUnknown: false,
      place: "bench",
      failedCell: false,
      otherSystem: false,
    }).find((one) => one.code === "return-and-transport")?.parameters?.unNumber,
  );

const EXACT = { value: 0, standardUncertainty: 0 };
const level = (amperes: number, celsius: number): string => {
  const judged = judgeCrankingCurrent({ ...EXACT, value: amperes }, celsius, "one-1.9-litre-4-cylinder");
  return "refused" in judged ? judged.code : judged.level;
};
const rise = (volts: number, rule: Parameters<typeof judgeChargingRise>[2]): string => {
  const judged = judgeChargingRise(
    { ...EXACT, value: 12 },
    { ...EXACT, value: 12 + volts },
    rule,
    "fixed-regulator",
  );
  return "refused" in judged ? judged.code : judged.outcome;
};

const times = (name: CrankingTimeName, seconds: number, pause?: number): OutsideRow[] => [
  {
    label: `${name}, longest`,
    published: seconds,
    ours: () => crankingTime(name).longestSeconds,
    allowed: 0,
  },
  ...(pause === undefined
    ? []
    : [
        {
          label: `${name}, pause`,
          published: pause,
          ours: () => crankingTime(name).pauseSeconds ?? Number.NaN,
          allowed: 0,
        },
      ]),
];
const settling = (name: DrawProfileName, minutes: number): OutsideRow => ({
  label: name,
  published: minutes,
  ours: () => drawLimits(name).settlingMinutes,
  allowed: 1e-12,
});
const search = (name: DrawProfileName, milliamperes: number): OutsideRow => ({
  label: name,
  published: milliamperes,
  ours: () => 1000 * (drawLimits(name).search?.value ?? Number.NaN),
  allowed: 1e-9,
});

const resistanceOf = (measurements: BatteryRecord["measurements"]): number =>
  evaluated({ measurements }).ability[0]!.ratio.value;
const charging = (regulatedVolts: number, change: object = {}): string => {
  const evaluation = evaluated({
    vehicle: {
      charging: { regulatedVolts, regulatorTemperatureCelsius: 20, control: "fixed-regulator", ...change },
    },
  });
  const found = evaluation.findings.find((one) => /^regulated|^charging-not/.test(one.code));
  return found?.code ?? evaluation.refusals.find((one) => one.about.includes("regulated"))?.code ?? "nothing";
};
const firstReason = (...[seen]: Parameters<typeof reasonOnCranking>): string => {
  const reason = reasonOnCranking(seen)[0];
  return reason ? `${reason.code}: ${reason.lookAt.join(", ")}` : "nothing";
};
const shown = (code: FindingCode) => (evaluation: Evaluation) =>
  evaluation.findings.find((one) => one.code === code)!.evidence;

export const suites: readonly OutsideSuite[] = [
  {
    title: "Starter current of one 1.9 L engine against its temperature",
    source:
      "A vehicle maker's workshop manual (1998), starter draw: 70-110 A above 50 °C, 80-120 A at 5-27 °C, 90-130 A at 5 °C, 230-280 A at -20 °C (read)",
    unit: "",
    why: "Words: inside the printed range a current is usual, below it low, above it high.",
    rows: (
      [
        [80, 70, 110],
        [15, 80, 120],
        [4, 90, 130],
        [-20, 230, 280],
      ] as const
    ).flatMap(([celsius, least, most]) => [
      { label: `${least} A at ${celsius} °C`, published: "usual", ours: () => level(least, celsius) },
      { label: `${most} A at ${celsius} °C`, published: "usual", ours: () => level(most, celsius) },
      { label: `${least - 1} A at ${celsius} °C`, published: "low", ours: () => level(least - 1, celsius) },
      { label: `${most + 1} A at ${celsius} °C`, published: "high", ours: () => level(most + 1, celsius) },
    ]),
  },
  {
    title: "Longest cranking and pause after it",
    source:
      "Workshop manuals of 1998 and 1983, TM 5-4210-230-14&P-1, TM 10-3930-671-24, study-guide text on battery capacity tests (read)",
    unit: "s",
    why: "Each profile follows its source; they contradict each other and stay apart.",
    rows: [
      ...times("workshop-1998", 15, 20),
      ...times("military-15-15", 15, 15),
      ...times("study-guide", 15, 120),
      ...times("military-30-120", 30, 120),
      ...times("workshop-1983", 30),
    ],
  },
  {
    title: "What speed, current and voltage say about the starting circuit",
    source:
      "A textbook page on starter current draw (scribd.com/document/486200162) and a workshop manual of 2004 (read)",
    unit: "",
    why: "Words.",
    rows: [
      {
        label: "high current, slow",
        published: "high-current-slow: mechanical-drag, starter-short, thick-oil, tight-engine",
        ours: () => firstReason({ speed: "slow", current: "high" }),
      },
      {
        label: "low current, slow or no cranking",
        published: "low-current-slow-or-none: cables, clamps, ground, brushes",
        ours: () => firstReason({ speed: "none", current: "low" }),
      },
      {
        label: "does not turn, battery stays at 12.5 V",
        published: "battery-holds-no-turning: control-circuit",
        ours: () => firstReason({ speed: "none", current: "not-measured", volts: 12.5 }),
      },
      {
        label: "turns very slowly, battery stays at 12.5 V",
        published: "battery-holds-slow-turning: feed-circuit",
        ours: () => firstReason({ speed: "slow", current: "not-measured", volts: 12.5 }),
      },
    ],
  },
  {
    title: "Rise of the charging voltage over the engine-off value",
    source:
      "A truck maker's workshop manual (1984): at most 2.0 V; a car maker's charging bulletin: at most 2.5 V, at least 0.5 V, loaded too (read)",
    unit: "",
    why: "Words on either side of each printed figure, by 0.01 V; the two sources differ by 0.5 V and stay apart.",
    rows: (
      [
        ["unloaded-at-most-1984", 1.99, 2.01],
        ["unloaded-at-most-bulletin", 2.49, 2.51],
        ["unloaded-at-least", 0.51, 0.49],
        ["loaded-at-least", 0.51, 0.49],
      ] as const
    ).flatMap(([rule, kept, broken]) => [
      { label: `${rule}, ${kept} V`, published: "within-limit", ours: () => rise(kept, rule) },
      { label: `${rule}, ${broken} V`, published: "beyond-limit", ours: () => rise(broken, rule) },
    ]),
  },
  {
    title: "When a charging voltage may be judged",
    source:
      "A workshop manual of unknown year: 2500 rpm, charge current at most 10 A; TM 9-6140-200-14 p. 16: charging begins near 1000-1200 rpm (read); computer control: 12.2 to above 15.0 V can be normal (vehicle makers' training texts, from memory)",
    unit: "",
    why: "Words; 12.8 V at 20 °C lies below every printed band.",
    rows: [
      {
        label: "12.8 V, 2500 rpm, 10 A",
        published: "regulated-voltage-low",
        ours: () => charging(12.8, { engineRpm: 2500, chargeAmperes: 10 }),
      },
      {
        label: "12.8 V, 11 A into the battery",
        published: "charging-not-judged",
        ours: () => charging(12.8, { chargeAmperes: 11 }),
      },
      {
        label: "12.8 V, 1100 rpm",
        published: "charging-not-begun",
        ours: () => charging(12.8, { engineRpm: 1100 }),
      },
      {
        label: "12.3 V, computer",
        published: "charging-not-judged",
        ours: () => charging(12.3, { control: "computer-controlled" }),
      },
      {
        label: "15.0 V, computer",
        published: "charging-not-judged",
        ours: () => charging(15, { control: "computer-controlled" }),
      },
      { label: "14.2 V, fixed", published: "regulated-voltage-within", ours: () => charging(14.2) },
      { label: "15.4 V, fixed", published: "regulated-voltage-high", ours: () => charging(15.4) },
    ],
  },
  {
    title: "Time for the draw of a parked vehicle to settle",
    source:
      "Workshop manuals of 2001, 2005, 2008, 2023 and of unknown year; vocational modules pp. 117-118 (read). The manual of 2005 prints stages up to 60 min",
    unit: "min",
    why: "Each profile follows its source; from 40 s to 75 min.",
    rows: [
      settling("workshop-2008", 5),
      settling("workshop-2001", 4),
      settling("workshop-2023", 75),
      settling("workshop-2005", 60),
      settling("vocational", 30),
      settling("workshop-undated", 40 / 60),
    ],
  },
  {
    title: "Draw above which to search for a consumer",
    source:
      "Workshop manuals of 2001 (85 mA with immobiliser) and 2005 (alarm at 80 mA); a public-domain FAQ section 10 (120 mA) (read)",
    unit: "mA",
    why: "Printed figures.",
    rows: [search("workshop-2001", 85), search("workshop-2005", 80), search("faq", 120)],
  },
  {
    title: "Effects of the test set-up",
    source:
      "Computed from Ohm's law: 5 A through 5 mΩ; 0.5 mΩ of contact in a two-wire reading of a battery of 4 mΩ",
    unit: "",
    why: "Arithmetic: 25 mV; resistance up by 12.5 %, conductance and so the ability down by 11 % either way it is read. At 25 °C no temperature correction enters.",
    rows: [
      {
        label: "5 A flowing, shift of the voltage [mV]",
        published: 25,
        ours: () =>
          Number(
            shown("electrical-load-present")(
              evaluated({
                conditions: { temperatureCelsius: 25, place: "vehicle", loadAmperes: 5 },
              }),
            ).shiftMillivolts,
          ),
        allowed: 1e-9,
      },
      {
        label: "4.5 mΩ read where 4 mΩ are, ability",
        published: 0.889,
        ours: () =>
          resistanceOf({
            resistance: { milliohms: 4.5, referenceMilliohms: 4, referenceBasis: "published-for-type" },
          }),
        allowed: 0.0005,
      },
      {
        label: "the same as a conductance, ability",
        published: 0.889,
        ours: () =>
          resistanceOf({
            conductance: { siemens: 1000 / 4.5, referenceSiemens: 250, referenceBasis: "published-for-type" },
          }),
        allowed: 0.0005,
      },
    ],
  },
  {
    title: "Air for charging, as a caution",
    source:
      "EN 50272-3 / EN IEC 62485-3 quoted on a battery maker's technical page (secondary): 0.05·n·I·C/100, openings 28·Q, free volume 2.5·Q; 12 V 70 Ah with 6 A per 100 Ah, and with 1.5 for a sealed one (computed)",
    unit: "",
    why: "Arithmetic on the printed formula.",
    rows: [
      ...(
        [
          ["neededCubicMetresPerHour", 1.26],
          ["openingSquareCentimetres", 35.28],
          ["freeVolumeCubicMetres", 3.15],
        ] as const
      ).map(([name, published]) => ({
        label: `vented, ${name}`,
        published,
        ours: () => caution(evaluated({ ventilation: {} }), "charging-air", name),
        allowed: 1e-9,
      })),
      {
        label: "sealed, m³/h",
        published: 0.315,
        ours: () =>
          caution(
            evaluated({
              identity: {
                chemistry: "agm",
                rating: { standard: "sae-j537", amperes: 760 },
                capacityAmpereHours: 70,
              },
              ventilation: {},
            }),
            "charging-air",
            "neededCubicMetresPerHour",
          ),
        allowed: 1e-9,
      },
    ],
  },
  {
    title: "Figures of the cautions",
    source:
      "29 CFR 1926.441: drench within 25 ft; TM 9-6140-200-14: 1 lb of baking soda a US gallon; TM 5-4210-230-14&P-1 p. 460: 12 in; a workshop manual of 2007: at most 16 V; 49 CFR 173.159: UN2794, UN2800 (read)",
    unit: "",
    why: "Converted: 1 ft = 0.3048 m, 1 lb = 453.6 g, 1 US gal = 3.785 L; the 12 in are printed with 304 mm.",
    rows: [
      {
        label: "water for the eyes within [m]",
        published: 25 * 0.3048,
        ours: () => caution(evaluated({ measurements: { cellGravities: [1.26] } }), "eye-wash", "metres"),
        allowed: 1e-9,
      },
      {
        label: "baking soda [g/L]",
        published: 119.8,
        ours: () =>
          caution(
            evaluated({ measurements: { cellGravities: [1.26] } }),
            "neutralise-spills",
            "gramsPerLitre",
          ),
        allowed: 0.05,
      },
      ...(
        [
          ["groundMetres", 0.304, 0.001],
          ["mostVolts", 16, 0],
        ] as const
      ).map(([name, published, allowed]) => ({
        label: `jump leads, ${name}`,
        published,
        ours: () =>
          caution(
            evaluated({
              conditions: {
                place: "vehicle",
                temperatureCelsius: 20,
                lastEvent: "discharge",
                hoursAtRest: 12,
              },
              measurements: { restVolts: 11.9 },
            }),
            "jump-starting",
            name,
          ),
        allowed,
      })),
      { label: "wet, filled with acid", published: "UN2794", ours: () => retired(false) },
      { label: "wet, non-spillable", published: "UN2800", ours: () => retired(true) },
    ],
  },
  {
    title: "Limits of ability in the field",
    source:
      "Field habit: below 70-80 % of the rated current weak, below 60 % withdrawn (common practice, no standard sets it); a parts dealer's warranty guide: claim below 60 % (read, weak)",
    unit: "1",
    why: "The defaults lie at the end of the habit that condemns later for 60 % and calls worn earlier for 80 %; both can be replaced.",
    rows: [
      {
        label: "serviceable from",
        published: 0.8,
        ours: () => defaultPolicy.serviceableFraction,
        allowed: 0,
      },
      {
        label: "unserviceable below",
        published: 0.6,
        ours: () => defaultPolicy.unserviceableFraction,
        allowed: 0,
      },
    ],
  },
];
