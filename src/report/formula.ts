/** A formula taken apart. A `text` is prose, or what could not be taken apart for certain. */
export type FormulaNode =
  | { readonly kind: "number" | "name" | "text"; readonly text: string }
  | { readonly kind: "group" | "root"; readonly of: FormulaNode }
  | { readonly kind: "fraction"; readonly over: FormulaNode; readonly under: FormulaNode }
  | {
      readonly kind: "power";
      readonly base: FormulaNode;
      readonly exponent: FormulaNode;
      /** Written as a raised digit, not with `^`. */
      readonly raised: boolean;
    }
  | { readonly kind: "call"; readonly name: FormulaNode; readonly parts: readonly FormulaNode[] }
  | {
      readonly kind: "sum" | "product" | "chain";
      readonly parts: readonly FormulaNode[];
      /** The sign before each part but the first. */
      readonly marks: readonly string[];
    };

/** Parts of a formula between commas or semicolons at its top level, each with the mark and blank that follow it. */
export interface FormulaClause {
  /** As it was written. */
  readonly text: string;
  readonly node: FormulaNode;
  readonly after: string;
}

interface Token {
  readonly kind: "words" | "sign" | "raised";
  readonly text: string;
  /** Blank before, blank behind. */
  readonly loose: readonly [before: boolean, behind: boolean];
}

const RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹";
const NUMBER = /^[-−]?(?:0|[1-9]\d*)(?:\.\d+)?$/;
/** Names of a clause that is prose in spite of its signs: a sentence, or the layout of a date (`MM/YY`). */
const PROSE = /[:;"]|\b(?:and|or)\b|^([YMDW])\1+$/;
const PLUS = /^[-−+]$/;
const TIMES = /^[×·*/]$/;
const RELATION = /^(?:=|\.\.)$/;

/** Thrown and caught in this file: the clause stays text. */
class NotAFormula extends Error {}

/**
 * Takes a formula of a derivation apart: sums, products, quotients, powers, roots, brackets and calls of quantities whose
 * names may have several words. What it reads, it writes back and compares: a clause that does not come out as it went in
 * stays text, and so does prose.
 */
export function parseFormula(formula: string): FormulaClause[] {
  return clausesOf(formula).map((one) => ({ ...one, node: clauseNode(one.text) }));
}

function clauseNode(text: string): FormulaNode {
  const asText: FormulaNode = { kind: "text", text };
  try {
    const node = read(tokens(text));
    // A name alone is prose, and so is a number with its unit.
    if (node.kind === "name" || (node.kind === "number" && !NUMBER.test(text))) return asText;
    return inOneLine(node) === text.replace(/\s/g, "") ? node : asText;
  } catch (error) {
    if (error instanceof NotAFormula) return asText;
    throw error;
  }
}

function clausesOf(formula: string): { text: string; after: string }[] {
  const found: { text: string; after: string }[] = [];
  let depth = 0;
  let start = 0;
  for (let i = 0; i < formula.length; i++) {
    const sign = formula[i];
    if (sign === "(") depth++;
    if (sign === ")") depth--;
    if (depth === 0 && (sign === "," || sign === ";") && formula[i + 1] === " ") {
      found.push({ text: formula.slice(start, i).trim(), after: `${sign} ` });
      start = i + 2;
    }
  }
  found.push({ text: formula.slice(start).trim(), after: "" });
  return found;
}

function tokens(text: string): Token[] {
  const found: Token[] = [];
  // A sign of a sum stands between blanks; without them it belongs to a word (`six-cell`, `−18 °C`).
  const pattern = /(?<=\s)(?:[-−+]|\.\.)(?=\s)|[()√^=×·*/,]|[⁰¹²³⁴-⁹]+|[^\s()√^=×·*/,⁰¹²³⁴-⁹]+/gu;
  for (const match of text.matchAll(pattern)) {
    const [one] = match;
    const end = match.index + one.length;
    const loose = [/^$|\s/.test(text.charAt(match.index - 1)), /^$|\s/.test(text.charAt(end))] as const;
    const sign = /^(?:[()√^=×·*/,]|\.\.)$/.test(one) || (PLUS.test(one) && loose[0] && loose[1]);
    const kind = sign ? "sign" : RAISED.includes(one[0]!) ? "raised" : "words";
    const before = found.at(-1);
    if (kind === "words" && PROSE.test(one)) throw new NotAFormula();
    if (kind === "words" && before?.kind === "words")
      found[found.length - 1] = {
        kind,
        text: `${before.text} ${one}`,
        loose: [before.loose[0], loose[1]],
      };
    else found.push({ kind, text: one, loose });
  }
  // Beside a sign without blanks a name of several words leaves open how much of it belongs there.
  for (const [i, { kind, text: words, loose }] of found.entries())
    if (kind === "words" && words.includes(" ")) {
      const [before, behind] = [found[i - 1], found[i + 1]];
      if (before && !loose[0] && before.text !== "(") throw new NotAFormula();
      if (behind && !loose[1] && !/^[),]$/.test(behind.text)) throw new NotAFormula();
    }
  return found;
}

function read(all: readonly Token[]): FormulaNode {
  let at = 0;
  const node = chain();
  if (at < all.length) throw new NotAFormula();
  return node;

  function next(pattern: RegExp, loose?: boolean): string | undefined {
    const token = all[at];
    if (token?.kind !== "sign" || !pattern.test(token.text)) return undefined;
    if (loose !== undefined) {
      if (token.loose[0] !== token.loose[1]) throw new NotAFormula();
      if (token.loose[0] !== loose) return undefined;
    }
    at++;
    return token.text;
  }

  function series(kind: "sum" | "chain", part: () => FormulaNode, sign: RegExp): FormulaNode {
    const parts = [part()];
    const marks: string[] = [];
    for (let mark = next(sign); mark !== undefined; mark = next(sign)) {
      marks.push(mark);
      parts.push(part());
    }
    return marks.length === 0 ? parts[0]! : { kind, parts, marks };
  }

  function chain(): FormulaNode {
    return series("chain", sum, RELATION);
  }

  function sum(): FormulaNode {
    return series("sum", () => product(true), PLUS);
  }

  // Signs without blanks bind before those with blanks, as they look.
  function product(loose: boolean): FormulaNode {
    const part = loose ? () => product(false) : power;
    let node = part();
    for (let mark = next(TIMES, loose); mark !== undefined; mark = next(TIMES, loose)) {
      const right = part();
      if (mark === "/") node = { kind: "fraction", over: node, under: right };
      else if (node.kind === "product")
        node = { kind: "product", parts: [...node.parts, right], marks: [...node.marks, mark] };
      else node = { kind: "product", parts: [node, right], marks: [mark] };
    }
    return node;
  }

  function power(): FormulaNode {
    const base = primary();
    const token = all[at];
    if (token?.kind === "raised" && !token.loose[0]) {
      at++;
      const digits = [...token.text].map((one) => RAISED.indexOf(one)).join("");
      return { kind: "power", base, exponent: { kind: "number", text: digits }, raised: true };
    }
    if (next(/^\^$/, false)) return { kind: "power", base, exponent: primary(), raised: false };
    return base;
  }

  function primary(): FormulaNode {
    if (next(/^√$/)) return { kind: "root", of: bare(primary(), /^(?:sum|product|fraction)$/) };
    if (next(/^\($/)) {
      const of = chain();
      if (!next(/^\)$/)) throw new NotAFormula();
      return { kind: "group", of };
    }
    const token = all[at];
    if (token?.kind !== "words") throw new NotAFormula();
    at++;
    const { text } = token;
    const name: FormulaNode = { kind: NUMBER.test(text) ? "number" : "name", text };
    if (token.loose[1] || !next(/^\($/)) return name;
    const parts = [chain()];
    while (next(/^,$/)) parts.push(chain());
    if (!next(/^\)$/)) throw new NotAFormula();
    return { kind: "call", name, parts };
  }
}

/** Without brackets that the bar of a fraction or a root makes needless. */
function bare(node: FormulaNode, needless: RegExp): FormulaNode {
  return node.kind === "group" && needless.test(node.of.kind) ? node.of : node;
}

/** What stands above and below the bar of a fraction. */
export function aboveAndBelow(node: Extract<FormulaNode, { kind: "fraction" }>): [FormulaNode, FormulaNode] {
  return [bare(node.over, /^sum$/), bare(node.under, /^(?:sum|product|fraction)$/)];
}

/** The formula in one line, without blanks. */
export function inOneLine(node: FormulaNode): string {
  switch (node.kind) {
    case "number":
    case "name":
    case "text":
      return node.text.replace(/\s/g, "");
    case "group":
      return `(${inOneLine(node.of)})`;
    case "root":
      return /^(?:sum|product|fraction)$/.test(node.of.kind)
        ? `√(${inOneLine(node.of)})`
        : `√${inOneLine(node.of)}`;
    case "fraction": {
      const [over, under] = aboveAndBelow(node);
      const above = over.kind === "sum" ? `(${inOneLine(over)})` : inOneLine(over);
      return `${above}/${/^(?:sum|product|fraction)$/.test(under.kind) ? `(${inOneLine(under)})` : inOneLine(under)}`;
    }
    case "power": {
      const exponent = inOneLine(node.exponent);
      const raised = [...exponent].map((digit) => RAISED[Number(digit)]).join("");
      return inOneLine(node.base) + (node.raised ? raised : `^${exponent}`);
    }
    case "call":
      return `${inOneLine(node.name)}(${node.parts.map(inOneLine).join(",")})`;
    default:
      return node.parts.map((part, i) => (node.marks[i - 1] ?? "") + inOneLine(part)).join("");
  }
}
