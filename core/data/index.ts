export * from "./source-row.js";
