/**
 * Which languages there are. The catalogues are in subpaths, `crankworthy/languages/de` and so on, so that whoever imports
 * one gets that one only.
 *
 * @module
 */
export { type LanguageTag, languages } from "./list.js";
export type { LanguagePack } from "./pack.js";
