/**
 * Which documents does this build need, and what do they say? The build and what it names, as far as it is there; what
 * is missing is told by the core, in the page as on the command line. A text is parsed once for each change of it.
 */
import type { Refusal } from "@coldset/core/quantity";
import { type AnyDoc, type BuildDoc, type DocKind, type LoadedDoc, loadText } from "@coldset/core/workshop";
import type { StoredDocument, Workshop } from "@coldset/store";

export interface DocumentOfBuild {
  readonly kind: string;
  readonly id: string;
  readonly revision: number;
  /** The plain data as written, before reading. */
  readonly plain: unknown;
}

export type ParsedDocument =
  | { readonly kind: "loaded"; readonly loaded: LoadedDoc }
  | { readonly kind: "refused"; readonly refusals: readonly Refusal[] };

export type BuildDocuments =
  | { readonly kind: "found"; readonly documents: readonly DocumentOfBuild[]; readonly docs: readonly AnyDoc[] }
  | { readonly kind: "no-build" }
  | { readonly kind: "refused"; readonly refusals: readonly Refusal[] };

/** The keys of a build that name another document; each is also the kind of that document. */
const NAMED = ["donor", "rider", "intent", "shop", "bin", "prices", "route"] as const satisfies readonly (DocKind &
  keyof BuildDoc)[];

export interface DocumentReader {
  readonly parse: (stored: StoredDocument) => ParsedDocument;
  readonly ofBuild: (buildId: string) => Promise<BuildDocuments>;
}

export function documentReader(workshop: Workshop): DocumentReader {
  const parsed = new Map<string, { readonly text: string; readonly result: ParsedDocument }>();
  const parse = (stored: StoredDocument): ParsedDocument => {
    const key = `${stored.kind} ${stored.id}`;
    const before = parsed.get(key);
    if (before !== undefined && before.text === stored.text) return before.result;
    const result = parseOne(stored);
    parsed.set(key, { text: stored.text, result });
    return result;
  };
  const ofBuild = async (buildId: string): Promise<BuildDocuments> => {
    const all = await workshop.allDocuments();
    const row = all.find((d) => d.kind === "build" && d.id === buildId);
    if (row === undefined) return { kind: "no-build" };
    const build = parse(row);
    if (build.kind === "refused") return build;
    const doc = build.loaded.doc;
    if (doc.kind !== "build") throw new Error(`the document build ${buildId} reads as ${doc.kind}`);
    const rows = [row, ...NAMED.flatMap((kind) => all.filter((d) => d.kind === kind && d.id === doc[kind]))];
    const results = rows.map((stored) => ({ stored, result: parse(stored) }));
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
  };
  return { parse, ofBuild };
}

function parseOne(stored: StoredDocument): ParsedDocument {
  const loaded = loadText(stored.text, stored.label);
  if (loaded.kind === "refused") return loaded;
  const [only] = loaded.docs;
  if (only === undefined || loaded.docs.length > 1) throw new Error(`${stored.kind} ${stored.id} is not one document`);
  return { kind: "loaded", loaded: only };
}
