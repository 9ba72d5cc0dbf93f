/**
 * crankworthy: from one 12 V starter battery's label, measurements and warranty terms to a reasoned decision.
 * Every name of every room; each room is also a subpath of its own (`crankworthy/ratings`, …) that loads nothing else.
 *
 * @module
 */
export * from "./bench/index.js";
export * from "./charge-state/index.js";
export * from "./date-codes/index.js";
export * from "./evaluate/index.js";
export * from "./fleet/index.js";
export * from "./guidance/index.js";
export * from "./label-codes/index.js";
export * from "./logs/index.js";
export * from "./numeric/index.js";
export * from "./pictures/index.js";
export * from "./ratings/index.js";
export * from "./report/index.js";
export * from "./sources/index.js";
export * from "./streams/index.js";
export * from "./temperature/index.js";
export * from "./vehicle/index.js";
export * from "./verdict/index.js";
export * from "./warranty/index.js";
