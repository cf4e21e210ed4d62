/** How is a joint registered? One function from the view to its answer, with what it reads. */

import type { NextStep } from "../quantity/index.js";
import { say } from "../texts/say.js";
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
  wheel_front: say("fit.joint-definition.front-wheel"),
  wheel_rear: say("fit.joint-definition.rear-wheel"),
  tyre_front: say("fit.joint-definition.front-tyre"),
  tyre_rear: say("fit.joint-definition.rear-tyre"),
  tube_front: say("fit.joint-definition.front-tube"),
  tube_rear: say("fit.joint-definition.rear-tube"),
  lever: say("fit.joint-definition.pair-of-levers"),
  caliper: say("fit.joint-definition.pair-of-calipers"),
  caliper_front: say("fit.joint-definition.front-caliper"),
  caliper_rear: say("fit.joint-definition.rear-caliper"),
  rotor_front: say("fit.joint-definition.front-rotor"),
  rotor_rear: say("fit.joint-definition.rear-rotor"),
  adapter_front: say("fit.joint-definition.front-adapter"),
  adapter_rear: say("fit.joint-definition.rear-adapter"),
  bb: say("fit.joint-definition.bottom-bracket"),
  post: "seatpost",
  axle_kit: say("fit.joint-definition.axle-kit"),
  light: say("fit.joint-definition.light-set"),
  wheels: say("fit.joint-definition.pair-of-wheels"),
  rims: say("fit.joint-definition.pair-of-rims"),
  hub_front: say("fit.joint-definition.front-hub"),
  hub_rear: say("fit.joint-definition.rear-hub"),
  ring_inner: say("fit.joint-definition.small-ring"),
  cassette_spacer: say("fit.joint-definition.spacer-behind-the-cassette"),
  derailleur_front: say("fit.joint-definition.front-derailleur"),
};

export function placeWords(place: Place): string {
  return PLACE_WORDS[place] ?? place;
}

/** The place is empty: the joint waits for a choice. */
export function notChosen(head: JointHead, place: Place): JointAnswer {
  const words = placeWords(place);
  return notChecked(head, say("fit.joint-definition.no-is-chosen-yet", { words }), {
    kind: "decide",
    what: say("fit.joint-definition.choose-a", { words }),
    at: `build.chosen.${place}`,
  });
}
