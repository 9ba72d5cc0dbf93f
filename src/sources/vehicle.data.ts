import type { Source } from "./source.js";

/** Bibliography of the room `vehicle`. */
export const vehicleSources = {} as const satisfies Record<string, Source>;
