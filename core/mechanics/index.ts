export * from "./brake-end-sheets.js";
export * from "./front-retention.js";
export * from "./load-share.js";
export * from "./rotor-plane.js";
