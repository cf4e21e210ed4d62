export * from "./book-of-build.js";
export * from "./sketch-of-build.js";
