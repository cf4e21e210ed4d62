/**
 * How does an archive come back wrong? From real ones of the demos: texts inside changed with and without their sums, lines
 * of the lists left out, doubled and set to odd values, files that lead elsewhere or unpack to far more, fields of the zip
 * itself changed (PKWARE APPNOTE 4.3.7 and 4.3.12), and bytes of the whole. A recipe of small steps; the zip is made from it.
 */
import { createHash } from "node:crypto";
import fc from "fast-check";
import { type Zippable, zipSync } from "fflate";
import { type ByteStep, byteStep, mangledBytes } from "./mangled-bytes.js";
import { HOSTILE_KEYS, HOSTILE_VALUES } from "./mangled-text.js";
import { ODD_NUMBERS, oddText, type Slip, slip, slipped } from "./odd-text.js";

export type Files = Readonly<Record<string, Uint8Array>>;

/** A step on the files before they are packed. */
export interface FileStep {
  readonly does:
    | "text"
    | "both"
    | "set"
    | "drop-line"
    | "double-line"
    | "swap-lines"
    | "drop-file"
    | "picture"
    | "noise";
  /** Which file, line and value, counted round. */
  readonly file: number;
  readonly at: number;
  readonly with: unknown;
  readonly slips: readonly Slip[];
  readonly bytes: readonly ByteStep[];
}

/** A further file of the zip. */
export interface Extra {
  readonly name: string;
  readonly holds: "nothing" | "text" | "zeros" | "copy";
  /** Of zeros: how many. */
  readonly length: number;
  /** Of Unix: 0o120_777 is a link. */
  readonly mode: number;
}

/** A field of the n-th entry, in the list at the end (`list`), at the file itself (`own`), or in both. */
export interface FieldStep {
  readonly entry: number;
  readonly field: "flags" | "method" | "crc" | "packed" | "size" | "name" | "attributes" | "place";
  readonly in: "list" | "own" | "both";
  readonly to: number;
}

export interface MangledArchive {
  /** Which of the real archives. */
  readonly base: number;
  readonly steps: readonly FileStep[];
  /** The manifest's list of files is made to fit what the steps left. */
  readonly refit: boolean;
  readonly extras: readonly Extra[];
  /** So many empty files more. */
  readonly many: number;
  readonly level: 0 | 6;
  readonly fields: readonly FieldStep[];
  readonly bytes: readonly ByteStep[];
}

const LEADING_OUT: readonly string[] = [
  "../x.yaml",
  "../../../../tmp/x",
  "documents/../../x",
  "/etc/x",
  "C:\\x",
  "\\\\host\\x",
  "documents\\donor\\x.yaml",
  "documents//x",
  "./x",
  ".",
  "..",
  "",
  "/",
  "a/",
  "documents/donor/",
  "con",
  "documents/nul.yaml",
  "x.yaml.",
  "x ",
  "a\0b",
  "a\nb",
  "\u202etxt",
  "漢.yaml",
  "MANIFEST.json",
  "Changes.jsonl",
  "manifest.json/x",
  "__proto__",
  "documents/__proto__/x.yaml",
  "a/b/c/d/e/f",
  "x".repeat(300),
  "d/".repeat(2000),
  "y".repeat(65_535),
];

const value = fc.oneof<fc.Arbitrary<unknown>[]>(
  fc.constantFrom<unknown>(0, 1, 2, 3, -1, 1.5, 99, 1e9, 9_007_199_254_740_991, 1e308, null, true, "", [], {}),
  fc.constantFrom<unknown>(
    "donor",
    "rider",
    "undo",
    "redo",
    "edit",
    "..",
    "../x",
    "2026-02-30T00:00:00Z",
    "f".repeat(64),
  ),
  fc.constantFrom<unknown>(...HOSTILE_KEYS, ...HOSTILE_VALUES.slice(0, 40), ...ODD_NUMBERS),
  oddText,
  fc.jsonValue({ maxDepth: 2 }),
);
const fileStep: fc.Arbitrary<FileStep> = fc.record({
  does: fc.constantFrom(
    "text",
    "both",
    "both",
    "set",
    "set",
    "set",
    "drop-line",
    "double-line",
    "swap-lines",
    "drop-file",
    "picture",
    "noise",
  ),
  file: fc.nat(60),
  at: fc.nat(2000),
  with: value,
  slips: fc.array(slip, { minLength: 1, maxLength: 2 }),
  bytes: fc.array(byteStep, { minLength: 1, maxLength: 2 }),
});
const extra: fc.Arbitrary<Extra> = fc.record({
  name: fc.oneof(fc.constantFrom(...LEADING_OUT), oddText, fc.constantFrom("photos/x.jpg", "documents/donor/x.yaml")),
  holds: fc.constantFrom("nothing", "text", "copy", "zeros"),
  length: fc.oneof(
    { weight: 9, arbitrary: fc.nat(3000) },
    { weight: 1, arbitrary: fc.constantFrom(999_999, 1_000_001, 5_000_000, 20_000_000) },
  ),
  mode: fc.constantFrom(0o100_644, 0o100_644, 0o100_644, 0o120_777, 0o060_644, 0o040_755, 0),
});
const fieldStep: fc.Arbitrary<FieldStep> = fc.record({
  entry: fc.nat(60),
  field: fc.constantFrom("flags", "method", "crc", "packed", "size", "size", "name", "attributes", "place"),
  in: fc.constantFrom("list", "own", "both"),
  to: fc.oneof(
    fc.nat(300),
    fc.constantFrom(0, 1, 8, 9, 12, 0x41, 0x800, 65_535, 1_000_000, 2_147_483_647, 4_294_967_295),
  ),
});

const few = <T>(one: fc.Arbitrary<T>, most: number, none: number) =>
  fc.oneof(
    { weight: none, arbitrary: fc.constant<readonly T[]>([]) },
    { weight: 1, arbitrary: fc.array(one, { minLength: 1, maxLength: most }) },
  );

/** Small archives mostly: a whole demo takes twenty times as long. */
export const mangledArchive = (small: number, all: number): fc.Arbitrary<MangledArchive> =>
  fc.record({
    base: fc.oneof(
      { weight: 40, arbitrary: fc.nat(small - 1) },
      { weight: 1, arbitrary: fc.integer({ min: small, max: all - 1 }) },
    ),
    steps: few(fileStep, 3, 1),
    refit: fc.constantFrom(true, true, true, false),
    extras: few(extra, 2, 7),
    many: fc.nat(3999).map((n) => (n === 0 ? 60_000 : n === 1 ? 9_900 : n < 20 ? 500 : 0)),
    level: fc.constantFrom(0, 6),
    fields: few(fieldStep, 2, 5),
    bytes: few(byteStep, 3, 4),
  });

const sha256Of = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest("hex");
const asText = (bytes: Uint8Array | undefined) => Buffer.from(bytes ?? []).toString("utf8");
const asBytes = (text: string) => new Uint8Array(Buffer.from(text, "utf8"));

/** The files as they stand before they are packed. */
export function filesOf(from: Files, { steps, refit }: Pick<MangledArchive, "steps" | "refit">): Files {
  const files: Record<string, Uint8Array> = { ...from };
  for (const s of steps) apply(files, s);
  return refit ? refitted(files) : files;
}

function apply(files: Record<string, Uint8Array>, { does, file, at, with: what, slips, bytes }: FileStep): void {
  const names = Object.keys(files);
  const pick = (like: RegExp) => {
    const fit = names.filter((n) => like.test(n));
    return fit[file % Math.max(1, fit.length)];
  };
  const onLines = (change: (lines: string[], i: number) => void) => {
    const name = pick(/\.jsonl$/);
    if (name === undefined) return;
    const lines = asText(files[name]).split("\n").slice(0, -1);
    if (lines.length > 0) change(lines, at % lines.length);
    files[name] = asBytes(lines.map((l) => `${l}\n`).join(""));
  };
  switch (does) {
    case "text": {
      const name = pick(/\.(yaml|jsonl|json)$/);
      if (name !== undefined) files[name] = asBytes(slipped(asText(files[name]), slips));
      return;
    }
    case "both": {
      // The text and the end of its history, so that the two still fit.
      const name = pick(/\.yaml$/);
      const history = name === undefined ? undefined : names.find((n) => n === historyOf(files, name));
      if (name === undefined || history === undefined) return;
      const text = slipped(asText(files[name]), slips).toWellFormed();
      const lines = asText(files[history]).split("\n").slice(0, -1);
      const last = JSON.parse(lines.at(-1) ?? "{}") as object;
      files[name] = asBytes(text);
      files[history] = asBytes([...lines.slice(0, -1), JSON.stringify({ ...last, text }), ""].join("\n"));
      return;
    }
    case "set": {
      const name = pick(/\.jsonl?$/);
      if (name === undefined) return;
      const lines = name.endsWith(".jsonl") ? asText(files[name]).split("\n") : [asText(files[name])];
      const i = at % Math.max(1, lines.filter((l) => l !== "").length);
      try {
        lines[i] = JSON.stringify(withOdd(JSON.parse(lines[i] ?? ""), at, what));
      } catch {
        return; // An earlier step has made it no JSON any more.
      }
      files[name] = asBytes(lines.join("\n"));
      return;
    }
    case "drop-line":
      onLines((lines, i) => void lines.splice(i, 1));
      return;
    case "double-line":
      onLines((lines, i) => void lines.splice(i, 0, lines[i] ?? ""));
      return;
    case "swap-lines":
      onLines((lines, i) => void lines.push(...lines.splice(i, 1)));
      return;
    case "drop-file": {
      const name = names[file % names.length];
      if (name !== undefined) delete files[name];
      return;
    }
    case "picture": {
      const name = pick(/^photos\//);
      if (name !== undefined) files[name] = mangledBytes(files[name] ?? new Uint8Array(), bytes);
      return;
    }
    case "noise": {
      const name = names[file % names.length];
      if (name !== undefined) files[name] = mangledBytes(files[name] ?? new Uint8Array(), bytes);
      return;
    }
  }
}

interface ManifestLike {
  readonly documents?: readonly { readonly file?: unknown; readonly history?: unknown }[];
}

function historyOf(files: Files, name: string): string | undefined {
  try {
    const manifest = JSON.parse(asText(files["manifest.json"])) as ManifestLike;
    const found = manifest.documents?.find((d) => d.file === name)?.history;
    return typeof found === "string" ? found : undefined;
  } catch {
    return undefined;
  }
}

/** The same value with one thing in it set to `what`, the n-th counted round. */
function withOdd(plain: unknown, n: number, what: unknown): unknown {
  const spots: [Record<string, unknown>, string][] = [];
  const look = (holder: unknown): void => {
    if (holder === null || typeof holder !== "object") return;
    for (const key of Object.keys(holder)) {
      spots.push([holder as Record<string, unknown>, key]);
      look((holder as Record<string, unknown>)[key]);
    }
  };
  look(plain);
  const spot = spots[n % Math.max(1, spots.length)];
  if (spot === undefined) return what;
  Object.defineProperty(spot[0], spot[1], { value: what, enumerable: true });
  return plain;
}

function refitted(files: Record<string, Uint8Array>): Files {
  let manifest: unknown;
  try {
    manifest = JSON.parse(asText(files["manifest.json"]));
  } catch {
    return files;
  }
  if (manifest === null || typeof manifest !== "object") return files;
  const list = Object.entries(files)
    .filter(([name]) => name !== "manifest.json")
    .map(([file, content]) => ({ file, bytes: content.length, sha256: sha256Of(content) }));
  // A picture is named by its own sum in the list of photos as well.
  return { ...files, "manifest.json": asBytes(JSON.stringify({ ...manifest, files: list })) };
}

export function archiveBytes(from: Files, recipe: MangledArchive): Uint8Array {
  const files = filesOf(from, recipe);
  const entries: Zippable = Object.create(null) as Zippable;
  // Packing nothing takes as long as packing something.
  const entry = (content: Uint8Array, mode = 0o100_644) =>
    [
      content,
      { os: 3, attrs: mode * 65_536, level: content.length === 0 ? 0 : recipe.level, mtime: "2026-05-01T08:00:00Z" },
    ] as const;
  for (const [name, content] of Object.entries(files)) entries[name] = entry(content) as never;
  for (const { name, holds, length, mode } of recipe.extras) {
    const content =
      holds === "text"
        ? asBytes("kind: rider\n")
        : holds === "copy"
          ? (Object.values(files)[length % 9] ?? new Uint8Array())
          : new Uint8Array(holds === "zeros" ? length : 0);
    // The library itself packs no longer name.
    entries[name.slice(0, 65_535)] = entry(content, mode) as never;
  }
  for (let i = 0; i < recipe.many; i += 1) entries[`many/${i}`] = entry(new Uint8Array()) as never;
  let packed: Uint8Array;
  try {
    packed = zipSync(entries);
  } catch {
    return new Uint8Array(Buffer.from("PK\u0003\u0004no zip"));
  }
  for (const step of recipe.fields) setField(packed, step);
  return mangledBytes(packed, recipe.bytes);
}

/** Offsets of the fields in the header of the list, and in that of the file itself. */
const FIELDS: Readonly<Record<FieldStep["field"], readonly [list: number, own: number, bytes: 2 | 4]>> = {
  flags: [8, 6, 2],
  method: [10, 8, 2],
  crc: [16, 14, 4],
  packed: [20, 18, 4],
  size: [24, 22, 4],
  name: [46, 30, 2],
  attributes: [38, -1, 4],
  place: [42, -1, 4],
};

function setField(zip: Uint8Array, { entry, field, in: where, to }: FieldStep): void {
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength);
  const end = zip.length - 22;
  if (end < 0) return;
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  for (let i = 0; i < entry % Math.max(1, count) && at + 46 < zip.length; i += 1)
    at += 46 + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  if (at + 50 > zip.length) return;
  const own = view.getUint32(at + 42, true);
  const [inList, inOwn, bytes] = FIELDS[field];
  const set = (place: number) => {
    if (place + bytes > zip.length) return;
    if (bytes === 2) view.setUint16(place, to & 0xffff, true);
    else view.setUint32(place, to >>> 0, true);
  };
  if (where !== "own") set(at + inList);
  if (where !== "list" && inOwn >= 0) set(own + inOwn);
}
