export * from "./content.js";
export * from "./make-book.js";
