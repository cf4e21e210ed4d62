export * from "./all-texts.js";
export * from "./say.js";
