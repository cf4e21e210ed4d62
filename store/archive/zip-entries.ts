/**
 * What is in this zip, and can it be read without harm? Names that lead elsewhere, links, doubles, encrypted files, sizes
 * that were declared or turn out too large, and packing too dense to be true are refused before anything is unpacked;
 * while unpacking no file may become larger than it was declared.
 */

import { readFile, stat } from "node:fs/promises";
import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { type Entry, fromBufferPromise, openPromise, type ZipFile } from "yauzl";
import { LIMITS, MANIFEST } from "./archive-form.js";

export type ZipSource = { readonly file: string } | { readonly bytes: Uint8Array };

export interface OpenZip {
  readonly kind: "zip";
  readonly names: readonly string[];
  /** The bytes of one file, not more than `mostBytes`. */
  readonly read: (name: string, mostBytes: number) => Promise<Uint8Array>;
  readonly close: () => void;
}

export type OpenedZip = OpenZip | { readonly kind: "refused"; readonly refusals: readonly Refusal[] };

/** What the zip itself has wrong; told as a refusal by whoever reads it. */
export class BrokenZip extends Error {}

const MOST_TOLD = 20;
const PLAIN_NAME = /^[A-Za-z0-9_~-][A-Za-z0-9_.~-]*(\/[A-Za-z0-9_~-][A-Za-z0-9_.~-]*){0,3}$/;
const [STORED, DEFLATED] = [0, 8];
/** Upper half of the attributes: the file mode of Unix (PKWARE APPNOTE 4.4.15); its type bits, and those of a plain file. */
const TYPE_BITS = 0o170_000;
const PLAIN_FILE = 0o100_000;

export async function openZip(source: ZipSource, label: string): Promise<OpenedZip> {
  const options = { lazyEntries: true, autoClose: false, validateEntrySizes: true, strictFileNames: true };
  let zip: ZipFile;
  try {
    const bytes = "file" in source ? await smallFile(source.file) : Buffer.from(source.bytes);
    zip =
      bytes === undefined && "file" in source
        ? await openPromise(source.file, options)
        : await fromBufferPromise(bytes ?? Buffer.alloc(0), options);
  } catch (cause) {
    return refuse([broken(label, cause)]);
  }
  const found = await entriesOf(zip, label);
  if (found.kind === "refused") {
    zip.close();
    return found;
  }
  return {
    kind: "zip",
    names: [...found.entries.keys()],
    close: () => zip.close(),
    read: async (name, mostBytes) => {
      const entry = found.entries.get(name);
      if (entry === undefined) throw new BrokenZip(`${name} is not in it`);
      if (entry.uncompressedSize > mostBytes) throw new BrokenZip(`${name} is larger than ${mostBytes / 1e6} MB`);
      const chunks: Uint8Array[] = [];
      let size = 0;
      try {
        for await (const chunk of await zip.openReadStreamPromise(entry)) {
          const bytes = chunk as Uint8Array;
          size += bytes.length;
          if (size > entry.uncompressedSize) throw new BrokenZip(`${name} is larger than it says`);
          chunks.push(bytes);
        }
      } catch (cause) {
        if (cause instanceof BrokenZip || !(cause instanceof Error)) throw cause;
        throw new BrokenZip(`${name}: ${cause.message}`);
      }
      if (size !== entry.uncompressedSize) throw new BrokenZip(`${name} is smaller than it says`);
      return new Uint8Array(Buffer.concat(chunks));
    },
  };
}

/** A list of many thousand files is read piece by piece, each from the disk; in memory that is three times as fast. */
const SMALL_BYTES = 64_000_000;

async function smallFile(file: string): Promise<Buffer | undefined> {
  const { size } = await stat(file);
  return size > SMALL_BYTES ? undefined : readFile(file);
}

async function entriesOf(
  zip: ZipFile,
  label: string,
): Promise<{ readonly kind: "entries"; readonly entries: ReadonlyMap<string, Entry> } | Exclude<OpenedZip, OpenZip>> {
  if (zip.entryCount > LIMITS.entries) {
    return refuse([
      no(
        "archive-too-large",
        label,
        zip.entryCount,
        say("store.zip-entries.files", { entries: LIMITS.entries }),
        say("store.zip-entries.it-holds-too-many-files"),
      ),
    ]);
  }
  const entries = new Map<string, Entry>();
  const seen = new Set<string>();
  const refusals: Refusal[] = [];
  let total = 0;
  try {
    for await (const entry of zip.eachEntry()) {
      const name = entry.fileName;
      if (name.endsWith("/") && entry.uncompressedSize === 0) continue;
      const wrong = entryRefusal(entry, label, seen);
      if (wrong !== undefined) {
        refusals.push(wrong);
        if (refusals.length >= MOST_TOLD) break;
        continue;
      }
      total += entry.uncompressedSize;
      if (total > LIMITS.totalBytes) {
        const allowed = say("store.zip-entries.mb-unpacked", { totalBytes: LIMITS.totalBytes / 1e6 });
        return refuse([
          no("archive-too-large", label, "more", allowed, say("store.zip-entries.unpacked-it-would-be-too-large")),
        ]);
      }
      entries.set(name, entry);
    }
  } catch (cause) {
    refusals.push(broken(label, cause));
  }
  if (refusals.length === 0 && !entries.has(MANIFEST)) {
    const message = say("store.zip-entries.it-has-no-so-it-is", { manifest: MANIFEST });
    refusals.push(
      no(
        "archive-foreign",
        label,
        say("store.zip-entries.a-zip-of-something-else"),
        say("store.zip-entries.an-archive-that-coldset-made"),
        message,
      ),
    );
  }
  return refusals.length > 0 ? refuse(refusals) : { kind: "entries", entries };
}

function entryRefusal(entry: Entry, label: string, seen: Set<string>): Refusal | undefined {
  const name = entry.fileName;
  const shown = name.slice(0, 100);
  if (!PLAIN_NAME.test(name)) {
    return no(
      "archive-bad-name",
      label,
      shown,
      say("store.zip-entries.plain-names-inside-the-archive"),
      say("store.zip-entries.the-name-leads-elsewhere-or-is", { shown }),
    );
  }
  const key = name.toLowerCase();
  if (seen.has(key))
    return no(
      "archive-twice",
      label,
      shown,
      say("store.zip-entries.each-file-once"),
      say("store.zip-entries.stands-in-it-twice", { shown }),
    );
  seen.add(key);
  const type = (entry.externalFileAttributes >>> 16) & TYPE_BITS;
  if (type !== 0 && type !== PLAIN_FILE) {
    return no(
      "archive-link",
      label,
      shown,
      say("store.zip-entries.plain-files"),
      say("store.zip-entries.is-a-link-or-a-device", { shown }),
    );
  }
  if (entry.isEncrypted())
    return no(
      "archive-encrypted",
      label,
      shown,
      say("store.zip-entries.files-that-can-be-read"),
      say("store.zip-entries.is-encrypted", { shown }),
    );
  if (entry.compressionMethod !== STORED && entry.compressionMethod !== DEFLATED) {
    return no(
      "archive-packing",
      label,
      shown,
      say("store.zip-entries.stored-or-deflated-files"),
      say("store.zip-entries.is-packed-in-a-way-that", { shown }),
    );
  }
  const { uncompressedSize: size, compressedSize: packed } = entry;
  if (size > LIMITS.textBytes) {
    return no(
      "archive-too-large",
      label,
      shown,
      say("store.zip-entries.mb-a-file", { textBytes: LIMITS.textBytes / 1e6 }),
      say("store.zip-entries.says-it-is-larger", { shown }),
    );
  }
  if (size > LIMITS.ratioFromBytes && size > packed * LIMITS.ratio) {
    return no(
      "archive-bomb",
      label,
      shown,
      say("store.zip-entries.packed-to-1-at-most", { ratio: LIMITS.ratio }),
      say("store.zip-entries.is-packed-too-densely-to-be", { shown }),
    );
  }
  return undefined;
}

export function no(code: string, label: string, given: unknown, allowed: string, message: string): Refusal {
  return { code, at: label, given, allowed, message: `${label}: ${message}` };
}

/** A failure of the library or of the disk while reading; any other error is ours and is thrown on. */
export function broken(label: string, cause: unknown): Refusal {
  if (!(cause instanceof Error)) throw cause;
  const why = cause.message.slice(0, 200);
  return no(
    "archive-broken",
    label,
    why,
    say("store.zip-entries.a-whole-archive-that-coldset-made"),
    say("store.zip-entries.it-cannot-be-read", { why }),
  );
}

const refuse = (refusals: readonly Refusal[]) => ({ kind: "refused", refusals }) as const;
