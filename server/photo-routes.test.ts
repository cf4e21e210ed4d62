import { afterEach, describe, expect, it } from "vitest";
import { JPEG, PNG } from "../store/test-pictures.js";
import { testWorkshop } from "./test-workshop.js";

type Serving = Awaited<ReturnType<typeof testWorkshop>>;
const running: Serving[] = [];
const serving = async () => {
  const w = await testWorkshop();
  running.push(w);
  return w;
};
const send = (w: Serving, place: string, bytes: Uint8Array | string, type: string) =>
  w.ask(place, { method: "POST", body: bytes as BodyInit, headers: { "content-type": type } });
const PHOTOS = "/api/documents/donor/q1/photos";
interface Photo {
  readonly photo: string;
  readonly place: string | null;
  readonly caption: string;
  readonly takenAwayAt: string | null;
}

afterEach(async () => {
  for (const w of running.splice(0)) await w.end();
});

describe("photos over HTTP", () => {
  it("keeps one and gives it back as nothing but that picture", async () => {
    const w = await serving();
    const kept = await send(w, `${PHOTOS}?place=q30&caption=the%20crank`, JPEG, "image/jpeg");
    expect(kept.status).toBe(200);
    const { photo } = (await kept.json()) as { photo: Photo };
    expect(photo).toMatchObject({ place: "q30", caption: "the crank", takenAwayAt: null });
    const shown = await w.ask(`/api/photos/${photo.photo}/picture`);
    expect(shown.headers.get("content-type")).toBe("image/jpeg");
    expect(shown.headers.get("x-content-type-options")).toBe("nosniff");
    expect(shown.headers.get("content-security-policy")).toBe("sandbox; default-src 'none'");
    expect(shown.headers.get("content-disposition")).toMatch(/^inline; filename="donor-q1-[0-9a-f]{20}\.jpg"$/);
    expect(Buffer.compare(new Uint8Array(await shown.arrayBuffer()), JPEG)).toBe(0);
    expect(await (await w.ask(PHOTOS)).json()).toEqual([photo]);
  });

  it("believes the bytes and not the type that was sent", async () => {
    const w = await serving();
    const png = await send(w, PHOTOS, PNG, "image/jpeg");
    const { photo } = (await png.json()) as { photo: Photo };
    expect((await w.ask(`/api/photos/${photo.photo}/picture`)).headers.get("content-type")).toBe("image/png");
    const page = await send(w, PHOTOS, "<html><script>alert(1)</script>", "image/png");
    expect(page.status).toBe(422);
    expect(((await page.json()) as { refusals: { code: string }[] }).refusals[0]?.code).toBe("not-a-photo");
    expect((await send(w, PHOTOS, PNG, "image/svg+xml")).status).toBe(415);
    expect((await send(w, "/api/documents/donor/q9/photos", PNG, "image/png")).status).toBe(404);
    expect((await w.ask("/api/photos/../picture")).status).toBe(404);
    expect((await w.ask(`/api/photos/${"0".repeat(20)}/picture`)).status).toBe(404);
  });

  it("has a limit of its own, far above that of other writes", async () => {
    const w = await serving();
    expect((await send(w, PHOTOS, new Uint8Array(12_500_000), "image/jpeg")).status).toBe(422);
    expect((await send(w, PHOTOS, new Uint8Array(13_000_001), "image/jpeg")).status).toBe(413);
    expect((await w.post("/api/documents", `{"text":"${"x".repeat(2_000_000)}"}`)).status).toBe(413);
  });

  it("takes one away so that it can be put back", async () => {
    const w = await serving();
    const { photo } = (await (await send(w, PHOTOS, JPEG, "image/jpeg")).json()) as { photo: Photo };
    const gone = await w.ask(`/api/photos/${photo.photo}`, { method: "DELETE" });
    expect(((await gone.json()) as { photo: Photo }).photo.takenAwayAt).not.toBeNull();
    const back = await w.post(`/api/photos/${photo.photo}`, { takenAway: false, caption: "dusty" });
    expect(((await back.json()) as { photo: Photo }).photo).toEqual({ ...photo, caption: "dusty" });
    const foreign = await w.ask(`/api/photos/${photo.photo}`, {
      method: "DELETE",
      headers: { origin: "http://elsewhere.example" },
    });
    expect(foreign.status).toBe(403);
  });
});

describe("archives over HTTP", () => {
  it("gives everything, and takes it in elsewhere after a look", async () => {
    const [here, there] = [await serving(), await serving()];
    await send(here, PHOTOS, JPEG, "image/jpeg");
    await here.post("/api/documents/donor/q1/edits", { path: ["price"], value: 77, revision: 1 });
    const archive = await here.ask("/api/archive");
    expect(archive.headers.get("content-type")).toBe("application/zip");
    expect(archive.headers.get("content-disposition")).toBe('attachment; filename="workshop.zip"');
    const bytes = new Uint8Array(await archive.arrayBuffer());
    const before = await (await there.ask("/api/documents")).text();
    const look = (await (await send(there, "/api/archive?label=w.zip", bytes, "application/zip")).json()) as {
      kind: string;
      undecided: unknown[];
    };
    expect(look).toMatchObject({ kind: "plan", undecided: [{ kind: "donor", id: "q1" }] });
    expect(await (await there.ask("/api/documents")).text()).toBe(before);
    const taken = await send(
      there,
      "/api/archive?label=w.zip&take=yes&choose=donor/q1=take-theirs",
      bytes,
      "application/zip",
    );
    expect(taken.status).toBe(200);
    const donor = (await (await there.ask("/api/documents/donor/q1")).json()) as { text: string };
    expect(donor.text).toContain("price: 77");
    expect(((await (await there.ask(PHOTOS)).json()) as unknown[]).length).toBe(1);
  });

  it("refuses what differs without a choice, and what is no archive", async () => {
    const w = await serving();
    const text = (await (await w.ask("/api/documents/donor/q1/export")).text()).replace("price: 30", "price: 31");
    const differs = await send(w, "/api/archive?label=d.yaml&take=yes", text, "text/yaml");
    expect([differs.status, ((await differs.json()) as { refusals: { code: string }[] }).refusals[0]?.code]).toEqual([
      422,
      "import-differs",
    ]);
    expect((await send(w, "/api/archive?label=d.zip", "PK nothing", "application/zip")).status).toBe(422);
    expect((await send(w, "/api/archive?label=d.zip", new Uint8Array([0xff, 0xfe]), "application/zip")).status).toBe(
      422,
    );
    expect((await send(w, "/api/archive?label=d.zip&choice=guess", "x", "text/yaml")).status).toBe(400);
    expect((await w.ask("/api/archive?build=nowhere")).status).toBe(404);
  });
});
