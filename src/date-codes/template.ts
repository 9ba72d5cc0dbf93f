import { wrongArgument } from "../numeric/index.js";
import type { DateScheme, DateSchemeId } from "./scheme.js";
import { everyScheme } from "./schemes/index.js";

/**
 * A scheme inside a longer marking. Template characters: `#` stands for a character of the date code, `?` for one
 * character that is the plant's own and is ignored, anything else for itself. Which characters are the plant's is known
 * to the caller only, so nothing is ever skipped without a template.
 */
export interface TemplatedScheme {
  readonly scheme: DateSchemeId;
  readonly template: string;
}

/** A scheme by name, alone or inside a template. */
export type SchemeChoice = DateSchemeId | TemplatedScheme;

/** A scheme looked up and its template checked. */
export interface Reader {
  readonly scheme: DateScheme;
  readonly template: string | undefined;
}

const everyReader: readonly Reader[] = /* @__PURE__ */ everyScheme.map((scheme) => ({
  scheme,
  template: undefined,
}));

/** The readers for the caller's choice; every scheme when there is none. */
export function readersOf(choices: readonly SchemeChoice[] | undefined): readonly Reader[] {
  if (choices === undefined) return everyReader;
  if (choices.length === 0) wrongArgument("schemes", "none", "at least one");
  return choices.map((choice) => {
    if (typeof choice === "string") return { scheme: schemeNamed(choice), template: undefined };
    const template = choice.template.toUpperCase();
    if (!template.includes("#")) wrongArgument("template", choice.template, "at least one #");
    return { scheme: schemeNamed(choice.scheme), template };
  });
}

/** The scheme of this name, or a RangeError. */
export function schemeNamed(id: DateSchemeId): DateScheme {
  const scheme = everyScheme.find((one) => one.id === id);
  if (!scheme) wrongArgument("scheme", id, "a scheme name");
  return scheme;
}
