/**
 * J3: does the steerer go with headset and head tube, by diameter, thread and length?
 * Length by step C8: lower stack + head tube + upper stack + spacers + clamp - 3. A steerer is never lengthened.
 * Sources: fit-steerer-tables, fit-headset-codes, position-steerer.
 */

import { headTubeByBore, steererByOd } from "../../data/interfaces.js";
import { HEAD_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import type { Caution } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import type { PartOfKind } from "../../workshop/index.js";
import { closeJoint } from "../close-joint.js";
import type { JointAnswer, RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { portValue } from "../port.js";
import { type Check, plain, rounded, settle } from "../settle.js";
import { minus, span } from "../span.js";
import { asTheyAre } from "../stay-as-they-are.js";
import { TOOLS } from "../tool-accuracy.js";
import { type FitView, partAt } from "../view.js";
import { type SteererRoom, steererRoom } from "./steerer-room.js";

const head = { id: "J3", title: "steerer – headset", between: ["fork", "headset", "frame"] } as const;

export const j3SteererInHeadset: JointDefinition = {
  ...head,
  attributes: [
    "fork.ports.steerer_od",
    "fork.ports.steerer_thread_tpi",
    "fork.ports.steerer_length",
    "headset.ports.steerer_od",
    "headset.ports.threaded",
    "headset.ports.upper_stack",
    "headset.ports.lower_stack",
    "donor.interfaces.head_bore",
    "donor.measured.head_tube",
    "stem.ports.clamp_height",
    "build.spacers_below",
  ],
  reads: ["frame.head_bore", "cockpit.spacers_below"],
  changes: ["cockpit.spacers_below"],
  evaluate: (view) => {
    const fork = partAt(view, "fork", "fork");
    const headset = partAt(view, "headset", "headset");
    if (fork === undefined) return notChosen(head, "fork");
    if (headset === undefined) return notChosen(head, "headset");
    const own = asTheyAre(
      head,
      [fork, headset],
      {
        stays: say("fit-front.j3-steerer-in-headset.the-donor-s-own-fork-stays"),
        look: say("fit-front.j3-steerer-in-headset.look-at-the-steerer-s-thread"),
      },
      ["fit-steerer-tables"],
    );
    if (own !== undefined) return own;
    const checks: Check[] = [...diameters(view, fork, headset), ...threads(fork, headset)];
    const cautions: Caution[] = [];
    const length = steererRoom(view, fork, headset);
    checks.push(...length.checks);
    if (headset.ports.threaded === false && fork.ports.steerer_thread_tpi === undefined) {
      cautions.push({
        code: "taken-as-unthreaded",
        at: `bin.parts.${fork.id}.ports.steerer_thread_tpi`,
        message: say("fit-front.j3-steerer-in-headset.no-thread-is-entered-for-the", { fork: fork.id }),
      });
    }
    if (headset.ports.lower_stack === undefined) {
      cautions.push({
        code: "stack-of-the-old-headset",
        at: `bin.parts.${headset.id}.ports.lower_stack`,
        message: say("fit-front.j3-steerer-in-headset.the-lower-stack-of-is-not", { headset: headset.id }),
      });
    }
    const settled = settle(checks);
    const short = settled.failed.find((check) => check.name === "spare steerer");
    const rules: JointAnswer["rules"] =
      short === undefined
        ? []
        : [
            {
              rule: "S12",
              level: "refuse",
              why: say("fit-front.j3-steerer-in-headset.the-steerer-is-too-short-for"),
              place: "fork",
              part: fork.id,
            },
          ];
    const od = fork.ports.steerer_od;
    return closeJoint(head, {
      settled,
      words: {
        fits: say("fit-front.j3-steerer-in-headset.steerer-in-a-headset-long-needed", {
          od: plain(od ?? 0),
          steererOd: plain(headset.ports.steerer_od ?? 0),
          available: rounded(length.available),
          needed: rounded(length.needed),
        }),
        fails: failWords(settled.failed, fork, headset, length),
      },
      remedies: settled.outcome === "fails" ? remedies(view, fork, headset, settled.failed, length) : [],
      rulesIfStuck: rules,
      sources: ["fit-steerer-tables", "fit-headset-codes", "position-steerer"],
      cautions,
    });
  },
};

function diameters(view: FitView, fork: PartOfKind<"fork">, headset: PartOfKind<"headset">): readonly Check[] {
  const half = TOOLS.calliper.half;
  const od = fork.ports.steerer_od;
  const own = headset.ports.steerer_od;
  const bore = portValue(view, "frame.head_bore", view.resolved.donor.interfaces.head_bore);
  const row = bore === undefined ? undefined : headTubeByBore(bore);
  const checks: Check[] = [
    {
      name: say("fit-front.j3-steerer-in-headset.steerer-minus-headset-size"),
      unit: "mm",
      value: minus(span(od, half), span(own, half)),
      limit: { low: -0.15, high: 0.15, kind: "hard", words: say("fit-front.j3-steerer-in-headset.equal-by-name") },
      measure:
        od === undefined
          ? {
              what: say("fit-front.j3-steerer-in-headset.measure-the-steerer-s-outside-diameter"),
              at: `bin.parts.${fork.id}.ports.steerer_od`,
              tool: "calliper",
            }
          : {
              what: say("fit-front.j3-steerer-in-headset.find-out-which-steerer-the-headset"),
              at: `bin.parts.${headset.id}.ports.steerer_od`,
              tool: "calliper",
            },
    },
  ];
  if (bore === undefined) {
    checks.push({
      name: say("fit-front.j3-steerer-in-headset.steerer-minus-what-this-head-tube"),
      unit: "mm",
      value: span(undefined),
      limit: {
        low: -0.15,
        high: 0.15,
        kind: "hard",
        words: say("fit-front.j3-steerer-in-headset.a-steerer-of-the-head-tube"),
      },
      measure: {
        what: say("fit-front.j3-steerer-in-headset.measure-the-bore-of-the-head"),
        at: "donor.interfaces.head_bore",
        tool: "micrometer",
      },
    });
  }
  if (row !== undefined && od !== undefined) {
    const nearest = row.steerers.reduce(
      (best, s) => (Math.abs(s - od) < Math.abs(best - od) ? s : best),
      row.steerers[0] ?? 0,
    );
    checks.push({
      name: say("fit-front.j3-steerer-in-headset.steerer-minus-what-this-head-tube"),
      unit: "mm",
      value: span(od - nearest, half),
      limit: {
        low: -0.15,
        high: 0.15,
        kind: "hard",
        words: say("fit-front.j3-steerer-in-headset.a-head-tube-takes", {
          row: row.words,
          steerers: row.steerers.join(" or "),
        }),
      },
    });
  }
  return checks;
}

function threads(fork: PartOfKind<"fork">, headset: PartOfKind<"headset">): readonly Check[] {
  const { threaded, thread_tpi } = headset.ports;
  const tpi = fork.ports.steerer_thread_tpi;
  const at = `bin.parts.${fork.id}.ports.steerer_thread_tpi`;
  if (threaded === undefined) {
    return [
      {
        name: say("fit-front.j3-steerer-in-headset.headset-threaded-or-not"),
        unit: "count",
        value: span(undefined),
        limit: { low: 0, kind: "hard", words: say("fit-front.j3-steerer-in-headset.both-threaded-alike-or-both-not") },
        measure: {
          what: say("fit-front.j3-steerer-in-headset.look-whether-the-headset-is-threaded"),
          at: `bin.parts.${headset.id}.ports.threaded`,
          tool: "eye",
        },
      },
    ];
  }
  if (!threaded) {
    return [
      {
        name: say("fit-front.j3-steerer-in-headset.threads-per-inch-on-the-steerer"),
        unit: "count",
        value: span(tpi ?? 0),
        limit: { high: 0, kind: "hard", words: say("fit-front.j3-steerer-in-headset.none-the-headset-is-unthreaded") },
        measure: { what: say("fit-front.j3-steerer-in-headset.look-whether-the-steerer-is-threaded"), at, tool: "eye" },
      },
    ];
  }
  const wanted = thread_tpi ?? steererByOd(headset.ports.steerer_od ?? 0)?.tpi;
  return [
    {
      name: say("fit-front.j3-steerer-in-headset.threads-per-inch-on-the-steerer"),
      unit: "count",
      value: wanted === undefined ? span(undefined) : span(tpi),
      limit: {
        low: wanted ?? 0,
        high: wanted ?? 0,
        kind: "hard",
        words:
          wanted === undefined
            ? say("fit-front.j3-steerer-in-headset.those-of-the-headset")
            : say("fit-front.j3-steerer-in-headset.as-in-the-headset", { wanted }),
      },
      measure:
        wanted === undefined
          ? {
              what: say("fit-front.j3-steerer-in-headset.gauge-the-thread-of-the-headset"),
              at: `bin.parts.${headset.id}.ports.thread_tpi`,
              tool: "eye",
              how: say("fit-front.j3-steerer-in-headset.thread-gauge-threads-per-inch"),
            }
          : {
              what: say("fit-front.j3-steerer-in-headset.gauge-the-thread-of-the-steerer"),
              at,
              tool: "eye",
              how: say("fit-front.j3-steerer-in-headset.thread-gauge-threads-per-inch"),
            },
    },
  ];
}

function failWords(
  failed: readonly Check[],
  fork: PartOfKind<"fork">,
  headset: PartOfKind<"headset">,
  length: SteererRoom,
): string {
  const first = failed[0]?.name ?? "";
  const od = plain(fork.ports.steerer_od ?? 0);
  if (first === "steerer minus headset size")
    return say("fit-front.j3-steerer-in-headset.steerer-but-the-headset-is-made", {
      od,
      steererOd: plain(headset.ports.steerer_od ?? 0),
    });
  if (first === "steerer minus what this head tube takes")
    return say("fit-front.j3-steerer-in-headset.steerer-this-head-tube-is-another", { od });
  if (first === "threads per inch on the steerer") {
    return headset.ports.threaded === true
      ? say("fit-front.j3-steerer-in-headset.the-steerer-s-thread-is-not")
      : say("fit-front.j3-steerer-in-headset.threaded-steerer-unthreaded-headset");
  }
  return say("fit-front.j3-steerer-in-headset.steerer-long-but-is-needed", {
    available: rounded(length.available ?? 0),
    needed: rounded(length.needed ?? 0),
  });
}

function remedies(
  view: FitView,
  fork: PartOfKind<"fork">,
  headset: PartOfKind<"headset">,
  failed: readonly Check[],
  length: SteererRoom,
): readonly RemedyOffer[] {
  const offers: RemedyOffer[] = [];
  const names = new Set(failed.map((check) => check.name));
  const od = fork.ports.steerer_od ?? 0;
  if (
    names.has("steerer minus headset size") &&
    Math.abs(od - 25.4) < 0.2 &&
    Math.abs((headset.ports.steerer_od ?? 0) - 28.6) < 0.2
  ) {
    offers.push(offerRemedy(HEAD_REMEDIES.reducer_cups, view));
  }
  if (names.has("threads per inch on the steerer")) {
    const tpi = fork.ports.steerer_thread_tpi;
    offers.push(
      tpi === undefined || headset.ports.threaded === true
        ? offerRemedy(HEAD_REMEDIES.threadless, view)
        : offerRemedy(HEAD_REMEDIES.threaded, view, { values: { od, tpi } }),
    );
  }
  if (names.has("spare steerer")) {
    if (length.mostSpacers >= 0 && length.mostSpacers < length.spacers) {
      const drop = length.spacers - length.mostSpacers;
      offers.push(offerRemedy(HEAD_REMEDIES.fewer_spacers, view, { values: { drop, spacers: length.mostSpacers } }));
    }
    offers.push(offerRemedy(HEAD_REMEDIES.longer_steerer_fork, view, { values: { needed: length.needed } }));
    offers.push(offerRemedy(HEAD_REMEDIES.lengthen, view));
  }
  return offers;
}
