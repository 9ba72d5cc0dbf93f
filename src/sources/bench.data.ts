import type { Source } from "./source.js";

/** Bibliography of the room `bench`. */
export const benchSources = {} as const satisfies Record<string, Source>;
