/** How do the changes of a build, its named versions and what differs between them look in requests and answers? */
import { say } from "@coldset/core/texts";
import { z } from "zod";

const NAME_LIMIT = 200;
const change = z
  .int()
  .min(1)
  .meta({ description: say("server.history-schemas.number-of-a-change-later-ones") });
const seen = z
  .int()
  .min(0)
  .optional()
  .meta({ description: say("server.history-schemas.number-of-the-newest-change-that") });
const revision = z.int().min(1);
const document = { kind: z.string(), id: z.string(), revision };

export const differenceSchema = z
  .object({
    kind: z.enum(["same", "layout", "comments", "values", "new", "gone", "unreadable"]),
    values: z.array(
      z.object({
        kind: z.enum(["changed", "added", "taken-out", "re-ordered"]),
        place: z.string(),
        was: z.string().nullable(),
        now: z.string().nullable(),
      }),
    ),
    more: z
      .int()
      .min(0)
      .meta({ description: say("server.history-schemas.values-that-differ-and-are-not") }),
    commentsOut: z.array(z.string()),
    commentsIn: z.array(z.string()),
  })
  .meta({ id: "Difference", description: say("server.history-schemas.what-differs-between-two-texts-of") });

export const historyQuery = z.object({
  before: z.coerce
    .number()
    .int()
    .min(1)
    .optional()
    .meta({ description: say("server.history-schemas.only-changes-with-a-lower-number") }),
  limit: z.coerce
    .number()
    .int()
    .min(1)
    .max(100)
    .optional()
    .meta({ description: say("server.history-schemas.so-many-at-most-30-if") }),
});

export const historySchema = z.object({
  kind: z.literal("history"),
  build: z.string(),
  newest: z.int().min(0),
  undo: change.nullable().meta({ description: say("server.history-schemas.the-change-that-would-be-taken") }),
  redo: change.nullable().meta({ description: say("server.history-schemas.the-change-that-would-be-put") }),
  changes: z.array(
    z.object({
      change,
      what: z.enum(["edit", "put", "import", "undo", "redo", "restore"]),
      words: z.string().nullable(),
      who: z.string().nullable(),
      at: z.iso.datetime(),
      of: change.nullable().meta({ description: say("server.history-schemas.undo-and-redo-the-change-that") }),
      state: z.enum(["stands", "taken-back"]),
      canTakeBack: z.boolean(),
      documents: z.array(
        z.object({
          ...document,
          path: z.array(z.union([z.string(), z.number()])).nullable(),
          difference: differenceSchema,
        }),
      ),
    }),
  ),
  older: change.nullable().meta({ description: say("server.history-schemas.ask-with-before-this-for-older") }),
});

const written = z.array(z.object({ ...document, difference: differenceSchema }));
export const movedOnSchema = z.object({ kind: z.literal("moved-on"), newest: z.int().min(0) });

const turnId = z
  .string()
  .regex(/^[A-Za-z0-9_-]{8,64}$/)
  .optional()
  .meta({ description: say("server.history-schemas.given-it-is-done-once-however") });
export const undoBody = z
  .strictObject({ change: change.optional(), seen, turnId })
  .meta({ description: say("server.history-schemas.an-undo-for-the-newest-change") });
export const redoBody = z
  .strictObject({ seen, turnId })
  .meta({ description: say("server.history-schemas.a-redo-seen-may-be-given") });
export const turnedSchema = z.object({
  kind: z.literal("turned"),
  what: z.enum(["undo", "redo"]),
  change,
  of: change,
  documents: written,
  repeated: z
    .literal(true)
    .optional()
    .meta({ description: say("server.history-schemas.it-had-arrived-before-this-is") }),
});

const version = z
  .object({
    name: z.string(),
    at: z.iso.datetime(),
    who: z.string().nullable(),
    documents: z.array(z.object(document)),
  })
  .meta({ id: "NamedVersion" });
export const versionsSchema = z.object({ kind: z.literal("versions"), versions: z.array(version) });
export const nameBody = z
  .strictObject({ name: z.string().min(1).max(NAME_LIMIT) })
  .meta({ description: say("server.history-schemas.a-name-for-how-the-build") });
export const namedSchema = z.object({ kind: z.literal("named"), version });

export const differenceQuery = z.object({
  from: z
    .string()
    .min(1)
    .max(NAME_LIMIT)
    .meta({ description: say("server.history-schemas.name-of-a-version-or-now") }),
  to: z.string().min(1).max(NAME_LIMIT),
});
export const versionDifferenceSchema = z.object({
  kind: z.literal("difference"),
  from: z.string(),
  to: z.string(),
  documents: z.array(z.object({ kind: z.string(), id: z.string(), difference: differenceSchema })),
  newest: z.int().min(0),
});

export const restoreBody = z
  .strictObject({ name: z.string().min(1).max(NAME_LIMIT), seen })
  .meta({ description: say("server.history-schemas.a-restore-name-before-welding-seen") });
export const restoreDocumentBody = z
  .strictObject({ revision, expectedRevision: revision.optional() })
  .meta({ description: say("server.history-schemas.a-restore-of-one-document-revision") });
export const restoredSchema = z.object({
  kind: z.literal("restored"),
  change: change.nullable().meta({ description: say("server.history-schemas.null-where-nothing-differed") }),
  documents: written,
});
