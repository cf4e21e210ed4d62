/**
 * Which photographs belong to a document, and how does one come in, change its caption, or go? Nothing is lost by taking
 * one away: it can be put back. The same bytes are kept once, however many photos show them.
 */

import { createHash, randomBytes } from "node:crypto";
import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import type { Kysely, Transaction } from "kysely";
import { storedDocument } from "./read-documents.js";
import { type MediaType, sniffPicture } from "./sniff-picture.js";
import type { Tables } from "./tables.js";
import type { StoreRefused } from "./workshop.js";

export const PHOTOS_OF_ONE_DOCUMENT = 100;
export const CAPTION_LETTERS = 300;
export const PLACE_LETTERS = 80;

export interface PhotoLine {
  readonly photo: string;
  readonly kind: string;
  readonly id: string;
  /** What it shows, by the document's own names: a part's id, "evidence", a measured key. null: the whole. */
  readonly place: string | null;
  readonly caption: string;
  readonly sha256: string;
  readonly mediaType: MediaType;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly sizeBytes: number;
  /** ISO 8601, UTC. */
  readonly at: string;
  /** When it was taken away; null while it is shown. */
  readonly takenAwayAt: string | null;
}

export interface NewPhoto {
  readonly kind: string;
  readonly id: string;
  readonly place: string | null;
  readonly caption: string;
  readonly bytes: Uint8Array;
}

export type PhotoKept =
  | { readonly kind: "kept"; readonly photo: PhotoLine; readonly leftOutBytes: number }
  | StoreRefused;

export type PhotoChanged = { readonly kind: "changed"; readonly photo: PhotoLine } | StoreRefused;

export interface PictureBytes {
  readonly mediaType: MediaType;
  readonly bytes: Uint8Array;
}

type Reader = Kysely<Tables> | Transaction<Tables>;

const refusedAs = (...refusals: readonly Refusal[]): StoreRefused => ({ kind: "refused", refusals });

export const sha256Of = (bytes: Uint8Array | string): string => createHash("sha256").update(bytes).digest("hex");

/** 80 bits: two photos of one workshop never meet, and two workshops hardly ever. */
export const newPhotoId = (): string => randomBytes(10).toString("hex");

export async function addPhoto(db: Kysely<Tables>, given: NewPhoto, at: string): Promise<PhotoKept> {
  const { kind, id } = given;
  const wrong = wordRefusals(given);
  const sniffed = sniffPicture(given.bytes);
  if (sniffed.kind === "refused") return refusedAs(...wrong, ...sniffed.refusals);
  if (wrong.length > 0) return refusedAs(...wrong);
  const sha256 = sha256Of(sniffed.bytes);
  return db.transaction().execute(async (trx): Promise<PhotoKept> => {
    if ((await storedDocument(trx, kind, id)) === undefined) return refusedAs(noDocument(kind, id));
    const there = await photosOf(trx, { kind, id });
    const shown = there.filter((p) => p.takenAwayAt === null);
    // The same photo of the same place, sent twice: it is there already.
    const twin = shown.find((p) => p.sha256 === sha256 && p.place === given.place);
    if (twin !== undefined) return { kind: "kept", photo: twin, leftOutBytes: sniffed.leftOutBytes };
    if (shown.length >= PHOTOS_OF_ONE_DOCUMENT) return refusedAs(tooMany(kind, id, shown.length));
    await keepPicture(trx, sha256, sniffed);
    const photo = newPhotoId();
    const { place, caption } = given;
    await trx
      .insertInto("photos")
      .values({ photo, kind, id, place, caption, sha256, at, taken_away_at: null })
      .execute();
    const kept = await photoLine(trx, photo);
    if (kept === undefined) throw new Error("a photo is not there right after it was kept");
    return { kind: "kept", photo: kept, leftOutBytes: sniffed.leftOutBytes };
  });
}

/** The bytes, once. Inside the caller's transaction. */
export async function keepPicture(
  trx: Transaction<Tables>,
  sha256: string,
  picture: PictureBytes & { readonly widthPx: number; readonly heightPx: number },
): Promise<void> {
  const { mediaType, widthPx, heightPx, bytes } = picture;
  await trx
    .insertInto("pictures")
    .values({
      sha256,
      media_type: mediaType,
      width_px: widthPx,
      height_px: heightPx,
      size_bytes: bytes.length,
      bytes: Buffer.from(bytes),
    })
    .onConflict((c) => c.column("sha256").doNothing())
    .execute();
}

const lines = (db: Reader) =>
  db
    .selectFrom("photos")
    .innerJoin("pictures", "pictures.sha256", "photos.sha256")
    .select([
      "photos.photo",
      "photos.kind",
      "photos.id",
      "photos.place",
      "photos.caption",
      "photos.sha256",
      "pictures.media_type as mediaType",
      "pictures.width_px as widthPx",
      "pictures.height_px as heightPx",
      "pictures.size_bytes as sizeBytes",
      "photos.at",
      "photos.taken_away_at as takenAwayAt",
    ]);

/** Oldest first, those taken away too. */
export function photosOf(db: Reader, of: { readonly kind: string; readonly id: string }): Promise<PhotoLine[]> {
  return lines(db)
    .where("photos.kind", "=", of.kind)
    .where("photos.id", "=", of.id)
    .orderBy("photos.at")
    .orderBy("photos.photo")
    .execute();
}

export function allPhotos(db: Reader): Promise<PhotoLine[]> {
  return lines(db).orderBy("photos.kind").orderBy("photos.id").orderBy("photos.at").orderBy("photos.photo").execute();
}

export function photoLine(db: Reader, photo: string): Promise<PhotoLine | undefined> {
  return lines(db).where("photos.photo", "=", photo).executeTakeFirst();
}

export async function pictureBytes(db: Reader, sha256: string): Promise<PictureBytes | undefined> {
  const row = await db
    .selectFrom("pictures")
    .select(["media_type as mediaType", "bytes"])
    .where("sha256", "=", sha256)
    .executeTakeFirst();
  // The driver gives an ArrayBuffer.
  return row === undefined ? undefined : { mediaType: row.mediaType, bytes: new Uint8Array(row.bytes) };
}

export async function changePhoto(
  db: Kysely<Tables>,
  photo: string,
  change: { readonly caption?: string; readonly takenAway?: boolean },
  at: string,
): Promise<PhotoChanged> {
  return db.transaction().execute(async (trx): Promise<PhotoChanged> => {
    const before = await photoLine(trx, photo);
    if (before === undefined) return refusedAs(noPhoto(photo));
    const caption = change.caption ?? before.caption;
    const wrong = wordRefusals({ place: before.place, caption });
    if (wrong.length > 0) return refusedAs(...wrong);
    const takenAwayAt = change.takenAway === undefined ? before.takenAwayAt : change.takenAway ? at : null;
    if (before.takenAwayAt !== null && takenAwayAt === null) {
      const shown = (await photosOf(trx, before)).filter((p) => p.takenAwayAt === null).length;
      if (shown >= PHOTOS_OF_ONE_DOCUMENT) return refusedAs(tooMany(before.kind, before.id, shown));
    }
    const kept = before.takenAwayAt !== null && change.takenAway === true ? before.takenAwayAt : takenAwayAt;
    await trx.updateTable("photos").set({ caption, taken_away_at: kept }).where("photo", "=", photo).execute();
    return { kind: "changed", photo: { ...before, caption, takenAwayAt: kept } };
  });
}

/** What is wrong with the words beside a photo. */
export function wordRefusals(words: { readonly place: string | null; readonly caption: string }): Refusal[] {
  const refusals: Refusal[] = [];
  const plain = (text: string) => !/[\p{Cc}\p{Cs}]/u.test(text);
  const { place, caption } = words;
  if (caption.length > CAPTION_LETTERS || !plain(caption)) {
    const allowed = say("store.photos.letters-at-most-in-one-line", { captionLetters: CAPTION_LETTERS });
    refusals.push({
      code: "bad-caption",
      at: "caption",
      given: caption.slice(0, 60),
      allowed,
      message: say("store.photos.a-caption-has", { allowed }),
    });
  }
  if (place !== null && (place.trim() === "" || place.length > PLACE_LETTERS || !plain(place))) {
    const allowed = say("store.photos.1-to-letters-in-one-line", { placeLetters: PLACE_LETTERS });
    refusals.push({
      code: "bad-place",
      at: "place",
      given: place.slice(0, 60),
      allowed,
      message: say("store.photos.the-place-that-a-photo-shows", { allowed }),
    });
  }
  return refusals;
}

function noDocument(kind: string, id: string): Refusal {
  const name = `${kind} ${id}`.slice(0, 80);
  const message = say("store.refused-as.there-is-no-in-this-workshop", { name });
  return {
    code: "not-found",
    at: name,
    given: name,
    allowed: say("store.refused-as.a-document-of-this-workshop"),
    message,
  };
}

function noPhoto(photo: string): Refusal {
  const given = photo.slice(0, 40);
  const message = say("store.photos.there-is-no-photo-in-this", { given });
  return {
    code: "not-found",
    at: say("store.photos.photo", { given }),
    given,
    allowed: say("store.photos.a-photo-of-this-workshop"),
    message,
  };
}

function tooMany(kind: string, id: string, given: number): Refusal {
  const allowed = say("store.photos.photos-of-one-document", { photosOfOneDocument: PHOTOS_OF_ONE_DOCUMENT });
  const message = say("store.photos.has-photos-already-are-the-most", { kind, id, given, allowed });
  return { code: "too-many-photos", at: `${kind} ${id}`, given, allowed, message };
}
