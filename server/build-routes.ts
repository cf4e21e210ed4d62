/** How does a page get a whole build at once, and its check and its book? */

import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import type { AnyDoc } from "@coldset/core/workshop";
import { DOC_KINDS } from "@coldset/core/workshop";
import type { Workshop } from "@coldset/store";
import type { Context } from "hono";
import { z } from "zod";
import { buildLineSchema, buildLines } from "./build-lines.js";
import type { DescribedApi } from "./described-api.js";
import { buildParams, plainSchema } from "./document-schemas.js";
import type { BuildDocuments, DocumentOfBuild, DocumentReader } from "./documents-of-build.js";
import { notFound, refusedBy } from "./problem.js";
import { answeredSchema, refusedSchema } from "./shared-schemas.js";

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

const documentOfBuild = z.object({
  kind: z.enum(DOC_KINDS),
  id: z.string(),
  revision: z.int().min(1),
  plain: plainSchema,
});
/** The same object as of `coldset check --json`. */
const checkAnswer = z
  .union([answeredSchema(z.looseObject({ build: z.unknown(), board: z.array(z.unknown()) })), refusedSchema])
  .meta({ id: "CheckAnswer" });

export function buildRoutes(api: DescribedApi, workshop: Workshop, reader: DocumentReader, work: BuildWork): void {
  const lines = buildLines(workshop, reader);
  const documentsText = keptText();
  const checkText = keptText();
  api.route(
    {
      method: "get",
      path: "/api/builds",
      summary: "Lists the builds with their titles, and where each stands.",
      answers: { 200: { means: "In order of id.", json: z.array(buildLineSchema) } },
    },
    async (c) => c.json(await lines()),
  );

  api.route(
    {
      method: "get",
      path: "/api/workshop/{build}",
      summary: "Gives a build and all documents that it names, in one answer.",
      params: buildParams,
      answers: { 200: { means: "The build first.", json: z.array(documentOfBuild) } },
      refuses: [422],
    },
    (c, { params }) =>
      withBuild(c, reader, params.build, async ({ documents }) =>
        jsonText(
          c,
          documentsText(params.build, documents, () => documents),
        ),
      ),
  );

  api.route(
    {
      method: "get",
      path: "/api/check/{build}",
      summary: "Answers the board, the joints, the rules and the ledger of a build.",
      params: buildParams,
      answers: { 200: { means: "The answers, or why the build cannot be reckoned.", json: checkAnswer } },
      refuses: [422],
    },
    (c, { params }) =>
      withBuild(c, reader, params.build, async ({ documents, docs }) =>
        jsonText(
          c,
          checkText(params.build, documents, () => work.check(docs, params.build)),
        ),
      ),
  );

  api.route(
    {
      method: "get",
      path: "/api/book/{file}",
      summary: "Gives the printed book of a build.",
      params: z.object({
        file: z
          .string()
          .max(104)
          .regex(/^.+\.pdf$/)
          .meta({ description: say("server.build-routes.the-build-s-id-and-pdf") }),
      }),
      answers: { 200: { means: "The book.", type: "application/pdf" } },
      refuses: [422],
    },
    (c, { params }) => {
      const buildId = params.file.slice(0, -".pdf".length);
      return withBuild(c, reader, buildId, async ({ docs }) => {
        const pdf = await work.book(docs, buildId);
        if ("kind" in pdf) return refusedBy(c, pdf.refusals);
        c.header("Content-Type", "application/pdf");
        c.header("Content-Disposition", `inline; filename="${buildId}.pdf"`);
        return c.body(new Uint8Array(pdf));
      });
    },
  );
}

const jsonText = (c: Context, text: string) => c.body(text, 200, { "Content-Type": "application/json" });

/** So many builds are remembered; one that was not asked for the longest time goes first. */
const MOST_KEPT = 64;

/** The answer about a build is made once for each state of its documents; between edits many ask for the same one. */
function keptText() {
  const kept = new Map<string, { readonly state: string; readonly text: string }>();
  return (buildId: string, documents: readonly DocumentOfBuild[], make: () => unknown): string => {
    const state = documents.map((d) => `${d.kind} ${d.id} ${d.revision}`).join("\n");
    const hit = kept.get(buildId);
    const text = hit?.state === state ? hit.text : JSON.stringify(make());
    kept.delete(buildId);
    kept.set(buildId, { state, text });
    const [oldest] = kept.keys();
    if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
    return text;
  };
}

async function withBuild(
  c: Context,
  reader: DocumentReader,
  buildId: string,
  answer: (found: Extract<BuildDocuments, { readonly kind: "found" }>) => Promise<Response>,
): Promise<Response> {
  const found = await reader.ofBuild(buildId);
  if (found.kind === "no-build")
    return notFound(
      c,
      say("server.build-routes.build", { buildId }).slice(0, 100),
      say("store.write-archive.a-build-of-this-workshop"),
    );
  return found.kind === "refused" ? refusedBy(c, found.refusals) : answer(found);
}
