import { evaluate } from "crankworthy/evaluate";
import { analyseLog, syntheticLog, writeDelimited } from "crankworthy/logs";
import { isRefusal } from "crankworthy/numeric";
import {
  abilityPicture,
  chargePicture,
  coldStartPicture,
  createTraceThinner,
  logTracePicture,
  warrantyPicture,
} from "crankworthy/pictures";
import { bibliography, type Source } from "crankworthy/sources";
import { records } from "../report/records.js";

/** An invented battery with everything that is drawn; the shop of the tests sold it. */
const record = {
  ...records.claim!,
  id: "B-17",
  requirement: { crankingAmperes: 140, atCelsius: 20, coldestMorningCelsius: -12 },
};
const options = (id: string) => ({ id, width: 720 });

function drawn(picture: string | object): string {
  if (typeof picture !== "string") throw new Error(`not drawn: ${JSON.stringify(picture)}`);
  return `${picture}\n`;
}

/** Every picture of docs/rooms.md by the name of its file. */
export async function illustrations(): Promise<Record<string, string>> {
  const evaluation = evaluate(record);
  const { chunks } = syntheticLog(
    {
      battery: { capacityAmpereHours: 70, stateOfCharge: 0.8, resistanceOhms: 0.006 },
      phases: [
        { kind: "rest", seconds: 300, intervalSeconds: 0.5 },
        { kind: "crank", seconds: 1.2, crankingAmperes: 180, intervalSeconds: 0.01 },
        { kind: "engine-running", seconds: 900, volts: 14.3, amperes: 60, intervalSeconds: 0.5 },
        { kind: "rest", seconds: 900, intervalSeconds: 5 },
      ],
    },
    17,
  );
  const thinner = createTraceThinner();
  const log = await analyseLog([...writeDelimited(chunks)], "bdf", {
    rule: { ratedAmpereHours: 70 },
    onChunk: (chunk) => thinner.push(chunk),
  });
  if (isRefusal(log.charge)) throw new Error("no log");
  return {
    charge: drawn(chargePicture(evaluation, options("charge"))),
    ability: drawn(abilityPicture(evaluation, options("ability"))),
    "cold-start": drawn(coldStartPicture({ evaluation, record }, options("cold-start"))),
    warranty: drawn(warrantyPicture({ evaluation, record }, options("warranty"))),
    "log-trace": drawn(
      logTracePicture(
        { trace: thinner.finish(), segments: log.segments, name: "invented.csv" },
        options("log-trace"),
      ),
    ),
  };
}

/** docs/sources.md: the bibliography as a page. */
export function sourcesPage(): string {
  const cell = (text = "") => text.replaceAll("|", "\\|");
  const rows = Object.entries(bibliography as Record<string, Source>).map(
    ([key, { title, edition, locator, address, standing }]) =>
      `| \`${key}\` | ${cell([title, edition, locator].filter(Boolean).join(", "))} | ${cell(address)} | ${standing} |`,
  );
  return [
    "# Sources",
    "",
    "Generated from `crankworthy/sources`; do not edit. Every coefficient, limit and table row names one of these keys; the standing says how far the text",
    "itself was seen: `read`, `secondary` (somebody else's account of it), `from-memory`, `common-practice` (done in the trade, no document), `computed`, `our-choice`.",
    "",
    `${rows.length} sources.`,
    "",
    "| key | document | address | standing |",
    "|---|---|---|---|",
    ...rows,
    "",
  ].join("\n");
}
