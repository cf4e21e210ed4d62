export * from "./answer.js";
export * from "./verdict.js";
