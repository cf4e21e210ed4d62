export * from "./all-sources.js";
export * from "./source-row.js";
