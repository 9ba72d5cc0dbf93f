import {
  canonicalJson,
  expectedWarrantyCost,
  failureShareBy,
  fitWeibullLife,
  type LifeData,
  noDefectShare,
  partialMeanLifeMonths,
  type WeibullFit,
  type WeibullFitOptions,
} from "crankworthy/warranty";
import { digestOf, hmacOf, importKey } from "../../src/warranty/seal.js";
import type { OutsideRow, OutsideSuite } from "./suite.js";

// Shape, scale, end of free period, end of term; F(w), F(W), mean life to W; cost pro rata, combined continuous, with jump.
const COSTS = [
  [1, 60, 24, 60, 0.32967995, 0.63212056, 15.85446706, 0.36787944, 0.49593233, 0.42943138],
  [1, 100, 12, 36, 0.11307956, 0.30232367, 5.11601965, 0.16021202, 0.21148287, 0.17868177],
  [2, 60, 24, 60, 0.14785621, 0.63212056, 22.7366815, 0.25317587, 0.38804784, 0.29197119],
  [2, 50, 18, 60, 0.12155326, 0.76307224, 26.12157239, 0.3277127, 0.45034489, 0.3517074],
  [2.5, 60, 24, 72, 0.09624131, 0.79349713, 35.40497394, 0.30176138, 0.43860265, 0.3244822],
] as const;

/** Half a unit of the last printed decimal. */
const PRINTED = 5.1e-9;

function costs(column: number, ours: (row: (typeof COSTS)[number]) => number): OutsideRow[] {
  return COSTS.map((row) => ({
    label: `shape ${row[0]}, scale ${row[1]}, free ${row[2]}, term ${row[3]} months`,
    published: row[column]!,
    ours: () => ours(row),
    allowed: PRINTED,
  }));
}

const twice =
  "computed beforehand in two other ways, by the series of the incomplete gamma function and by Simpson's rule over rebate times density; standing computed";
const printed = "half a unit of the eighth decimal";

function fitted(data: LifeData, options?: WeibullFitOptions): WeibullFit {
  const fit = fitWeibullLife(data, options);
  if ("refused" in fit) throw new Error(fit.reason);
  return fit;
}

const ballBearings: LifeData = {
  // biome-ignore format: a table
  failedAtMonths: [17.88, 28.92, 33, 41.52, 42.12, 45.6, 48.48, 51.84, 51.96, 54.12, 55.56, 67.8, 68.64, 68.64, 68.88,
    84.12, 93.12, 98.64, 105.12, 105.84, 127.92, 128.04, 173.4],
  runningMonths: [],
};
const shockAbsorbers: LifeData = {
  failedAtMonths: [6700, 9120, 12200, 13150, 14300, 17520, 20100, 20900, 22700, 26510, 27490],
  // biome-ignore format: a table
  runningMonths: [6950, 7820, 8790, 9660, 9820, 11310, 11690, 11850, 11880, 12140, 12870, 13330, 13470, 14040, 17540,
    17890, 18450, 18960, 18980, 19410, 20100, 20150, 20320, 23490, 27410, 27890, 28100],
};
const remissions: LifeData = {
  failedAtMonths: [6, 6, 6, 7, 10, 13, 16, 22, 23],
  runningMonths: [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35],
};

// Bits of a double, as the RFC prints them, and its text.
const NUMBERS = [
  ["0000000000000000", "0"],
  ["8000000000000000", "0"],
  ["0000000000000001", "5e-324"],
  ["8000000000000001", "-5e-324"],
  ["7fefffffffffffff", "1.7976931348623157e+308"],
  ["ffefffffffffffff", "-1.7976931348623157e+308"],
  ["4340000000000000", "9007199254740992"],
  ["c340000000000000", "-9007199254740992"],
  ["4430000000000000", "295147905179352830000"],
  ["44b52d02c7e14af5", "9.999999999999997e+22"],
  ["44b52d02c7e14af6", "1e+23"],
  ["44b52d02c7e14af7", "1.0000000000000001e+23"],
  ["444b1ae4d6e2ef4e", "999999999999999700000"],
  ["444b1ae4d6e2ef4f", "999999999999999900000"],
  ["444b1ae4d6e2ef50", "1e+21"],
  ["3eb0c6f7a0b5ed8c", "9.999999999999997e-7"],
  ["3eb0c6f7a0b5ed8d", "0.000001"],
  ["41b3de4355555553", "333333333.3333332"],
  ["41b3de4355555554", "333333333.33333325"],
  ["41b3de4355555555", "333333333.3333333"],
  ["41b3de4355555556", "333333333.3333334"],
  ["41b3de4355555557", "333333333.33333343"],
  ["becbf647612f3696", "-0.0000033333333333333333"],
  ["43143ff3c1cb0959", "1424953923781206.2"],
  ["7fffffffffffffff", "refused"],
  ["7ff0000000000000", "refused"],
] as const;

function double(bits: string): number {
  const view = new DataView(new ArrayBuffer(8));
  view.setBigUint64(0, BigInt(`0x${bits}`));
  return view.getFloat64(0);
}
const text = (value: unknown): string => {
  const canonical = canonicalJson(value);
  return typeof canonical === "string" ? canonical : "refused";
};

const bytes = (ascii: string) => new Uint8Array(new TextEncoder().encode(ascii));
const abc = await digestOf(bytes("abc"));
const empty = await digestOf(bytes(""));
const twoBlocks = await digestOf(bytes("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"));
const mark = async (byte: number, length: number, message: string) =>
  hmacOf(await importKey(new Uint8Array(length).fill(byte)), bytes(message));
const hiThere = await mark(0x0b, 20, "Hi There");
const longKey = await mark(0xaa, 131, "Test Using Larger Than Block-Size Key - Hash Key First");
const same = (label: string, published: string, ours: string): OutsideRow => ({
  label,
  published,
  ours: () => ours,
});

export const suites: OutsideSuite[] = [
  {
    title: "Weibull life, share failed and mean life of the failed",
    source: `Definitions; ${twice}`,
    unit: "1; 1; month",
    why: printed,
    rows: [
      ...costs(4, ([shape, scaleMonths, free]) => failureShareBy({ shape, scaleMonths }, free)),
      ...costs(5, ([shape, scaleMonths, , total]) => failureShareBy({ shape, scaleMonths }, total)),
      ...costs(6, ([shape, scaleMonths, , total]) => partialMeanLifeMonths({ shape, scaleMonths }, total)),
    ],
  },
  {
    title: "Expected cost of a pro-rata warranty",
    source: `Blischke & Murthy, Warranty Cost Analysis, chapter 4, formula from memory; values ${twice}`,
    unit: "cost of one replacement",
    why: printed,
    rows: costs(7, ([shape, scaleMonths, , totalMonths]) => {
      return expectedWarrantyCost({ policy: "pro-rata", shape, scaleMonths, totalMonths }).expectedCost.value;
    }),
  },
  {
    title: "Expected cost of a combined warranty, proration from the end of the free period",
    source: `Rebate of P. H. Ritchken, Technical Memorandum 551 (1984), equation 2 (read); values ${twice}`,
    unit: "cost of one replacement",
    why: printed,
    rows: costs(8, ([shape, scaleMonths, freeMonths, totalMonths]) => {
      const policy = "combined-from-end-of-free-period";
      return expectedWarrantyCost({ policy, shape, scaleMonths, freeMonths, totalMonths }).expectedCost.value;
    }),
  },
  {
    title: "Expected cost of a combined warranty, proration from purchase",
    source: `Rebate as in the examples of 18 CCR 3210 (read); values ${twice}`,
    unit: "cost of one replacement",
    why: printed,
    rows: costs(9, ([shape, scaleMonths, freeMonths, totalMonths]) => {
      const policy = "combined-from-purchase";
      return expectedWarrantyCost({ policy, shape, scaleMonths, freeMonths, totalMonths }).expectedCost.value;
    }),
  },
  {
    title: "Weibull fit, no running units: 23 ball bearings",
    source:
      "J. Lieblein and M. Zelen, J. Res. NBS 57 (1956) 273; fit as printed in J. F. Lawless, Statistical Models and Methods for Lifetime Data; both from memory",
    unit: "1; million revolutions",
    why: "half a unit of the last printed digit",
    rows: [
      { label: "shape", published: 2.1, ours: () => fitted(ballBearings).shape.value, allowed: 0.005 },
      {
        label: "scale",
        published: 81.88,
        ours: () => fitted(ballBearings).scaleMonths.value,
        allowed: 0.005,
      },
    ],
  },
  {
    title: "Weibull fit, 11 failures and 27 running: shock absorbers",
    source:
      "Data of P. D. T. O'Connor, Practical Reliability Engineering (1985), fit of W. Q. Meeker and L. A. Escobar, Statistical Methods for Reliability Data (1998), chapter 8; both from memory, confirmed by their agreement",
    unit: "1 (location ln scale and spread 1/shape, of km)",
    why: "half a unit of the last printed digit; one unit for the standard errors",
    rows: [
      {
        label: "location",
        published: 10.23,
        ours: () => Math.log(fitted(shockAbsorbers).scaleMonths.value),
        allowed: 0.005,
      },
      {
        label: "spread",
        published: 0.3164,
        ours: () => 1 / fitted(shockAbsorbers).shape.value,
        allowed: 5e-5,
      },
      {
        label: "standard error of the location",
        published: 0.1099,
        ours: () => {
          const { value, standardUncertainty } = fitted(shockAbsorbers).scaleMonths;
          return standardUncertainty / value;
        },
        allowed: 1e-4,
      },
      {
        label: "standard error of the spread",
        published: 0.07317,
        ours: () => {
          const { value, standardUncertainty } = fitted(shockAbsorbers).shape;
          return standardUncertainty / value ** 2;
        },
        allowed: 1e-5,
      },
    ],
  },
  {
    title: "Exponential life, 9 failures and 12 running: remissions",
    source:
      "E. J. Freireich and others, Blood 21 (1963) 699, treated group; rate as printed in many textbooks of survival analysis; from memory",
    unit: "1/week",
    why: "half a unit of the third decimal: 9 failures in 359 weeks",
    rows: [
      {
        label: "failure rate",
        published: 0.025,
        ours: () => 1 / fitted(remissions, { knownShape: 1 }).scaleMonths.value,
        allowed: 5e-4,
      },
    ],
  },
  {
    title: "Share with its Wilson interval",
    source:
      "R. G. Newcombe, Two-sided confidence intervals for the single proportion, Statistics in Medicine 17 (1998) 857, table I, score method without continuity correction; from memory",
    unit: "1",
    why: "half a unit of the fourth decimal",
    rows: (
      [
        [81, 263, 0.2553, 0.3662],
        [15, 148, 0.0624, 0.1605],
        [0, 20, 0, 0.1611],
        [1, 29, 0.0061, 0.1718],
      ] as const
    ).flatMap(([withoutDefect, returned, ...ends]) =>
      (["lower", "upper"] as const).map((end, i) => ({
        label: `${withoutDefect} of ${returned}, ${end} end`,
        published: ends[i]!,
        ours: () => {
          const result = noDefectShare({ returned, withoutDefect });
          if ("refused" in result) throw new Error(result.reason);
          return result.interval[end];
        },
        allowed: 5.1e-5,
      })),
    ),
  },
  {
    title: "Canonical JSON, numbers",
    source: "RFC 8785, appendix B, table of number serializations; from memory",
    unit: "text",
    why: "the text must be equal",
    rows: NUMBERS.map(([bits, published]) => ({ label: bits, published, ours: () => text(double(bits)) })),
  },
  {
    title: "Canonical JSON, whole texts",
    source: "RFC 8785, sections 3.2.2 to 3.2.4, samples; from memory",
    unit: "text",
    why: "the text must be equal",
    rows: [
      {
        label: "literals, numbers, string",
        published:
          '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
        ours: () =>
          text(
            JSON.parse(
              '{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/","literals":[null,true,false]}',
            ),
          ),
      },
      {
        label: "order of keys",
        published:
          "Carriage Return, One, Control, Latin Small Letter O With Diaeresis, Euro Sign, Emoji: Grinning Face, Hebrew Letter Dalet With Dagesh",
        ours: () => {
          const keys = {
            "\u20ac": "Euro Sign",
            "\r": "Carriage Return",
            "\ufb33": "Hebrew Letter Dalet With Dagesh",
            "1": "One",
            "\ud83d\ude00": "Emoji: Grinning Face",
            "\u0080": "Control",
            "\u00f6": "Latin Small Letter O With Diaeresis",
          };
          return [...text(keys).matchAll(/:"([^"]+)"/g)].map(([, name]) => name).join(", ");
        },
      },
    ],
  },
  {
    title: "SHA-256",
    source: "FIPS 180-2, appendix B, and the well-known digest of the empty message; from memory",
    unit: "hexadecimal",
    why: "the text must be equal",
    rows: [
      same("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", abc),
      same("no message", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855", empty),
      same("56 letters", "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1", twoBlocks),
    ],
  },
  {
    title: "HMAC-SHA-256",
    source: "RFC 4231, test cases 1 and 6; from memory",
    unit: "hexadecimal",
    why: "the text must be equal",
    rows: [
      same("20 bytes of key", "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7", hiThere),
      same("131 bytes of key", "60e431591ee0b67f0d8a26aacbf5b77f8e0bc6213728c5140546040f0ee37f54", longKey),
    ],
  },
];
