/**
 * Is this a photograph, and of which sort? Told from the bytes alone; a name or a type that somebody claims is not asked.
 * JPEG (ITU-T T.81 annex B: markers and segments), PNG (W3C "Portable Network Graphics", chunks), WebP (RFC 9649, RIFF).
 * A file that is a picture and something else as well is not kept: PNG and WebP must end where the picture ends; what
 * a camera writes behind the end of a JPEG (a second picture, a thumbnail of its own) is left out, and that is said.
 */

import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { imageSize } from "image-size";

export type MediaType = "image/jpeg" | "image/png" | "image/webp";

export const PHOTO_LIMIT_BYTES = 12_000_000;
/** No camera that people hold in the hand makes more. */
const SIDE_LIMIT_PX = 20_000;
const AREA_LIMIT_PX = 120_000_000;
/** A browser looks so far into a file when it guesses what it is (WHATWG "MIME Sniffing", resource header: 1445). */
const GUESSED_FROM_BYTES = 1445;
const PAGE_WORDS = /<(?:!doctype|html|head|body|script|iframe|svg|\?php|!--)/i;

export const PHOTO_ALLOWED = say("store.sniff-picture.a-photograph-as-jpeg-png-or", {
  photoLimitBytes: PHOTO_LIMIT_BYTES / 1e6,
});

export type Sniffed =
  | {
      readonly kind: "picture";
      readonly mediaType: MediaType;
      readonly widthPx: number;
      readonly heightPx: number;
      readonly bytes: Uint8Array;
      /** Bytes behind the end of the picture that were not kept. */
      readonly leftOutBytes: number;
    }
  | { readonly kind: "refused"; readonly refusals: readonly Refusal[] };

export function sniffPicture(given: Uint8Array): Sniffed {
  if (given.length === 0)
    return no("photo-empty", say("store.sniff-picture.an-empty-file"), say("store.sniff-picture.the-file-is-empty"));
  if (given.length > PHOTO_LIMIT_BYTES) {
    const size = `${(given.length / 1e6).toFixed(1)} MB`;
    return no(
      "photo-too-large",
      size,
      say("store.sniff-picture.the-photo-is-mb-is-the", { size, photoLimitBytes: PHOTO_LIMIT_BYTES / 1e6 }),
    );
  }
  const mediaType = mediaTypeOf(given);
  if (mediaType === undefined) {
    return no(
      "not-a-photo",
      say("store.sniff-picture.other-bytes"),
      say("store.sniff-picture.the-file-is-no-jpeg-png"),
    );
  }
  const end = endOf(given, mediaType);
  if (end === undefined) return no("photo-broken", mediaType, say("store.sniff-picture.the-picture-is-broken-off-or"));
  if (end < given.length && mediaType !== "image/jpeg") {
    return no("photo-and-more", mediaType, say("store.sniff-picture.behind-the-end-of-the-picture"));
  }
  const bytes = given.subarray(0, end);
  const head = new TextDecoder("latin1").decode(bytes.subarray(0, GUESSED_FROM_BYTES));
  if (PAGE_WORDS.test(head))
    return no("photo-and-more", mediaType, say("store.sniff-picture.the-picture-also-holds-a-page"));
  const size = sizeOf(bytes, mediaType);
  if (size === undefined) return no("photo-broken", mediaType, say("store.sniff-picture.the-picture-does-not-say-how"));
  const { widthPx, heightPx } = size;
  if (widthPx > SIDE_LIMIT_PX || heightPx > SIDE_LIMIT_PX || widthPx * heightPx > AREA_LIMIT_PX) {
    const pixels = say("store.sniff-picture.x-pixels", { widthPx, heightPx });
    return no(
      "photo-too-large",
      pixels,
      say("store.sniff-picture.the-photo-has-a-side-and", { pixels, sideLimitPx: SIDE_LIMIT_PX }),
    );
  }
  return { kind: "picture", mediaType, widthPx, heightPx, bytes, leftOutBytes: given.length - end };
}

const no = (code: string, given: string, message: string): Sniffed => ({
  kind: "refused",
  refusals: [{ code, at: "photo", given, allowed: PHOTO_ALLOWED, message }],
});

const startsWith = (bytes: Uint8Array, at: number, ...head: readonly number[]) =>
  head.every((value, i) => bytes[at + i] === value);
const word = (bytes: Uint8Array, at: number) => String.fromCharCode(...bytes.subarray(at, at + 4));
const viewOf = (bytes: Uint8Array) => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

function mediaTypeOf(bytes: Uint8Array): MediaType | undefined {
  if (startsWith(bytes, 0, 0xff, 0xd8, 0xff)) return "image/jpeg";
  if (startsWith(bytes, 0, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return "image/png";
  if (word(bytes, 0) === "RIFF" && word(bytes, 8) === "WEBP") return "image/webp";
  return undefined;
}

function sizeOf(bytes: Uint8Array, mediaType: MediaType): { widthPx: number; heightPx: number } | undefined {
  try {
    const { width, height, type } = imageSize(bytes);
    const wanted = mediaType === "image/jpeg" ? "jpg" : mediaType.slice("image/".length);
    const whole = Number.isInteger(width) && Number.isInteger(height) && width > 0 && height > 0;
    return type === wanted && whole ? { widthPx: width, heightPx: height } : undefined;
  } catch (cause) {
    // The library throws where a header makes no sense; that is the file's fault.
    if (!(cause instanceof Error)) throw cause;
    return undefined;
  }
}

/** Where the picture ends, or undefined where it has no end. */
function endOf(bytes: Uint8Array, mediaType: MediaType): number | undefined {
  if (mediaType === "image/png") return endOfPng(bytes);
  return mediaType === "image/webp" ? endOfWebp(bytes) : endOfJpeg(bytes);
}

function endOfPng(bytes: Uint8Array): number | undefined {
  const view = viewOf(bytes);
  let data = false;
  for (let at = 8; at + 12 <= bytes.length; ) {
    const name = word(bytes, at + 4);
    if (at === 8 && name !== "IHDR") return undefined;
    if (name === "IDAT") data = true;
    at += 12 + view.getUint32(at);
    if (name === "IEND") return data && at <= bytes.length ? at : undefined;
  }
  return undefined;
}

function endOfWebp(bytes: Uint8Array): number | undefined {
  if (bytes.length < 20) return undefined;
  const size = viewOf(bytes).getUint32(4, true);
  const end = 8 + size + (size % 2);
  return end <= bytes.length ? end : undefined;
}

function endOfJpeg(bytes: Uint8Array): number | undefined {
  let frame = false;
  for (let at = 2; at + 1 < bytes.length; ) {
    if (bytes[at] !== 0xff) return undefined;
    const marker = bytes[at + 1] ?? 0;
    // A fill byte before a marker, or a marker that stands alone.
    if (marker === 0xff) at += 1;
    else if (marker === 0xd9) return frame ? at + 2 : undefined;
    else if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7)) at += 2;
    else {
      if (at + 4 > bytes.length) return undefined;
      const length = ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0);
      if (length < 2) return undefined;
      at += 2 + length;
      if (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc) frame = true;
      if (marker === 0xda) at = endOfScan(bytes, at);
    }
  }
  return undefined;
}

/** Coded data runs to the next marker; FF 00 and the restart markers D0 to D7 belong to it. */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = bytes.indexOf(0xff, from); at >= 0; at = bytes.indexOf(0xff, at + 1)) {
    const next = bytes[at + 1] ?? 0;
    if (next !== 0x00 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return bytes.length;
}
