/**
 * May anybody else on this machine read or change the records? The folder that we make is open to its owner only (0700),
 * and so are our files in it (0600), also those of an older version or of a folder that was there before. A folder into
 * which everybody may write is refused, and so is a database that is only a link: somebody could have put it there.
 * On Windows the folders of a person are closed to others by the system's own lists, and modes mean nothing.
 */

import fs from "node:fs";
import path from "node:path";
import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";

const FOLDER_MODE = 0o700;
const FILE_MODE = 0o600;
const OTHERS = 0o077;
const WRITTEN_BY_ALL = 0o002;
const OURS = /^(workshop\..*|copies)$/;

const hasModes = () => process.platform !== "win32";

/** For making the folder and those above it. */
export const PRIVATE_FOLDER = { mode: FOLDER_MODE } as const;

/** Why the records must not be kept there; undefined where they may. */
export function privacyRefusal(folder: string, file: string): Refusal | undefined {
  if (!hasModes()) return undefined;
  if ((fs.statSync(folder).mode & WRITTEN_BY_ALL) !== 0) {
    return {
      code: "store-open-to-all",
      at: folder,
      given: folder,
      allowed: say("store.keep-private.a-folder-into-which-only-you"),
      message: say("store.keep-private.everybody-on-this-machine-may-write", { folder }),
    };
  }
  if (fs.lstatSync(file, { throwIfNoEntry: false })?.isSymbolicLink() === true) {
    return {
      code: "store-is-a-link",
      at: file,
      given: file,
      allowed: say("store.keep-private.the-database-itself"),
      message: say("store.keep-private.is-a-link-to-another-place", { file }),
    };
  }
  return undefined;
}

/** Closes to others what is ours. What belongs to another person, who let us in, is left as it is. */
export function closeToOthers(folder: string): void {
  if (!hasModes()) return;
  const names = fs.readdirSync(folder);
  for (const name of names.filter((n) => OURS.test(n))) {
    const place = path.join(folder, name);
    const copies = fs.lstatSync(place).isDirectory() ? fs.readdirSync(place).map((n) => path.join(place, n)) : [];
    for (const one of [place, ...copies]) close(one);
  }
  if (names.every((name) => OURS.test(name))) close(folder);
}

function close(place: string): void {
  const stat = fs.lstatSync(place);
  if (stat.isSymbolicLink() || (stat.mode & OTHERS) === 0 || stat.uid !== process.getuid?.()) return;
  fs.chmodSync(place, stat.isDirectory() ? FOLDER_MODE : FILE_MODE);
}
