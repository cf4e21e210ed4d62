/** How is a new build made from a few entries? All its documents at once, or none; a name that is taken is refused. */
import { say } from "@coldset/core/texts";
import { LENT_KINDS, NEW_BUILD_KEYS, newBuild } from "@coldset/core/workshop";
import type { Workshop } from "@coldset/store";
import { z } from "zod";
import type { DescribedApi } from "./described-api.js";
import { putSchema } from "./document-schemas.js";
import { refusedBy } from "./problem.js";

const ENTRY_LIMIT = 400;
const entry = z.string().max(ENTRY_LIMIT);
const id = z.string().min(1).max(100);

const newBuildBody = z
  .strictObject({
    entries: z.partialRecord(z.enum(NEW_BUILD_KEYS as [string, ...string[]]), entry).meta({
      description: say("server.new-build-routes.each-as-a-person-writes-it"),
    }),
    lent: z
      .strictObject(Object.fromEntries(LENT_KINDS.map((kind) => [kind, id.optional()])))
      .optional()
      .meta({ description: say("server.new-build-routes.rider-shop-bin-or-prices-of") }),
  })
  .meta({ description: say("server.new-build-routes.a-new-build-entries-name-old") });

export function newBuildRoutes(api: DescribedApi, workshop: Workshop): void {
  // One at a time: the second of two with one name must see the first.
  let before: Promise<unknown> = Promise.resolve();
  api.route(
    {
      method: "post",
      path: "/api/builds",
      summary: "Makes a new build with all documents that it needs, from a few entries.",
      body: { json: newBuildBody },
      answers: {
        201: {
          means: "The build and its documents, all new.",
          json: z.object({ kind: z.literal("made"), id: z.string(), documents: putSchema.shape.documents }),
        },
      },
      refuses: [422, 503],
    },
    async (c, { body }) => {
      const make = async () => {
        const made = newBuild({
          entries: body.entries as Readonly<Record<string, string>>,
          ...(body.lent === undefined ? {} : { lent: body.lent }),
          taken: await workshop.listDocuments(),
        });
        if (made.kind === "refused") return refusedBy(c, made.refusals);
        const put = await workshop.putText(made.text, `${made.id}.yaml`);
        return put.kind === "refused"
          ? refusedBy(c, put.refusals)
          : c.json({ kind: "made", id: made.id, documents: put.documents }, 201);
      };
      const mine = before.then(make, make);
      before = mine.catch(() => undefined);
      return mine;
    },
  );
}
