/** Which entered figures decide this question, so that they can be changed on its own page? Those that its joints read, and a few besides. */

import { ALL_JOINTS } from "@coldset/core/fit";
import { type BoardRow, donorPath, type Reckoning } from "@coldset/core/questions";
import { say } from "@coldset/core/texts";
import type { OpenDoc } from "../state/laid.js";
import { valueAt } from "../state/place.js";
import { capital, placeWords } from "../state/words.js";
import { docPath } from "./asked-fields.js";
import { FIELD_GROUPS, type FieldInfo, READINGS, stationFields } from "./donor-fields.js";
import type { EntryTarget } from "./entry-field.js";

export interface DecidingField {
  readonly at: string;
  readonly info: FieldInfo;
  readonly target: EntryTarget;
  /** Nothing is entered yet, and a step asks for it. */
  readonly asked: boolean;
}

/** Figures that no joint reads and that decide all the same. */
const BESIDES: Readonly<Record<number, readonly string[]>> = {
  2: ["donor.condition.cracks", "donor.condition.dents", "donor.condition.rust", "donor.condition.post"],
  4: ["rider.saddle_xy.0", "rider.saddle_xy.1", "rider.hand_xy.0", "rider.hand_xy.1"],
  12: ["donor.measured.chainstay"],
  15: ["shop.session_h", "intent.deadline_weeks"],
  19: ["intent.budget", "intent.hours_max", "shop.rate_per_hour", "donor.price"],
};

const TITLES: Readonly<Record<string, string>> = {
  "rider.saddle_xy.0": say("web.deciding-fields.saddle-wanted-forward-of-the-cranks"),
  "rider.saddle_xy.1": say("web.deciding-fields.saddle-wanted-above-the-cranks-axis"),
  "rider.hand_xy.0": say("web.deciding-fields.hands-wanted-forward-of-the-cranks"),
  "rider.hand_xy.1": say("web.deciding-fields.hands-wanted-above-the-cranks-axis"),
  "rider.total_mass": say("web.deciding-fields.rider-bicycle-and-load-together"),
  "shop.session_h": say("web.deciding-fields.hours-a-session"),
  "shop.rate_per_hour": say("web.deciding-fields.what-an-hour-of-work-is"),
  "intent.deadline_weeks": say("web.deciding-fields.weeks-until-it-must-be-ready"),
  "intent.budget": say("web.deciding-fields.budget"),
  "intent.hours_max": say("web.deciding-fields.hours-at-most"),
};

/** Short words of the documents as a builder says them. */
const SHORT: Readonly<Record<string, string>> = {
  od: say("web.deciding-fields.outside"),
  id: say("web.deciding-fields.inside"),
  bsd: say("web.deciding-fields.bead-seat"),
  q: "Q",
  bb: say("web.deciding-fields.cranks-axis"),
  deg: "°",
};

export function decidingFields(r: Reckoning, row: BoardRow, docs: readonly OpenDoc[]): readonly DecidingField[] {
  const known = new Map<string, FieldInfo>(
    [...READINGS, ...FIELD_GROUPS.flatMap((g) => g.fields)].map((f) => [`donor.${f.path.join(".")}`, f] as const),
  );
  const asked = askedAt(r, row);
  const paths = new Set<string>([...asked, ...readings(r, row), ...(BESIDES[row.n] ?? [])]);
  for (const joint of ALL_JOINTS)
    if (row.joints.includes(joint.id)) for (const path of joint.attributes) for (const p of here(path, r)) paths.add(p);
  const fields = [...paths].flatMap((at): DecidingField[] => {
    const found = docPath(at, docs);
    if (found === undefined) return [];
    const value = valueAt(found.doc.plain, found.path);
    const empty = value === undefined || value === null || value === "?";
    if ((!empty && typeof value === "object") || (empty && !asked.has(at))) return [];
    return [
      {
        at,
        info: known.get(at) ?? infoOf(at, found.path.map(String), r),
        target: { kind: found.doc.kind, id: found.doc.id, path: found.path, words: found.words },
        asked: empty,
      },
    ];
  });
  const stations = [...paths].flatMap((path) => stationsOf(path, r));
  return [...fields.filter((f) => f.asked), ...fields.filter((f) => !f.asked), ...stations];
}

/** What the question itself or a joint behind it asks for. */
function askedAt(r: Reckoning, row: BoardRow): ReadonlySet<string> {
  const steps = [row.next, ...r.joints.joints.filter((j) => row.joints.includes(j.id)).map((j) => j.next)];
  return new Set(steps.flatMap((s) => (s?.at === undefined ? [] : [s.at])));
}

/** Question 13: the reading that the others disagree with, and those that it shares its residual with. */
function readings(r: Reckoning, row: BoardRow): readonly string[] {
  const { survey, setAside } = r.geometry;
  if (row.n !== 13 || survey.kind === "refused" || setAside === undefined) return [];
  const suspect = survey.value.readings.find((c) => c.measurement === setAside);
  return [setAside, ...(suspect?.shares_residual_with ?? [])].map(donorPath);
}

/** "wheel.ports.bsd" is read of both wheels; a part's figure stands in the bin under the part's id. */
function here(path: string, r: Reckoning): readonly string[] {
  const [head = "", ...rest] = path.split(".");
  if (rest[0] !== "ports") return [path];
  const parts = [head, `${head}_front`, `${head}_rear`].flatMap((place) => {
    const part = r.resolved.at[place as keyof typeof r.resolved.at];
    return part === undefined ? [] : [part.id];
  });
  return parts.map((id) => `bin.parts.${id}.${rest.join(".")}`);
}

function infoOf(at: string, path: readonly string[], r: Reckoning): FieldInfo {
  const [, , id = "", ...rest] = at.split(".");
  const own = at.startsWith("bin.parts.");
  const place = own ? Object.entries(r.resolved.at).find(([, part]) => part?.id === id)?.[0] : undefined;
  const leaf = (own ? rest.filter((w) => w !== "ports") : at.split(".").slice(1)).join(" ");
  const words = leaf
    .split(/[ _]/)
    .map((w) => SHORT[w] ?? w)
    .join(" ");
  return {
    path,
    title: TITLES[at] ?? capital(words),
    ...(own ? { sub: `${id}${place === undefined ? "" : ` ${placeWords(place)}`}` } : {}),
    sort: { as: "text" },
  };
}

/** A profile is a list of stations; each has a field of its own. */
function stationsOf(path: string, r: Reckoning): readonly DecidingField[] {
  const { donor } = r.resolved;
  return stationFields(donor)
    .filter((info) => path === `donor.${info.path.slice(0, 2).join(".")}`)
    .map((info) => ({
      at: `donor.${info.path.join(".")}`,
      info,
      target: { kind: "donor", id: donor.id, path: info.path, words: info.title.toLowerCase() },
      asked: false,
    }));
}
