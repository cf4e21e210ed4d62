export * from "./sketch-of-build.js";
