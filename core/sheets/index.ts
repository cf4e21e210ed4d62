export * from "./all-sheets.js";
export * from "./read-sheet-input.js";
