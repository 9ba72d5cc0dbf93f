/**
 * German: `german` holds all catalogues.
 *
 * @module
 */
import type { LanguagePack } from "../pack.js";
import { guidance } from "./guidance.data.js";
import { messages } from "./messages.data.js";
import { pictures } from "./pictures.data.js";

/**
 * The German language pack.
 *
 * @example
 * ```ts
 * import { evaluate } from "crankworthy";
 * import { german } from "crankworthy/languages/de";
 * import { renderTicket } from "crankworthy/report";
 * const evaluation = evaluate({
 *   identity: { chemistry: "agm", rating: { standard: "en-50342-1:2015", amperes: 760 } },
 *   measurements: { restVolts: 12.8 },
 * });
 * renderTicket(evaluation, { messages: german.messages }).split("\n")[0]; // => "Batterieprüfung"
 * ```
 */
export const german: LanguagePack = { language: "de", messages, guidance, pictures };
