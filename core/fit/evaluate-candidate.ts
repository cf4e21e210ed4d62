/**
 * What would the joints say with another part in this place? Only the joints that this part touches are judged; the side
 * view is worked out again where the part moves it. The build itself stays as it is.
 */
import type { Part, Place } from "../workshop/index.js";
import { ALL_JOINTS } from "./all-joints.js";
import { evaluateJoints, type JointsAnswer } from "./evaluate-joints.js";
import type { JudgedOnce } from "./evaluate-once.js";
import type { JointDefinition } from "./joint-definition.js";
import type { FitView } from "./view.js";
import { viewWithPart } from "./view-of-build.js";

export interface CandidateAnswer extends JointsAnswer {
  readonly place: Place;
  readonly part: string;
  /** The view with the candidate in its place: its `after` is the candidate's side view. */
  readonly view: FitView;
}

const WHEELS_OF: Readonly<Partial<Record<Place, readonly Place[]>>> = {
  wheels: ["wheel_front", "wheel_rear"],
  rims: ["wheel_front", "wheel_rear"],
  hub_front: ["wheel_front"],
  hub_rear: ["wheel_rear"],
};

/** Which joints does a part in this place touch? Those between it and something, and those that read its attributes. */
export function jointsOfPlace(
  place: Place,
  joints: readonly JointDefinition[] = ALL_JOINTS,
): readonly JointDefinition[] {
  // Hubs and rims stand in the joints as the wheels they make.
  const places = [place, ...(WHEELS_OF[place] ?? [])];
  return joints.filter((joint) =>
    places.some((p) => joint.between.includes(p) || joint.attributes.some((path) => path.startsWith(`${p}.`))),
  );
}

/**
 * The part in this place, everything else as in the view. Remedies and their side effects are worked out again for this
 * part, so ports of the view are not taken over; joints outside `jointsOfPlace` are judged only where their remedies may
 * reach one inside, and are not in the answer.
 */
export function evaluateCandidate(
  view: FitView,
  place: Place,
  part: Part,
  joints: readonly JointDefinition[] = ALL_JOINTS,
  judged?: JudgedOnce,
): CandidateAnswer {
  const candidate = viewWithPart({ ...view, ports: {} }, place, part);
  const { ids, reached } = reach(place, joints);
  const answer = evaluateJoints(candidate, reached, judged);
  return {
    ...answer,
    joints: answer.joints.filter((joint) => ids.has(joint.id)),
    reckoned: new Map([...answer.reckoned].filter(([id]) => ids.has(id))),
    place,
    part: part.id,
    view: candidate,
  };
}

interface Reach {
  readonly ids: ReadonlySet<string>;
  readonly reached: readonly JointDefinition[];
}

/** A registry does not change: worked out once for each place of it. */
const REACHES = new WeakMap<readonly JointDefinition[], Map<Place, Reach>>();

function reach(place: Place, joints: readonly JointDefinition[]): Reach {
  const known = REACHES.get(joints) ?? new Map<Place, Reach>();
  REACHES.set(joints, known);
  const before = known.get(place);
  if (before !== undefined) return before;
  const concerned = jointsOfPlace(place, joints);
  const found = { ids: new Set(concerned.map((joint) => joint.id)), reached: withReaching(concerned, joints) };
  known.set(place, found);
  return found;
}

/** These joints and all whose remedies may change what one of them reads, in the order of the registry. */
function withReaching(
  concerned: readonly JointDefinition[],
  joints: readonly JointDefinition[],
): readonly JointDefinition[] {
  const chosen = new Set(concerned);
  for (let grown = true; grown; ) {
    const reads = new Set([...chosen].flatMap((joint) => joint.reads));
    const more = joints.filter(
      (joint) => !chosen.has(joint) && (joint.changes === undefined || joint.changes.some((port) => reads.has(port))),
    );
    for (const joint of more) chosen.add(joint);
    grown = more.length > 0;
  }
  return joints.filter((joint) => chosen.has(joint));
}
