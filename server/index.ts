export type { BuildWork } from "./build-routes.js";
export * from "./create-app.js";
export type { DocumentOfBuild } from "./documents-of-build.js";
export * from "./reckon/index.js";
export * from "./start-server.js";
