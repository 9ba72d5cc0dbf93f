/**
 * Spanish: `spanish` holds all catalogues.
 *
 * @module
 */
import type { LanguagePack } from "../pack.js";
import { guidance } from "./guidance.data.js";
import { messages } from "./messages.data.js";
import { pictures } from "./pictures.data.js";

/**
 * The Spanish language pack.
 *
 * @example
 * ```ts
 * import { evaluate } from "crankworthy";
 * import { spanish } from "crankworthy/languages/es";
 * import { renderTicket } from "crankworthy/report";
 * const evaluation = evaluate({
 *   identity: { chemistry: "agm", rating: { standard: "en-50342-1:2015", amperes: 760 } },
 *   measurements: { restVolts: 12.8 },
 * });
 * renderTicket(evaluation, { messages: spanish.messages }).split("\n")[0]; // => "Revisión de la batería"
 * ```
 */
export const spanish: LanguagePack = { language: "es", messages, guidance, pictures };
