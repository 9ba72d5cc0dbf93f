import type { Source } from "./source.js";

/** Bibliography of the room `ratings`. */
export const ratingsSources = {} as const satisfies Record<string, Source>;
