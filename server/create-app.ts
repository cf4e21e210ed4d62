/**
 * What does the server of a workshop answer? The routes under /api, and the built page for everything else. It reads,
 * calls one thing of the core or the store, and shows what that says.
 */

import type { AnySheet } from "@coldset/core/sheet";
import { say } from "@coldset/core/texts";
import type { Workshop } from "@coldset/store";
import { Hono } from "hono";
import { archiveRoutes } from "./archive-routes.js";
import { type BuildWork, buildRoutes } from "./build-routes.js";
import { describedApi } from "./described-api.js";
import { documentRoutes } from "./document-routes.js";
import { documentReader } from "./documents-of-build.js";
import { eventRoutes } from "./event-routes.js";
import { onFailure } from "./failure.js";
import { guardRequest } from "./guard-request.js";
import { historyRoutes } from "./history-routes.js";
import { limitConnections } from "./http-server.js";
import { limitAtOnce, limitLength, limitTime } from "./limit-request.js";
import { LIMITS, type Limits } from "./limits.js";
import { newBuildRoutes } from "./new-build-routes.js";
import { ofThisWorkshop } from "./of-this-workshop.js";
import { photoRoutes } from "./photo-routes.js";
import { notFound } from "./problem.js";
import { securityHeaders } from "./security-headers.js";
import { selfRoutes } from "./self-routes.js";
import { sheetRoutes } from "./sheet-routes.js";
import { staticFiles } from "./static-files.js";
import { takeTurns } from "./take-turns.js";

export interface AppOptions extends BuildWork {
  readonly workshop: Workshop;
  /** Folder of the built page. */
  readonly webRoot: string;
  readonly sheets: ReadonlyMap<string, AnySheet>;
  /** Takes one line for each failure of the program; left out: standard error. */
  readonly log?: (line: string) => void;
  /** Left out: those of limits.ts. */
  readonly limits?: Limits;
  /** Aborted when the server closes: streams that would go on end. */
  readonly closing?: AbortSignal;
}

/** @param port the port that the server listens on, known once it listens */
export function createApp(options: AppOptions, port: () => number): Hono {
  const app = new Hono();
  const reader = documentReader(options.workshop);
  app.onError(onFailure(options.log ?? ((line) => process.stderr.write(`${line}\n`))));
  const limits = options.limits ?? LIMITS;
  app.use(securityHeaders, limitConnections(limits), limitLength(limits), guardRequest(port));
  app.use(limitAtOnce(limits), limitTime(limits), takeTurns());
  app.use("/api/*", ofThisWorkshop(options.workshop.name));

  // Every route comes in through here, with its description; see README.md.
  const api = describedApi(app);
  selfRoutes(api, options.workshop);
  documentRoutes(api, options.workshop, reader);
  buildRoutes(api, options.workshop, reader, options);
  newBuildRoutes(api, options.workshop);
  sheetRoutes(api, options.sheets);
  historyRoutes(api, options.workshop);
  photoRoutes(api, options.workshop);
  archiveRoutes(api, options.workshop);
  eventRoutes(api, options.workshop, limits.streams, options.closing);
  api.finish();

  const noRoute = say("server.create-app.a-route-of-this-server");
  app.all("/api", (c) => notFound(c, c.req.path, noRoute));
  app.all("/api/*", (c) => notFound(c, c.req.path.slice(0, 100), noRoute));
  app.all("*", staticFiles(options.webRoot));
  return app;
}
