/**
 * How are photos listed, kept, shown and taken away over HTTP? What a file is, its bytes say (store: sniff-picture); the
 * type and name that were sent decide nothing. A photo is given with its one exact type, and a browser may do nothing with
 * it but show it.
 */
import { say } from "@coldset/core/texts";
import type { Workshop } from "@coldset/store";
import { z } from "zod";
import type { DescribedApi } from "./described-api.js";
import { documentParams } from "./document-schemas.js";
import { notFound, refusedBy } from "./problem.js";

/** A little more than a photo may have, so that the store says what is too large about it. */
const PHOTO_BODY_BYTES = 13_000_000;
const PHOTO_TYPES = ["image/jpeg", "image/png", "image/webp", "application/octet-stream"] as const;
export const PHOTO_POLICY = say("server.photo-routes.sandbox-default-src-none");
const ENDINGS = { "image/jpeg": "jpg", "image/png": "png", "image/webp": "webp" } as const;

const photoSchema = z
  .object({
    photo: z.string(),
    kind: z.string(),
    id: z.string(),
    place: z
      .string()
      .nullable()
      .meta({ description: say("server.photo-routes.what-it-shows-by-the-document") }),
    caption: z.string(),
    sha256: z.string(),
    mediaType: z.enum(["image/jpeg", "image/png", "image/webp"]),
    widthPx: z.int(),
    heightPx: z.int(),
    sizeBytes: z.int(),
    at: z.string(),
    takenAwayAt: z.string().nullable(),
  })
  .meta({ id: "Photo" });

const photoParams = z.object({ photo: z.string().regex(/^[0-9a-f]{20}$/) });
const addQuery = z
  .strictObject({ place: z.string().max(200).optional(), caption: z.string().max(1000).optional() })
  .meta({ description: say("server.photo-routes.place-and-caption-each-once") });
const changeBody = z
  .strictObject({ caption: z.string().optional(), takenAway: z.boolean().optional() })
  .meta({ description: say("server.photo-routes.caption-takenaway-false-either-or-both") });
const changedSchema = z.object({ kind: z.literal("changed"), photo: photoSchema });

export function photoRoutes(api: DescribedApi, workshop: Workshop): void {
  const { photos } = workshop;
  api.route(
    {
      method: "get",
      path: "/api/documents/{kind}/{id}/photos",
      summary: "Lists the photos of a document, oldest first, those taken away too.",
      params: documentParams,
      answers: { 200: { means: "Without their bytes.", json: z.array(photoSchema) } },
    },
    async (c, { params }) => c.json(await photos.of(params.kind, params.id)),
  );

  api.route(
    {
      method: "post",
      path: "/api/documents/{kind}/{id}/photos",
      summary: "Keeps a photo of a document: JPEG, PNG or WebP, told from its bytes.",
      params: documentParams,
      query: addQuery,
      body: { file: PHOTO_TYPES, limitBytes: PHOTO_BODY_BYTES },
      answers: {
        200: {
          means: "The photo as it is kept; bytes behind the end of a picture are left out.",
          json: z.object({ kind: z.literal("kept"), photo: photoSchema, leftOutBytes: z.int() }),
        },
      },
      refuses: [422],
    },
    async (c, { params, query, body }) => {
      const { place, caption = "" } = query;
      const kept = await photos.add({
        ...params,
        place: place === undefined || place === "" ? null : place,
        caption,
        bytes: body,
      });
      return kept.kind === "refused" ? refusedBy(c, kept.refusals) : c.json(kept);
    },
  );

  api.route(
    {
      method: "get",
      path: "/api/photos/{photo}/picture",
      summary: "Gives the picture itself.",
      params: photoParams,
      answers: { 200: { means: "JPEG, PNG or WebP, as its type says.", type: "image/*" } },
    },
    async (c, { params }) => {
      const photo = await photos.one(params.photo);
      const picture = photo === undefined ? undefined : await photos.bytes(photo.sha256);
      if (photo === undefined || picture === undefined)
        return notFound(
          c,
          say("server.photo-routes.photo", { photo: params.photo }),
          say("server.photo-routes.a-photo"),
        );
      c.header("Content-Type", picture.mediaType);
      c.header(
        "Content-Disposition",
        `inline; filename="${photo.kind}-${photo.id}-${photo.photo}.${ENDINGS[picture.mediaType]}"`,
      );
      c.header("Content-Security-Policy", PHOTO_POLICY);
      // The bytes under one name never change; the list says which photos there are.
      c.header("Cache-Control", "private, max-age=31536000, immutable");
      return c.body(new Uint8Array(picture.bytes));
    },
  );

  api.route(
    {
      method: "post",
      path: "/api/photos/{photo}",
      summary: "Changes the caption of a photo, takes it away, or puts it back.",
      params: photoParams,
      body: { json: changeBody },
      answers: { 200: { means: "The photo as it stands.", json: changedSchema } },
      refuses: [422],
    },
    async (c, { params, body }) => {
      const { caption, takenAway } = body;
      const change = {
        ...(caption === undefined ? {} : { caption }),
        ...(takenAway === undefined ? {} : { takenAway }),
      };
      const changed = await photos.change(params.photo, change);
      return changed.kind === "refused" ? refusedBy(c, changed.refusals) : c.json(changed);
    },
  );

  api.route(
    {
      method: "delete",
      path: "/api/photos/{photo}",
      summary: "Takes a photo away; it is kept and can be put back.",
      params: photoParams,
      answers: { 200: { means: "The photo, with the time at which it was taken away.", json: changedSchema } },
      refuses: [422],
    },
    async (c, { params }) => {
      const changed = await photos.change(params.photo, { takenAway: true });
      return changed.kind === "refused" ? refusedBy(c, changed.refusals) : c.json(changed);
    },
  );
}
