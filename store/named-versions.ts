/**
 * Which names have people given to how a build stood? A name keeps the revision of each document at that moment; the texts
 * themselves are in the history, so a name costs next to nothing and can always be looked at again.
 */

import type { Refusal } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import type { Kysely } from "kysely";
import type { Author } from "./begin-change.js";
import { buildNow } from "./build-changes.js";
import { type NamedVersion, NOW_NAME, type VersionNamed, type Versions } from "./history-types.js";
import type { ReadTexts } from "./read-texts.js";
import { refusedAs } from "./refused-as.js";
import type { Tables } from "./tables.js";

const NAME_LETTERS = 80;
/** More than that nobody can choose from. */
export const MOST_VERSIONS = 500;

/** Two names that differ only in capitals or in how a letter is put together are one name. */
export const nameKey = (name: string): string => name.trim().replace(/\s+/g, " ").normalize("NFC").toLowerCase();

export async function nameVersion(
  db: Kysely<Tables>,
  texts: ReadTexts,
  build: string,
  given: string,
  author: Author,
): Promise<VersionNamed> {
  const name = given.trim().replace(/\s+/g, " ").normalize("NFC");
  const bad = nameRefusal(name);
  if (bad !== undefined) return refusedAs(bad);
  return db.transaction().execute(async (trx): Promise<VersionNamed> => {
    const now = await buildNow(trx, texts, build);
    if (now.kind === "refused") return now;
    const there = await trx.selectFrom("versions").select(["name", "name_key"]).where("build", "=", build).execute();
    const same = there.find((v) => v.name_key === nameKey(name));
    if (same !== undefined) return refusedAs(taken(same.name));
    if (there.length >= MOST_VERSIONS) return refusedAs(tooMany(build));
    const { version } = await trx
      .insertInto("versions")
      .values({ build, name, name_key: nameKey(name), who: author.who, at: author.at })
      .returning("version")
      .executeTakeFirstOrThrow();
    const documents = now.documents.map(({ kind, id, revision }) => ({ kind, id, revision }));
    await trx
      .insertInto("version_documents")
      .values(documents.map((d) => ({ ...d, version })))
      .execute();
    return { kind: "named", version: { name, at: author.at, who: author.who, documents } };
  });
}

/** Newest first. */
export async function listVersions(db: Kysely<Tables>, texts: ReadTexts, build: string): Promise<Versions> {
  const now = await buildNow(db, texts, build);
  if (now.kind === "refused") return now;
  const rows = await db
    .selectFrom("versions")
    .innerJoin("version_documents", "version_documents.version", "versions.version")
    .select(["versions.version", "name", "at", "who", "kind", "id", "revision"])
    .where("build", "=", build)
    .orderBy("versions.version", "desc")
    .orderBy("kind")
    .orderBy("id")
    .execute();
  const found = new Map<
    number,
    { name: string; at: string; who: string | null; documents: NamedVersion["documents"] }
  >();
  for (const { version, name, at, who, kind, id, revision } of rows) {
    const before = found.get(version)?.documents ?? [];
    found.set(version, { name, at, who, documents: [...before, { kind, id, revision }] });
  }
  return { kind: "versions", versions: [...found.values()] };
}

export interface VersionText {
  readonly kind: string;
  readonly id: string;
  readonly text: string;
}

/** The texts of all documents of a version, or undefined where no version has this name. */
export async function versionTexts(
  db: Kysely<Tables>,
  build: string,
  name: string,
): Promise<readonly VersionText[] | undefined> {
  const rows = await db
    .selectFrom("versions")
    .innerJoin("version_documents as d", "d.version", "versions.version")
    .innerJoin("history as h", (join) =>
      join.onRef("h.kind", "=", "d.kind").onRef("h.id", "=", "d.id").onRef("h.revision", "=", "d.revision"),
    )
    .select(["d.kind", "d.id", "h.after as text"])
    .where("versions.build", "=", build)
    .where("versions.name_key", "=", nameKey(name))
    .execute();
  return rows.length === 0 ? undefined : rows;
}

export function noVersion(build: string, name: string): Refusal {
  const shown = name.slice(0, NAME_LETTERS);
  return {
    code: "no-such-version",
    at: say("store.turn-change.build", { build }),
    given: shown,
    allowed: say("store.named-versions.a-name-that-was-given-to"),
    message: say("store.named-versions.build-has-no-version-named", { build, shown }),
  };
}

function nameRefusal(name: string): Refusal | undefined {
  const letters = Array.from(name).length;
  const plain = letters >= 1 && letters <= NAME_LETTERS && !/[\p{Cc}\p{Cf}\p{Cs}]/u.test(name);
  if (plain && nameKey(name) !== NOW_NAME) return undefined;
  const allowed = say("store.named-versions.1-to-letters-that-can-be", {
    nameLetters: NAME_LETTERS,
    nowName: NOW_NAME,
  });
  return {
    code: "bad-version-name",
    at: "name",
    given: name.slice(0, 40),
    allowed,
    message: say("store.named-versions.the-name-of-a-version-needs", { allowed, nowName: NOW_NAME }),
  };
}

function taken(name: string): Refusal {
  return {
    code: "version-name-taken",
    at: "name",
    given: name,
    allowed: say("store.named-versions.a-name-that-no-version-of"),
    message: say("store.named-versions.there-is-a-version-named-already", { name }),
  };
}

function tooMany(build: string): Refusal {
  return {
    code: "too-many-versions",
    at: say("store.turn-change.build", { build }),
    given: MOST_VERSIONS,
    allowed: say("store.named-versions.named-versions-of-a-build", { mostVersions: MOST_VERSIONS }),
    message: say("store.named-versions.build-has-named-versions-which-is", { build, mostVersions: MOST_VERSIONS }),
  };
}
