import { execFile } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, it } from "vitest";
import { present, ROBOT } from "../logs/datasets.js";

const root = fileURLToPath(new URL("../../", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "crankworthy-logger-"));
afterAll(() => rmSync(folder, { recursive: true }));

const run = (...parameters: string[]) =>
  new Promise<{ status: number; out: string; err: string }>((done) => {
    execFile(
      process.execPath,
      [`${root}examples/logger/run.mjs`, ...parameters],
      { cwd: folder },
      (error, out, err) => {
        done({ status: Number(error?.code ?? 0), out, err });
      },
    );
  });

// The example runs against the build, which `npm test` makes first.
describe.skipIf(!existsSync(`${root}dist/pictures.js`))("npm run example logger", () => {
  it("prints quality, segments, measurements and evaluation of its invented log, and draws it", async () => {
    const { status, out } = await run();
    expect(out).toBe(readFileSync(`${root}examples/logger/expected.txt`, "utf8"));
    expect(status).toBe(0);
    const picture = readFileSync(join(folder, "logger-trace.svg"), "utf8");
    expect(picture).toMatch(/^<svg [^>]*role="img"/);
    expect(picture).toContain("sample-log.csv");
  });

  it("finds what the log hides: resistance within its interval", async () => {
    const { out } = await run();
    const [, value, half] = /resistance: ([\d.]+) ± ([\d.]+) mΩ/.exec(out)!;
    const [, hidden] = /hidden: resistance ([\d.]+) mΩ/.exec(out)!;
    expect(Math.abs(Number(value) - Number(hidden))).toBeLessThanOrEqual(Number(half));
  });

  it("reads another table by a format file", async () => {
    writeFileSync(join(folder, "bench.txt"), "min;U;I\n0;12,60;0\n1;12,31;-3\n2;12,30;-3\n3;12,29;-3\n");
    const format = {
      delimiter: ";",
      decimalChar: ",",
      columns: {
        time: { column: "min", unit: "min" },
        voltage: { column: "U", unit: "V" },
        current: { column: "I", unit: "A", positive: "charging" },
      },
    };
    writeFileSync(join(folder, "format.json"), JSON.stringify(format));
    const { status, out } = await run("bench.txt", "format.json");
    expect(status).toBe(0);
    expect(out).toContain("2. discharge, 60.0 to 180.0 s");
  });

  it("says where a file cannot be read, and why", async () => {
    writeFileSync(join(folder, "bad.csv"), "Test Time / s,Voltage / V,Current / A\n0,12.6,0\n1,volts,0\n");
    const { status, err } = await run("bad.csv");
    expect(status).toBe(2);
    expect(err).toContain('line 3, row 2, byte 47, column "Voltage / V": received "volts"');
  });

  it.skipIf(!present(ROBOT))("reads the robot's log, whose current comes late", async () => {
    const format = {
      columns: {
        time: { column: "t_s", unit: "s" },
        voltage: { column: "voltage_V", unit: "V" },
        current: { column: "current_A", unit: "A", positive: "discharging" },
      },
    };
    writeFileSync(join(folder, "robot.json"), JSON.stringify(format));
    const { status, out } = await run(`${root}${ROBOT}`, "robot.json");
    expect(status).toBe(0);
    expect(out).toMatch(/current behind voltage: 0\.10\d* ± /);
  });
});
