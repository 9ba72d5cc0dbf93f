import type { PictureWords } from "../pictures/index.js";
import type { GuidanceMessages, Messages } from "../report/index.js";

/**
 * Everything the library says in one language: catalogues of the report, of the guidance and of the pictures.
 *
 * A pack is plain data. Import the one you need; it brings no other language along, not even English.
 *
 * @example
 * ```ts
 * import { german } from "crankworthy/languages/de";
 * german.messages.condition.worn[0]; // => "Geschwächt"
 * ```
 */
export interface LanguagePack {
  /** BCP 47 tag, the folder's name; the catalogues' own tag may say more, such as a region. */
  readonly language: string;
  readonly messages: Messages;
  readonly guidance: GuidanceMessages;
  readonly pictures: PictureWords;
}
