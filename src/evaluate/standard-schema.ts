import { parseRecord } from "./parse.js";
import type { BatteryRecord } from "./record.js";

/** What a validator of the open Standard Schema, version 1, offers; written out so that no package is needed for its types. */
export interface StandardRecordSchema {
  readonly "~standard": {
    readonly version: 1;
    readonly vendor: "crankworthy";
    readonly validate: (value: unknown) =>
      | { readonly value: BatteryRecord; readonly issues?: undefined }
      | {
          readonly issues: readonly {
            readonly message: string;
            readonly path: readonly (string | number)[];
          }[];
        };
    readonly types?: { readonly input: BatteryRecord; readonly output: BatteryRecord };
  };
}

/**
 * The record's check as a Standard Schema, for form libraries and routers that take one: shape, ranges and units, with the
 * messages of `parseRecord`. What `evaluate` checks beyond that (fields that contradict each other) is not in it.
 *
 * Source: Standard Schema specification, version 1, https://standardschema.dev (from memory; its types are checked in a test).
 * @example
 * ```ts
 * import { standardRecordSchema } from "crankworthy/evaluate";
 * const result = standardRecordSchema["~standard"].validate({ identity: { chemistry: "agm" }, measurements: { restVolts: 12600 } });
 * result.issues[0].path; // => ["measurements", "restVolts"]
 * ```
 */
export const standardRecordSchema: StandardRecordSchema = {
  "~standard": {
    version: 1,
    vendor: "crankworthy",
    validate: (value) => {
      const parsed = parseRecord(value);
      return parsed.ok
        ? { value: parsed.record }
        : { issues: parsed.issues.map(({ message, path }) => ({ message, path: keysOf(path) })) };
    },
  },
};

// `measurements.cellGravities[2]` is a list of keys there.
function keysOf(path: string): (string | number)[] {
  return [...path.matchAll(/[^.[\]]+|\[(\d+)\]/g)].map(([text, index]) =>
    index === undefined ? text : Number(index),
  );
}
