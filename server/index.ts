export * from "./create-app.js";
export type { DocumentOfBuild } from "./documents-of-build.js";
export * from "./start-server.js";
