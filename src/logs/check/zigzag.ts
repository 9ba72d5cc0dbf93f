/** @internal Counts how often a value turns round by at least an amplitude; drift and noise below it count nothing. */
export interface Zigzag {
  start(value: number): void;
  add(value: number, amplitude: number): void;
  readonly turns: () => number;
  readonly span: () => number;
}

/** @internal */
export function createZigzag(): Zigzag {
  let [low, high, lowest, highest, direction, turns] = [Infinity, -Infinity, Infinity, -Infinity, 0, 0];
  function start(value: number): void {
    [low, high, lowest, highest, direction, turns] = [Infinity, -Infinity, Infinity, -Infinity, 0, 0];
    if (!Number.isNaN(value)) low = high = lowest = highest = value;
  }
  return {
    start,
    add(value, amplitude) {
      if (value < low) low = value;
      if (value > high) high = value;
      if (value < lowest) lowest = value;
      if (value > highest) highest = value;
      if (direction >= 0 && value <= high - amplitude) {
        if (direction > 0) turns++;
        direction = -1;
        low = value;
      } else if (direction <= 0 && value >= low + amplitude) {
        if (direction < 0) turns++;
        direction = 1;
        high = value;
      }
    },
    turns: () => turns,
    span: () => (highest > lowest ? highest - lowest : 0),
  };
}
