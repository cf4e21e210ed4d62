/**
 * Why could the records not be read or written, and what can be done? Errors of the file system and of SQLite that the
 * person at the keyboard can put right become refusals; any other error is ours and is thrown on.
 */

import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";

/** Primary result codes: SQLite, "Result and Error Codes". */
const SQLITE_CAUSES: Readonly<Record<number, string>> = {
  5: "busy",
  8: "read-only",
  10: "disk",
  11: "damaged",
  13: "full",
  14: "no-access",
  26: "damaged",
};

const FILE_CAUSES: Readonly<Record<string, string>> = {
  EACCES: "no-access",
  EPERM: "no-access",
  EROFS: "read-only",
  ENOSPC: "full",
  EDQUOT: "full",
  ENOTDIR: "no-folder",
  EEXIST: "no-folder",
  EISDIR: "no-folder",
  ENOENT: "no-folder",
  EINVAL: "no-folder",
  EIO: "disk",
  ENAMETOOLONG: "no-folder",
};

type Words = Pick<Refusal, "allowed"> & { readonly says: (place: string) => string };

const WORDS: Readonly<Record<string, Words>> = {
  busy: {
    allowed: say("store.storage-refusal.a-moment-without-another-writer"),
    says: (p) => say("store.storage-refusal.is-being-written-by-another-program", { place: p }),
  },
  "read-only": {
    allowed: say("store.storage-refusal.a-folder-that-can-be-written"),
    says: (p) => say("store.storage-refusal.can-be-read-but-not-written", { place: p }),
  },
  "no-access": {
    allowed: say("store.storage-refusal.a-folder-that-you-may-read"),
    says: (p) => say("store.storage-refusal.you-may-not-read-and-write", { place: p }),
  },
  "no-folder": {
    allowed: say("store.storage-refusal.a-folder"),
    says: (p) => say("store.storage-refusal.cannot-be-used-as-a-folder", { place: p }),
  },
  full: {
    allowed: say("store.storage-refusal.free-space-on-the-disk"),
    says: (p) => say("store.storage-refusal.the-disk-under-is-full-this", { place: p }),
  },
  disk: {
    allowed: say("store.storage-refusal.a-disk-that-answers"),
    says: (p) => say("store.storage-refusal.the-disk-under-gave-an-error", { place: p }),
  },
  damaged: {
    allowed: say("store.storage-refusal.a-whole-database-file"),
    says: (p) => say("store.storage-refusal.is-damaged-nothing-was-changed-copy", { place: p }),
  },
};

/** The refusal for this error, or undefined where the error is none that a person can put right. */
export function storageRefusal(cause: unknown, place: string): Refusal | undefined {
  const name = causeName(cause);
  const words = name === undefined ? undefined : WORDS[name];
  if (name === undefined || words === undefined) return undefined;
  return { code: `store-${name}`, at: place, given: place, allowed: words.allowed, message: words.says(place) };
}

function causeName(cause: unknown): string | undefined {
  if (!(cause instanceof Error)) return undefined;
  const { code, rawCode } = cause as Error & { readonly code?: unknown; readonly rawCode?: unknown };
  if (typeof rawCode === "number") return SQLITE_CAUSES[rawCode & 0xff];
  if (typeof code === "string" && code in FILE_CAUSES) return FILE_CAUSES[code];
  // The driver gives no code where the file cannot be opened at all.
  return cause.message.includes("Unable to open connection") ? "no-access" : undefined;
}
