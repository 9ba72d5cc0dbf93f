import type { Source } from "./source.js";

/** Bibliography of the room `verdict`. */
export const verdictSources = {} as const satisfies Record<string, Source>;
