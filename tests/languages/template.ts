/** One `{name:unit}` or `{name#forms}` of a template. */
export interface Placeholder {
  readonly name: string;
  readonly unit: string;
  /** Forms by plural category, of `{name#one=…|other=…}`. */
  readonly forms?: Readonly<Record<string, string>>;
  /** Names that must have a value for the part it stands in to be shown. */
  readonly shownWith: readonly string[];
}

/** Reads a template of the catalogues apart; a brace or bracket without its partner is an error. */
export function placeholders(template: string): Placeholder[] {
  const found: { name: string; unit: string; forms?: Record<string, string>; groups: string[][] }[] = [];
  const open: string[][] = [];
  const rest = template.replace(/\{([\w-]+)([:#]?)([^{}]*)\}|[{}[\]]/g, (whole, name?: string, ...more) => {
    if (name !== undefined) {
      const [kind, text] = more as [string, string];
      open.at(-1)?.push(name);
      found.push({
        name,
        unit: kind === ":" ? text : "",
        ...(kind === "#" && { forms: Object.fromEntries(text.split("|").map((one) => one.split(/=(.*)/s))) }),
        groups: [...open],
      });
      return "";
    }
    if (whole === "[") open.push([]);
    else if (whole !== "]" || open.pop() === undefined)
      throw new Error(`${whole} without its partner: ${template}`);
    return "";
  });
  if (open.length > 0) throw new Error(`[ without its partner: ${template}`);
  if (/[{}[\]]/.test(rest)) throw new Error(`stray mark: ${template}`);
  return found.map(({ groups, ...one }) => ({ ...one, shownWith: [...new Set(groups.flat())].sort() }));
}

/** What is left of a template for the eye: without placeholders and brackets, but with the plural forms. */
export function prose(template: string): string {
  return template
    .replace(/\{[\w-]+#([^{}]*)\}/g, (_, forms: string) =>
      forms
        .split("|")
        .map((one) => one.replace(/^\w+=/, ""))
        .join(" "),
    )
    .replace(/\{[^{}]*\}/g, " ")
    .replace(/[[\]]/g, "");
}
