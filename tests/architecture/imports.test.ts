import { readdirSync, readFileSync } from "node:fs";
import { posix } from "node:path";
import { describe, expect, it } from "vitest";
import { filesBelow } from "../docs/code-blocks.js";

// The arrows of the house. A room may import what its row lists, nothing else; `types:` rows only `import type`.
const MAY_IMPORT: Record<string, readonly string[]> = {
  numeric: [],
  sources: [],
  ratings: ["numeric", "sources"],
  "label-codes": ["numeric", "sources", "types:ratings"],
  "charge-state": ["numeric", "sources"],
  temperature: ["numeric", "sources"],
  "date-codes": ["numeric", "sources"],
  bench: ["numeric", "sources", "charge-state", "temperature"],
  vehicle: ["numeric", "sources", "temperature"],
  warranty: ["numeric", "sources", "decimal.js", "date-fns"],
  verdict: [
    "numeric",
    "sources",
    "types:ratings",
    "types:charge-state",
    "types:temperature",
    "types:bench",
    "types:vehicle",
  ],
  evaluate: [
    "numeric",
    "sources",
    "ratings",
    "label-codes",
    "charge-state",
    "temperature",
    "date-codes",
    "bench",
    "vehicle",
    "warranty",
    "verdict",
    "zod",
  ],
  guidance: [
    "numeric",
    "sources",
    "charge-state",
    "label-codes",
    "ratings",
    "temperature",
    "bench",
    "verdict",
    "warranty",
    "evaluate",
  ],
  streams: ["numeric"],
  logs: ["numeric", "charge-state", "temperature", "streams", "types:evaluate", "udsv"],
  fleet: ["numeric", "evaluate", "streams"],
  report: ["numeric", "sources", "types:evaluate", "types:warranty", "types:verdict", "types:guidance"],
  pictures: [
    "numeric",
    "charge-state",
    "temperature",
    "types:date-codes",
    "types:evaluate",
    "types:logs",
    "verdict",
    "warranty",
    "d3-array",
    "d3-scale",
    "d3-shape",
  ],
  languages: ["types:report", "types:pictures"],
};

interface Arrow {
  readonly from: string;
  readonly to: string;
  readonly typeOnly: boolean;
  readonly file: string;
}

function arrows(): Arrow[] {
  const found: Arrow[] = [];
  for (const file of filesBelow("src", ".ts")) {
    const room = file.split("/")[1]!;
    if (room === "index.ts") continue;
    const text = readFileSync(file, "utf8");
    for (const match of text.matchAll(/^(import|export)(\s+type)?[^;]*?from\s+"([^"]+)"/gm)) {
      const specifier = match[3]!;
      const path = specifier.startsWith(".") ? posix.join(posix.dirname(file), specifier) : undefined;
      const to = path ? path.split("/")[1]! : specifier;
      if (to === room) continue;
      found.push({ from: room, to, typeOnly: match[2] !== undefined, file });
    }
  }
  return found;
}

describe("rooms", () => {
  it("every folder of src has a row, every row a folder", () => {
    const folders = readdirSync("src", { withFileTypes: true }).filter((e) => e.isDirectory());
    expect(folders.map((e) => e.name).sort()).toEqual(Object.keys(MAY_IMPORT).sort());
  });

  it("imports follow the plan", () => {
    const broken = arrows().filter(({ from, to, typeOnly }) => {
      const allowed = MAY_IMPORT[from] ?? [];
      return !(allowed.includes(to) || (typeOnly && allowed.includes(`types:${to}`)));
    });
    expect(broken).toEqual([]);
  });

  it("rooms form no cycle", () => {
    const next = new Map<string, Set<string>>();
    for (const { from, to } of arrows()) next.set(from, (next.get(from) ?? new Set()).add(to));
    const state = new Map<string, "open" | "done">();
    const visit = (room: string, path: readonly string[]): void => {
      if (state.get(room) === "open") throw new Error(`cycle: ${[...path, room].join(" → ")}`);
      if (state.get(room) === "done") return;
      state.set(room, "open");
      for (const to of next.get(room) ?? []) visit(to, [...path, room]);
      state.set(room, "done");
    };
    for (const room of next.keys()) visit(room, []);
  });

  it("files form no cycle either", () => {
    const next = new Map<string, string[]>();
    for (const file of filesBelow("src", ".ts")) {
      const targets = [
        ...readFileSync(file, "utf8").matchAll(/^(?:import|export)[^;]*?from\s+"(\.[^"]+)\.js"/gm),
      ];
      next.set(
        file,
        targets.map((match) => `${posix.join(posix.dirname(file), match[1]!)}.ts`),
      );
    }
    const state = new Map<string, "open" | "done">();
    const visit = (file: string, path: readonly string[]): void => {
      if (state.get(file) === "open") throw new Error(`cycle: ${[...path, file].join(" → ")}`);
      if (state.get(file) === "done") return;
      state.set(file, "open");
      for (const to of next.get(file) ?? []) visit(to, [...path, file]);
      state.set(file, "done");
    };
    expect(next.size).toBeGreaterThan(100);
    for (const file of next.keys()) visit(file, []);
  });

  it("no clock, locale, environment or input/output outside streams, logs and fleet", () => {
    const forbidden =
      /\bDate\.now\b|new Date\(\)|\bprocess\.|\bfetch\(|toLocale|\beval\(|new Function|from "node:/;
    const broken = filesBelow("src", ".ts").filter(
      (file) => !/^src\/(streams|logs|fleet)\//.test(file) && forbidden.test(readFileSync(file, "utf8")),
    );
    expect(broken).toEqual([]);
  });
});
