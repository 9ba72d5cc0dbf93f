/** J = Q·R, with what the steps need of it. @internal */
export interface Triangle {
  /** R, row by row, n × n. */
  readonly r: Float64Array;
  /** First n elements of Qᵀ·residual. */
  readonly head: Float64Array;
  /** Euclidean length of each column of J. */
  readonly lengths: Float64Array;
}

function squares(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i]! * values[i]!;
  return sum;
}

/** Householder reflections of `a` (columns of length m one after the other) and `b`, both changed in place. */
function reflect(a: Float64Array, b: Float64Array, m: number, n: number): void {
  for (let k = 0; k < n; k++) {
    const from = k * m;
    let norm = Math.sqrt(squares(a, from + k, from + m));
    if (norm === 0) continue;
    if (a[from + k]! > 0) norm = -norm;
    // v = x − norm·e, kept where x was; v·x = norm·(norm − x₀).
    const first = a[from + k]! - norm;
    a[from + k] = first;
    const divisor = norm * first;
    for (let j = k + 1; j <= n; j++) {
      const target = j < n ? a : b;
      const at = j < n ? j * m : 0;
      let sum = 0;
      for (let i = k; i < m; i++) sum += a[from + i]! * target[at + i]!;
      sum /= divisor;
      for (let i = k; i < m; i++) target[at + i] = target[at + i]! + sum * a[from + i]!;
    }
    a[from + k] = norm;
  }
}

/** @internal `columns` is left as it was. */
export function triangulate(columns: Float64Array, residual: Float64Array, m: number, n: number): Triangle {
  const a = columns.slice();
  const b = residual.slice();
  const lengths = new Float64Array(n);
  for (let j = 0; j < n; j++) lengths[j] = Math.sqrt(squares(columns, j * m, (j + 1) * m));
  reflect(a, b, m, n);
  const r = new Float64Array(n * n);
  for (let j = 0; j < n; j++) for (let i = 0; i <= j; i++) r[i * n + j] = a[j * m + i]!;
  return { r, head: b.slice(0, n), lengths };
}

/** The damped step, and the fall of the sum of squares that the linear model foretells. @internal */
export function leastSquaresStep(
  { r, head }: Triangle,
  scale: Float64Array,
  damping: number,
  n: number,
): { readonly step: Float64Array; readonly predicted: number } {
  // R above the diagonal √λ·D: the same least-squares problem as with all m rows, in 2n of them.
  const rows = 2 * n;
  const a = new Float64Array(n * rows);
  const b = new Float64Array(rows);
  b.set(head);
  const root = Math.sqrt(damping);
  for (let j = 0; j < n; j++) {
    for (let i = 0; i <= j; i++) a[j * rows + i] = r[i * n + j]!;
    a[j * rows + n + j] = root * scale[j]!;
  }
  reflect(a, b, rows, n);
  const step = new Float64Array(n);
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i]!;
    for (let j = i + 1; j < n; j++) sum -= a[j * rows + i]! * step[j]!;
    step[i] = sum / a[i * rows + i]!;
  }
  // ‖r‖² − ‖r − Jδ‖² = ‖Rδ‖² + 2λ‖Dδ‖² for the damped minimum.
  let predicted = 0;
  for (let i = 0; i < n; i++) {
    let sum = 0;
    for (let j = i; j < n; j++) sum += r[i * n + j]! * step[j]!;
    predicted += sum * sum + 2 * damping * (scale[i]! * step[i]!) ** 2;
  }
  return { step, predicted };
}

/** Inverse of an upper triangle, row by row; its diagonal must not hold 0. @internal */
export function triangularInverse(r: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    inverse[j * n + j] = 1 / r[j * n + j]!;
    for (let i = j - 1; i >= 0; i--) {
      let sum = 0;
      for (let k = i + 1; k <= j; k++) sum += r[i * n + k]! * inverse[k * n + j]!;
      inverse[i * n + j] = -sum / r[i * n + i]!;
    }
  }
  return inverse;
}
