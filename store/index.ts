export * from "./data-folder.js";
export * from "./open-workshop.js";
export * from "./workshop.js";
