import { type CsvOptions, csvHeader, csvRow, csvText } from "crankworthy/report";
import { parse } from "csv-parse/sync";
import fc from "fast-check";
import papa from "papaparse";
import { describe, expect, it } from "vitest";
import { clean } from "../../src/report/text.js";
import { evaluations } from "./records.js";

const all = Object.values(evaluations);
const OPTIONS: readonly CsvOptions[] = [{}, { delimiter: "semicolon" }, { delimiter: "tab", lineEnd: "lf" }];
const sheet = (options: CsvOptions): string =>
  csvHeader(options) + all.map((one) => csvRow(one, options)).join("");
const mark = ({ delimiter = "comma" }: CsvOptions): string =>
  ({ comma: ",", semicolon: ";", tab: "\t" })[delimiter];

/** Rows by column, as two readers that share no code see them; they have to agree. */
function read(text: string, options: CsvOptions = {}): Record<string, string>[] {
  const rows = parse(text, { columns: true, delimiter: mark(options) }) as Record<string, string>[];
  const second = papa.parse<Record<string, string>>(text, {
    header: true,
    delimiter: mark(options),
    skipEmptyLines: true,
  });
  expect(second.errors).toEqual([]);
  expect(second.data).toEqual(rows);
  return rows;
}

const COLUMNS = `
schemaVersion id inspectedOn condition action decidedBy serviceableProbability unserviceableProbability
trust chemistry nominalVolts labelText labelScheme ratingStandard ratingFrom ratingAmperes
ratingAmperesStandardUncertainty capacityAmpereHours capacityAmpereHoursStandardUncertainty
reserveCapacityMinutes reserveCapacityMinutesStandardUncertainty chargeFrom chargeBound stateOfCharge
stateOfChargeStandardUncertainty stateOfChargeLower stateOfChargeUpper abilityFrom abilityStandard
abilityRatio abilityRatioStandardUncertainty abilityRatioLower abilityRatioUpper abilityAmperes
abilityAmperesStandardUncertainty loadTestLimitVolts loadTestMarginVolts
loadTestMarginVoltsStandardUncertainty loadTestPassProbability loadTestInvalidReasons lowestStartCelsius
lowestStartCelsiusStandardUncertainty lowestStartBound coldMorningAbilityAmperes
coldMorningAbilityAmperesStandardUncertainty coldMorningDemandAmperes
coldMorningDemandAmperesStandardUncertainty coldMorningStartProbability dateCodeText dateCodeReadings
madeFrom madeTo ageDaysLower ageDaysUpper warrantyAnswer warrantyOutcome currency rebateAmount
chargeAmount totalAmount lastCoveredDay findings cautions nextSteps causes refusals
`;

describe("CSV", () => {
  it.each(OPTIONS)("%o: every evaluation is one row with all columns", (options) => {
    const rows = read(sheet(options), options);
    expect(rows).toHaveLength(all.length);
    for (const [i, row] of rows.entries()) {
      const { verdict, charge, ability, warranty, id = "" } = all[i]!;
      expect(row.condition).toBe(verdict.condition);
      expect(csvText(row.id!)).toBe(id);
      expect(row.stateOfCharge).toBe(charge ? String(charge.stateOfCharge.value) : "");
      expect(row.abilityRatio).toBe(ability[0] ? String(ability[0].ratio.value) : "");
      expect(row.totalAmount).toBe(warranty?.settlement?.total ?? "");
    }
  });

  it("columns are fixed: a change of this list is a change for every sheet that is kept", () => {
    const names = csvHeader().trimEnd().split(",");
    expect(new Set(names).size).toBe(names.length);
    expect(names).toEqual(COLUMNS.trim().split(/\s+/));
  });

  it("numbers have a dot and no quotes, days are ISO, a negative amount stays a number", () => {
    const row = csvRow(evaluations.claimCash!);
    expect(row).toContain(',91.83,-31.83,-30.34,"2027-06-10"');
    expect(row.startsWith('1,"W-17","2025-01-20","unserviceable","retire","ability",')).toBe(true);
    for (const cell of row.trimEnd().split(","))
      expect(cell).toMatch(/^(?:|"[^"]*"|-?\d+(?:\.\d+)?(?:e-\d+)?)$/);
    const cold = read(csvHeader() + csvRow(evaluations.engineUnsure!))[0]!;
    expect(Number(cold.lowestStartCelsius)).toBe(-19.171002496367635);
    expect(cold.lowestStartBound).toBe("two-sided");
    const { coldStart } = evaluations.engineUnsure!;
    const bound = (intervalCelsius: { lower?: number; upper?: number }) =>
      read(
        csvHeader() + csvRow({ ...evaluations.engineUnsure!, coldStart: { ...coldStart!, intervalCelsius } }),
      )[0]!.lowestStartBound;
    expect([bound({ lower: -24 }), bound({ upper: -12 }), bound({})]).toEqual(["lower", "upper", "none"]);
  });

  it("ends its rows as asked", () => {
    expect(csvHeader().endsWith("\r\n")).toBe(true);
    expect(csvRow(evaluations.good!, { lineEnd: "lf" })).toMatch(/[^\r]\n$/);
    expect(() => csvHeader({ delimiter: "," as "comma" })).toThrow(RangeError);
    expect(() => csvRow(evaluations.good!, { lineEnd: "cr" as "lf" })).toThrow(RangeError);
  });

  it.each([
    "=1+1",
    "+1",
    "-1",
    "@SUM(A1)",
    "\t=1",
    '"=1',
    " =1",
    "'=1",
    "'",
    "|x",
    "%x",
    "＝1",
    "−1",
    '""+1',
    "';=1",
  ])("%j is defused and comes back", (id) => {
    const [row] = read(csvHeader() + csvRow({ ...evaluations.good!, id }));
    expect(row!.id).toMatch(/^'/);
    expect(csvText(row!.id!)).toBe(clean(id));
  });

  it.each(["a=1", "1+1", "W-17", "5", "", "O'Neill"])("%j is left as it is", (id) => {
    expect(read(csvHeader() + csvRow({ ...evaluations.good!, id }))[0]!.id).toBe(id);
  });

  it.each(["a;=cmd|'/C calc'!A0;b", "a,=1+1,b", "a\t=1", "x; +1", 'x;"=1', "x;'=1", "x,'y;'", ";,=1"])(
    "%j is no formula wherever a spreadsheet splits the row, and comes back",
    (id) => {
      for (const options of OPTIONS) {
        const written = csvRow({ ...evaluations.good!, id }, options);
        expect(csvText(read(csvHeader(options) + written, options)[0]!.id!)).toBe(clean(id));
        for (const delimiter of [",", ";", "\t"]) {
          const split: string[][] = parse(written, {
            delimiter,
            relax_quotes: true,
            relax_column_count: true,
          });
          const plain = written.split(delimiter);
          for (const cell of [...split.flat(), ...plain]) expect(cell).not.toMatch(/^[\s"]*[=+@|%]/);
        }
      }
    },
  );

  it("any text comes back cleaned, in its own cell, and never as a formula", () => {
    const text = fc.oneof(
      fc.string({ unit: "binary", maxLength: 30 }),
      fc
        .array(fc.constantFrom("=", "+", "-", "@", '"', "'", ",", ";", "\t", "\r\n", " ", "a"), {
          maxLength: 8,
        })
        .map((parts) => parts.join("")),
    );
    fc.assert(
      fc.property(text, fc.constantFrom(...OPTIONS), (id, options) => {
        const rows = read(csvHeader(options) + csvRow({ ...evaluations.good!, id }, options), options);
        expect(rows).toHaveLength(1);
        expect(csvText(rows[0]!.id!)).toBe(clean(id));
        expect(rows[0]!.id).not.toMatch(/(?:^|[;,])[\s"]*[=+\-@]/);
      }),
    );
  });

  it("a number that is none does not get into a sheet", () => {
    const { verdict } = evaluations.good!;
    const bad = {
      ...evaluations.good!,
      verdict: { ...verdict, serviceableProbability: Number.POSITIVE_INFINITY },
    };
    expect(() => csvRow(bad)).toThrow(
      new RangeError("serviceableProbability: received Infinity, expected a finite number"),
    );
  });
});
