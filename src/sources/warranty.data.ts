import type { Source } from "./source.js";

/** Bibliography of the room `warranty`. */
export const warrantySources = {} as const satisfies Record<string, Source>;
