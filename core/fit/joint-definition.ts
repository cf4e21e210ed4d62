/** How is a joint registered? One function from the view to its answer, with what it reads. */
import type { NextStep } from "../quantity/index.js";
import type { Place } from "../workshop/index.js";
import type { JointAnswer } from "./joint.js";
import type { FitView } from "./view.js";

/** Reads its view and nothing else: no `this`, no state outside. Answers are used again where the view says the same. */
export type JointFn = (view: FitView) => JointAnswer;

export interface JointDefinition {
  readonly id: `J${number}`;
  readonly title: string;
  readonly between: readonly (Place | "frame")[];
  /** Attributes that decide, as paths: "donor.interfaces.head_bore", "fork.ports.race_seat". For the page's help. */
  readonly attributes: readonly string[];
  /** Ports that remedies of other joints may change and that this joint reads: "frame.rear_spacing". */
  readonly reads: readonly string[];
  /** Ports that its own remedies may change. Left out: any. */
  readonly changes?: readonly string[];
  readonly evaluate: JointFn;
}

export type JointHead = Pick<JointDefinition, "id" | "title" | "between">;

/** The joint has nothing to judge yet: a place is empty, or this build has no such joint. */
export function notChecked(head: JointHead, reason: string, next?: NextStep): JointAnswer {
  return {
    id: head.id,
    title: head.title,
    between: head.between,
    verdict: "not checked yet",
    reason,
    numbers: [],
    remedies: [],
    ...(next === undefined ? {} : { next }),
    rules: [],
    sources: [],
    cautions: [],
  };
}

const PLACE_WORDS: Partial<Record<Place, string>> = {
  wheel_front: "front wheel",
  wheel_rear: "rear wheel",
  tyre_front: "front tyre",
  tyre_rear: "rear tyre",
  tube_front: "front tube",
  tube_rear: "rear tube",
  lever: "pair of levers",
  caliper: "pair of calipers",
  caliper_front: "front caliper",
  caliper_rear: "rear caliper",
  rotor_front: "front rotor",
  rotor_rear: "rear rotor",
  adapter_front: "front adapter",
  adapter_rear: "rear adapter",
  bb: "bottom bracket",
  post: "seatpost",
  axle_kit: "axle kit",
  light: "light set",
};

export function placeWords(place: Place): string {
  return PLACE_WORDS[place] ?? place;
}

/** The place is empty: the joint waits for a choice. */
export function notChosen(head: JointHead, place: Place): JointAnswer {
  const words = placeWords(place);
  return notChecked(head, `No ${words} is chosen yet.`, {
    kind: "decide",
    what: `Choose a ${words}`,
    at: `build.chosen.${place}`,
  });
}
