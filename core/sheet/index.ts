export * from "./sheet.js";
