import { readdirSync, readFileSync } from "node:fs";
import { transformSync } from "esbuild";

/** A fenced `ts` block and where it stands. */
export interface CodeBlock {
  readonly file: string;
  readonly line: number;
  readonly code: string;
}

/** All fenced `ts` blocks of a Markdown file, or of the doc comments of a source file. */
export function codeBlocks(file: string): CodeBlock[] {
  const blocks: CodeBlock[] = [];
  let open: { line: number; lines: string[] } | undefined;
  readFileSync(file, "utf8")
    .split("\n")
    .forEach((raw, index) => {
      const line = file.endsWith(".ts") ? raw.replace(/^\s*\* ?/, "") : raw;
      if (open) {
        if (line.trim() === "```") {
          blocks.push({ file, line: open.line, code: open.lines.join("\n") });
          open = undefined;
        } else open.lines.push(line);
      } else if (line.trim() === "```ts") open = { line: index + 1, lines: [] };
    });
  return blocks;
}

export function filesBelow(folder: string, ending: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(ending))
    .map((name) => `${folder}/${name}`)
    .sort();
}

type Check = (actual: unknown, expected: unknown, source: string) => void;

const IMPORT = /^import\s+\{([^}]*)\}\s+from\s+"(crankworthy[^"]*)";?/gm;
const EXPECTATION = /;?\s*\/\/ =>\s*(.+)$/;

/**
 * Runs a block: imports of the library come from `load`, and each line `expression; // => value` becomes a check.
 * A block without any such line only has to run.
 */
export async function runBlock(
  block: CodeBlock,
  load: (specifier: string) => Promise<object>,
  check: Check,
): Promise<number> {
  let checks = 0;
  const specifiers: string[] = [];
  let code = block.code.replace(IMPORT, (_, names: string, specifier: string) => {
    specifiers.push(specifier);
    const destructured = names.replace(/\btype\s+\w+,?/g, "").replace(/\sas\s/g, ": ");
    return `const {${destructured}} = __modules[${specifiers.length - 1}];`;
  });
  code = code
    .split("\n")
    .map((line) => {
      const match = EXPECTATION.exec(line);
      if (!match) return line;
      checks++;
      const before = line.slice(0, match.index).trim();
      const declared = /^(?:const|let)\s+(\w+)\b[^=]*=/.exec(before);
      const actual = declared ? declared[1] : before.replace(/^console\.log\(([\s\S]*)\)$/, "$1");
      const prefix = declared ? `${before};` : "";
      return `${prefix} __check((${actual}), (${match[1]}), ${JSON.stringify(match[1])});`;
    })
    .join("\n");
  const javascript = transformSync(code, { loader: "ts", format: "esm", target: "es2022" }).code;
  const modules = await Promise.all(specifiers.map(load));
  const AsyncFunction = Object.getPrototypeOf(async () => {}).constructor;
  await new AsyncFunction("__modules", "__check", javascript)(modules, check);
  return checks;
}
