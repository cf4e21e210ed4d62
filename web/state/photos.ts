/** How does the page list, keep, change and take away photos? What the server refuses comes back in its own words. */
import { callServer, reasonsIn } from "./api.js";
import { meantFor } from "./which-workshop.js";

export interface Photo {
  readonly photo: string;
  readonly place: string | null;
  readonly caption: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly takenAwayAt: string | null;
}

export type PhotoAnswer<T> =
  | { readonly kind: "done"; readonly value: T }
  | { readonly kind: "refused"; readonly messages: readonly string[] }
  | { readonly kind: "unreachable" };

const placeOf = (kind: string, id: string) =>
  `/api/documents/${encodeURIComponent(kind)}/${encodeURIComponent(id)}/photos`;

export const pictureAddress = (photo: string) => `/api/photos/${encodeURIComponent(photo)}/picture`;

export function loadPhotos(kind: string, id: string): Promise<PhotoAnswer<readonly Photo[]>> {
  return ask(placeOf(kind, id), {}, (body) => (Array.isArray(body) ? (body as readonly Photo[]) : undefined));
}

export function sendPhoto(
  kind: string,
  id: string,
  given: { readonly file: Blob; readonly place: string; readonly caption: string },
): Promise<PhotoAnswer<Photo>> {
  const query = new URLSearchParams({ place: given.place.trim(), caption: given.caption.trim() });
  const headers = { "content-type": "application/octet-stream", ...meantFor() };
  return ask(`${placeOf(kind, id)}?${query}`, { method: "POST", body: given.file, headers }, photoIn);
}

export function changePhoto(
  photo: string,
  change: { readonly caption?: string; readonly takenAway?: boolean },
): Promise<PhotoAnswer<Photo>> {
  const headers = { "content-type": "application/json", ...meantFor() };
  const body = JSON.stringify(change);
  return ask(`/api/photos/${encodeURIComponent(photo)}`, { method: "POST", body, headers }, photoIn);
}

const photoIn = (body: unknown): Photo | undefined =>
  body !== null && typeof body === "object" && "photo" in body ? (body.photo as Photo) : undefined;

async function ask<T>(
  address: string,
  init: RequestInit,
  read: (body: unknown) => T | undefined,
): Promise<PhotoAnswer<T>> {
  const heard = await callServer(address, init);
  if (heard.kind === "unreachable") return heard;
  const { response, body } = heard;
  const value = response.ok ? read(body) : undefined;
  return value === undefined
    ? { kind: "refused", messages: reasonsIn(body, response.status) }
    : { kind: "done", value };
}
