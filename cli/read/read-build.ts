/**
 * Which build is meant by this file? The file's own documents, and those of the files that its builds name (`files:`,
 * relative to it), each read once. Everything wrong in any of them is told at once.
 */

import path from "node:path";
import { type Refusal, type Refused, refused } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { type AnyDoc, type LoadedDoc, loadText, type ResolvedBuild, resolveBuild } from "@coldset/core/workshop";
import type { Io } from "../io.js";
import { readText } from "./read-text.js";

const MOST_FILES = 40;

export type ReadBuild = { readonly kind: "resolved"; readonly resolved: ResolvedBuild } | Refused;

export async function readBuild(io: Io, file: string, buildId: string | undefined): Promise<ReadBuild> {
  const docs = await readDocuments(io, file);
  return docs.kind === "refused" ? docs : resolveBuild(docs.docs, buildId);
}

export async function readDocuments(
  io: Io,
  file: string,
): Promise<{ readonly kind: "docs"; readonly docs: readonly AnyDoc[] } | Refused> {
  const refusals: Refusal[] = [];
  const loaded: LoadedDoc[] = [];
  const read = new Set<string>();
  const due: string[] = [file];
  for (let next = due.shift(); next !== undefined; next = due.shift()) {
    const place = next === "-" ? "-" : path.resolve(next);
    if (read.has(place)) continue;
    read.add(place);
    if (read.size > MOST_FILES) {
      const allowed = say("cli.read-build.files", { mostFiles: MOST_FILES });
      const message = say("cli.read-build.and-the-files-it-names-are", { file, allowed });
      refusals.push({ code: "too-many-files", at: file, given: read.size, allowed, message });
      break;
    }
    const text = await readText(io, next);
    if (text.kind === "refused") {
      refusals.push(...text.refusals);
      continue;
    }
    const documents = loadText(text.text, text.file);
    if (documents.kind === "refused") {
      refusals.push(...documents.refusals);
      continue;
    }
    for (const doc of documents.docs) {
      refusals.push(...twice(doc, loaded));
      loaded.push(doc);
      if (doc.doc.kind !== "build") continue;
      for (const [i, other] of (doc.doc.files ?? []).entries()) {
        if (!path.isAbsolute(other) && !path.win32.isAbsolute(other)) {
          due.push(next === "-" ? other : path.join(path.dirname(next), other));
          continue;
        }
        const at = say("cli.read-build.build-files", { file: doc.file, index: i });
        const allowed = say("cli.read-build.a-file-named-relative-to-this");
        const message = say("cli.read-build.is-not-named-relative-to-this", { at, other });
        refusals.push({ code: "absolute-path", at, given: other, allowed, message });
      }
    }
  }
  return refusals.length > 0 ? refused(refusals) : { kind: "docs", docs: loaded.map((d) => d.doc) };
}

function twice(doc: LoadedDoc, before: readonly LoadedDoc[]): Refusal[] {
  const other = before.find((b) => b.doc.kind === doc.doc.kind && b.doc.id === doc.doc.id && b.file !== doc.file);
  if (other === undefined) return [];
  const name = `${doc.doc.kind} ${doc.doc.id}`;
  const message = say("cli.read-build.stands-in-and-in-keep-one", { name, oneFile: other.file, otherFile: doc.file });
  return [
    { code: "twice", at: doc.file, given: name, allowed: say("workshop.load.one-document-of-a-kind-and"), message },
  ];
}
