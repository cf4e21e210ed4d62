/**
 * What does this file say, as text? "-" is standard input. A file that is missing, a folder, unreadable, far too large or
 * not text is refused with what would be right, before anything reads it.
 */

import path from "node:path";
import { nearestName, type Refused, refused } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import type { Io } from "../io.js";

/** Above this nothing is read at all; what a document may hold is decided by its reader. */
export const MOST_BYTES = 8_000_000;

export type ReadText = { readonly kind: "text"; readonly text: string; readonly file: string } | Refused;

/** @param allowed what a command takes that takes more than documents */
export async function readText(
  io: Io,
  file: string,
  allowed: string = say("cli.read-text.a-text-file-of-yaml-or"),
): Promise<ReadText> {
  const name = file === "-" ? say("cli.read-text.standard-input") : file;
  const no = (code: string, given: unknown, allowed: string, message: string) =>
    refused([{ code, at: name, given, allowed, message }]);
  if (file === "") return no("no-file", "", allowed, say("cli.read-text.no-file-is-named-give", { allowed }));
  if (file.includes("\0")) return no("no-file", file, allowed, say("cli.read-text.a-file-name-cannot-hold-a"));
  let bytes: Uint8Array;
  try {
    if (file === "-") bytes = await io.readStdin(MOST_BYTES);
    else {
      const facts = await io.facts(file);
      if (facts.kind === "folder")
        return no("a-folder", file, allowed, say("cli.read-text.is-a-folder-name-a-file", { file }));
      if (facts.bytes > MOST_BYTES) return tooLarge(name, facts.bytes);
      bytes = await io.readFile(file, MOST_BYTES);
    }
  } catch (cause) {
    const code = typeof cause === "object" && cause !== null && "code" in cause ? String(cause.code) : "";
    if (code === "ENOENT" || code === "ENOTDIR") {
      const near = await nearestFile(io, file);
      const hint = near === undefined ? "" : say("cli.read-text.did-you-mean", { near });
      return no("no-such-file", file, allowed, say("cli.read-text.there-is-no-file", { file, hint }));
    }
    if (code === "EACCES" || code === "EPERM")
      return no(
        "not-readable",
        file,
        say("cli.read-text.a-file-that-you-may-read"),
        say("cli.read-text.may-not-be-read-by-you", { file }),
      );
    if (code === "EISDIR") return no("a-folder", file, allowed, say("cli.read-text.is-a-folder-name-a-file", { file }));
    if (code === "ENAMETOOLONG" || code === "ELOOP" || code === "EINVAL")
      return no(
        "no-such-file",
        file.slice(0, 80),
        allowed,
        say("cli.read-text.no-file-can-have-the-name", { file: file.slice(0, 80) }),
      );
    if (code === "EIO" || code === "EBUSY" || code === "ENXIO")
      return no(
        "not-readable",
        file,
        say("cli.read-text.a-file-that-can-be-read"),
        say("cli.read-text.cannot-be-read-now", { file, code }),
      );
    throw cause;
  }
  if (bytes.length > MOST_BYTES) return tooLarge(name, bytes.length);
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    return no(
      "not-utf-8",
      "UTF-16",
      say("cli.read-text.text-in-utf-8"),
      say("cli.read-text.is-text-in-utf-16-save", { name }),
    );
  if (bytes.includes(0))
    return no(
      "not-text",
      say("cli.read-text.binary-data"),
      allowed,
      say("cli.read-text.is-not-text-give", { name, allowed }),
    );
  try {
    return { kind: "text", text: new TextDecoder("utf-8", { fatal: true }).decode(bytes), file: name };
  } catch {
    return no(
      "not-utf-8",
      say("cli.read-text.other-bytes"),
      say("cli.read-text.text-in-utf-8"),
      say("cli.read-text.is-not-text-in-utf-8", { name }),
    );
  }
}

function tooLarge(name: string, bytes: number): Refused {
  const size =
    bytes > MOST_BYTES + 1
      ? `${(bytes / 1e6).toFixed(1)} MB`
      : say("cli.read-text.more-than-mb", { mostBytes: MOST_BYTES / 1e6 });
  const allowed = say("cli.read-text.mb-at-most", { mostBytes: MOST_BYTES / 1e6 });
  const message = say("cli.read-text.is-is-read-photographs-do-not", { name, size, allowed });
  return refused([{ code: "file-too-large", at: name, given: size, allowed, message }]);
}

async function nearestFile(io: Io, file: string): Promise<string | undefined> {
  const folder = path.dirname(file);
  try {
    const near = nearestName(path.basename(file), await io.namesIn(folder));
    return near === undefined ? undefined : path.join(folder, near);
  } catch {
    // No such folder either: then there is nothing to hint at.
    return undefined;
  }
}
