export * from "./dust-of-donor.js";
export * from "./sketch-of-build.js";
