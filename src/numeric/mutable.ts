/** A type without `readonly`: for building a result field by field where optional fields come and go. */
export type Mutable<T> = { -readonly [K in keyof T]: T[K] };
