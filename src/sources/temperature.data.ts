import type { Source } from "./source.js";

/** Bibliography of the room `temperature`. */
export const temperatureSources = {} as const satisfies Record<string, Source>;
