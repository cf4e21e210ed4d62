/**
 * J3: does the steerer go with headset and head tube, by diameter, thread and length?
 * Length by step C8: lower stack + head tube + upper stack + spacers + clamp - 3. A steerer is never lengthened.
 * Sources: fit-steerer-tables, fit-headset-codes, position-steerer.
 */
import { headTubeByBore, steererByOd } from "../../data/interfaces.js";
import { HEAD_REMEDIES } from "../../data/remedies-front-and-wheels.js";
import type { Caution } from "../../quantity/index.js";
import type { PartOfKind } from "../../workshop/index.js";
import { closeJoint } from "../close-joint.js";
import type { JointAnswer, RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { portValue } from "../port.js";
import { type Check, plain, rounded, settle } from "../settle.js";
import { minus, span } from "../span.js";
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
    const checks: Check[] = [...diameters(view, fork, headset), ...threads(fork, headset)];
    const cautions: Caution[] = [];
    const length = steererRoom(view, fork, headset);
    checks.push(...length.checks);
    if (headset.ports.threaded === false && fork.ports.steerer_thread_tpi === undefined) {
      cautions.push({
        code: "taken-as-unthreaded",
        at: `bin.parts.${fork.id}.ports.steerer_thread_tpi`,
        message: `No thread is entered for the steerer of ${fork.id}: it is taken as unthreaded. Look at it.`,
      });
    }
    if (headset.ports.lower_stack === undefined) {
      cautions.push({
        code: "stack-of-the-old-headset",
        at: `bin.parts.${headset.id}.ports.lower_stack`,
        message: `The lower stack of ${headset.id} is not known: the old headset's is reckoned with. Measure it before the steerer is cut.`,
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
              why: "the steerer is too short for stem and spacers",
              place: "fork",
              part: fork.id,
            },
          ];
    const od = fork.ports.steerer_od;
    return closeJoint(head, {
      settled,
      words: {
        fits: `${plain(od ?? 0)} steerer in a ${plain(headset.ports.steerer_od ?? 0)} headset; ${rounded(length.available)} long, ${rounded(length.needed)} needed.`,
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
      name: "steerer minus headset size",
      unit: "mm",
      value: minus(span(od, half), span(own, half)),
      limit: { low: -0.15, high: 0.15, kind: "hard", words: "equal by name" },
      measure:
        od === undefined
          ? {
              what: "Measure the steerer's outside diameter",
              at: `bin.parts.${fork.id}.ports.steerer_od`,
              tool: "calliper",
            }
          : {
              what: "Find out which steerer the headset is made for",
              at: `bin.parts.${headset.id}.ports.steerer_od`,
              tool: "calliper",
            },
    },
  ];
  if (bore === undefined) {
    checks.push({
      name: "steerer minus what this head tube takes",
      unit: "mm",
      value: span(undefined),
      limit: { low: -0.15, high: 0.15, kind: "hard", words: "a steerer of the head tube's size" },
      measure: { what: "Measure the bore of the head tube", at: "donor.interfaces.head_bore", tool: "micrometer" },
    });
  }
  if (row !== undefined && od !== undefined) {
    const nearest = row.steerers.reduce(
      (best, s) => (Math.abs(s - od) < Math.abs(best - od) ? s : best),
      row.steerers[0] ?? 0,
    );
    checks.push({
      name: "steerer minus what this head tube takes",
      unit: "mm",
      value: span(od - nearest, half),
      limit: {
        low: -0.15,
        high: 0.15,
        kind: "hard",
        words: `a ${row.words} head tube takes ${row.steerers.join(" or ")}`,
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
        name: "headset threaded or not",
        unit: "count",
        value: span(undefined),
        limit: { low: 0, kind: "hard", words: "both threaded alike, or both not" },
        measure: {
          what: "Look whether the headset is threaded",
          at: `bin.parts.${headset.id}.ports.threaded`,
          tool: "eye",
        },
      },
    ];
  }
  if (!threaded) {
    return [
      {
        name: "threads per inch on the steerer",
        unit: "count",
        value: span(tpi ?? 0),
        limit: { high: 0, kind: "hard", words: "none: the headset is unthreaded" },
        measure: { what: "Look whether the steerer is threaded", at, tool: "eye" },
      },
    ];
  }
  const wanted = thread_tpi ?? steererByOd(headset.ports.steerer_od ?? 0)?.tpi;
  return [
    {
      name: "threads per inch on the steerer",
      unit: "count",
      value: wanted === undefined ? span(undefined) : span(tpi),
      limit: {
        low: wanted ?? 0,
        high: wanted ?? 0,
        kind: "hard",
        words: wanted === undefined ? "those of the headset" : `${wanted}, as in the headset`,
      },
      measure:
        wanted === undefined
          ? {
              what: "Gauge the thread of the headset",
              at: `bin.parts.${headset.id}.ports.thread_tpi`,
              tool: "eye",
              how: "thread gauge, threads per inch",
            }
          : { what: "Gauge the thread of the steerer", at, tool: "eye", how: "thread gauge, threads per inch" },
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
    return `${od} steerer, but the headset is made for ${plain(headset.ports.steerer_od ?? 0)}.`;
  if (first === "steerer minus what this head tube takes") return `${od} steerer: this head tube is another size.`;
  if (first === "threads per inch on the steerer") {
    return headset.ports.threaded === true
      ? "The steerer's thread is not the headset's."
      : "Threaded steerer, unthreaded headset.";
  }
  return `Steerer ${rounded(length.available ?? 0)} long, but ${rounded(length.needed ?? 0)} is needed.`;
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
