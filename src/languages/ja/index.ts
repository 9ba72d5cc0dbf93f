/**
 * Japanese: `japanese` holds all catalogues.
 *
 * @module
 */
import type { LanguagePack } from "../pack.js";
import { guidance } from "./guidance.data.js";
import { messages } from "./messages.data.js";
import { pictures } from "./pictures.data.js";

/**
 * The Japanese language pack.
 *
 * @example
 * ```ts
 * import { evaluate } from "crankworthy";
 * import { japanese } from "crankworthy/languages/ja";
 * import { renderTicket } from "crankworthy/report";
 * const evaluation = evaluate({
 *   identity: { chemistry: "agm", rating: { standard: "en-50342-1:2015", amperes: 760 } },
 *   measurements: { restVolts: 12.8 },
 * });
 * renderTicket(evaluation, { messages: japanese.messages }).split("\n")[0]; // => "バッテリー点検"
 * ```
 */
export const japanese: LanguagePack = { language: "ja", messages, guidance, pictures };
