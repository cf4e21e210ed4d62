/**
 * What does this archive hold? Every file is compared with the manifest and its SHA-256, every line read by its schema,
 * every document as if a person had put it in, every picture by its bytes. One thing wrong, and nothing of it is taken.
 */

import type { Refusal } from "@coldset/core/quantity";
import { say as sayText } from "@coldset/core/texts";
import { loadText, TEXT_LIMIT } from "@coldset/core/workshop";
import type { z } from "zod";
import { sha256Of, wordRefusals } from "../photos.js";
import { PHOTO_LIMIT_BYTES, sniffPicture } from "../sniff-picture.js";
import { labelRefusal, textRefusal } from "../text-refusal.js";
import type { StoreRefused } from "../workshop.js";
import {
  CHANGES,
  type ChangeLine,
  changeLineSchema,
  type HistoryLine,
  historyLineSchema,
  LIMITS,
  MANIFEST,
  type Manifest,
  manifestSchema,
  PHOTOS,
  type PhotoRow,
  photoRowSchema,
  VERSIONS,
  type VersionLine,
  versionLineSchema,
} from "./archive-form.js";
import type { Incoming, IncomingDocument, IncomingPicture } from "./incoming.js";
import { BrokenZip, broken, no, type OpenZip, openZip, type ZipSource } from "./zip-entries.js";

const MOST_TOLD = 20;

export async function readArchive(source: ZipSource, label: string): Promise<Incoming | StoreRefused> {
  const unfit = labelRefusal(label);
  if (unfit !== undefined) return { kind: "refused", refusals: [unfit] };
  const zip = await openZip(source, label);
  if (zip.kind === "refused") return zip;
  try {
    const read = await new ArchiveReader(zip, label).read();
    if (read.kind === "refused") zip.close();
    return read;
  } catch (cause) {
    zip.close();
    if (cause instanceof BrokenZip) return { kind: "refused", refusals: [broken(label, cause)] };
    throw cause;
  }
}

/** What the schema says by itself is for programs ("Invalid input: expected object, received undefined"). */
const inWords = (message = "") =>
  message === "" || /^Invalid |^Unrecognized |^Too /.test(message)
    ? sayText("store.read-archive.cannot-be-read")
    : message;

class ArchiveReader {
  readonly #zip: OpenZip;
  readonly #label: string;
  readonly #refusals: Refusal[] = [];
  #textBytes = 0;

  constructor(zip: OpenZip, label: string) {
    this.#zip = zip;
    this.#label = label;
  }

  async read(): Promise<Incoming | StoreRefused> {
    const manifest = await this.#manifest();
    if (manifest === undefined) return this.#refused();
    const listed = new Map(manifest.files.map((f) => [f.file, f]));
    for (const name of this.#zip.names) {
      if (name !== MANIFEST && !listed.has(name))
        this.#say(
          "archive-not-listed",
          name,
          sayText("store.read-archive.files-that-the-manifest-lists"),
          sayText("store.read-archive.is-not-listed-in-its", { name, manifest: MANIFEST }),
        );
    }
    for (const name of listed.keys()) {
      if (!this.#zip.names.includes(name))
        this.#say(
          "archive-missing",
          name,
          sayText("store.read-archive.every-file-that-the-manifest-lists"),
          sayText("store.read-archive.is-listed-and-not-there", { name }),
        );
    }
    if (this.#refusals.length > 0) return this.#refused();
    const text = (name: string) => this.#text(name, listed);
    const changes = await this.#lines(await text(CHANGES), CHANGES, changeLineSchema);
    const versions = await this.#lines(await text(VERSIONS), VERSIONS, versionLineSchema);
    const photos = await this.#lines(await text(PHOTOS), PHOTOS, photoRowSchema);
    const documents: IncomingDocument[] = [];
    for (const { kind, id, label, revision, updatedAt, file, history } of manifest.documents) {
      const own = await text(file);
      const lines = await this.#lines(await text(history), history, historyLineSchema);
      if (own === undefined || lines === undefined) continue;
      this.#document({ kind, id, label, text: own, updatedAt, history: lines }, revision, file, history);
      documents.push({ kind, id, label, text: own, updatedAt, history: lines });
    }
    if (changes === undefined || versions === undefined || photos === undefined) return this.#refused();
    this.#related(documents, changes, versions, photos);
    const picture = (row: PhotoRow) => this.#picture(row, listed);
    const looked = new Set<string>();
    for (const row of photos) {
      if (this.#refusals.length > 0 || looked.has(row.file)) continue;
      looked.add(row.file);
      const found = await picture(row);
      if (found.kind === "refused") this.#refusals.push(...found.refusals);
    }
    if (this.#refusals.length > 0) return this.#refused();
    return {
      kind: "incoming",
      label: this.#label,
      documents,
      changes,
      versions,
      photos,
      picture: async (row) => {
        const found = await picture(row);
        return found.kind === "refused" ? found : found.picture;
      },
      close: () => this.#zip.close(),
    };
  }

  #say(code: string, given: unknown, allowed: string, message: string): void {
    if (this.#refusals.length < MOST_TOLD) this.#refusals.push(no(code, this.#label, given, allowed, message));
  }

  #refused(): StoreRefused {
    return { kind: "refused", refusals: this.#refusals };
  }

  async #manifest(): Promise<Manifest | undefined> {
    const bytes = await this.#zip.read(MANIFEST, LIMITS.manifestBytes);
    let plain: unknown;
    try {
      plain = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
    } catch (cause) {
      if (!(cause instanceof SyntaxError) && !(cause instanceof TypeError)) throw cause;
      this.#say(
        "archive-broken",
        MANIFEST,
        sayText("store.read-archive.json-in-utf-8"),
        sayText("store.read-archive.its-cannot-be-read", { manifest: MANIFEST }),
      );
      return undefined;
    }
    const version = plain !== null && typeof plain === "object" && "version" in plain ? plain.version : undefined;
    if (typeof version === "number" && version > 1) {
      this.#say(
        "archive-newer",
        version,
        sayText("store.read-archive.version-1"),
        sayText("store.read-archive.it-was-made-by-a-newer", { version }),
      );
      return undefined;
    }
    const read = manifestSchema.safeParse(plain);
    if (read.success) return read.data;
    for (const issue of read.error.issues.slice(0, MOST_TOLD)) {
      this.#say(
        "archive-broken",
        issue.path.join("."),
        sayText("store.read-archive.a-manifest-that-coldset-made"),
        `${MANIFEST}, ${issue.path.join(".")}: ${inWords(issue.message)}.`,
      );
    }
    return undefined;
  }

  /** One text file, its SHA-256 checked; undefined where it was refused. */
  async #text(name: string, listed: ReadonlyMap<string, Manifest["files"][number]>): Promise<string | undefined> {
    const entry = listed.get(name);
    if (entry === undefined) {
      this.#say(
        "archive-missing",
        name,
        sayText("store.read-archive.every-file-that-is-named"),
        sayText("store.read-archive.is-named-and-not-listed", { name }),
      );
      return undefined;
    }
    const bytes = await this.#zip.read(name, LIMITS.textBytes);
    this.#textBytes += bytes.length;
    if (this.#textBytes > LIMITS.allTextBytes)
      throw new BrokenZip(`its texts are more than ${LIMITS.allTextBytes / 1e6} MB`);
    if (bytes.length !== entry.bytes || sha256Of(bytes) !== entry.sha256) {
      this.#say(
        "archive-changed",
        name,
        sayText("store.read-archive.the-bytes-that-the-manifest-names"),
        sayText("store.read-archive.is-not-what-it-was-when", { name }),
      );
      return undefined;
    }
    try {
      return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
    } catch (cause) {
      if (!(cause instanceof TypeError)) throw cause;
      this.#say(
        "archive-broken",
        name,
        sayText("store.read-archive.text-in-utf-8"),
        sayText("store.read-archive.is-no-text-in-utf-8", { name }),
      );
      return undefined;
    }
  }

  async #lines<T>(text: string | undefined, name: string, schema: z.ZodType<T>): Promise<readonly T[] | undefined> {
    if (text === undefined) return undefined;
    const lines: T[] = [];
    for (const [i, line] of text.split("\n").entries()) {
      if (line === "") continue;
      let plain: unknown;
      try {
        plain = JSON.parse(line);
      } catch (cause) {
        if (!(cause instanceof SyntaxError)) throw cause;
      }
      const read = schema.safeParse(plain);
      if (read.success) {
        lines.push(read.data);
        continue;
      }
      const issue = read.error.issues[0];
      const at = `${name}:${i + 1}${issue === undefined || issue.path.length === 0 ? "" : ` ${issue.path.join(".")}`}`;
      this.#say(
        "archive-broken",
        at,
        sayText("store.read-archive.a-line-that-coldset-wrote"),
        `${at}: ${inWords(issue?.message)}.`,
      );
      if (this.#refusals.length >= MOST_TOLD) return undefined;
    }
    return lines;
  }

  #document(doc: IncomingDocument, revision: number, file: string, history: string): void {
    const name = `${doc.kind} ${doc.id}`;
    const unfit = labelRefusal(doc.label) ?? textRefusal(doc.text, file);
    if (unfit !== undefined) this.#refusals.push(unfit);
    const loaded = loadText(doc.text, file);
    if (loaded.kind === "refused") {
      this.#refusals.push(...loaded.refusals.slice(0, MOST_TOLD));
      return;
    }
    const [only] = loaded.docs;
    if (loaded.docs.length !== 1 || only?.doc.kind !== doc.kind || only.doc.id !== doc.id) {
      this.#say(
        "archive-broken",
        file,
        sayText("store.read-archive.the-one-document", { name }),
        sayText("store.read-archive.does-not-hold-alone", { file, name }),
      );
    }
    const whole = doc.history.every((line, i) => line.revision === i + 1) && doc.history.length === revision;
    if (!whole || doc.history.at(-1)?.text !== doc.text) {
      this.#say(
        "archive-broken",
        history,
        sayText("store.read-archive.every-revision-from-the-first-to"),
        sayText("store.read-archive.does-not-lead-to", { history, file }),
      );
    }
    const bad = doc.history.find(
      (line) => line.text.length > TEXT_LIMIT || textRefusal(line.text, history) !== undefined,
    );
    if (bad !== undefined) {
      this.#say(
        "archive-broken",
        history,
        sayText("store.read-archive.plain-texts"),
        sayText("store.read-archive.revision-is-no-plain-text", { history, revision: bad.revision }),
      );
    }
  }

  #related(
    documents: readonly IncomingDocument[],
    changes: readonly ChangeLine[],
    versions: readonly VersionLine[],
    photos: readonly PhotoRow[],
  ): void {
    const byName = new Map(documents.map((d) => [`${d.kind} ${d.id}`, d]));
    if (byName.size < documents.length)
      this.#say(
        "archive-twice",
        MANIFEST,
        sayText("store.read-archive.each-document-once"),
        sayText("store.read-archive.a-document-stands-in-it-twice"),
      );
    const numbers = new Set<number>();
    const taken = new Set<number>();
    for (const { change, what, takesBack } of changes) {
      const turns = what === "undo" || what === "redo";
      const sound = turns ? takesBack !== null && numbers.has(takesBack) && !taken.has(takesBack) : takesBack === null;
      if (numbers.has(change) || !sound) {
        this.#say(
          "archive-broken",
          `${CHANGES} ${change}`,
          sayText("store.read-archive.changes-in-their-order"),
          sayText("store.read-archive.change-does-not-fit", { changes: CHANGES, change }),
        );
      }
      numbers.add(change);
      if (takesBack !== null) taken.add(takesBack);
    }
    for (const d of documents) {
      const stray = d.history.find((line: HistoryLine) => !numbers.has(line.change));
      if (stray !== undefined)
        this.#say(
          "archive-broken",
          `${d.kind} ${d.id}`,
          sayText("store.read-archive.changes-that-are-listed"),
          sayText("store.read-archive.a-change-of-is-not-in", { kind: d.kind, id: d.id, changes: CHANGES }),
        );
    }
    const named = new Set<string>();
    for (const v of versions) {
      const key = `${v.build} ${v.nameKey}`;
      const sound = v.documents.every((d) => d.revision <= (byName.get(`${d.kind} ${d.id}`)?.history.length ?? 0));
      if (named.has(key) || !sound)
        this.#say(
          "archive-broken",
          v.name,
          sayText("store.read-archive.versions-of-what-is-in-the"),
          sayText("store.read-archive.the-version-of-does-not-fit", { name: v.name, build: v.build }),
        );
      named.add(key);
    }
    const ids = new Set<string>();
    for (const p of photos) {
      if (!byName.has(`${p.kind} ${p.id}`) || ids.has(p.photo))
        this.#say(
          "archive-broken",
          sayText("store.read-archive.photo", { photo: p.photo }),
          sayText("store.read-archive.photos-of-what-is-in-the"),
          sayText("store.read-archive.the-photo-does-not-fit", { photo: p.photo }),
        );
      ids.add(p.photo);
      this.#refusals.push(...wordRefusals(p));
    }
  }

  async #picture(
    row: PhotoRow,
    listed: ReadonlyMap<string, Manifest["files"][number]>,
  ): Promise<{ readonly kind: "picture"; readonly picture: IncomingPicture } | StoreRefused> {
    const refused = (code: string, message: string): StoreRefused => ({
      kind: "refused",
      refusals: [
        no(code, this.#label, row.file, sayText("store.read-archive.the-photo-that-the-manifest-names"), message),
      ],
    });
    if (listed.get(row.file) === undefined)
      return refused("archive-missing", sayText("store.read-archive.is-not-there", { file: row.file }));
    const bytes = await this.#zip.read(row.file, PHOTO_LIMIT_BYTES);
    const same = sha256Of(bytes) === row.sha256 && listed.get(row.file)?.sha256 === row.sha256;
    if (!same)
      return refused("archive-changed", sayText("store.read-archive.is-not-what-it-was-when-2", { file: row.file }));
    const sniffed = sniffPicture(bytes);
    if (sniffed.kind === "refused") return { kind: "refused", refusals: sniffed.refusals };
    if (sniffed.leftOutBytes > 0)
      return refused("photo-and-more", sayText("store.read-archive.holds-more-than-a-photo", { file: row.file }));
    const { mediaType, widthPx, heightPx } = sniffed;
    return { kind: "picture", picture: { mediaType, widthPx, heightPx, bytes: sniffed.bytes } };
  }
}
