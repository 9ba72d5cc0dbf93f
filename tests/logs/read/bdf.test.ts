import { openLog } from "crankworthy/logs";
import { describe, expect, it } from "vitest";
import { BDF_DEPRECATED, BDF_TERMS } from "../../../src/logs/read/bdf.data.js";
import { readAll } from "./rows.js";

const header = async (names: readonly string[]) => {
  const log = await openLog(`${names.map((name) => `"${name}"`).join(",")}\n`, "bdf");
  await log.close();
  return log.header;
};

describe("Battery Data Format", () => {
  it("has 58 live terms, three of them required and four recommended, and 5 deprecated ones", () => {
    expect(BDF_TERMS).toHaveLength(58);
    expect(BDF_DEPRECATED).toHaveLength(5);
    const names = [...BDF_TERMS, ...BDF_DEPRECATED].map(([, name]) => name);
    expect(new Set(names).size).toBe(63);
    const obliged = (word: string) => BDF_TERMS.filter(([, , obligation]) => obligation === word).length;
    expect([obliged("required"), obliged("recommended")]).toEqual([3, 4]);
    for (const [, , replacement] of BDF_DEPRECATED) expect(names).toContain(replacement);
  });

  it("knows every term by its label in any case, and by its machine name", async () => {
    const labels = BDF_TERMS.map(([label]) => label);
    const names = BDF_TERMS.map(([, name]) => name);
    for (const [row, match] of [
      [labels, "label"],
      [labels.map((label) => label.toUpperCase()), "label"],
      [names, "machine-name"],
    ] as const) {
      const { terms, leftOver } = await header(row);
      expect(leftOver).toEqual([]);
      expect(terms).toEqual(
        row.map((header, position) => ({ position, header, term: names[position], match, over: 1 })),
      );
    }
  });

  it("says what went where and what was left over", async () => {
    const reading = await header([
      "Voltage / V",
      "current_ampere",
      "Test Time / s",
      "Mood",
      "Step Index / 1",
    ]);
    expect(reading.columns.map(({ quantity, position }) => [quantity, position])).toEqual([
      ["time", 2],
      ["voltage", 0],
      ["current", 1],
    ]);
    expect(reading.terms.map(({ term, match }) => [term, match])).toEqual([
      ["voltage_volt", "label"],
      ["current_ampere", "machine-name"],
      ["test_time_second", "label"],
      ["step_record_index", "deprecated"],
    ]);
    expect(reading.leftOver).toEqual(["Mood"]);
    expect(reading.timeFrom).toBe("elapsed");
  });

  it("divides milliseconds of deprecated columns, and prefers a live column beside one", async () => {
    const old = await readAll("Test Time / ms,Voltage / V,Current / A\n1500,12,-1\n", "bdf");
    expect(old.seconds).toEqual([1.5]);
    const both = await readAll(
      "test_time_millisecond,Test Time / s,Voltage / V,Current / A\n9,1.5,12,-1\n",
      "bdf",
    );
    expect(both.seconds).toEqual([1.5]);
  });

  it("derives the elapsed time where only Unix time is there, and says so", async () => {
    const text = "Unix Time / s,Voltage / V,Current / A\n,12,0\n1700000000.5,12,-1\n1700000002,12,-1\n";
    expect((await header(text.split("\n")[0]!.split(","))).timeFrom).toBe("unix-time");
    const { seconds, clock, tally } = await readAll(text, "bdf");
    expect(seconds).toEqual([Number.NaN, 0, 1.5]);
    expect(clock).toEqual([Number.NaN, 1_700_000_000.5, 1_700_000_002]);
    expect(tally.timeZero).toBe("1700000000.5");
    const ms = await readAll(
      "unix_time_millisecond,Voltage / V,Current / A\n1700000000500,12,0\n1700000002000,12,0\n",
      "bdf",
    );
    expect([ms.seconds, ms.clock]).toEqual([
      [0, 1.5],
      [1_700_000_000.5, 1_700_000_002],
    ]);
  });

  it("keeps Unix time beside the elapsed time as the second clock", async () => {
    const { seconds, clock } = await readAll(
      "Test Time / s,Unix Time / s,Voltage / V,Current / A\n5,1700000000,12,0\n",
      "bdf",
    );
    expect([seconds, clock]).toEqual([[5], [1_700_000_000]]);
  });

  it.each([
    ["Surface Temperature / degC", "surface_temperature_celsius", "label", "surface"],
    ["Temperature T2 / degC", "temperature_t2_celsius", "label", "unplaced"],
    ["Surface Temperature T2 / degC", "temperature_t2_celsius", "older-label", "unplaced"],
    ["Temperature / degC", "temperature_t1_celsius", "unqualified-temperature", "unplaced"],
    ["Temperature 3 / degC", "temperature_t3_celsius", "unqualified-temperature", "unplaced"],
    ["temperature_celsius", "temperature_t1_celsius", "unqualified-temperature", "unplaced"],
    ["Chamber Temperature / degC", "ambient_temperature_celsius", "older-label", "ambient"],
    ["Ambient Temperature / degC", "ambient_temperature_celsius", "label", "ambient"],
  ])("%s is %s", async (name, term, match, place) => {
    const reading = await header(["Test Time / s", "Voltage / V", "Current / A", name]);
    expect(reading.terms[3]).toMatchObject({ header: name, term, match });
    expect(reading.temperaturePlace).toBe(place);
  });

  it("reads the temperature nearest to the battery", async () => {
    const { celsius } = await readAll(
      "Ambient Temperature / degC,Surface Temperature / degC,Test Time / s,Voltage / V,Current / A\n10,25,0,12,0\n",
      "bdf",
    );
    expect(celsius).toEqual([25]);
  });

  it("refuses a required term that is missing, naming the nearest header, and two headers for one term", async () => {
    await expect(header(["Test Time / s", "Voltage / mV", "Current / A"])).rejects.toMatchObject({
      code: "missing-column",
      column: "Voltage / V",
      line: 1,
      byteOffset: 0,
      received: 'the headers "Test Time / s", "Voltage / mV", "Current / A"',
      expected: 'a header "Voltage / V"; the nearest is "Voltage / mV"',
    });
    await expect(
      header(["Test Time / s", "Voltage / V", "voltage_volt", "Current / A"]),
    ).rejects.toMatchObject({ code: "ambiguous-column", column: "voltage_volt" });
  });

  it("is found under other delimiters and a decimal comma, too", async () => {
    const { volts } = await readAll("Test Time / s;Voltage / V;Current / A\n0;12,61;0\n", {
      columns: "bdf",
      delimiter: ";",
      decimalChar: ",",
    });
    expect(volts).toEqual([12.61]);
  });
});
