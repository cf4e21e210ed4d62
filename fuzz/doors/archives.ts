/** What comes in by any archive? What the one that we made holds, all of it; or nothing, with the reasons. */
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { isDeepStrictEqual } from "node:util";
import { openWorkshop, type Workshop } from "@coldset/store";
import fc from "fast-check";
import { unzipSync } from "fflate";
import { main } from "../../cli/main.js";
import { testIo } from "../../cli/test-io.js";
import { jpegWith, PNG } from "../../store/test-pictures.js";
import { accepted, type Door, mustHold, refusedAs, type Went } from "../door.js";
import { archiveBytes, type Files, filesOf, type MangledArchive, mangledArchive } from "../inputs/mangled-archive.js";
import { describedRefusals } from "../inputs/refusal-faults.js";
import { DEMOS } from "../place.js";

interface ArchiveInput {
  readonly archive: MangledArchive;
  /** As a page sends it, as the command reads it from the disk, or through the whole command. */
  readonly by: "bytes" | "file" | "command";
  /** Also taken in, into a workshop with nothing in it. */
  readonly take: boolean;
}

/** One archive of small documents and one of everything for each demo, and one of all demos together. */
const SMALL = DEMOS.length;
const ALL = 2 * DEMOS.length + 1;
const inputs: fc.Arbitrary<ArchiveInput> = fc.record({
  archive: mangledArchive(SMALL, ALL),
  by: fc.constantFrom(...Array<"bytes">(8).fill("bytes"), ...Array<"file">(8).fill("file"), "command"),
  take: fc.nat(4).map((n) => n === 0),
});

/** No unpacking may take more than this at once; what the bounds allow for one text is 256 MB, and it is copied once. */
const MOST_MB = 900;

let folder = "";
let bases: readonly Files[] = [];
let workshop: Workshop | undefined;
let fresh = 0;

async function opened(name: string): Promise<Workshop> {
  let tick = Date.parse("2026-05-01T08:00:00Z");
  const now = () => {
    tick += 1000;
    return new Date(tick);
  };
  const result = await openWorkshop(path.join(folder, name), { now });
  if (result.kind === "refused") throw new Error(JSON.stringify(result.refusals));
  return result.workshop;
}

const good = <T extends { readonly kind: string }>(result: T): Exclude<T, { readonly kind: "refused" }> => {
  if (result.kind === "refused") throw new Error(JSON.stringify(result));
  return result as Exclude<T, { readonly kind: "refused" }>;
};

/** A workshop of these texts with edits, an undo, a version and photos, as one archive. */
async function base(name: string, texts: readonly string[], builds: readonly string[]): Promise<Files> {
  const w = await opened(name);
  for (const [i, text] of texts.entries()) good(await w.putText(text, `${name}-${i}.yaml`));
  for (const { kind, id } of await w.listDocuments()) {
    if (kind === "rider") good(await w.edit(kind, id, ["inseam"], 805));
    if (kind !== "rider" && kind !== "donor") continue;
    for (const [n, bytes] of [jpegWith(`${name} ${id}`), PNG].entries())
      good(await w.photos.add({ kind, id, place: null, caption: `seen ${n}`, bytes }));
  }
  for (const build of builds) {
    good(await w.nameVersion(build, "before the swap"));
    good(await w.edit("build", build, ["title"], "another title"));
    good(await w.undo(build));
  }
  const chunks: Buffer[] = [];
  for await (const chunk of good(await w.archive.make()).stream) chunks.push(chunk as Buffer);
  await w.close();
  return sameEveryTime(unzipSync(new Uint8Array(Buffer.concat(chunks))));
}

/** The names of photos are drawn at random when they are taken in; here each run must have the same. */
function sameEveryTime(files: Files): Files {
  let n = 0;
  const lines = Buffer.from(files["photos.jsonl"] ?? [])
    .toString("utf8")
    .replace(/"photo":"[0-9a-f]{20}"/g, () => `"photo":"${String(n++).padStart(20, "0")}"`);
  const renamed = { ...files, "photos.jsonl": new Uint8Array(Buffer.from(lines, "utf8")) };
  return filesOf(renamed, { steps: [], refit: true });
}

async function open(): Promise<void> {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-fuzz-"));
  const made: Files[] = [];
  for (const { id, text } of DEMOS) {
    const small = text.split(/^(?=---$)/m).filter((t) => /^kind: (rider|intent|shop|route|prices)$/m.test(t));
    made.push(await base(`small-${id}`, [small.join("")], []));
  }
  for (const { id, text } of DEMOS) made.push(await base(id, [text], [id]));
  const texts = DEMOS.map((d) => d.text);
  const ids = DEMOS.map((d) => d.id);
  made.push(await base("all", texts, ids));
  bases = made;
  await anew();
}

async function anew(): Promise<void> {
  await workshop?.close();
  fs.rmSync(path.join(folder, `into-${fresh}`), { recursive: true, force: true });
  fresh += 1;
  workshop = await opened(`into-${fresh}`);
}

async function shut(): Promise<void> {
  await workshop?.close();
  workshop = undefined;
  fs.rmSync(folder, { recursive: true, force: true });
}

async function put({ archive: recipe, by, take }: ArchiveInput): Promise<Went> {
  const w = workshop;
  const from = bases[recipe.base % bases.length];
  if (w === undefined || from === undefined) throw new Error("no workshop");
  const bytes = archiveBytes(from, recipe);
  const file = path.join(folder, "copy.zip");
  if (by !== "bytes") fs.writeFileSync(file, bytes);
  const before = fs.readdirSync(folder).length;
  const memory = process.resourceUsage().maxRSS;
  const source = { archive: by === "bytes" ? { bytes } : { file }, label: "copy.zip" };
  const plan = await w.archive.preview(source);
  mustHold((await w.allDocuments()).length === 0, () => "looking at it took something in");
  if (by === "command") await byTheCommand(file, plan.kind);
  let went: Went;
  if (plan.kind === "refused") {
    describedRefusals(plan.refusals);
    if (take) {
      const taken = await w.archive.take(source);
      mustHold(
        taken.kind === "refused" && isDeepStrictEqual(taken.refusals, plan.refusals),
        () => "taken in other words than looked at",
      );
      mustHold((await w.allDocuments()).length === 0, () => "refused, and yet something was taken in");
    }
    went = refusedAs(plan.refusals[0]?.code ?? "");
  } else {
    const files = filesOf(from, recipe);
    const meant = documentsOf(files);
    const named = plan.documents.map((d) => `${d.kind} ${d.id}`).sort();
    mustHold(isDeepStrictEqual(named, [...meant.keys()].sort()), () => `it names ${named.join(", ")}`);
    if (take) await takenIn(w, source, meant);
    went = accepted(take ? "taken in" : "looked at");
  }
  const grown = (process.resourceUsage().maxRSS - memory) / 1024;
  mustHold(grown < MOST_MB, () => `it took ${Math.round(grown)} MB`);
  mustHold(fs.readdirSync(folder).length === before, () => "a file was left beside the records");
  return went;
}

interface Meant {
  readonly text: string;
  readonly label: unknown;
  readonly updatedAt: unknown;
  readonly revision: unknown;
}

/** What the packed files say by a plain reading of the manifest: nothing of the bytes behind them may have changed it. */
function documentsOf(files: Files): ReadonlyMap<string, Meant> {
  const text = (name: string) => Buffer.from(files[name] ?? []).toString("utf8");
  const manifest = JSON.parse(text("manifest.json")) as {
    readonly documents: readonly (Omit<Meant, "text"> & Readonly<Record<"kind" | "id" | "file", string>>)[];
  };
  return new Map(
    manifest.documents.map(({ kind, id, label, updatedAt, revision, file }) => [
      `${kind} ${id}`,
      { text: text(file), label, updatedAt, revision },
    ]),
  );
}

async function takenIn(
  w: Workshop,
  source: Parameters<Workshop["archive"]["take"]>[0],
  meant: ReadonlyMap<string, Meant>,
): Promise<void> {
  const taken = await w.archive.take(source);
  mustHold(
    taken.kind === "imported",
    () => `looked at and refused when taken in: ${JSON.stringify(taken).slice(0, 300)}`,
  );
  const here = await w.allDocuments();
  mustHold(here.length === meant.size, () => `${meant.size} documents became ${here.length}`);
  for (const { kind, id, text, label, updatedAt, revision } of here) {
    const was = meant.get(`${kind} ${id}`);
    mustHold(
      isDeepStrictEqual({ text, label, updatedAt, revision }, was),
      () => `${kind} ${id} came in as ${JSON.stringify({ label, updatedAt, revision, same: text === was?.text })}`,
    );
    const last = (await w.history(kind, id)).at(-1);
    mustHold(last?.after === text && last.revision === revision, () => `the history of ${kind} ${id} ends elsewhere`);
  }
  await anew();
}

async function byTheCommand(file: string, kind: string): Promise<void> {
  const io = testIo({ env: { COLDSET_DATA: path.join(folder, "none") } });
  const code = await main(["import", file, "--json"], io);
  // What does not begin as a zip does is read as a text by the command.
  if (kind !== "refused") mustHold(code === 0, () => `ended with ${code}: ${io.err().slice(0, 300)}`);
  else mustHold(code === 2, () => `ended with ${code}: ${(io.out() + io.err()).slice(0, 300)}`);
  mustHold(!fs.existsSync(path.join(folder, "none")), () => "looking at it made a workshop");
}

export const archives: Door<ArchiveInput> = {
  name: "archives",
  holds:
    "an archive is taken in as it was made, or refused with reasons and nothing of it taken; nothing lands outside",
  inputs,
  open,
  shut,
  put,
};
