/**
 * Which builds are here, and where does each stand? The standing is what the board of the build says; it is reckoned
 * once for each state of its documents, so that the list is quick.
 */

import { setImmediate as othersIn } from "node:timers/promises";
import { type BuildStanding, reckonUpon, standingOfBuild } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import { type AnyDoc, resolveBuild } from "@coldset/core/workshop";
import type { Workshop } from "@coldset/store";
import { z } from "zod";
import type { DocumentReader } from "./documents-of-build.js";

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

export type BuildLines = () => Promise<readonly BuildLine[]>;

export function buildLines(workshop: Workshop, reader: DocumentReader): BuildLines {
  const known = new Map<string, { readonly state: string; readonly standing: BuildStanding | null }>();
  const reckoned = reckonUpon();
  const standing = (docs: readonly AnyDoc[], id: string): BuildStanding | null => {
    const resolved = resolveBuild(docs, id);
    return resolved.kind === "refused" ? null : standingOfBuild(reckoned(resolved.resolved));
  };
  const make = async (): Promise<readonly BuildLine[]> => {
    const all = await workshop.listDocuments();
    const changed = new Map(all.map((d) => [`${d.kind} ${d.id}`, d.updatedAt]));
    const lines: BuildLine[] = [];
    for (const { id, revision, updatedAt } of all.filter((d) => d.kind === "build")) {
      const found = await reader.ofBuild(id);
      if (found.kind === "no-build") continue;
      const build = found.kind === "found" ? found.docs.find((d) => d.kind === "build") : undefined;
      const documents = found.kind === "found" ? found.documents : [];
      const state = documents.map((d) => `${d.kind} ${d.id} ${d.revision}`).join("\n");
      let hit = known.get(id);
      if (hit === undefined || hit.state !== state) {
        hit = { state, standing: found.kind === "found" ? standing(found.docs, id) : null };
        known.set(id, hit);
        // Many builds may have changed; whoever else asks does not wait for all of them.
        await othersIn();
      }
      lines.push({
        id,
        title: build?.kind === "build" ? build.title : null,
        revision,
        // Written as ISO 8601 in UTC, days sort as text.
        updatedAt:
          [updatedAt, ...documents.flatMap((d) => changed.get(`${d.kind} ${d.id}`) ?? [])].sort().at(-1) ?? updatedAt,
        putAway: build?.kind === "build" && build.put_away === true,
        standing: hit.standing,
      });
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
