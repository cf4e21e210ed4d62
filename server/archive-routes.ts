/** How is everything taken out as one archive, and how is one looked at and taken in, over HTTP? */

import { Readable } from "node:stream";
import { say } from "@coldset/core/texts";
import type { ImportChoice, ImportChoices, ImportSource, Workshop } from "@coldset/store";
import type { Context } from "hono";
import { z } from "zod";
import type { DescribedApi } from "./described-api.js";
import { problem, refusedBy } from "./problem.js";

/** What a page sends at once; larger archives go through the command line. */
const ARCHIVE_BODY_BYTES = 300_000_000;
// Not text/plain: that is one of the three types that a foreign page may send without asking first.
const TEXT_TYPES = ["text/yaml", "application/yaml"] as const;
const ARCHIVE_TYPES = ["application/zip", "application/octet-stream", ...TEXT_TYPES] as const;

const choiceWord = z.enum(["keep-mine", "take-theirs", "as-new"]);
const takeOutQuery = z
  .strictObject({
    build: z
      .string()
      .regex(/^[A-Za-z0-9][A-Za-z0-9_-]{0,39}$/)
      .optional(),
  })
  .meta({ description: say("server.archive-routes.build-the-id-of-a-build") });
const bringInQuery = z
  .strictObject({
    label: z
      .string()
      .min(1)
      .max(300)
      .meta({ description: say("server.archive-routes.name-of-the-file") }),
    take: z
      .enum(["yes", "no"])
      .optional()
      .meta({ description: say("server.archive-routes.yes-takes-it-in-left-out") }),
    choice: choiceWord.optional().meta({ description: say("server.archive-routes.for-documents-that-are-here-and") }),
    choose: z
      .string()
      .max(4000)
      .regex(/^[a-z_]+\/[A-Za-z0-9_-]+=[a-z-]+(,[a-z_]+\/[A-Za-z0-9_-]+=[a-z-]+)*$/)
      .optional()
      .meta({ description: say("server.archive-routes.for-single-documents-donor-q1-keep") }),
    suffix: z
      .string()
      .regex(/^[A-Za-z0-9_-]{1,20}$/)
      .optional()
      .meta({ description: say("server.archive-routes.put-behind-the-id-of-what") }),
  })
  .meta({ description: say("server.archive-routes.label-take-choice-choose-and-suffix") });

const name = { kind: z.string(), id: z.string() };
const planSchema = z
  .object({
    kind: z.literal("plan"),
    label: z.string(),
    documents: z.array(
      z.object({
        ...name,
        change: z.enum(["new", "same", "differs"]),
        difference: z.unknown(),
        histories: z.enum(["theirs-goes-on", "mine-goes-on", "apart", "only-text"]),
        choice: choiceWord.nullable(),
        newId: z.string(),
      }),
    ),
    photos: z.object({ fresh: z.int(), there: z.int() }),
    versions: z.object({ fresh: z.int(), there: z.int(), left: z.array(z.string()) }),
    undecided: z.array(z.object(name)),
    refusals: z.array(z.unknown()),
  })
  .meta({ id: "ImportPlan" });

export function archiveRoutes(api: DescribedApi, workshop: Workshop): void {
  api.route(
    {
      method: "get",
      path: "/api/archive",
      summary:
        "Gives everything, or one build with what it names, as one zip of plain documents, histories and photos.",
      query: takeOutQuery,
      answers: { 200: { means: "The archive.", type: "application/zip" } },
      refuses: [404, 422],
    },
    async (c, { query }) => {
      const made = await workshop.archive.make(query.build);
      if (made.kind === "refused") return refusedBy(c, made.refusals);
      c.header("Content-Type", "application/zip");
      c.header("Content-Disposition", `attachment; filename="${query.build ?? "workshop"}.zip"`);
      return c.body(Readable.toWeb(made.stream) as ReadableStream<Uint8Array<ArrayBuffer>>);
    },
  );

  api.route(
    {
      method: "post",
      path: "/api/archive",
      summary: "Looks at an archive or a document, or takes it in: all of it, or nothing.",
      query: bringInQuery,
      body: { file: ARCHIVE_TYPES, limitBytes: ARCHIVE_BODY_BYTES },
      answers: {
        200: {
          means: "What would come in, or what came in.",
          json: z.union([planSchema, z.object({ kind: z.literal("imported"), plan: planSchema })]),
        },
      },
      refuses: [422],
    },
    async (c, { query, body }) => {
      const source = sourceOf(c, query.label, body);
      if (source instanceof Response) return source;
      const choices = choicesOf(query);
      const answer =
        query.take === "yes"
          ? await workshop.archive.take(source, choices)
          : await workshop.archive.preview(source, choices);
      return answer.kind === "refused" ? refusedBy(c, answer.refusals) : c.json(answer);
    },
  );
}

/** An archive begins with "PK"; anything else has to be the text of documents. */
function sourceOf(c: Context, label: string, body: Uint8Array<ArrayBuffer>): ImportSource | Response {
  if (body[0] === 0x50 && body[1] === 0x4b) return { archive: { bytes: body }, label };
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(body), label };
  } catch (cause) {
    if (!(cause instanceof TypeError)) throw cause;
    const allowed = say("server.archive-routes.an-archive-that-coldset-made-or");
    const message = say("server.archive-routes.is-neither-an-archive-nor-a", { label });
    return problem(c, 422, {
      code: "not-text",
      at: label,
      given: say("server.archive-routes.other-bytes"),
      allowed,
      message,
    });
  }
}

function choicesOf(query: z.output<typeof bringInQuery>): ImportChoices {
  const byDocument: Record<string, ImportChoice> = {};
  for (const words of query.choose?.split(",") ?? []) {
    const [document = "", given] = words.split("=");
    const choice = choiceWord.safeParse(given);
    if (choice.success) byDocument[document.replace("/", " ")] = choice.data;
  }
  return { forAll: query.choice, byDocument, suffix: query.suffix ?? "-in" };
}
