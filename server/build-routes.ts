/** How does a page get a whole build at once, and its check and its book? */

import type { Refusal } from "@coldset/core/quantity";
import type { BuildStanding } from "@coldset/core/questions";
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
import { keptText } from "./kept-text.js";
import { notFound, refusedBy } from "./problem.js";
import { answeredSchema, refusedSchema } from "./shared-schemas.js";

/** Given from outside, so that whoever starts the server decides where this is reckoned: see reckon/ and decision 0008. */
export interface BuildWork {
  /** The check of a build, as JSON text. */
  readonly check: (docs: readonly AnyDoc[], buildId: string) => string | Promise<string>;
  /** What the board of a build says in short; null where its documents do not make a build. */
  readonly standing: (docs: readonly AnyDoc[], buildId: string) => BuildStanding | null | Promise<BuildStanding | null>;
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
  const lines = buildLines(workshop, reader, work.standing);
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
        c.body(joined(documents), 200, { "Content-Type": "application/json" }),
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
        jsonText(c, await checkText(params.build, documents, () => work.check(docs, params.build))),
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

/** Each document as the bytes of its JSON, made once for its data as it stands: an edit changes one of nine. */
const bytesOf = new WeakMap<object, { readonly revision: number; readonly bytes: Uint8Array }>();

function asBytes(document: DocumentOfBuild): Uint8Array {
  const { plain, revision } = document;
  const known = plain !== null && typeof plain === "object" ? bytesOf.get(plain) : undefined;
  if (known?.revision === revision) return known.bytes;
  const bytes = Buffer.from(JSON.stringify(document));
  if (plain !== null && typeof plain === "object") bytesOf.set(plain, { revision, bytes });
  return bytes;
}

const [OPENED, COMMA, CLOSED] = [Buffer.from("["), Buffer.from(","), Buffer.from("]")];

function joined(documents: readonly DocumentOfBuild[]): Uint8Array<ArrayBuffer> {
  const parts = documents.flatMap((document, i) => (i === 0 ? [asBytes(document)] : [COMMA, asBytes(document)]));
  return new Uint8Array(Buffer.concat([OPENED, ...parts, CLOSED]));
}

const jsonText = (c: Context, text: string) => c.body(text, 200, { "Content-Type": "application/json" });

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
