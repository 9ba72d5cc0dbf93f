/**
 * crankworthy: from one 12 V starter battery's label, measurements and warranty terms to a reasoned decision.
 *
 * @module
 */
export * from "./evaluate/index.js";
export * from "./numeric/index.js";
