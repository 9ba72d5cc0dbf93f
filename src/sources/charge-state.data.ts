import type { Source } from "./source.js";

/** Bibliography of the room `charge-state`. */
export const chargeStateSources = {} as const satisfies Record<string, Source>;
