/** What the tests of these joints share: the Quayside build with parts, ports and donor entered otherwise. No check stands here. */
import { loadText, type Part, type Place, type ResolvedBuild, resolveBuild } from "../../workshop/index.js";
import type { JointAnswer } from "../joint.js";
import type { FitView } from "../view.js";
import { viewOfBuild } from "../view-of-build.js";
import { driveAndBrakesJoints } from "./drive-and-brakes-joints.js";

export function resolved(text: string): ResolvedBuild {
  const loaded = loadText(text, "quayside.yaml");
  if (loaded.kind !== "loaded") throw new Error(JSON.stringify(loaded));
  const result = resolveBuild(loaded.docs.map((d) => d.doc));
  if (result.kind !== "resolved") throw new Error(JSON.stringify(result));
  return result.resolved;
}

/** Frame by the adjusted survey of the scenario; only the chainstay and the seat tube are read by these joints. */
export function viewOf(resolved: ResolvedBuild, ports: Readonly<Record<string, number>> = {}): FitView {
  return viewOfBuild(resolved, {
    frame: {
      seat_tube_cc_mm: 491,
      top_tube_actual_mm: 551,
      top_tube_slope_deg: 0,
      head_angle_deg: 71.06,
      seat_angle_deg: 72.83,
      head_tube_mm: 145,
      top_tube_below_head_tube_top_mm: 35,
      lower_stack_mm: 12,
      axle_to_crown_mm: 392,
      rake_mm: 45,
      chainstay_mm: 442.3,
      bb_drop_mm: 57.4,
      rear_radius_mm: 346,
      front_radius_mm: 346,
    },
    frameSd: { chainstay_mm: 1.2 },
    spacersBelowMm: 20,
    postExtensionMm: 683.3,
    ports,
  });
}

export function partOf(resolved: ResolvedBuild, id: string): Part {
  const part = resolved.parts.get(id);
  if (part === undefined) throw new Error(`no part ${id}`);
  return part;
}

/** The view with other parts of the bin in some places; null empties a place. */
export function withParts(view: FitView, places: Partial<Record<Place, string | null>>): FitView {
  const at: Partial<Record<Place, Part>> = { ...view.at };
  for (const [place, id] of Object.entries(places) as [Place, string | null][]) {
    if (id === null) delete at[place];
    else at[place] = partOf(view.resolved, id);
  }
  return { ...view, at };
}

/** The view with some ports of the part in a place entered otherwise; undefined: not known. */
export function withPorts(view: FitView, place: Place, ports: Readonly<Record<string, unknown>>): FitView {
  const part = view.at[place];
  if (part === undefined) throw new Error(`nothing at ${place}`);
  return { ...view, at: { ...view.at, [place]: { ...part, ports: { ...part.ports, ...ports } } as Part } };
}

export function withDonor(view: FitView, change: (donor: ResolvedBuild["donor"]) => ResolvedBuild["donor"]): FitView {
  return { ...view, resolved: { ...view.resolved, donor: change(view.resolved.donor) } };
}

export function judge(id: string, view: FitView): JointAnswer {
  const joint = driveAndBrakesJoints.find((definition) => definition.id === id);
  if (joint === undefined) throw new Error(`no ${id}`);
  return joint.evaluate(view);
}

export function number(answer: JointAnswer, name: string | RegExp): number {
  const hit = answer.numbers.find((n) => (typeof name === "string" ? n.name === name : name.test(n.name)));
  if (hit === undefined)
    throw new Error(`${answer.id} has no ${name}: ${answer.numbers.map((n) => n.name).join("; ")}`);
  return hit.value;
}
