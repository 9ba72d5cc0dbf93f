/**
 * Arabic: `arabic` holds all catalogues.
 *
 * @module
 */
import type { LanguagePack } from "../pack.js";
import { guidance } from "./guidance.data.js";
import { messages } from "./messages.data.js";
import { pictures } from "./pictures.data.js";

/**
 * The Arabic language pack.
 *
 * @example
 * ```ts
 * import { evaluate } from "crankworthy";
 * import { arabic } from "crankworthy/languages/ar";
 * import { renderTicket } from "crankworthy/report";
 * const evaluation = evaluate({
 *   identity: { chemistry: "agm", rating: { standard: "en-50342-1:2015", amperes: 760 } },
 *   measurements: { restVolts: 12.8 },
 * });
 * renderTicket(evaluation, { messages: arabic.messages }).split("\n")[0]; // => "فحص البطارية"
 * ```
 */
export const arabic: LanguagePack = { language: "ar", messages, guidance, pictures };
