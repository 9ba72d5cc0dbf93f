/** @internal 10⁰ to 10²²: the powers of ten that a double holds exactly. */
export const POWERS_OF_TEN: Readonly<Float64Array> = Float64Array.from({ length: 23 }, (_, exponent) =>
  Number(`1e${exponent}`),
);

const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

/** @internal A decimal number, or NaN for any other text: no `Infinity`, no hexadecimal, no blanks, no empty text. */
export function decimal(text: string, point: number): number {
  let plain = text;
  if (point !== 46) {
    // With a decimal comma a full stop is no decimal point: 1.234,5 is not guessed at.
    if (text.includes(".")) return Number.NaN;
    plain = text.replace(String.fromCharCode(point), ".");
  }
  if (!PLAIN.test(plain)) return Number.NaN;
  const value = Number(plain);
  return Number.isFinite(value) ? value : Number.NaN;
}
