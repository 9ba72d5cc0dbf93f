import type { LogFormat } from "crankworthy/logs";
import * as logs from "crankworthy/logs";
import type { Contender } from "./contenders.js";

const format: LogFormat = {
  columns: {
    time: { column: "t_s", unit: "s" },
    voltage: { column: "voltage_V", unit: "V" },
    current: { column: "current_A", unit: "A", positive: "charging" },
    temperature: { column: "temperature_C", unit: "degC" },
  },
};

export const ours: Readonly<Record<string, Contender>> = {
  "ours, read": async (path) => {
    const log = await logs.openLog({ path }, format);
    for await (const chunk of log.chunks) if (chunk.rows === 0) throw new Error("an empty chunk");
    return log.tally().rows;
  },
  "ours, read and check": async (path) => {
    const log = await logs.openLog({ path }, format);
    const check = logs.createLogCheck();
    for await (const chunk of log.chunks) check.push(chunk);
    check.finish();
    return log.tally().rows;
  },
  "ours, read and segment": async (path) => {
    const log = await logs.openLog({ path }, format);
    const segmenter = logs.createSegmenter();
    for await (const chunk of log.chunks) segmenter.push(chunk);
    segmenter.finish();
    return log.tally().rows;
  },
  "ours, everything (analyseLog)": async (path) => {
    const analysis = await logs.analyseLog({ path }, format);
    return analysis.tally.rows;
  },
};
