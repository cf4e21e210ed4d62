/**
 * Which builds are here, and where does each stand? The standing is what the board of the build says; it is reckoned
 * once for each state of its documents, so that the list is quick.
 */

import type { BuildStanding } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import type { Workshop } from "@coldset/store";
import { z } from "zod";
import type { BuildWork } from "./build-routes.js";
import type { DocumentReader } from "./documents-of-build.js";
import { stateOf } from "./kept-text.js";

export const buildLineSchema = z.object({
  id: z.string(),
  title: z
    .string()
    .nullable()
    .meta({ description: say("server.build-lines.null-where-the-text-can-no") }),
  revision: z.int().min(1),
  updatedAt: z.iso.datetime().meta({ description: say("server.build-lines.when-the-build-or-a-document") }),
  putAway: z.boolean().meta({ description: say("server.build-lines.out-of-the-way-and-kept") }),
  standing: z
    .object({
      becomes: z.string(),
      open: z.int().min(0),
      settled: z.int().min(0),
      notChecked: z.int().min(0),
      refused: z.array(z.string()),
    })
    .nullable()
    .meta({ description: say("server.build-lines.where-its-twenty-questions-stand-null") }),
});
export type BuildLine = Omit<z.output<typeof buildLineSchema>, "standing"> & {
  readonly standing: BuildStanding | null;
};

type Listed = Awaited<ReturnType<Workshop["listDocuments"]>>[number];

/**
 * Many builds may have changed. So many are asked for at a time: whoever reckons is never idle, and a check that is asked
 * for meanwhile need not wait for all of them.
 */
const TOGETHER = 4;

export type BuildLines = () => Promise<readonly BuildLine[]>;

export function buildLines(workshop: Workshop, reader: DocumentReader, standing: BuildWork["standing"]): BuildLines {
  const known = new Map<string, { readonly state: string; readonly standing: BuildStanding | null }>();
  const lineOf = async (
    { id, revision, updatedAt }: Listed,
    changed: ReadonlyMap<string, string>,
  ): Promise<BuildLine | undefined> => {
    const found = await reader.ofBuild(id);
    if (found.kind === "no-build") return undefined;
    const build = found.kind === "found" ? found.docs.find((d) => d.kind === "build") : undefined;
    const documents = found.kind === "found" ? found.documents : [];
    const state = stateOf(documents);
    let hit = known.get(id);
    if (hit === undefined || hit.state !== state) {
      hit = { state, standing: found.kind === "found" ? await standing(found.docs, id) : null };
      known.set(id, hit);
    }
    return {
      id,
      title: build?.kind === "build" ? build.title : null,
      revision,
      // Written as ISO 8601 in UTC, days sort as text.
      updatedAt:
        [updatedAt, ...documents.flatMap((d) => changed.get(`${d.kind} ${d.id}`) ?? [])].sort().at(-1) ?? updatedAt,
      putAway: build?.kind === "build" && build.put_away === true,
      standing: hit.standing,
    };
  };
  const make = async (): Promise<readonly BuildLine[]> => {
    const all = await workshop.listDocuments();
    const changed = new Map(all.map((d) => [`${d.kind} ${d.id}`, d.updatedAt]));
    const builds = all.filter((d) => d.kind === "build");
    const lines: BuildLine[] = [];
    for (let from = 0; from < builds.length; from += TOGETHER) {
      const some = builds.slice(from, from + TOGETHER);
      for (const line of await Promise.all(some.map((listed) => lineOf(listed, changed))))
        if (line !== undefined) lines.push(line);
    }
    return lines;
  };
  return shared(make);
}

/** Those who ask while an answer is being made share the next one, which knows all that was kept before they asked. */
function shared<T>(make: () => Promise<T>): () => Promise<T> {
  let making: Promise<unknown> = Promise.resolve();
  let next: Promise<T> | undefined;
  return () => {
    next ??= making.then(() => {
      next = undefined;
      const made = make();
      making = made.catch(() => undefined);
      return made;
    });
    return next;
  };
}
