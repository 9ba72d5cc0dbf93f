// Runs every date test in four time zones: half-hour offsets, a skipped day, a shifting summer time. Results must not differ.
import { spawnSync } from "node:child_process";

const zones = ["UTC", "America/St_Johns", "Pacific/Apia", "Africa/Casablanca"];
const tests = [
  "tests/date-codes",
  "tests/warranty",
  "tests/numeric/plain-date.test.ts",
  "tests/outside/date-codes.test.ts",
  "tests/outside/warranty.test.ts",
];
for (const zone of zones) {
  console.log(`-- TZ=${zone}`);
  const { status } = spawnSync("npx", ["vitest", "run", "--reporter=dot", ...tests], {
    env: { ...process.env, TZ: zone },
    stdio: "inherit",
  });
  if (status !== 0) process.exit(status ?? 1);
}
