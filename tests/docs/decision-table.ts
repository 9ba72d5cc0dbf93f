import { readFileSync } from "node:fs";
import { bibliography } from "crankworthy/sources";
import { causeRules, rules, type Sign } from "crankworthy/verdict";

const signs = (list: readonly Sign[]): string =>
  list.map(({ code, when }) => `\`${code}\`${when ? " (beside others)" : ""}`).join(", ");

/** What speaks for and against each cause, made from the cause rules. */
function causeTable(): string[] {
  return causeRules.map(({ code, source, standing, supports, contradicts, settleBy }) => {
    const file = `src/verdict/causes/${code}.ts`;
    const comment = lastComment(readFileSync(file, "utf8"))
      ?.replace(/^\s*\* ?/gm, "")
      .trim()
      .replace(/\s+/g, " ");
    if (!comment) throw new Error(`${file} has no doc comment before its rule`);
    const { title } = bibliography[source];
    return `| \`${code}\` | ${comment} | ${signs(supports)} | ${signs(contradicts)} | \`${settleBy}\` | ${title} | ${standing} |`;
  });
}

/** The page docs/rules.md, made from the rules themselves: order, stage, findings, source, and their own doc comment. */
export function decisionTable(): string {
  const rows = rules.map((rule, i) => {
    const file = `src/verdict/rules/${rule.code}.ts`;
    const text = readFileSync(file, "utf8");
    const comment = lastComment(text);
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
    "# The causes",
    "",
    "Generated from `src/verdict/causes/`. Weighed after the rules, over the findings, where something was measured on the vehicle. With findings on",
    "one side only a cause is `supported` or `contradicted`; otherwise it is `open`, and with both sides `causes-conflict` names what settles it.",
    '"Beside others": the finding counts only together with, or without, others; the file says which.',
    "",
    "| cause | what it is | speaks for it | speaks against it | settled by | source | standing |",
    "|---|---|---|---|---|---|---|",
    ...causeTable(),
    "",
  ].join("\n");
}

/** The doc comment right before the exported rule. */
function lastComment(text: string): string | undefined {
  const before = text.slice(0, text.search(/^export const/m));
  const start = before.lastIndexOf("/**");
  return start < 0 ? undefined : before.slice(start + 3, before.lastIndexOf("*/"));
}
