/** Which workshop is meant? The folder named, or the user's own; for commands that need records to be there already. */

import { existsSync } from "node:fs";
import { homedir } from "node:os";
import path from "node:path";
import { nearestName, type Refused, refused } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import type { Workshop } from "@coldset/store";
import type { Io } from "../io.js";

export type OpenRecords = { readonly kind: "open"; readonly workshop: Workshop } | Refused;

/**
 * @param who the door through which changes come, as the history tells it
 * @param make whether a workshop is made where there is none
 */
export async function openRecords(
  io: Io,
  data: string | undefined,
  who: string,
  { make = false }: { readonly make?: boolean } = {},
): Promise<OpenRecords> {
  const { openWorkshop } = await import("@coldset/store");
  const folder = await recordsFolder(io, data);
  if (!make && !existsSync(path.join(folder, "workshop.sqlite"))) {
    const allowed = say("cli.open-records.a-folder-in-which-a-workshop");
    const message = say("cli.open-records.there-is-no-workshop-in-start", { folder });
    return refused([{ code: "no-workshop", at: "--data", given: folder, allowed, message }]);
  }
  return openWorkshop(folder, { who });
}

export async function recordsFolder(io: Io, data: string | undefined): Promise<string> {
  const { dataFolder } = await import("@coldset/store");
  return data === undefined || data === "" ? dataFolder(io.env, process.platform, homedir()) : path.resolve(data);
}

/** The build named, or the only one that is there. */
export async function chosenBuild(workshop: Workshop, given: string | undefined): Promise<string | Refused> {
  const ids = (await workshop.listDocuments()).filter((d) => d.kind === "build").map((d) => d.id);
  if (given !== undefined) return ids.includes(given) ? given : noSuchBuild(given, ids);
  const [only] = ids;
  if (only !== undefined && ids.length === 1) return only;
  const allowed = ids.length === 0 ? say("cli.open-records.a-workshop-with-a-build-in") : ids.join(", ");
  const message =
    ids.length === 0
      ? say("cli.open-records.there-is-no-build-in-this")
      : say("cli.open-records.say-which-build", { allowed });
  return refused([{ code: "which-build", at: "build", given: null, allowed, message }]);
}

const MOST_NAMED = 20;

/** The nearest name first, for it is the one that was meant most likely. */
function noSuchBuild(build: string, ids: readonly string[]): Refused {
  const given = build.slice(0, 60);
  const near = nearestName(build, ids);
  const sorted = near === undefined ? ids : [near, ...ids.filter((id) => id !== near)];
  const shown = sorted.slice(0, MOST_NAMED).join(", ");
  const named =
    ids.length > MOST_NAMED ? say("cli.open-records.and-others", { ids: shown, more: ids.length - MOST_NAMED }) : shown;
  const message =
    ids.length === 0
      ? say("cli.open-records.there-is-no-build-at-all", { given })
      : near === undefined
        ? say("cli.open-records.builds-here", { given, ids: named })
        : say("cli.open-records.builds-here-did-you-mean", { given, near, ids: named });
  const allowed = ids.length === 0 ? say("cli.open-records.a-workshop-with-a-build-in") : named;
  return refused([{ code: "not-found", at: say("cli.open-records.build", { given }), given, allowed, message }]);
}
