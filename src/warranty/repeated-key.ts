// A whole string, or one mark of structure; numbers and words lie between the matches.
const TOKENS = /"[^"\\]*(?:\\.[^"\\]*)*"|[{}[\],:]/g;

interface Level {
  /** Keys so far; undefined in a list. */
  readonly keys: Set<string> | undefined;
  /** Where this level is being read: the key, or the index. */
  at: string | number;
}

/**
 * Path of the first key that an object of the text has twice, escapes decoded. `JSON.parse` keeps the last one silently,
 * other readers and people the first, so such a text has no one meaning (RFC 8259, section 4; RFC 8785 rules it out).
 * One pass over the tokens; the text must be one that `JSON.parse` accepts, so nothing is checked twice.
 */
export function repeatedKey(text: string): string | undefined {
  const levels: Level[] = [];
  let last = "";
  for (const [token] of text.matchAll(TOKENS)) {
    const level = levels.at(-1);
    if (token === "{") levels.push({ keys: new Set(), at: "" });
    else if (token === "[") levels.push({ keys: undefined, at: 0 });
    else if (token === "}" || token === "]") levels.pop();
    else if (token === "," && level && typeof level.at === "number") level.at++;
    else if (token === ":" && level?.keys) {
      level.at = JSON.parse(last) as string;
      if (level.keys.has(level.at)) return levels.map(({ at }) => at).join(".");
      level.keys.add(level.at);
    }
    last = token;
  }
  return undefined;
}
