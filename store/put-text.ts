/**
 * Which documents does this text bring into the workshop? All of them in one transaction, or none. One that is there
 * already gets a new revision; the old text stays in its history.
 */

import { isDeepStrictEqual } from "node:util";
import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { type Loaded, type LoadedDoc, type LoadRefused, loadText } from "@coldset/core/workshop";
import type { Kysely } from "kysely";
import { type Author, beginChange } from "./begin-change.js";
import { storedDocument } from "./read-documents.js";
import type { Tables } from "./tables.js";
import { labelRefusal, textRefusal } from "./text-refusal.js";
import type { Put, PutDocument } from "./workshop.js";
import { writeDocument } from "./write-document.js";

export async function putText(
  db: Kysely<Tables>,
  text: string,
  label: string,
  author: Author,
  what: "put" | "import" = "put",
): Promise<Put> {
  const loaded = documentsIn(text, label);
  if (loaded.kind === "refused") return loaded;
  const documents = await db.transaction().execute(async (trx) => {
    const done: PutDocument[] = [];
    let change: number | undefined;
    for (const { doc, text: after } of loaded.docs) {
      const { kind, id } = doc;
      const before = await storedDocument(trx, kind, id);
      if (before?.text === after) {
        done.push({ kind, id, revision: before.revision, change: "same" });
        continue;
      }
      change ??= await beginChange(trx, { what, words: label }, author);
      const at = author.at;
      const revision = await writeDocument(trx, before, { kind, id, label, path: null, after, at, change });
      done.push({ kind, id, revision, change: before === undefined ? "new" : "changed" });
    }
    return done;
  });
  return { kind: "put", documents };
}

/** The documents of a text, each of which can be kept by itself. */
export function documentsIn(text: string, label: string): Loaded | LoadRefused {
  const unfit = labelRefusal(label) ?? textRefusal(text, label);
  if (unfit !== undefined) return { kind: "refused", refusals: [unfit] };
  const loaded = loadText(text, label);
  if (loaded.kind === "refused") return loaded;
  const dependent = loaded.docs.filter((doc) => !saysTheSameAlone(doc));
  return dependent.length > 0 ? { kind: "refused", refusals: dependent.map(notAlone) } : loaded;
}

/** Each document is kept by itself; one that leans on a line above its neighbour would read differently later. */
function saysTheSameAlone(doc: LoadedDoc): boolean {
  const alone = loadText(doc.text, doc.file);
  return alone.kind === "loaded" && alone.docs.length === 1 && isDeepStrictEqual(alone.docs[0]?.plain, doc.plain);
}

function notAlone({ doc, file }: LoadedDoc): Refusal {
  const name = `${doc.kind} ${doc.id}`;
  return {
    code: "leans-on-another",
    at: `${file} ${name}`,
    given: name,
    allowed: say("store.put-text.documents-that-can-each-be-read"),
    message: say("store.put-text.can-only-be-read-together-with", { file, name }),
  };
}
