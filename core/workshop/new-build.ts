/**
 * Which documents does a new build begin with? From a few entries, each as a person writes it, the texts of all that a
 * build needs, with comments for whoever opens the file. What was not entered stands there as "?"; nothing is assumed.
 * The rider, shop, bin or prices of another build can be taken over in place of new ones.
 */

import { Document, stringify } from "yaml";
import type { Refusal } from "../quantity/index.js";
import { nearestName } from "../quantity/index.js";
import { say } from "../texts/say.js";
import type { DocKind } from "./documents.js";
import { MEASURED } from "./donor.js";
import { NEW_BUILD_ENTRIES, NEW_BUILD_KEYS } from "./new-build-entries.js";
import { type NewBuildEntries, readEntry } from "./read-entry.js";

/** Kinds that another build of the workshop may lend. */
export const LENT_KINDS = ["rider", "shop", "bin", "prices"] as const;
export type LentKind = (typeof LENT_KINDS)[number];
export type Lent = Readonly<Partial<Record<LentKind, string>>>;

export interface NewBuildText {
  readonly kind: DocKind;
  readonly id: string;
  readonly text: string;
}

export type NewBuild =
  | {
      readonly kind: "made";
      readonly id: string;
      readonly title: string;
      readonly documents: readonly NewBuildText[];
      /** All of them as one file. */
      readonly text: string;
      readonly entered: number;
    }
  | { readonly kind: "refused"; readonly refusals: readonly Refusal[] };

export interface NewBuildQuestion {
  readonly entries: NewBuildEntries;
  readonly lent?: Lent;
  /** Documents that are in the workshop already: their names are taken. */
  readonly taken?: readonly { readonly kind: string; readonly id: string }[];
}

const ID_MOST = 40;

/** A name as an id: letters without their marks, figures and dashes. "" where nothing of it can stand in an address. */
export function idOfName(name: string): string {
  const plain = name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/ß/g, "ss")
    .replace(/[^a-z0-9]+/g, "-");
  return plain.slice(0, ID_MOST).replace(/^-+|-+$/g, "");
}

/** The nearest id that no build has: "canal", "canal-2", "canal-3" … */
export function freeId(wanted: string, taken: ReadonlySet<string>): string {
  if (!taken.has(wanted)) return wanted;
  for (let n = 2; ; n++) {
    const tail = `-${n}`;
    const next = `${wanted.slice(0, ID_MOST - tail.length).replace(/-+$/, "")}${tail}`;
    if (!taken.has(next)) return next;
  }
}

export function newBuild(q: NewBuildQuestion): NewBuild {
  const refusals: Refusal[] = [];
  for (const key of Object.keys(q.entries)) {
    if (NEW_BUILD_KEYS.includes(key)) continue;
    const near = nearestName(key, NEW_BUILD_KEYS);
    refusals.push({
      code: "unknown-key",
      at: key,
      given: key,
      allowed: NEW_BUILD_KEYS.join(", "),
      message: say("workshop.new-build.there-is-no-entry", {
        key: JSON.stringify(key),
        near: near === undefined ? "" : say("workshop.fields.did-you-mean", { near }),
      }),
    });
  }
  const values: Record<string, unknown> = {};
  for (const entry of NEW_BUILD_ENTRIES) {
    const read = readEntry(entry, q.entries);
    if (read.kind === "read") values[entry.key] = read.value;
    if (read.kind === "refused")
      refusals.push({
        code: "unreadable",
        at: entry.key,
        given: q.entries[entry.key],
        allowed: entry.how,
        message: `${entry.title}: ${read.messages.join(" ")}`,
      });
  }
  const title = typeof values.name === "string" ? values.name : "";
  const id = idOfName(title);
  const taken = new Set((q.taken ?? []).map((d) => d.id));
  if (refusals.every((r) => r.at !== "name")) {
    if (id === "")
      refusals.push({
        code: "no-name",
        at: "name",
        given: q.entries.name ?? null,
        allowed: say("workshop.new-build.a-name-with-a-letter-from"),
        message: say("workshop.new-build.a-build-needs-a-name-with"),
      });
    else if (taken.has(id)) {
      const free = freeId(id, taken);
      refusals.push({
        code: "name-taken",
        at: "name",
        given: title,
        allowed: free,
        message: say("workshop.new-build.is-in-this-workshop-already-free", { id, free }),
      });
    }
  }
  for (const kind of LENT_KINDS) {
    const wanted = q.lent?.[kind];
    if (wanted === undefined || q.taken?.some((d) => d.kind === kind && d.id === wanted) === true) continue;
    refusals.push({
      code: "not-found",
      at: kind,
      given: wanted,
      allowed:
        (q.taken ?? [])
          .filter((d) => d.kind === kind)
          .map((d) => d.id)
          .join(", ") || say("workshop.new-build.no-is-here", { kind }),
      message: say("workshop.new-build.there-is-no-in-this-workshop", { kind, wanted: JSON.stringify(wanted) }),
    });
  }
  if (refusals.length > 0) return { kind: "refused", refusals };
  const documents = textsOf(id, title, values, q.lent ?? {});
  return {
    kind: "made",
    id,
    title,
    documents,
    text: documents.map((d, i) => (i === 0 ? d.text : `---\n${d.text}`)).join(""),
    entered: Object.keys(values).length,
  };
}

function textsOf(id: string, title: string, values: Readonly<Record<string, unknown>>, lent: Lent): NewBuildText[] {
  const v = (key: string) => inline(values[key] ?? "?");
  const said = (key: string, otherwise: string) => inline(values[key] ?? otherwise);
  const of = (kind: LentKind) => inline(lent[kind] ?? id);
  const wantsTyre = values.tyre_wanted !== undefined;
  // Its own bin holds the wanted tyre; a bin that is lent stays as it is.
  const chosen = wantsTyre && lent.bin === undefined ? "\n  tyre_front: wanted-tyre\n  tyre_rear: wanted-tyre" : " {}";
  const head = (kind: DocKind, own = id) => `kind: ${kind}\nversion: 1\nid: ${inline(own)}\n`;
  const measured = Object.keys(MEASURED)
    .map((name) => `  ${name}: ${v(name)}\n`)
    .join("");
  const documents: NewBuildText[] = [
    {
      kind: "build",
      id,
      text: `# A build that begins with a tape. "?" means: not measured, or not decided yet; write the figure in its place, with
# its unit if it is not mm: 442, 44,2 cm, 17 3/8". "442 ± 3" says how sure you are.
${head("build")}title: ${inline(title)}
donor: ${inline(id)}
rider: ${of("rider")}
intent: ${inline(id)}
shop: ${of("shop")}
bin: ${of("bin")}
prices: ${of("prices")}
# place: id of a part in the bin, such as fork, wheel_rear, crank.
chosen:${chosen}
# What every conversion goes through. The hours are first guesses (common practice, no source, half as much either
# way): write your own, and put your own work between them.
operations:
  - { id: strip, what: strip and bag, h: 2.5, after: [] }
  - { id: inspect, what: clean and look at every joint, h: 2, after: [strip] }
  - { id: measure, what: measure frame and parts, h: 1.5, after: [inspect] }
  - { id: dry-fit, what: dry fit everything bare, h: 3, gate: true, after: [measure] }
  - { id: assemble, what: grease and assemble, h: 5, after: [dry-fit] }
  - { id: last-check, what: signed check and first ride, h: 1.5, gate: true, after: [assemble] }
`,
    },
    {
      kind: "donor",
      id,
      text: `# The old bicycle, as it was found. What the tubes are counts as heat-treated and thin until somebody identifies them.
${head("donor")}label: ${inline(title)}
price: ${v("price")}
tube: { class: unknown, joints: unknown, down_tube_od: "?", top_tube_od: "?", head_tube_od: "?", chainstay_wall: "?" }
wheels_now:
  tyre: ${v("tyre_now")} # two-number marking
  radius: ${v("radius")} # axle over the floor
measured: # all from centre to centre; the readings check each other
${measured}lower_headset_stack: ${v("lower_stack")} # head tube's lower face down to the crown
interfaces:
  rear_spacing: ${v("rear_spacing")}
  front_spacing: "?"
  head_bore: "?"
  shell_width: "?"
  shell_thread: "?"
  seat_tube_od: "?"
  post: "?"
  rear_end: "?" # vertical_slot, horizontal_slot or closed_12
  rear_slot: "?"
gaps_rear: # distance from the axle: gap between the inner faces
  chainstay_inner_at_radius: ${v("gap_chainstays")}
  seatstay_inner_at_radius: ${v("gap_seatstays")}
stays: { chainstay_od: "?", seatstay_od: "?" }
condition:
  cracks: ${said("cracks", "not_looked")} # none_seen, suspect, found or not_looked
  dents: not_looked
  post: not_tried # free, stuck or not_tried
`,
    },
    {
      kind: "intent",
      id,
      text: `# What it is to become.
${head("intent")}purpose: ${said("becomes", say("workshop.new-build.not-said-yet"))}
guards: "?"
brakes: any # disc_both, disc_front, disc_rear, rim_both; any: not decided
gears: any # hub, derailleur, single; any: not decided
rack_class_kg: "?"
budget: ${v("budget")}
hours_max: ${v("hours_max")}
deadline_weeks: "?"
`,
    },
  ];
  if (lent.rider === undefined)
    documents.push({
      kind: "rider",
      id,
      text: `# Who rides it. saddle_xy and hand_xy: from the cranks' axis on a bicycle that the rider likes, [forward, up].
${head("rider")}name: the rider
inseam: ${v("inseam")}
mass: "?" # 70 kg
total_mass: "?" # rider, bicycle and load together
saddle_xy: ${v("saddle_xy")}
hand_xy: ${v("hand_xy")}
`,
    });
  if (lent.shop === undefined)
    documents.push({
      kind: "shop",
      id,
      text: `# What can be done here, and when. Add what you have: press, ream_face, tap, drill, lathe, mill, braze, weld, cold_set, spray.
${head("shop")}abilities: [hand]
session_h: ${v("session_h")}
open_days: ${v("open_days")}
rate_per_hour: "?"
`,
    });
  if (lent.bin === undefined)
    documents.push({
      kind: "bin",
      id,
      text: `# Parts on hand or on offer, each by its kind and its dimensions. cost: 0 is one you have.
${head("bin")}parts:${
        wantsTyre
          ? `\n  - { id: wanted-tyre, kind: tyre, condition: A, mass: "?", cost: "?", qty: 2, ports: { size: ${v("tyre_wanted").replace(/^([\d–-]+)$/, "$1")} } }\n`
          : " []\n"
      }`,
    });
  if (lent.prices === undefined)
    documents.push({
      kind: "prices",
      id,
      text: `# What things cost here, in your own currency. consumables: what one job uses up, by hand and with a machine or flame.
${head("prices")}consumables_hand: "?"
consumables_machine: "?"
same_bike_used: "?" # what a used bicycle of the wanted kind costs
`,
    });
  return documents;
}

/** A value on one line of YAML, written by the YAML library. */
function inline(value: unknown): string {
  if (value !== null && typeof value === "object")
    return new Document(value, { flow: true }).toString({ lineWidth: 0, flowCollectionPadding: true }).trim();
  return stringify(value, { lineWidth: 0, defaultStringType: "PLAIN", blockQuote: false }).trim();
}
