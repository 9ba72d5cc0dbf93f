/** The known key that a mistyped one most likely meant, or nothing when none is near. */
export function nearestKey(key: string, known: readonly string[]): string | undefined {
  if (key.length > 60) return undefined;
  let best: string | undefined;
  let bestDistance = Math.max(2, Math.floor(key.length / 3)) + 1;
  for (const candidate of known) {
    const distance = editDistance(key.toLowerCase(), candidate.toLowerCase());
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best ?? known.find((candidate) => sharesWord(key, candidate));
}

// `voltage` should find `restVolts`: compare the first four letters of each camel-case word.
function sharesWord(key: string, candidate: string): boolean {
  const words = (text: string) => text.split(/(?=[A-Z])|_|-/).map((word) => word.slice(0, 4).toLowerCase());
  const wanted = words(key).filter((word) => word.length === 4);
  return words(candidate).some((word) => wanted.includes(word));
}

// Levenshtein with two rows.
function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++)
      current.push(
        Math.min(previous[j]! + 1, current[j - 1]! + 1, previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)),
      );
    previous = current;
  }
  return previous[b.length]!;
}
