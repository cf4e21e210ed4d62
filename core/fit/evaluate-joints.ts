/**
 * What do all joints of this build say, with the remedies reckoned with and their side effects?
 * Every joint is judged; the remedy taken (or else the cheapest that this shop can do) of each joint that fits with work
 * changes ports; the joints that read them are judged again, until nothing changes any more or five passes are over.
 * A joint never sees the effects of its own remedy: otherwise the work would vanish from the list as soon as it is planned.
 */

import type { Caution } from "../quantity/index.js";
import { say } from "../texts/say.js";
import { ALL_JOINTS } from "./all-joints.js";
import { type JudgedOnce, judgedOnce } from "./evaluate-once.js";
import type { JointAnswer, RemedyOffer } from "./joint.js";
import type { JointDefinition } from "./joint-definition.js";
import { reckonedRemedy } from "./offer-remedy.js";
import type { FitView } from "./view.js";

export const MOST_PASSES = 5;

export interface JointsAnswer {
  /** In the order of the registry. */
  readonly joints: readonly JointAnswer[];
  /** Remedy reckoned with, by joint id. */
  readonly reckoned: ReadonlyMap<string, RemedyOffer>;
  /** Ports as the remedies leave them. */
  readonly ports: Readonly<Record<string, number>>;
  readonly passes: number;
  readonly cautions: readonly Caution[];
}

/** One port change with the joint that brings it. */
interface Change {
  readonly joint: string;
  readonly port: string;
  readonly to: number;
  /** Joints that the remedy itself names as touched. */
  readonly joints: readonly string[];
}

/** @param judged answers of the same reckoning or an earlier one, taken where nothing that they read differs. */
export function evaluateJoints(
  view: FitView,
  joints: readonly JointDefinition[] = ALL_JOINTS,
  judged: JudgedOnce = judgedOnce(),
): JointsAnswer {
  const answers = new Map<string, JointAnswer>();
  let changes: readonly Change[] = [];
  let due: readonly JointDefinition[] = joints;
  let passes = 0;
  let settled = false;
  while (!settled && passes < MOST_PASSES) {
    passes += 1;
    for (const joint of due) answers.set(joint.id, judged.once(joint.evaluate, seenBy(joint.id, view, changes)));
    const found = changesOf(joints, answers, view);
    const touched = differing(changes, found);
    const ports = new Set(touched.map((change) => change.port));
    const named = new Set(touched.flatMap((change) => change.joints));
    settled = touched.length === 0;
    due = joints.filter((joint) => named.has(joint.id) || joint.reads.some((port) => ports.has(port)));
    changes = found;
    if (!settled && due.length === 0) settled = true;
  }
  const cautions: Caution[] = [];
  if (!settled) {
    cautions.push({
      code: "no-fixed-point",
      message: say("fit.evaluate-joints.the-remedies-keep-changing-each-other", { mostPasses: MOST_PASSES }),
    });
  }
  cautions.push(...quarrels(changes), ...unknownRemedies(view, joints, answers));
  const reckoned = new Map<string, RemedyOffer>();
  for (const [id, answer] of answers) {
    const offer = takenBy(answer, view);
    if (offer !== undefined) reckoned.set(id, offer);
  }
  return {
    joints: joints.flatMap((joint) => answers.get(joint.id) ?? []),
    reckoned,
    ports: portsOf(view, changes),
    passes,
    cautions,
  };
}

function takenBy(answer: JointAnswer, view: FitView): RemedyOffer | undefined {
  return answer.verdict === "fits with work" ? reckonedRemedy(answer.id, answer.remedies, view) : undefined;
}

function changesOf(
  joints: readonly JointDefinition[],
  answers: ReadonlyMap<string, JointAnswer>,
  view: FitView,
): readonly Change[] {
  return joints.flatMap((joint) => {
    const answer = answers.get(joint.id);
    const offer = answer === undefined ? undefined : takenBy(answer, view);
    return (offer?.sideEffects ?? []).flatMap((effect) =>
      effect.to === undefined ? [] : [{ joint: joint.id, port: effect.port, to: effect.to, joints: effect.joints }],
    );
  });
}

/** The view as this joint sees it: all changes but its own. */
function seenBy(joint: string, view: FitView, changes: readonly Change[]): FitView {
  const others = changes.filter((change) => change.joint !== joint);
  return others.length === 0 ? view : { ...view, ports: portsOf(view, others) };
}

function portsOf(view: FitView, changes: readonly Change[]): Readonly<Record<string, number>> {
  if (changes.length === 0) return view.ports;
  const ports: Record<string, number> = { ...view.ports };
  for (const change of changes) ports[change.port] = change.to;
  return ports;
}

function differing(before: readonly Change[], after: readonly Change[]): readonly Change[] {
  const key = (change: Change) => `${change.joint} ${change.port} ${change.to}`;
  const old = new Set(before.map(key));
  const now = new Set(after.map(key));
  return [...after.filter((change) => !old.has(key(change))), ...before.filter((change) => !now.has(key(change)))];
}

/** Two remedies that want different values of one port. */
function quarrels(changes: readonly Change[]): readonly Caution[] {
  const seen = new Map<string, Change>();
  const cautions: Caution[] = [];
  for (const change of changes) {
    const first = seen.get(change.port);
    if (first === undefined) seen.set(change.port, change);
    else if (first.to !== change.to) {
      cautions.push({
        code: "remedies-disagree",
        at: change.port,
        message: say("fit.evaluate-joints.the-remedy-of-makes-the-one", {
          oneJoint: first.joint,
          port: change.port,
          oneValue: first.to,
          otherJoint: change.joint,
          otherValue: change.to,
        }),
      });
    }
  }
  return cautions;
}

/** Remedies that the build names and that no joint offers. */
function unknownRemedies(
  view: FitView,
  joints: readonly JointDefinition[],
  answers: ReadonlyMap<string, JointAnswer>,
): readonly Caution[] {
  return (view.resolved.build.remedies ?? []).flatMap((taken, i): readonly Caution[] => {
    if (!joints.some((joint) => joint.id === taken.joint)) return [];
    const answer = answers.get(taken.joint);
    const offer = answer?.remedies.find((remedy) => remedy.id === taken.remedy);
    const at = `build.remedies[${i}]`;
    if (offer === undefined) {
      const ids = answer?.remedies.map((remedy) => remedy.id) ?? [];
      return [
        {
          code: "remedy-not-offered",
          at,
          message: say("fit.evaluate-joints.does-not-offer-the-remedy-in", {
            joint: taken.joint,
            remedy: taken.remedy,
            idsCount: ids.length > 0 ? say("fit.evaluate-joints.it-offers", { ids: ids.join(", ") }) : "",
          }),
        },
      ];
    }
    return offer.refused === undefined
      ? []
      : [
          {
            code: "remedy-refused",
            at,
            message: say("fit.evaluate-joints.the-remedy-of-is-refused", {
              remedy: taken.remedy,
              joint: taken.joint,
              refused: offer.refused,
            }),
          },
        ];
  });
}
