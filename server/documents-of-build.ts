/**
 * Which documents does this build need, and what do they say? The build and what it names, as far as it is there; what
 * is missing is told by the core, in the page as on the command line. Only those are read, and each text is parsed
 * once for each change of it.
 */
import type { Refusal } from "@coldset/core/quantity";
import { type AnyDoc, namedByBuild } from "@coldset/core/workshop";
import type { ReadText, StoredDocument, Workshop } from "@coldset/store";

export interface DocumentOfBuild {
  readonly kind: string;
  readonly id: string;
  readonly revision: number;
  /** The plain data as written, before reading. */
  readonly plain: unknown;
}

export type ParsedDocument = ReadText;

export type BuildDocuments =
  | { readonly kind: "found"; readonly documents: readonly DocumentOfBuild[]; readonly docs: readonly AnyDoc[] }
  | { readonly kind: "no-build" }
  | { readonly kind: "refused"; readonly refusals: readonly Refusal[] };

export interface DocumentReader {
  readonly parse: (stored: StoredDocument) => ParsedDocument;
  readonly ofBuild: (buildId: string) => Promise<BuildDocuments>;
}

/** A build that somebody edits just while it is read is read again; so often at most. */
const MOST_LOOKS = 5;

export function documentReader(workshop: Workshop): DocumentReader {
  const parse = workshop.readText;
  const ofBuild = async (buildId: string): Promise<BuildDocuments> => {
    let row = await workshop.getDocument("build", buildId);
    for (let looks = 1; row !== undefined; looks += 1) {
      const build = parse(row);
      if (build.kind === "refused") return build;
      const doc = build.loaded.doc;
      if (doc.kind !== "build") throw new Error(`the document build ${buildId} reads as ${doc.kind}`);
      const names = namedByBuild({ ...doc, id: buildId });
      const there = await workshop.documentsNamed(names);
      const now = there.find((d) => d.kind === "build");
      // What it names may have changed between the two looks.
      if (now?.text === row.text || looks >= MOST_LOOKS) {
        const rows = names.flatMap(({ kind, id }) => there.filter((d) => d.kind === kind && d.id === id));
        return told(rows.map((stored) => ({ stored, result: parse(stored) })));
      }
      row = now;
    }
    return { kind: "no-build" };
  };
  return { parse, ofBuild };
}

function told(
  results: readonly { readonly stored: StoredDocument; readonly result: ParsedDocument }[],
): BuildDocuments {
  const refusals = results.flatMap(({ result }) => (result.kind === "refused" ? result.refusals : []));
  if (refusals.length > 0) return { kind: "refused", refusals };
  const documents: DocumentOfBuild[] = [];
  const docs: AnyDoc[] = [];
  for (const { stored, result } of results) {
    if (result.kind !== "loaded") continue;
    documents.push({ kind: stored.kind, id: stored.id, revision: stored.revision, plain: result.loaded.plain });
    docs.push(result.loaded.doc);
  }
  return { kind: "found", documents, docs };
}
