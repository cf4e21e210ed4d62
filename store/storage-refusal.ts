/**
 * Why could the records not be read or written, and what can be done? Errors of the file system and of SQLite that the
 * person at the keyboard can put right become refusals; any other error is ours and is thrown on.
 */
import type { Refusal } from "@coldset/core/quantity";

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
    allowed: "a moment without another writer",
    says: (p) => `${p} is being written by another program. Nothing was changed; try again.`,
  },
  "read-only": {
    allowed: "a folder that can be written to",
    says: (p) => `${p} can be read but not written. Nothing was changed. Allow writing there, or name another folder.`,
  },
  "no-access": {
    allowed: "a folder that you may read and write",
    says: (p) => `You may not read and write in ${p}. Nothing was changed. Allow it there, or name another folder.`,
  },
  "no-folder": {
    allowed: "a folder",
    says: (p) => `${p} cannot be used as a folder. Nothing was changed. Name another folder.`,
  },
  full: {
    allowed: "free space on the disk",
    says: (p) => `The disk under ${p} is full. This change was not kept; earlier ones are. Make room, then try again.`,
  },
  disk: {
    allowed: "a disk that answers",
    says: (p) =>
      `The disk under ${p} gave an error. This change was not kept. Copy the folder to another disk before going on.`,
  },
  damaged: {
    allowed: "a whole database file",
    says: (p) => `${p} is damaged. Nothing was changed. Copy the folder away, then put back a saved copy.`,
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
