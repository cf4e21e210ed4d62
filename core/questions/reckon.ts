/**
 * What is today's answer to every question of this build? Survey, side view, cockpit, joints with their remedies, rules,
 * ledger and plan, each from the rooms below, composed into the board. Pure: the same documents give the same answer.
 * `before`: the reckoning of an earlier state; what its documents did not change is not reckoned again.
 */

import { toeOf } from "../fit/front-and-wheels/toe-of.js";
import {
  evaluateCandidate,
  evaluateJoints,
  type FrameFacts,
  type JointAnswer,
  type JudgedOnce,
  judgedOnce,
  viewOfBuild,
} from "../fit/index.js";
import { capital, type NextStep } from "../quantity/index.js";
import { fireRules, type RuleFinding } from "../safety/index.js";
import { say } from "../texts/say.js";
import type { Part, PartOfKind, Place, ResolvedBuild } from "../workshop/index.js";
import { boardOf } from "./board-of.js";
import { cockpitOfBuild } from "./cockpit-of-build.js";
import { donorGeometry, newParts, onGround, radiiOf } from "./donor-geometry.js";
import { ledgerOfBuild } from "./ledger-of-build.js";
import { planOfBuild } from "./plan-of-build.js";
import type { ForkCandidate, OtherCandidate, Reckoning } from "./reckoning.js";

export function reckon(resolved: ResolvedBuild, before?: Reckoning): Reckoning {
  const geometry =
    before !== undefined && before.resolved.donor === resolved.donor ? before.geometry : donorGeometry(resolved.donor);
  const frame = geometry.frame.kind === "answered" ? geometry.frame.value : undefined;
  const radii = radiiOf(resolved);
  const forkPart = resolved.at.fork;
  const fork = forkPart?.kind === "fork" ? forkPart : undefined;
  const headset = resolved.at.headset?.kind === "headset" ? resolved.at.headset : undefined;
  const known =
    fork?.ports.axle_to_crown !== undefined &&
    fork.ports.rake !== undefined &&
    radii.frontMm !== undefined &&
    radii.rearMm !== undefined;
  const after = frame !== undefined && known ? onGround(frame, newParts(fork, headset, radii)) : undefined;
  const cockpit = cockpitOfBuild(resolved, after?.figures);
  const spacers = resolved.build.spacers_below ?? cockpit.chosen?.spacersMm;
  const view = viewOfBuild(resolved, {
    ...(frame === undefined
      ? {}
      : { frame: frame.frame as FrameFacts, frameSd: frame.frame_std as Partial<FrameFacts> }),
    ...(spacers === undefined ? {} : { spacersBelowMm: spacers }),
    ...(cockpit.post === undefined ? {} : { postExtensionMm: cockpit.post.extensionMm }),
  });
  const judged = judgedOnce(before === undefined ? undefined : JUDGED.get(before));
  const joints = evaluateJoints(view, undefined, judged);
  const settled = { ...view, ports: joints.ports };
  const considered = (place: Place): readonly Part[] => {
    const ids = [...new Set([...(resolved.build.consider?.[place] ?? []), resolved.build.chosen[place]])];
    return ids.flatMap((id) => (id === undefined ? [] : (resolved.parts.get(id) ?? [])));
  };
  const forks = considered("fork").flatMap((part): ForkCandidate[] => {
    if (part.kind !== "fork") return [];
    const answer = evaluateCandidate(settled, "fork", part, undefined, judged);
    const ports = part.ports;
    const figures =
      frame !== undefined && ports.axle_to_crown !== undefined && ports.rake !== undefined
        ? onGround(frame, newParts(part as PartOfKind<"fork">, headset, radii))?.figures
        : undefined;
    return [
      {
        part: part as ForkCandidate["part"],
        chosen: part.id === fork?.id,
        ...(figures === undefined ? {} : { figures }),
        toe: judged.once(toeOf, answer.view),
        answer,
      },
    ];
  });
  const others = (Object.keys(resolved.build.consider ?? {}) as Place[]).flatMap((place): OtherCandidate[] =>
    place === "fork"
      ? []
      : considered(place).flatMap((part) =>
          part.id === resolved.build.chosen[place]
            ? []
            : [{ place, part, answer: evaluateCandidate(settled, place, part, undefined, judged) }],
        ),
  );
  const standing = new Set(joints.joints.flatMap((j) => j.rules.map((r) => ruleKey(j, r))));
  const rules = fireRules(resolved, [
    ...findings(joints.joints, true),
    ...forks.flatMap((f) => (f.chosen ? [] : findings(f.answer.joints, false, f.part.id, "fork", standing))),
    ...others.flatMap((o) => findings(o.answer.joints, false, o.part.id, o.place, standing)),
  ]);
  const body = {
    resolved,
    geometry,
    ...(after === undefined ? {} : { after }),
    cockpit,
    view,
    joints,
    toe: judged.once(toeOf, view),
    forks,
    others,
    rules,
    ledger:
      before !== undefined &&
      before.resolved.build === resolved.build &&
      before.resolved.bin === resolved.bin &&
      before.resolved.donor.price === resolved.donor.price &&
      before.resolved.shop === resolved.shop &&
      before.resolved.prices === resolved.prices &&
      before.resolved.donor.condition === resolved.donor.condition &&
      before.resolved.intent === resolved.intent
        ? before.ledger
        : ledgerOfBuild(resolved),
    plan: planOfBuild(resolved, before?.plan),
  };
  const board = boardOf(body);
  judged.close();
  const reckoning = { ...body, board, next: nextSteps(board, joints.joints) };
  JUDGED.set(reckoning, judged);
  return reckoning;
}

/** What the joints read, beside each reckoning and no part of it: the next one may stand on it. */
const JUDGED = new WeakMap<Reckoning, JudgedOnce>();

const ruleKey = (j: JointAnswer, r: JointAnswer["rules"][number]) => `${j.id} ${r.rule} ${r.level} ${r.why}`;

/** Rules that the joints bring; a candidate's where it is concerned itself, or where it brings what did not stand before. */
function findings(
  joints: readonly JointAnswer[],
  onChosen: boolean,
  partId?: string,
  place?: Place,
  standing: ReadonlySet<string> = new Set(),
): RuleFinding[] {
  return joints.flatMap((j) =>
    j.rules
      .filter((r) => partId === undefined || r.part === partId || r.place === place || !standing.has(ruleKey(j, r)))
      .map((r) => ({
        rule: r.rule,
        level: r.level,
        here: sentence(r.why),
        about: partId ?? r.part ?? r.place ?? j.id,
        onChosen,
      })),
  );
}

/** The reason as a sentence of its own. */
function sentence(words: string): string {
  const said = capital(words);
  return /[.!?]$/.test(said) ? said : `${said}.`;
}

/** Steps to measure next; one that several questions and joints wait for stands first. */
function nextSteps(board: Reckoning["board"], joints: readonly JointAnswer[]): Reckoning["next"] {
  const rows = new Map<string, { step: NextStep; settles: string[]; stake: number }>();
  const STAKE = { hurt: 3, money: 2, time: 1 } as const;
  const add = (step: NextStep, by: string, stake: number) => {
    if (step.kind !== "measure") return;
    const key = step.at ?? step.what;
    const row = rows.get(key) ?? { step, settles: [], stake: 0 };
    if (!row.settles.includes(by)) row.settles.push(by);
    row.stake += stake;
    rows.set(key, row);
  };
  for (const row of board)
    if (row.next !== undefined) add(row.next, say("questions.reckon.question", { number: row.n }), STAKE[row.stake]);
  for (const j of joints) if (j.next !== undefined && j.verdict !== "not checked yet") add(j.next, j.id, 1);
  return [...rows.values()].sort((a, b) => b.stake - a.stake).map((r) => ({ ...r.step, settles: r.settles }));
}
