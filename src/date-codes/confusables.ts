// Look-alikes on a hot-stamped or scratched label. Only these four pairs; they are reported, never exchanged.
const PAIRS = "O0I1S5Z2";

/** The character that is easily taken for this one, or undefined. */
export function lookAlike(character: string): string | undefined {
  const index = PAIRS.indexOf(character);
  return index < 0 ? undefined : PAIRS[index ^ 1];
}
