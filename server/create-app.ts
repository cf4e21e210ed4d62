/**
 * What does the server of a workshop answer? The routes under /api, and the built page for everything else. It reads,
 * calls one thing of the core or the store, and shows what that says.
 */
import type { AnySheet } from "@coldset/core/sheet";
import type { Workshop } from "@coldset/store";
import { Hono } from "hono";
import { type BuildWork, buildRoutes } from "./build-routes.js";
import { documentRoutes } from "./document-routes.js";
import { documentReader } from "./documents-of-build.js";
import { onFailure } from "./failure.js";
import { guardRequest } from "./guard-request.js";
import { limitBody, requireJson } from "./json-body.js";
import { methodNotAllowed, notFound } from "./problem.js";
import { securityHeaders } from "./security-headers.js";
import { sheetRoutes } from "./sheet-routes.js";
import { staticFiles } from "./static-files.js";

export interface AppOptions extends BuildWork {
  readonly workshop: Workshop;
  /** Folder of the built page. */
  readonly webRoot: string;
  readonly sheets: ReadonlyMap<string, AnySheet>;
  /** Takes one line for each failure of the program; left out: standard error. */
  readonly log?: (line: string) => void;
}

/** @param port the port that the server listens on, known once it listens */
export function createApp(options: AppOptions, port: () => number): Hono {
  const app = new Hono();
  const reader = documentReader(options.workshop);
  app.onError(onFailure(options.log ?? ((line) => process.stderr.write(`${line}\n`))));
  app.use(securityHeaders);
  app.use(guardRequest(port));
  app.on("POST", "/api/*", requireJson, limitBody);

  app.get("/api/health", (c) => c.json({ kind: "well" }));
  app.all("/api/health", (c) => methodNotAllowed(c, "GET"));
  documentRoutes(app, options.workshop, reader);
  buildRoutes(app, options.workshop, reader, options);
  sheetRoutes(app, options.sheets);

  const noRoute = "a route of this server";
  app.all("/api", (c) => notFound(c, c.req.path, noRoute));
  app.all("/api/*", (c) => notFound(c, c.req.path.slice(0, 100), noRoute));
  app.all("*", staticFiles(options.webRoot));
  return app;
}
