export * from "./numeric/index.js";
