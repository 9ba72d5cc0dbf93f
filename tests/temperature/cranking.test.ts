import { isRefusal } from "crankworthy/numeric";
import { bibliography } from "crankworthy/sources";
import {
  abilityAgainstRating,
  crankingAbilityPercent,
  crankingAbilityTables,
  crankingDemandPercent,
  crankingDemandTables,
  type TemperatureTable,
} from "crankworthy/temperature";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const ability: TemperatureTable[] = [...Object.values(crankingAbilityTables), abilityAgainstRating];
const demand: TemperatureTable[] = Object.values(crankingDemandTables);

function ends({ rows }: TemperatureTable): [number, number] {
  return [rows[0]![0], rows.at(-1)![0]];
}

describe("cranking tables", () => {
  it.each([...ability, ...demand])("$id: rising temperatures, ids and sources filled", (table) => {
    const celsius = table.rows.map((row) => row[0]);
    expect(celsius).toEqual([...celsius].sort((a, b) => a - b));
    expect(new Set(celsius).size).toBe(celsius.length);
    expect(bibliography).toHaveProperty([table.source]);
  });

  it.each(ability)("ability $id rises with temperature", (table) => {
    const [low, high] = ends(table);
    fc.assert(
      fc.property(
        fc.double({ min: low, max: high, noNaN: true }),
        fc.double({ min: low, max: high, noNaN: true }),
        (a, b) => {
          const [cold, warm] = [
            crankingAbilityPercent(Math.min(a, b), table),
            crankingAbilityPercent(Math.max(a, b), table),
          ];
          return "value" in cold && "value" in warm && cold.value <= warm.value + 1e-9;
        },
      ),
    );
  });

  it.each(demand)("demand $id falls with temperature", (table) => {
    const [low, high] = ends(table);
    fc.assert(
      fc.property(
        fc.double({ min: low, max: high, noNaN: true }),
        fc.double({ min: low, max: high, noNaN: true }),
        (a, b) => {
          const [cold, warm] = [
            crankingDemandPercent(Math.min(a, b), table),
            crankingDemandPercent(Math.max(a, b), table),
          ];
          return "value" in cold && "value" in warm && cold.value >= warm.value - 1e-9;
        },
      ),
    );
  });

  it("refuses outside the table and names its range", () => {
    for (const celsius of [-18.1, 26.8]) {
      const result = crankingAbilityPercent(celsius);
      expect(isRefusal(result) && result.code).toBe("temperature-outside-table");
      expect(isRefusal(result) && result.reason).toContain("-18 to 26.7");
    }
    expect(isRefusal(crankingDemandPercent(-40))).toBe(true);
  });

  it("takes a table of the caller's", () => {
    const mine: TemperatureTable = {
      id: "mine",
      rows: [
        [-10, 50, 1],
        [10, 100, 3],
      ],
      source: "measured",
      standing: "our-choice",
    };
    expect(crankingDemandPercent(0, mine)).toEqual({ value: 75, standardUncertainty: 2 });
  });

  it("throws on NaN, naming the argument", () => {
    expect(() => crankingAbilityPercent(Number.NaN)).toThrow(/temperatureCelsius/);
  });
});
