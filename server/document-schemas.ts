/** How do documents look in requests and answers? The documents themselves are described by the core's own schemas. */
import { say } from "@coldset/core/texts";
import { DOC_KINDS, DOCUMENT_SCHEMAS } from "@coldset/core/workshop";
import { z } from "zod";
import { refusalSchema } from "./shared-schemas.js";

const PATH_STEPS = 12;
const KEY_LIMIT = 200;
const INDEX_LIMIT = 10_000;
const LABEL_LIMIT = 300;

export const documentParams = z.object({ kind: z.enum(DOC_KINDS), id: z.string().min(1).max(100) });
export const buildParams = z.object({ build: z.string().min(1).max(100) });

const revision = z
  .int()
  .min(1)
  .meta({ description: say("server.document-schemas.1-at-first-one-more-with") });
const updatedAt = z.iso.datetime();

const line = { kind: z.enum(DOC_KINDS), id: z.string(), label: z.string(), revision, updatedAt };
export const documentLineSchema = z.object(line).meta({ id: "DocumentLine" });

/** What is written in a document of each kind, before it is read: quantities as people write them. */
export const plainSchema = z
  .union(DOC_KINDS.map((kind) => z.unknown().meta({ id: `${kind}Document`, override: writtenSchema(kind) })))
  .meta({ id: "WrittenDocument" });

function writtenSchema(kind: (typeof DOC_KINDS)[number]) {
  const { $schema: _dialect, ...schema } = z.toJSONSchema(DOCUMENT_SCHEMAS[kind], {
    io: "input",
    unrepresentable: "any",
  });
  return schema as Record<string, unknown>;
}

export const storedDocumentSchema = z.object({
  ...line,
  text: z.string(),
  plain: plainSchema.nullable().meta({ description: say("server.build-lines.null-where-the-text-can-no") }),
  refusals: z.array(refusalSchema),
});

export const importBody = z
  .strictObject({
    text: z.string(),
    label: z.string().min(1).max(LABEL_LIMIT).default(say("server.document-schemas.put-in-on-the-page")),
  })
  .meta({ description: say("server.document-schemas.an-import-text-label-file-yaml") });

export const putSchema = z.object({
  kind: z.literal("put"),
  documents: z.array(
    z.object({ kind: z.enum(DOC_KINDS), id: z.string(), revision, change: z.enum(["new", "changed", "same"]) }),
  ),
});

export const editPathSchema = z
  .array(z.union([z.string().min(1).max(KEY_LIMIT), z.int().min(0).max(INDEX_LIMIT)]))
  .min(1)
  .max(PATH_STEPS);

export const editBody = z
  .strictObject({
    path: editPathSchema,
    value: z.unknown().optional(),
    revision: z.int(),
    editId: z
      .string()
      .regex(/^[A-Za-z0-9_-]{8,64}$/)
      .optional()
      .meta({ description: say("server.document-schemas.given-the-edit-is-made-once") }),
    takesBack: z
      .boolean()
      .optional()
      .meta({ description: say("server.document-schemas.it-puts-back-what-stood-there") }),
  })
  .meta({
    description: say("server.document-schemas.an-edit-path-measured-chainstay-value", { pathSteps: PATH_STEPS }),
  });

const standing = { revision, text: z.string() };
export const editedSchema = z.object({
  kind: z.literal("edited"),
  ...standing,
  repeated: z
    .literal(true)
    .optional()
    .meta({ description: say("server.document-schemas.it-had-arrived-before-this-is") }),
});
export const conflictSchema = z.object({ kind: z.literal("conflict"), ...standing });
