/**
 * French: `french` holds all catalogues.
 *
 * @module
 */
import type { LanguagePack } from "../pack.js";
import { guidance } from "./guidance.data.js";
import { messages } from "./messages.data.js";
import { pictures } from "./pictures.data.js";

/**
 * The French language pack.
 *
 * @example
 * ```ts
 * import { evaluate } from "crankworthy";
 * import { french } from "crankworthy/languages/fr";
 * import { renderTicket } from "crankworthy/report";
 * const evaluation = evaluate({
 *   identity: { chemistry: "agm", rating: { standard: "en-50342-1:2015", amperes: 760 } },
 *   measurements: { restVolts: 12.8 },
 * });
 * renderTicket(evaluation, { messages: french.messages }).split("\n")[0]; // => "Contrôle de la batterie"
 * ```
 */
export const french: LanguagePack = { language: "fr", messages, guidance, pictures };
