export * from "./dimensions-of-after.js";
export * from "./dust-of-after.js";
export * from "./dust-of-donor.js";
export * from "./sketch-of-build.js";
