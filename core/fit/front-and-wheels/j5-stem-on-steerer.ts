/**
 * J5: does the stem go with the steerer?
 * Unthreaded: clamp and steerer equal. Quill: 0.05 to 0.15 smaller than the bore, or the name that goes with the thread
 * (22.2 into 25.4, 25.4 into 28.6); in to the mark, at least 2.5 diameters. Sources: fit-steerer-tables, fit-iso-4210-2.
 */

import { steererByOd } from "../../data/interfaces.js";
import { COCKPIT_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import { say } from "../../texts/say.js";
import type { PartOfKind } from "../../workshop/index.js";
import { closeJoint } from "../close-joint.js";
import type { JointAnswer, RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, plain, settle } from "../settle.js";
import { minus, span } from "../span.js";
import { TOOLS } from "../tool-accuracy.js";
import { type FitView, partAt } from "../view.js";

const head = { id: "J5", title: "stem – steerer", between: ["stem", "fork"] } as const;

export const j5StemOnSteerer: JointDefinition = {
  ...head,
  attributes: ["stem.ports.clamp_id", "stem.ports.quill_od", "fork.ports.steerer_od", "fork.ports.steerer_thread_tpi"],
  reads: [],
  changes: [],
  evaluate: (view) => {
    const fork = partAt(view, "fork", "fork");
    const stem = view.at.stem;
    if (fork === undefined) return notChosen(head, "fork");
    if (stem?.kind === "stem") return clamped(view, fork, stem);
    if (stem?.kind === "quill_stem") return quill(view, fork, stem);
    return notChosen(head, "stem");
  },
};

function measureSteerer(fork: PartOfKind<"fork">) {
  return {
    what: say("fit-front.j3-steerer-in-headset.measure-the-steerer-s-outside-diameter"),
    at: `bin.parts.${fork.id}.ports.steerer_od`,
    tool: "calliper",
  } as const;
}

function clamped(view: FitView, fork: PartOfKind<"fork">, stem: PartOfKind<"stem">): JointAnswer {
  const half = TOOLS.calliper.half;
  const od = fork.ports.steerer_od;
  const clamp = stem.ports.clamp_id;
  const threaded = fork.ports.steerer_thread_tpi !== undefined;
  const checks: Check[] = [
    {
      name: say("fit-front.j5-stem-on-steerer.clamp-minus-steerer"),
      unit: "mm",
      value: minus(span(clamp, half), span(od, half)),
      limit: { low: -0.1, high: 0.1, kind: "hard", words: say("fit-front.j5-stem-on-steerer.equal-within-0-1") },
      measure:
        od === undefined
          ? measureSteerer(fork)
          : {
              what: say("fit-front.j5-stem-on-steerer.measure-the-stem-s-clamp"),
              at: `bin.parts.${stem.id}.ports.clamp_id`,
              tool: "calliper",
            },
    },
    {
      name: say("fit-front.j3-steerer-in-headset.threads-per-inch-on-the-steerer"),
      unit: "count",
      value: span(fork.ports.steerer_thread_tpi ?? 0),
      limit: { high: 0, kind: "hard", words: say("fit-front.j5-stem-on-steerer.none-a-clamp-stem-wants-a") },
    },
  ];
  const settled = settle(checks);
  const offers: RemedyOffer[] = [];
  if (settled.outcome === "fails") {
    const row = od === undefined ? undefined : steererByOd(od);
    if (threaded && row !== undefined && clamp !== undefined && Math.abs(clamp - 28.6) <= 0.15) {
      offers.push(offerRemedy(COCKPIT_REMEDIES.quill_adapter, view, { values: { quill: row.quill } }));
    } else if (
      !threaded &&
      od !== undefined &&
      Math.abs(od - 25.4) <= 0.15 &&
      clamp !== undefined &&
      Math.abs(clamp - 28.6) <= 0.15
    ) {
      offers.push(offerRemedy(COCKPIT_REMEDIES.stem_shim, view));
    }
    offers.push(offerRemedy(COCKPIT_REMEDIES.other_stem, view));
  }
  return closeJoint(head, {
    settled,
    words: {
      fits: say("fit-front.j5-stem-on-steerer.clamp-on-a-steerer", { clamp: plain(clamp ?? 0), od: plain(od ?? 0) }),
      fails: threaded
        ? say("fit-front.j5-stem-on-steerer.clamp-stem-on-a-threaded-steerer")
        : say("fit-front.j5-stem-on-steerer.clamp-on-a-steerer-not-equal", {
            clamp: plain(clamp ?? 0),
            od: plain(od ?? 0),
          }),
    },
    remedies: offers,
    rulesIfStuck:
      settled.outcome === "fails"
        ? [
            {
              rule: "S12",
              level: "refuse",
              why: say("fit-front.j5-stem-on-steerer.stem-clamp-and-steerer-do-not"),
              place: "stem",
              part: stem.id,
            },
          ]
        : [],
    sources: ["fit-clamp-practice", "fit-steerer-tables"],
  });
}

function quill(view: FitView, fork: PartOfKind<"fork">, stem: PartOfKind<"quill_stem">): JointAnswer {
  const od = fork.ports.steerer_od;
  const own = stem.ports.quill_od;
  const row = od === undefined ? undefined : steererByOd(od);
  const threaded = fork.ports.steerer_thread_tpi !== undefined;
  const byName = row !== undefined && own === row.quill;
  const checks: Check[] = [
    byName
      ? {
          name: say("fit-front.j5-stem-on-steerer.quill-by-name"),
          unit: "mm",
          value: span(own),
          limit: {
            low: row.quill,
            high: row.quill,
            kind: "hard",
            words: say("fit-front.j5-stem-on-steerer.for-a-threaded-steerer", { quill: row.quill, row: row.words }),
          },
        }
      : {
          name: say("fit-front.j5-stem-on-steerer.steerer-bore-minus-quill"),
          unit: "mm",
          value: minus(span(row?.bore, TOOLS.micrometer.half), span(own, TOOLS.micrometer.half)),
          limit: { low: 0.05, high: 0.15, kind: "hard", words: say("fit-front.j5-stem-on-steerer.0-05-to-0-15-of") },
          measure:
            row === undefined
              ? measureSteerer(fork)
              : {
                  what: say("fit-front.j5-stem-on-steerer.measure-the-quill"),
                  at: `bin.parts.${stem.id}.ports.quill_od`,
                  tool: "calliper",
                },
        },
    {
      name: say("fit-front.j3-steerer-in-headset.threads-per-inch-on-the-steerer"),
      unit: "count",
      value: span(fork.ports.steerer_thread_tpi),
      limit: { low: 1, kind: "hard", words: say("fit-front.j5-stem-on-steerer.threaded-a-quill-stem-wants-a") },
      measure: {
        what: say("fit-front.j5-stem-on-steerer.look-whether-the-steerer-is-threaded"),
        at: `bin.parts.${fork.id}.ports.steerer_thread_tpi`,
        tool: "eye",
      },
    },
  ];
  const settled = settle(checks);
  const cautions = [
    {
      code: "quill-in-to-the-mark",
      at: `bin.parts.${stem.id}`,
      message: say("fit-front.j5-stem-on-steerer.the-quill-goes-in-to-its", {
        own: own === undefined ? "" : ` (${plain(own * 2.5)} mm)`,
      }),
    },
  ];
  return closeJoint(head, {
    settled,
    words: {
      fits: say("fit-front.j5-stem-on-steerer.quill-into-a-threaded-steerer", {
        own: plain(own ?? 0),
        od: plain(od ?? 0),
      }),
      fails: say("fit-front.j5-stem-on-steerer.quill-does-not-go-with-a", { own: plain(own ?? 0), od: plain(od ?? 0) }),
      ...(threaded ? {} : { open: say("fit-front.j5-stem-on-steerer.a-quill-stem-needs-a-threaded") }),
    },
    remedies: settled.outcome === "fails" ? [offerRemedy(COCKPIT_REMEDIES.other_stem, view)] : [],
    rulesIfStuck:
      settled.outcome === "fails"
        ? [
            {
              rule: "S12",
              level: "refuse",
              why: say("fit-front.j5-stem-on-steerer.quill-and-steerer-do-not-match"),
              place: "stem",
              part: stem.id,
            },
          ]
        : [],
    sources: ["fit-steerer-tables", "fit-iso-4210-2"],
    cautions,
  });
}
