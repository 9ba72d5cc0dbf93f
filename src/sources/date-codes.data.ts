import type { Source } from "./source.js";

/** Bibliography of the room `date-codes`. */
export const dateCodesSources = {} as const satisfies Record<string, Source>;
