export * from "./reckon-here.js";
