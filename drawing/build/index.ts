export * from "./book-of-build.js";
