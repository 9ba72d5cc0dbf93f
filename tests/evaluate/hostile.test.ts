import { type BatteryRecord, tryEvaluate } from "crankworthy/evaluate";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { copyOf, fullRecord } from "./sample.js";

// 20 000 in `npm test`; FUZZ_RUNS raises it.
const RUNS = Number(process.env.FUZZ_RUNS ?? 20_000);

function firstBadNumber(value: unknown, path = ""): string | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? undefined : `${path} is ${value}`;
  if (typeof value !== "object" || value === null) return undefined;
  for (const [key, inner] of Object.entries(value)) {
    const bad = firstBadNumber(inner, `${path}.${key}`);
    if (bad) return bad;
  }
  return undefined;
}

function holds(record: unknown): void {
  const before = safeText(record);
  const result = tryEvaluate(record);
  const again = tryEvaluate(record);
  expect(JSON.stringify(again)).toBe(JSON.stringify(result));
  expect(safeText(record)).toBe(before);
  if (result.ok) {
    expect(firstBadNumber(result.evaluation)).toBeUndefined();
    expect(result.evaluation.verdict.decidedBy).not.toBe("");
    expect(result.evaluation.nextSteps.length).toBeGreaterThan(0);
  } else {
    expect(result.issues.length).toBeGreaterThan(0);
    for (const issue of result.issues) {
      expect(issue.message).toContain(issue.expected);
      expect(issue.message.length).toBeLessThan(2000);
    }
  }
}

function safeText(value: unknown): string {
  try {
    return (
      JSON.stringify(value, (_, inner) => (typeof inner === "bigint" ? `${inner}n` : inner)) ?? "nothing"
    );
  } catch {
    return "not text";
  }
}

/** Paths of all leaves and branches of the sample. */
function paths(value: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== "object" || value === null) return [path];
  const inner = Object.entries(value).flatMap(([key, one]) =>
    paths(one, [...path, Array.isArray(value) ? Number(key) : key]),
  );
  return path.length > 0 ? [path, ...inner] : inner;
}

const allPaths = paths(fullRecord);
const number = fc.oneof(
  fc.double(),
  fc.double({ min: -40, max: 40, noNaN: true }),
  fc.double({ min: 1, max: 1.4, noNaN: true }),
  fc.double({ min: 1, max: 3000, noNaN: true }),
  fc.integer({ min: -5, max: 100 }),
  fc.integer({ min: 0, max: 4 }),
);
const replacement = fc.oneof(
  { weight: 5, arbitrary: number },
  { weight: 2, arbitrary: fc.string({ maxLength: 12 }) },
  {
    weight: 2,
    arbitrary: fc.constantFrom(
      "agm",
      "gel",
      "unknown",
      "drive",
      "discharge",
      "vehicle",
      "included",
      "none",
      "computer-controlled",
      "peak-to-peak",
      "faq",
      "sae-j537",
      "din-43539-2",
      "hca",
      "en-50342-1:unstated",
      "2024-02-29",
      "1999-12-31",
      "0",
      "1000000000000.99",
      "started",
      "days",
      "half-even",
      "list-today",
      "B9",
      "55B24L",
      "new",
      "due",
    ),
  },
  {
    weight: 1,
    arbitrary: fc.anything({
      withBigInt: true,
      withMap: true,
      withSet: true,
      withNullPrototype: true,
      withDate: true,
    }),
  },
  { weight: 1, arbitrary: fc.constantFrom(true, false, null, undefined) },
);
const mutation = fc.record({
  path: fc.constantFrom(...allPaths),
  how: fc.constantFrom("replace", "replace", "replace", "delete", "add"),
  value: replacement,
});

function mutate(
  mutations: readonly { path: readonly (string | number)[]; how: string; value: unknown }[],
): unknown {
  const record = copyOf(fullRecord) as unknown;
  for (const { path, how, value } of mutations) {
    let holder = record as Record<string | number, unknown>;
    for (const key of path.slice(0, -1)) {
      const next = holder[key];
      if (typeof next !== "object" || next === null) return record;
      holder = next as Record<string | number, unknown>;
    }
    const last = path.at(-1)!;
    if (how === "delete") delete holder[last];
    else if (how === "add") holder[`${last}x`] = value;
    else holder[last] = value;
  }
  return record;
}

/** Records that pass the schema, over its whole range: the numbers must survive every room. */
const validNumbers = fc.record({
  chemistry: fc.constantFrom("flooded", "flooded-calcium", "efb", "agm", "gel", "unknown"),
  standard: fc.constantFrom(
    "sae-j537",
    "en-50342-1:2015",
    "din-43539-2",
    "jis-d-5301:2006",
    "bci-ca",
    "iec-60095-1:pre-2006",
  ),
  amperes: fc.double({ min: 10, max: 2500, noNaN: true }),
  capacity: fc.option(fc.double({ min: 1, max: 400, noNaN: true }), { nil: undefined }),
  restVolts: fc.option(fc.double({ min: -32, max: 32, noNaN: true }), { nil: undefined }),
  temperature: fc.option(fc.double({ min: -50, max: 60, noNaN: true }), { nil: undefined }),
  hours: fc.double({ min: 0, max: 200, noNaN: true }),
  event: fc.constantFrom("charge", "drive", "discharge"),
  cranking: fc.array(fc.double({ min: 1, max: 3000, noNaN: true }), { minLength: 1, maxLength: 5 }),
  loadVolts: fc.option(fc.double({ min: 0, max: 32, noNaN: true }), { nil: undefined }),
  cold: fc.double({ min: -50, max: 60, noNaN: true }),
});

describe(`tryEvaluate against ${RUNS} hostile inputs: no exception, no NaN, same output twice, input untouched`, () => {
  it("arbitrary values", () => {
    const anything = fc.anything({
      withBigInt: true,
      withMap: true,
      withSet: true,
      withNullPrototype: true,
      withDate: true,
      withTypedArray: true,
      withSparseArray: true,
    });
    fc.assert(fc.property(anything, holds), { numRuns: Math.ceil(RUNS * 0.3) });
  });

  it("a valid record with one to four mutations", () => {
    fc.assert(
      fc.property(fc.array(mutation, { minLength: 1, maxLength: 4 }), (mutations) =>
        holds(mutate(mutations)),
      ),
      { numRuns: Math.ceil(RUNS * 0.5) },
    );
  });

  it("valid records over the whole range of every number", () => {
    fc.assert(
      fc.property(validNumbers, (v) => {
        const record = {
          identity: {
            chemistry: v.chemistry,
            rating: { standard: v.standard, amperes: v.amperes },
            ...(v.capacity !== undefined && { capacityAmpereHours: v.capacity }),
          },
          conditions: {
            lastEvent: v.event,
            hoursAtRest: v.hours,
            ...(v.temperature !== undefined && { temperatureCelsius: v.temperature }),
          },
          measurements: {
            ...(v.restVolts !== undefined && { restVolts: v.restVolts }),
            cranking: { standard: v.standard, amperes: v.cranking },
            ...(v.loadVolts !== undefined && {
              loadTest: { loadAmperes: 250, seconds: 15, volts: v.loadVolts },
            }),
          },
          requirement: { crankingAmperes: 200, atCelsius: v.cold, coldestMorningCelsius: v.cold },
        } as BatteryRecord;
        const result = tryEvaluate(record);
        // Fields drawn apart from each other may contradict; every single one is valid.
        if (!result.ok)
          expect(result.issues.map((issue) => issue.code)).toEqual(result.issues.map(() => "contradiction"));
        holds(record);
      }),
      { numRuns: Math.ceil(RUNS * 0.2) },
    );
  });

  it("objects whose properties throw", () => {
    const trap = Object.defineProperty({}, "identity", {
      enumerable: true,
      get() {
        throw new Error("trap");
      },
    });
    expect(tryEvaluate(trap).ok).toBe(false);
    expect(
      tryEvaluate(
        new Proxy(
          {},
          {
            ownKeys: () => {
              throw new Error("trap");
            },
          },
        ),
      ).ok,
    ).toBe(false);
  });
});
