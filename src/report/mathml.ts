import { aboveAndBelow, type FormulaNode, parseFormula } from "./formula.js";
import { escapeHtml } from "./html-text.js";

/**
 * A formula of a derivation as HTML: MathML where it is a calculation, text where it is prose.
 *
 * Reads the plain notation of `DerivationStep.formula`: `+ − × · * /`, brackets, raised digits and `^`, `√`, calls such as
 * `Φ(margin / u)`, `=` and `..`, names of several words. Division becomes a bar, `*` becomes `·`. A clause that could be read
 * in two ways, such as `0.0037/K away from 25 °C`, and the layout of a date (`MM/YY`) stay text: nothing is guessed, and
 * text wraps where a formula cannot.
 *
 * @param formula plain text
 * @returns finished markup, everything escaped; each calculation is one `math` element with the plain text as `alttext`
 * @example
 * ```ts
 * import { renderFormula } from "crankworthy/report";
 * renderFormula("measured / label"); // => '<math alttext="measured / label"><mfrac><mi>measured</mi><mi>label</mi></mfrac></math>'
 * renderFormula("read from the code"); // => "read from the code"
 * ```
 */
export function renderFormula(formula: string): string {
  return parseFormula(formula)
    .map(({ text, node, after }) =>
      node.kind === "text"
        ? escapeHtml(text) + after
        : `<math alttext="${escapeHtml(text)}">${markup(node)}</math>${after}`,
    )
    .join("");
}

function markup(node: FormulaNode): string {
  switch (node.kind) {
    case "number":
      return `<mn>${escapeHtml(node.text.replace("-", "−"))}</mn>`;
    case "name":
    case "text": {
      // A name of several words is no row of single letters.
      const tag = node.text.includes(" ") ? "mtext" : "mi";
      return `<${tag}>${escapeHtml(node.text)}</${tag}>`;
    }
    case "group":
      return row(sign("("), markup(node.of), sign(")"));
    case "root":
      return `<msqrt>${markup(node.of)}</msqrt>`;
    case "fraction":
      return `<mfrac>${aboveAndBelow(node).map(markup).join("")}</mfrac>`;
    case "power":
      return `<msup>${markup(node.base)}${markup(node.exponent)}</msup>`;
    case "call":
      return row(
        markup(node.name),
        sign("("),
        ...node.parts.flatMap((part, i) => (i === 0 ? [markup(part)] : [sign(","), markup(part)])),
        sign(")"),
      );
    default:
      return row(
        ...node.parts.flatMap((part, i) =>
          i === 0 ? [markup(part)] : [sign(SHOWN[node.marks[i - 1]!] ?? node.marks[i - 1]!), markup(part)],
        ),
      );
  }
}

const SHOWN: Readonly<Record<string, string>> = { "*": "·", "-": "−" };

const sign = (text: string): string => `<mo>${text}</mo>`;
const row = (...parts: readonly string[]): string => `<mrow>${parts.join("")}</mrow>`;
