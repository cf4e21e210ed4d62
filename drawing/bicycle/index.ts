export * from "./before-after.js";
export * from "./bicycle-sketch.js";
export * from "./cloud-and-wall.js";
export * from "./front-retention-arrows.js";
export * from "./gap-bars.js";
export * from "./plan-strip.js";
export * from "./residual-bars.js";
export * from "./sketch-dimensions.js";
