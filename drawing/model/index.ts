export * from "./drawing.js";
export * from "./dust-dots.js";
export * from "./hatch-lines.js";
export * from "./number-words.js";
export * from "./path.js";
export * from "./roles.js";
export * from "./wrapped.js";
