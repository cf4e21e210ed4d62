/**
 * Which documents does this text bring into the workshop? All of them in one transaction, or none. One that is there
 * already gets a new revision; the old text stays in its history.
 */
import { isDeepStrictEqual } from "node:util";
import type { Refusal } from "@coldset/core/quantity";
import { type LoadedDoc, loadText } from "@coldset/core/workshop";
import type { Kysely } from "kysely";
import { storedDocument } from "./read-documents.js";
import type { Tables } from "./tables.js";
import { labelRefusal, textRefusal } from "./text-refusal.js";
import type { Put, PutDocument } from "./workshop.js";
import { writeDocument } from "./write-document.js";

export async function putText(db: Kysely<Tables>, text: string, label: string, at: string): Promise<Put> {
  const unfit = labelRefusal(label) ?? textRefusal(text, label);
  if (unfit !== undefined) return { kind: "refused", refusals: [unfit] };
  const loaded = loadText(text, label);
  if (loaded.kind === "refused") return loaded;
  const dependent = loaded.docs.filter((doc) => !saysTheSameAlone(doc));
  if (dependent.length > 0) return { kind: "refused", refusals: dependent.map(notAlone) };
  const documents = await db.transaction().execute(async (trx) => {
    const done: PutDocument[] = [];
    for (const { doc, text: after } of loaded.docs) {
      const { kind, id } = doc;
      const before = await storedDocument(trx, kind, id);
      if (before?.text === after) {
        done.push({ kind, id, revision: before.revision, change: "same" });
        continue;
      }
      const revision = await writeDocument(trx, before, { kind, id, label, path: null, after, at });
      done.push({ kind, id, revision, change: before === undefined ? "new" : "changed" });
    }
    return done;
  });
  return { kind: "put", documents };
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
    allowed: "documents that can each be read alone",
    message: `${file}: ${name} can only be read together with a line above another document. Put it into a file of its own.`,
  };
}
