/**
 * How are documents read again and again without asking the records each time? What is committed is kept in memory until
 * a commit says that it changed: one process holds a folder, and every change of a document leaves a row in the history.
 * Inside a transaction documents are read from the records themselves. The longest unused texts go first.
 */
import type { DocumentName } from "@coldset/core/workshop";
import type { Kysely } from "kysely";
import { documentsNamed } from "./read-documents.js";
import type { Tables } from "./tables.js";
import type { StoredDocument } from "./workshop.js";

const MOST_LETTERS = 16_000_000;
/** Names under which nothing stands are remembered too, but not without end. */
const MOST_NAMES = 10_000;

export interface KeptRows {
  readonly one: (kind: string, id: string) => Promise<StoredDocument | undefined>;
  /** Those that are there, as they stood at one moment; in no order. */
  readonly named: (names: readonly DocumentName[]) => Promise<readonly StoredDocument[]>;
  /** To be called at the commit itself, before anybody can read what it changed. */
  readonly committed: (changed: readonly DocumentName[]) => void;
  readonly forget: () => void;
}

const keyOf = ({ kind, id }: DocumentName) => `${kind} ${id}`;

export function keptRows(db: Kysely<Tables>, mostLetters = MOST_LETTERS): KeptRows {
  const kept = new Map<string, StoredDocument | null>();
  let letters = 0;
  const drop = (key: string) => {
    letters -= kept.get(key)?.text.length ?? 0;
    kept.delete(key);
  };
  const keep = (key: string, stored: StoredDocument | null) => {
    drop(key);
    kept.set(key, stored);
    letters += stored?.text.length ?? 0;
    for (const oldest of kept.keys()) {
      if ((letters <= mostLetters && kept.size <= MOST_NAMES) || oldest === key) break;
      drop(oldest);
    }
  };
  /** undefined: at least one of them is not known here. */
  const allKnown = (names: readonly DocumentName[]): readonly StoredDocument[] | undefined => {
    const found: StoredDocument[] = [];
    for (const name of names) {
      const key = keyOf(name);
      const stored = kept.get(key);
      if (stored === undefined) return undefined;
      // The newest use stands last.
      kept.delete(key);
      kept.set(key, stored);
      if (stored !== null) found.push(stored);
    }
    return found;
  };
  const fetched = (names: readonly DocumentName[]) =>
    // The connection is held until what it gave is kept: no commit comes between.
    db.connection().execute(async (one) => {
      const there = await documentsNamed(one, names);
      for (const name of names) keep(keyOf(name), there.find((d) => d.kind === name.kind && d.id === name.id) ?? null);
      return there;
    });
  const named = async (names: readonly DocumentName[]) => {
    if (names.length === 0) return [];
    return allKnown(names) ?? (await fetched(names));
  };
  return {
    one: async (kind, id) => (await named([{ kind, id }]))[0],
    named,
    committed: (changed) => {
      for (const name of changed) drop(keyOf(name));
    },
    forget: () => {
      kept.clear();
      letters = 0;
    },
  };
}
