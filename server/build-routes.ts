/** How does a page get a whole build at once, and its check and its book? */
import type { Refusal } from "@coldset/core/quantity";
import type { AnyDoc } from "@coldset/core/workshop";
import type { Workshop } from "@coldset/store";
import type { Context, Hono } from "hono";
import type { BuildDocuments, DocumentReader } from "./documents-of-build.js";
import { methodNotAllowed, notFound, refusedBy } from "./problem.js";

/** Given from outside, so that the server depends on no unfinished room. */
export interface BuildWork {
  /** The check of a build, as plain JSON. */
  readonly check: (docs: readonly AnyDoc[], buildId: string) => unknown;
  /** The printed book as a PDF, or why it is not made. */
  readonly book: (
    docs: readonly AnyDoc[],
    buildId: string,
  ) => Promise<Uint8Array | { readonly kind: "refused"; readonly refusals: readonly Refusal[] }>;
}

export function buildRoutes(app: Hono, workshop: Workshop, reader: DocumentReader, work: BuildWork): void {
  app.get("/api/builds", async (c) => {
    const builds = (await workshop.allDocuments()).filter((d) => d.kind === "build");
    return c.json(
      builds.map((stored) => {
        const parsed = reader.parse(stored);
        const doc = parsed.kind === "loaded" ? parsed.loaded.doc : undefined;
        const title = doc?.kind === "build" ? doc.title : null;
        return { id: stored.id, title, revision: stored.revision, updatedAt: stored.updatedAt };
      }),
    );
  });
  app.all("/api/builds", (c) => methodNotAllowed(c, "GET"));

  app.get("/api/workshop/:build", (c) =>
    withBuild(c, reader, c.req.param("build"), async ({ documents }) => c.json(documents)),
  );
  app.all("/api/workshop/:build", (c) => methodNotAllowed(c, "GET"));

  app.get("/api/check/:build", (c) =>
    withBuild(c, reader, c.req.param("build"), async ({ docs }) => c.json(work.check(docs, c.req.param("build")))),
  );
  app.all("/api/check/:build", (c) => methodNotAllowed(c, "GET"));

  app.get("/api/book/:file{.+\\.pdf}", (c) => {
    const buildId = c.req.param("file").slice(0, -".pdf".length);
    return withBuild(c, reader, buildId, async ({ docs }) => {
      const pdf = await work.book(docs, buildId);
      if ("kind" in pdf) return refusedBy(c, pdf.refusals);
      c.header("Content-Type", "application/pdf");
      c.header("Content-Disposition", `inline; filename="${buildId}.pdf"`);
      return c.body(new Uint8Array(pdf));
    });
  });
  app.all("/api/book/:file{.+\\.pdf}", (c) => methodNotAllowed(c, "GET"));
}

async function withBuild(
  c: Context,
  reader: DocumentReader,
  buildId: string,
  answer: (found: Extract<BuildDocuments, { readonly kind: "found" }>) => Promise<Response>,
): Promise<Response> {
  const found = await reader.ofBuild(buildId);
  if (found.kind === "no-build") return notFound(c, `build ${buildId}`.slice(0, 100), "a build of this workshop");
  return found.kind === "refused" ? refusedBy(c, found.refusals) : answer(found);
}
