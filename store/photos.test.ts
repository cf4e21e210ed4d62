import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { openWorkshop } from "./open-workshop.js";
import { sniffPicture } from "./sniff-picture.js";
import { JPEG, jpegWith, PNG, WEBP } from "./test-pictures.js";
import type { Workshop } from "./workshop.js";

const QUAYSIDE = fs.readFileSync(new URL("../demo/quayside.yaml", import.meta.url), "utf8");
const folders: string[] = [];
const opened: Workshop[] = [];

const open = async (folder = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-photos-"))) => {
  folders.push(folder);
  const result = await openWorkshop(folder);
  if (result.kind === "refused") throw new Error(JSON.stringify(result.refusals));
  opened.push(result.workshop);
  return result.workshop;
};
const withQuayside = async () => {
  const workshop = await open();
  await workshop.putText(QUAYSIDE, "quayside.yaml");
  return workshop;
};
const donorPhoto = (bytes: Uint8Array, place: string | null = null) => ({
  kind: "donor",
  id: "q1",
  place,
  caption: "the drive side",
  bytes,
});
const kept = async (workshop: Workshop, bytes: Uint8Array, place: string | null = null) => {
  const result = await workshop.photos.add(donorPhoto(bytes, place));
  if (result.kind === "refused") throw new Error(JSON.stringify(result.refusals));
  return result;
};
const bytesOf = (...parts: readonly (string | Uint8Array)[]) =>
  new Uint8Array(Buffer.concat(parts.map((p) => (typeof p === "string" ? Buffer.from(p, "latin1") : p))));
const codeOf = (bytes: Uint8Array) => {
  const result = sniffPicture(bytes);
  return result.kind === "refused" ? result.refusals[0]?.code : result.mediaType;
};

afterEach(async () => {
  for (const workshop of opened.splice(0)) await workshop.close();
  for (const folder of folders.splice(0)) fs.rmSync(folder, { recursive: true, force: true });
});

describe("what a file is, by its bytes", () => {
  it.each([
    ["image/jpeg", JPEG],
    ["image/png", PNG],
    ["image/webp", WEBP],
  ])("reads %s with its size", (mediaType, bytes) => {
    // 40 x 24: the canvas that they were drawn on.
    expect(sniffPicture(bytes)).toMatchObject({
      kind: "picture",
      mediaType,
      widthPx: 40,
      heightPx: 24,
      leftOutBytes: 0,
    });
  });

  it.each([
    ["an empty file", new Uint8Array(0), "photo-empty"],
    ["a page", bytesOf("<!doctype html><script>alert(1)</script>"), "not-a-photo"],
    ["a drawing that can hold scripts", bytesOf('<svg xmlns="http://www.w3.org/2000/svg"/>'), "not-a-photo"],
    ["another sort of picture", bytesOf("GIF89a\x01\0\x01\0\0\0\0;"), "not-a-photo"],
    ["a PDF", bytesOf("%PDF-1.7\n"), "not-a-photo"],
    ["the first bytes of a JPEG only", JPEG.subarray(0, 3), "photo-broken"],
    ["half a JPEG", JPEG.subarray(0, JPEG.length - 40), "photo-broken"],
    ["half a PNG", PNG.subarray(0, PNG.length - 13), "photo-broken"],
    ["half a WebP", WEBP.subarray(0, WEBP.length - 2), "photo-broken"],
    ["a JPEG without a frame", new Uint8Array([0xff, 0xd8, 0xff, 0xd9]), "photo-broken"],
    ["a PNG with an archive behind it", bytesOf(PNG, "PK\x03\x04"), "photo-and-more"],
    ["a WebP with a page behind it", bytesOf(WEBP, "<html>"), "photo-and-more"],
    ["a JPEG with a script in a comment", jpegWith("<script>alert(1)</script>"), "photo-and-more"],
    ["a JPEG with a page in a comment", jpegWith(" <HTML><body>"), "photo-and-more"],
    ["more than 12 MB", new Uint8Array(12_000_001), "photo-too-large"],
  ])("refuses %s", (_what, bytes, code) => {
    expect(codeOf(bytes)).toBe(code);
  });

  it("refuses a picture that says it is 100,000 pixels wide", () => {
    const wide = PNG.slice();
    // Width: the first four bytes of IHDR, at offset 16 (PNG, 11.2.1).
    new DataView(wide.buffer).setUint32(16, 100_000);
    expect(codeOf(wide)).toBe("photo-too-large");
  });

  it("leaves out what stands behind the end of a JPEG, and says how much", () => {
    const result = sniffPicture(bytesOf(JPEG, "PK\x03\x04 an archive <html>"));
    expect(result).toMatchObject({ kind: "picture", leftOutBytes: 22 });
    expect(result.kind === "picture" && Buffer.compare(result.bytes, JPEG)).toBe(0);
  });

  it("keeps a comment that is only words", () => {
    expect(codeOf(jpegWith("seen on the bench"))).toBe("image/jpeg");
  });
});

describe("photos of a document", () => {
  it("gives back the bytes that came in, over a restart too", async () => {
    const workshop = await withQuayside();
    const { photo } = await kept(workshop, JPEG, "q30");
    expect(photo).toMatchObject({
      kind: "donor",
      id: "q1",
      place: "q30",
      caption: "the drive side",
      sizeBytes: JPEG.length,
    });
    await workshop.close();
    const again = await open(workshop.folder);
    expect(await again.photos.of("donor", "q1")).toEqual([photo]);
    const picture = await again.photos.bytes(photo.sha256);
    expect(picture?.mediaType).toBe("image/jpeg");
    expect(Buffer.compare(picture?.bytes ?? new Uint8Array(), JPEG)).toBe(0);
  });

  it("keeps the same bytes once, for two places, and the same photo sent twice once", async () => {
    const workshop = await withQuayside();
    const first = await kept(workshop, PNG);
    const twice = await kept(workshop, PNG);
    const elsewhere = await kept(workshop, PNG, "q02");
    expect(twice.photo.photo).toBe(first.photo.photo);
    expect(elsewhere.photo.photo).not.toBe(first.photo.photo);
    expect(elsewhere.photo.sha256).toBe(first.photo.sha256);
    expect(await workshop.photos.of("donor", "q1")).toHaveLength(2);
  });

  it("takes one away so that it can be put back", async () => {
    const workshop = await withQuayside();
    const { photo } = await kept(workshop, WEBP);
    const gone = await workshop.photos.change(photo.photo, { takenAway: true });
    expect(gone.kind === "changed" && gone.photo.takenAwayAt).toMatch(/^\d{4}-/);
    expect(await workshop.photos.bytes(photo.sha256)).toBeDefined();
    const back = await workshop.photos.change(photo.photo, { takenAway: false, caption: "before the wash" });
    expect(back.kind === "changed" && back.photo).toEqual({ ...photo, caption: "before the wash" });
    expect(await workshop.photos.one(photo.photo)).toEqual({ ...photo, caption: "before the wash" });
  });

  it("refuses photos of nothing, bad words and unknown photos, all reasons at once", async () => {
    const workshop = await withQuayside();
    const nowhere = await workshop.photos.add({ ...donorPhoto(JPEG), id: "q9" });
    expect(nowhere.kind === "refused" && nowhere.refusals.map((r) => r.code)).toEqual(["not-found"]);
    const bad = await workshop.photos.add({ ...donorPhoto(JPEG.subarray(0, 9)), place: " ", caption: "a\nb" });
    expect(bad.kind === "refused" && bad.refusals.map((r) => r.code)).toEqual([
      "bad-caption",
      "bad-place",
      "photo-broken",
    ]);
    const unknown = await workshop.photos.change("nothing", { takenAway: true });
    expect(unknown.kind === "refused" && unknown.refusals[0]?.code).toBe("not-found");
    expect(await workshop.photos.of("donor", "q1")).toEqual([]);
  });

  it("takes 100 photos of one document and no more", async () => {
    const workshop = await withQuayside();
    for (let n = 0; n < 100; n += 1) await kept(workshop, jpegWith(`photo ${n}`));
    const one = await workshop.photos.add(donorPhoto(JPEG));
    expect(one.kind === "refused" && one.refusals[0]?.code).toBe("too-many-photos");
  });
});
