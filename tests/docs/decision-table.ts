import { readFileSync } from "node:fs";
import { bibliography } from "crankworthy/sources";
import { rules } from "crankworthy/verdict";

/** The page docs/rules.md, made from the rules themselves: order, stage, findings, source, and their own doc comment. */
export function decisionTable(): string {
  const rows = rules.map((rule, i) => {
    const file = `src/verdict/rules/${rule.code}.ts`;
    const text = readFileSync(file, "utf8");
    const comment = /\/\*\*([\s\S]*?)\*\/\s*export const/.exec(text)?.[1];
    if (!comment) throw new Error(`${file} has no doc comment before its rule`);
    const trigger = comment
      .replace(/^\s*\* ?/gm, "")
      .trim()
      .replace(/\s+/g, " ");
    const codes = [
      ...new Set([...text.matchAll(/finding\(\s*"([a-z-]+)"/g)].map((match) => `\`${match[1]}\``)),
    ];
    const decides = /decision[:\s]/.test(text) ? "decides" : "informs";
    const { title } = bibliography[rule.source];
    return `| ${i + 1} | ${rule.stage} | \`${rule.code}\` | ${trigger} | ${decides} | ${codes.join(", ")} | ${title} | ${rule.standing} |`;
  });
  return [
    "# The rules, in order",
    "",
    "Generated from `src/verdict/rules/` by `npm run rules`; do not edit. The first rule that decides sets condition and action; every rule",
    "that fires leaves its findings. [How a decision is made](decisions.md) explains the two axes and the guard bands.",
    "",
    "| order | stage | rule | trigger | role | findings | source | standing |",
    "|---|---|---|---|---|---|---|---|",
    ...rows,
    "",
  ].join("\n");
}
