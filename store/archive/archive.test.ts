import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import fc from "fast-check";
import { type Zippable, zipSync } from "fflate";
import { afterEach, describe, expect, it } from "vitest";
import { openWorkshop } from "../open-workshop.js";
import { sha256Of } from "../photos.js";
import { JPEG, jpegWith, PNG } from "../test-pictures.js";
import type { ImportSource, Workshop } from "../workshop.js";
import { openZip } from "./zip-entries.js";

const QUAYSIDE = fs.readFileSync(new URL("../../demo/quayside.yaml", import.meta.url), "utf8");
const folders: string[] = [];
const opened: Workshop[] = [];

const open = async () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-archive-"));
  folders.push(folder);
  let tick = Date.parse("2026-05-01T08:00:00Z") + opened.length * 3_600_000;
  const result = await openWorkshop(folder, {
    now: () => {
      tick += 1000;
      return new Date(tick);
    },
  });
  if (result.kind === "refused") throw new Error(JSON.stringify(result.refusals));
  opened.push(result.workshop);
  return result.workshop;
};
const good = <T extends { readonly kind: string }>(result: T): Exclude<T, { readonly kind: "refused" }> => {
  if (result.kind === "refused") throw new Error(JSON.stringify(result));
  return result as Exclude<T, { readonly kind: "refused" }>;
};
/** A workshop with edits, an undo, a named version and photos. */
const worked = async () => {
  const w = await open();
  good(await w.putText(QUAYSIDE, "quayside.yaml"));
  good(await w.edit("donor", "q1", ["measured", "chainstay"], 441));
  good(await w.nameVersion("quayside", "before the swap"));
  good(await w.edit("donor", "q1", ["measured", "top_tube_cc"], 551));
  good(await w.undo("quayside"));
  for (const [bytes, place] of [
    [JPEG, null],
    [PNG, "q30"],
    [JPEG, "q02"],
  ] as const)
    good(await w.photos.add({ kind: "donor", id: "q1", place, caption: "seen", bytes }));
  const [first] = await w.photos.of("donor", "q1");
  good(await w.photos.change(first?.photo ?? "", { takenAway: true }));
  return w;
};
const bytesOf = async (w: Workshop, build?: string) => {
  const made = good(await w.archive.make(build));
  const chunks: Buffer[] = [];
  for await (const chunk of made.stream) chunks.push(chunk as Buffer);
  return new Uint8Array(Buffer.concat(chunks));
};
const source = (bytes: Uint8Array, label = "copy.zip"): ImportSource => ({ archive: { bytes }, label });
/** All files of an archive but the manifest's time. */
const filesOf = async (bytes: Uint8Array) => {
  const zip = await openZip({ bytes }, "test");
  if (zip.kind === "refused") throw new Error(JSON.stringify(zip.refusals));
  const files: Record<string, Uint8Array> = {};
  for (const name of zip.names) files[name] = await zip.read(name, 1e9);
  zip.close();
  return files;
};
const textOf = (bytes: Uint8Array | undefined) => new TextDecoder().decode(bytes);
const told = async (bytes: Uint8Array) => {
  const files = await filesOf(bytes);
  return Object.fromEntries(
    Object.entries(files).map(([name, content]) => [
      name,
      name === "manifest.json" ? { ...(JSON.parse(textOf(content)) as object), made: "" } : sha256Of(content),
    ]),
  );
};
/** Everything that can be asked of a workshop about its records. */
const state = async (w: Workshop) => {
  const documents = await w.allDocuments();
  const histories = [];
  const photos = [];
  for (const { kind, id } of documents) {
    histories.push(await w.history(kind, id));
    photos.push(await w.photos.of(kind, id));
  }
  return {
    documents,
    histories,
    photos,
    build: await w.buildHistory("quayside"),
    versions: await w.versions("quayside"),
  };
};
/** `mode` of the files, as Unix has it; left out: a plain file. */
const zipOf = async (files: Readonly<Record<string, Uint8Array | string>>, mode = 0o100_644) =>
  zipSync(
    Object.fromEntries(
      Object.entries(files).map(([name, content]) => [
        name,
        [new Uint8Array(Buffer.from(content as string)), { os: 3, attrs: mode * 65_536 }] as const,
      ]),
    ) as Zippable,
  );
/** The bytes with every occurrence of one name replaced by another of the same length. */
const renamed = (bytes: Uint8Array, from: string, to: string) =>
  new Uint8Array(Buffer.from(Buffer.from(bytes).toString("latin1").replaceAll(from, to), "latin1"));
const codesOf = async (w: Workshop, bytes: Uint8Array) => {
  const before = await state(w);
  const preview = await w.archive.preview(source(bytes));
  const taken = await w.archive.take(source(bytes), { forAll: "take-theirs" });
  expect(await state(w)).toEqual(before);
  if (preview.kind !== "refused" || taken.kind !== "refused") throw new Error("it was not refused");
  expect(taken.refusals).toEqual(preview.refusals);
  return preview.refusals.map((r) => r.code);
};
/** A whole archive with some of its files changed, and a manifest that fits them. */
const rewritten = async (w: Workshop, change: (files: Record<string, Uint8Array | string>) => void) => {
  const files: Record<string, Uint8Array | string> = await filesOf(await bytesOf(w));
  change(files);
  const manifest = JSON.parse(textOf(files["manifest.json"] as Uint8Array)) as { files: { file: string }[] };
  manifest.files = Object.entries(files)
    .filter(([file]) => file !== "manifest.json")
    .map(([file, content]) => ({ file, bytes: Buffer.from(content as string).length, sha256: sha256Of(content) }));
  return zipOf({ ...files, "manifest.json": JSON.stringify(manifest) });
};

afterEach(async () => {
  for (const workshop of opened.splice(0)) await workshop.close();
  for (const folder of folders.splice(0)) fs.rmSync(folder, { recursive: true, force: true });
});

describe("an archive", () => {
  it("holds plain documents as they were written, photos as they came, and a SHA-256 of each file", async () => {
    const w = await worked();
    const files = await filesOf(await bytesOf(w));
    expect(textOf(files["documents/donor/q1.yaml"])).toBe(await w.exportText("donor", "q1"));
    expect(Object.keys(files).filter((f) => f.startsWith("documents/"))).toHaveLength(8);
    const pictures = Object.entries(files).filter(([f]) => f.startsWith("photos/"));
    // Three photos, two of them of the same bytes.
    expect(pictures.map(([f]) => path.extname(f)).sort()).toEqual([".jpg", ".png"]);
    expect(pictures.some(([, bytes]) => Buffer.compare(bytes, JPEG) === 0)).toBe(true);
    const manifest = JSON.parse(textOf(files["manifest.json"])) as { files: { file: string; sha256: string }[] };
    for (const { file, sha256 } of manifest.files) expect(sha256Of(files[file] ?? "")).toBe(sha256);
    expect(manifest.files).toHaveLength(Object.keys(files).length - 1);
  });

  it("brought into an empty workshop gives the same documents, history, versions and photos, and the same archive", async () => {
    const first = await worked();
    const bytes = await bytesOf(first);
    const second = await open();
    const plan = good(await second.archive.preview(source(bytes)));
    expect(plan).toMatchObject({
      undecided: [],
      photos: { fresh: 3, there: 0 },
      versions: { fresh: 1, there: 0, left: [] },
    });
    expect(plan.documents.map((d) => d.change)).toEqual(Array(8).fill("new"));
    expect(await second.listDocuments()).toEqual([]);
    good(await second.archive.take(source(bytes)));
    const [was, is] = [await state(first), await state(second)];
    expect(is).toEqual(was);
    expect(await told(await bytesOf(second))).toEqual(await told(bytes));
    // What was taken back there can be put back here.
    expect((await second.redo("quayside")).kind).toBe("turned");
  });

  it("taken in twice changes nothing the second time", async () => {
    const w = await worked();
    const bytes = await bytesOf(w);
    const before = await state(w);
    const again = good(await w.archive.take(source(bytes)));
    expect(again.plan.documents.every((d) => d.change === "same")).toBe(true);
    expect(again.plan.photos).toEqual({ fresh: 0, there: 3 });
    expect(await state(w)).toEqual(before);
  });

  it("of one build holds that build and what it names", async () => {
    const w = await worked();
    good(await w.putText("kind: route\nversion: 1\nid: other\nsections: [{ km: 1, grade: 0 }]\n", "other.yaml"));
    const names = Object.keys(await filesOf(await bytesOf(w, "quayside")));
    expect(names.filter((n) => n.startsWith("documents/"))).toHaveLength(8);
    expect(names).not.toContain("documents/route/other.yaml");
    const nothing = await w.archive.make("nowhere");
    expect(nothing.kind === "refused" && nothing.refusals[0]?.code).toBe("not-found");
  });

  it("survives any run of edits, undos, names and photos", async () => {
    const step = fc.oneof(
      fc.record({ do: fc.constant("edit" as const), n: fc.integer({ min: 400, max: 480 }) }),
      fc.record({ do: fc.constant("cost" as const), n: fc.integer({ min: 0, max: 90 }) }),
      fc.record({
        do: fc.constantFrom("undo" as const, "redo" as const, "name" as const, "photo" as const),
        n: fc.nat(999),
      }),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 14 }), async (steps) => {
        const w = await open();
        good(await w.putText(QUAYSIDE, "quayside.yaml"));
        for (const [i, s] of steps.entries()) {
          if (s.do === "edit") await w.edit("donor", "q1", ["measured", "chainstay"], s.n);
          else if (s.do === "cost") await w.edit("donor", "q1", ["price"], s.n);
          else if (s.do === "undo") await w.undo("quayside");
          else if (s.do === "redo") await w.redo("quayside");
          else if (s.do === "name") await w.nameVersion("quayside", `v ${i} ${s.n}`);
          else
            await w.photos.add({ kind: "donor", id: "q1", place: null, caption: `${s.n}`, bytes: jpegWith(`${s.n}`) });
        }
        const bytes = await bytesOf(w);
        const other = await open();
        good(await other.archive.take(source(bytes)));
        expect(await state(other)).toEqual({ ...(await state(w)) });
        expect(await told(await bytesOf(other))).toEqual(await told(bytes));
      }),
      { seed: 20_260_501, numRuns: 5 },
    );
  });
});

describe("documents that differ", () => {
  const two = async () => {
    const theirs = await worked();
    good(await theirs.edit("donor", "q1", ["price"], 45));
    const bytes = await bytesOf(theirs);
    const mine = await open();
    good(await mine.putText(QUAYSIDE, "quayside.yaml"));
    good(await mine.edit("donor", "q1", ["price"], 12));
    return { theirs, mine, bytes };
  };

  it("are named with what differs, and nothing is taken until somebody chooses", async () => {
    const { mine, bytes } = await two();
    const before = await state(mine);
    const plan = good(await mine.archive.preview(source(bytes)));
    expect(plan.undecided).toEqual([{ kind: "donor", id: "q1" }]);
    const donor = plan.documents.find((d) => d.kind === "donor");
    expect(donor).toMatchObject({ change: "differs", histories: "apart", choice: null });
    expect(donor?.difference.values).toContainEqual({ kind: "changed", place: "price", was: "12", now: "45" });
    const refused = await mine.archive.take(source(bytes));
    expect(refused.kind === "refused" && refused.refusals.map((r) => [r.code, r.at])).toEqual([
      ["import-differs", "donor q1"],
    ]);
    expect(await state(mine)).toEqual(before);
  });

  it("stay as they are with keep-mine; photos that are missing come in", async () => {
    const { mine, bytes } = await two();
    const before = await mine.history("donor", "q1");
    good(await mine.archive.take(source(bytes), { forAll: "keep-mine" }));
    expect(await mine.history("donor", "q1")).toEqual(before);
    expect(await mine.photos.of("donor", "q1")).toHaveLength(3);
  });

  it("get one new revision with take-theirs, which can be taken back", async () => {
    const { mine, theirs, bytes } = await two();
    const before = await mine.exportText("donor", "q1");
    good(await mine.archive.take(source(bytes), { byDocument: { "donor q1": "take-theirs" } }));
    expect(await mine.exportText("donor", "q1")).toBe(await theirs.exportText("donor", "q1"));
    expect((await mine.history("donor", "q1")).at(-1)).toMatchObject({ revision: 3, before });
    expect((await mine.undo("quayside")).kind).toBe("turned");
    expect(await mine.exportText("donor", "q1")).toBe(before);
  });

  it("come in beside mine as new, and a build names its renamed documents", async () => {
    const { mine, theirs, bytes } = await two();
    good(await theirs.edit("build", "quayside", ["title"], "Their title"));
    const later = await bytesOf(theirs);
    good(await mine.archive.take(source(later), { forAll: "as-new", suffix: "-b" }));
    expect((await mine.exportText("build", "quayside-b"))?.match(/^(id|donor|rider):.*$/gm)).toEqual([
      "id: quayside-b",
      "donor: q1-b",
      "rider: r1",
    ]);
    expect(await mine.exportText("donor", "q1-b")).toBe(
      (await theirs.exportText("donor", "q1"))?.replace(/^id: q1$/m, "id: q1-b"),
    );
    expect(await mine.photos.of("donor", "q1-b")).toHaveLength(3);
    const twice = await mine.archive.take(source(later), { forAll: "as-new", suffix: "-b" });
    expect(twice.kind).toBe("imported");
    const clash = await mine.archive.take(source(bytes), { forAll: "as-new", suffix: "" });
    expect(clash.kind === "refused" && clash.refusals[0]?.code).toBe("import-name-taken");
    const bad = await mine.archive.take(source(bytes), { forAll: "as-new", suffix: " b" });
    expect(bad.kind).toBe("refused");
  });

  it("go on with their own history where mine is its beginning", async () => {
    const theirs = await worked();
    const mine = await open();
    good(await mine.archive.take(source(await bytesOf(theirs))));
    good(await theirs.edit("donor", "q1", ["price"], 45));
    good(await theirs.undo("quayside"));
    good(await theirs.edit("donor", "q1", ["price"], 46));
    const bytes = await bytesOf(theirs);
    const plan = good(await mine.archive.preview(source(bytes)));
    expect(plan.documents.find((d) => d.kind === "donor")?.histories).toBe("theirs-goes-on");
    good(await mine.archive.take(source(bytes), { forAll: "take-theirs" }));
    expect(await state(mine)).toEqual(await state(theirs));
    const back = good(await theirs.archive.preview(source(await bytesOf(mine))));
    expect(back.documents.every((d) => d.change === "same")).toBe(true);
  });

  it("come from plain texts too", async () => {
    const w = await worked();
    const text = QUAYSIDE.replace("price: 30", "price: 31");
    const plan = good(await w.archive.preview({ text, label: "quayside.yaml" }));
    expect(plan.undecided).toEqual([{ kind: "donor", id: "q1" }]);
    good(await w.archive.take({ text, label: "quayside.yaml" }, { forAll: "take-theirs" }));
    expect(await w.exportText("donor", "q1")).toContain("price: 31");
    const bad = await w.archive.preview({ text: "kind: donor\n", label: "bad.yaml" });
    expect(bad.kind).toBe("refused");
  });
});

describe("an archive that is not to be trusted", () => {
  const MANIFEST_OF_NOTHING = JSON.stringify({
    format: "coldset-archive",
    version: 1,
    made: "2026-05-01T08:00:00.000Z",
    build: null,
    documents: [],
    files: [],
  });

  it("is refused where a name leads out of it", async () => {
    const w = await worked();
    const plain = await zipOf({ "manifest.json": MANIFEST_OF_NOTHING, "aa/bb/evil.txt": "x" });
    for (const name of [
      "../../evil.txt",
      "/a/bb/evil.txt",
      "C:/bb/evil.txt",
      "aa\\bb/evil.txt",
      "aa//b/evil.txt",
      "aa/bb/.vil.txt",
    ]) {
      expect(await codesOf(w, renamed(plain, "aa/bb/evil.txt", name)), name).toHaveLength(1);
    }
  });

  it("is refused with two files of one name, also in other capitals", async () => {
    const w = await worked();
    const plain = await zipOf({ "manifest.json": MANIFEST_OF_NOTHING, "aa.txt": "x", "ab.txt": "y", "AC.txt": "z" });
    expect(await codesOf(w, renamed(plain, "ab.txt", "aa.txt"))).toContain("archive-twice");
    expect(await codesOf(w, renamed(plain, "ab.txt", "ac.txt"))).toContain("archive-twice");
  });

  it("is refused with a link in it", async () => {
    const w = await worked();
    const link = await zipOf({ "manifest.json": "/etc/passwd" }, 0o120_777);
    expect(await codesOf(w, link)).toEqual(["archive-link"]);
  });

  it("is refused where it would become too large, before it is unpacked", async () => {
    const w = await worked();
    const bomb = await zipOf({ "manifest.json": MANIFEST_OF_NOTHING, "changes.jsonl": new Uint8Array(30_000_000) });
    expect(bomb.length).toBeLessThan(100_000);
    expect(await codesOf(w, bomb)).toEqual(["archive-bomb"]);
  });

  it("is refused where a file is larger than it says", async () => {
    const w = await worked();
    // Declared size 5000 in the central directory (offset 24 of its header, PKWARE APPNOTE 4.3.12) becomes 50.
    const listing = await zipOf({
      "manifest.json": MANIFEST_OF_NOTHING.replace(
        '"files":[]',
        `"files":[{"file":"changes.jsonl","bytes":50,"sha256":"${sha256Of("x".repeat(50))}"}]`,
      ),
      "changes.jsonl": "x".repeat(5000),
    });
    const lying = listing.slice();
    const lie = new DataView(lying.buffer);
    for (let at = 0; at + 46 < lying.length; at += 1) {
      if (lie.getUint32(at, true) === 0x02014b50 && lie.getUint32(at + 24, true) === 5000)
        lie.setUint32(at + 24, 50, true);
    }
    expect(await codesOf(w, lying)).toEqual(["archive-broken"]);
  });

  it("is refused where a file is not what it was, is missing, or is too many", async () => {
    const w = await worked();
    const files = await filesOf(await bytesOf(w));
    const donor = "documents/donor/q1.yaml";
    const { [donor]: gone, ...without } = files;
    expect(await codesOf(w, await zipOf({ ...files, [donor]: textOf(gone).replace("441", "442") }))).toContain(
      "archive-changed",
    );
    expect(await codesOf(w, await zipOf(without))).toEqual(["archive-missing"]);
    expect(await codesOf(w, await zipOf({ ...files, "notes.txt": "x" }))).toEqual(["archive-not-listed"]);
    const photo = Object.keys(files).find((f) => f.endsWith(".png")) ?? "";
    expect(await codesOf(w, await zipOf({ ...files, [photo]: JPEG }))).toContain("archive-changed");
  });

  it("is refused where it hangs together with its manifest but not with itself", async () => {
    const w = await worked();
    const donor = "documents/donor/q1.yaml";
    const history = "history/donor/q1.jsonl";
    const cases: readonly [string, (files: Record<string, Uint8Array | string>) => void, string][] = [
      [
        "another text than its history ends with",
        (f) => {
          f[donor] = textOf(f[donor] as Uint8Array).replace("441", "442");
        },
        "archive-broken",
      ],
      [
        "a history with a hole",
        (f) => {
          f[history] = textOf(f[history] as Uint8Array).replace(/^.*\n/, "");
        },
        "archive-broken",
      ],
      [
        "a change that is not there",
        (f) => {
          f["changes.jsonl"] = "";
        },
        "archive-broken",
      ],
      [
        "a line that is none of ours",
        (f) => {
          f["changes.jsonl"] = "{}\n";
        },
        "archive-broken",
      ],
      [
        "a version of nothing",
        (f) => {
          f["versions.jsonl"] = textOf(f["versions.jsonl"] as Uint8Array).replace(/"revision":2/, '"revision":99');
        },
        "archive-broken",
      ],
      [
        "a photo of nothing",
        (f) => {
          f["photos.jsonl"] = textOf(f["photos.jsonl"] as Uint8Array).replace('"id":"q1"', '"id":"q7"');
        },
        "archive-broken",
      ],
    ];
    for (const [what, change, code] of cases)
      expect(await codesOf(w, await rewritten(w, change)), what).toContain(code);
    const page = "<html><script>alert(1)</script></html>";
    const asPicture = await rewritten(w, (f) => {
      const file = Object.keys(f).find((n) => n.endsWith(".png")) ?? "";
      f["photos.jsonl"] = textOf(f["photos.jsonl"] as Uint8Array).replaceAll(sha256Of(f[file] ?? ""), sha256Of(page));
      f[file] = page;
    });
    expect(await codesOf(w, asPicture)).toEqual(["not-a-photo"]);
  });

  it("is refused where it is cut off, no zip, a zip of something else, or of a newer program", async () => {
    const w = await worked();
    const bytes = await bytesOf(w);
    for (const part of [0, 10, bytes.length / 2, bytes.length - 5]) {
      expect(await codesOf(w, bytes.slice(0, Math.floor(part)))).toEqual(["archive-broken"]);
    }
    expect(await codesOf(w, new TextEncoder().encode("kind: donor"))).toEqual(["archive-broken"]);
    expect(await codesOf(w, await zipOf({ "readme.txt": "hello" }))).toEqual(["archive-foreign"]);
    expect(
      await codesOf(w, await zipOf({ "manifest.json": MANIFEST_OF_NOTHING.replace('"version":1', '"version":2') })),
    ).toEqual(["archive-newer"]);
    expect(await codesOf(w, await zipOf({ "manifest.json": "[".repeat(50_000) }))).toEqual(["archive-broken"]);
  });

  it("never does anything but come in whole or be refused, whatever byte is changed", async () => {
    const w = await worked();
    const bytes = await bytesOf(w);
    const other = await open();
    await fc.assert(
      fc.asyncProperty(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }), async (at, by) => {
        const bad = bytes.slice();
        bad[at] = ((bad[at] ?? 0) + by) % 256;
        const result = await other.archive.preview(source(bad));
        // A byte that nobody reads (a time, an attribute) changes nothing; all others are noticed.
        if (result.kind === "plan") expect(result.documents.map((d) => d.change)).toEqual(Array(8).fill("new"));
        else expect(result.refusals.length).toBeGreaterThan(0);
        expect(await other.listDocuments()).toEqual([]);
      }),
      { seed: 7, numRuns: 25 },
    );
  });
});
