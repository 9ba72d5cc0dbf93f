import type { BatteryRecord, recordSchema } from "crankworthy/evaluate";
import { expectTypeOf, it } from "vitest";
import type { z } from "zod";

// The public interfaces are written by hand, so that editors stay fast and readable; this holds the schema to them. The
// two may differ in `readonly` and in an explicit `undefined` for a missing key, nothing else. `tsc` does the checking.
type Loose<T> = T extends readonly (infer E)[]
  ? Loose<E>[]
  : T extends object
    ? { -readonly [K in keyof T]: Loose<T[K]> | (undefined extends T[K] ? undefined : never) }
    : T;

type FromSchema = Loose<z.output<typeof recordSchema>>;
type FromInterface = Loose<BatteryRecord>;

it("schema and record interface describe the same values", () => {
  expectTypeOf<FromInterface>().toExtend<Loose<z.input<typeof recordSchema>>>();
  // Optional keys of a schema allow `undefined`; the interface forbids it, so compare with every key made loose.
  type Undefinedable<T> = T extends readonly (infer E)[]
    ? Undefinedable<E>[]
    : T extends object
      ? { [K in keyof T]: Undefinedable<T[K]> | undefined }
      : T;
  expectTypeOf<Undefinedable<FromSchema>>().toExtend<Undefinedable<FromInterface>>();
});
