/**
 * J36: does the chain run straight?
 * Front: the crank's stated chainline (the middle of its rings where it has several) + half of what the spindle is longer + a right cup spacer. Rear: the hub gear's stated
 * chainline, or hub width / 2 - locknut to smallest - (cogs - 1) pitch / 2 (M27). Front minus rear: up to 1.5 with one ring
 * and one cog, up to 4 with a derailleur and 2 wanted. Source: drive-chainline.
 */

import { CRANK_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import {
  CHAINLINE_ACCEPTABLE_MM,
  CHAINLINE_GOOD_MM,
  CHAINLINE_SINGLE_MM,
  predictedFrontChainline,
  rearChainline,
} from "../../drive/index.js";
import type { Caution } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import type { PartOfKind } from "../../workshop/index.js";
import { closeJoint } from "../close-joint.js";
import type { RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { portValue } from "../port.js";
import { type Check, type Measure, plain, rounded, settle } from "../settle.js";
import { minus, span } from "../span.js";
import { type FitView, partAt } from "../view.js";
import { asOffered, otherBottomBrackets } from "./bins.js";
import { CUP_SPACERS_MM } from "./j34-ring-at-chainstay.js";
import { ringsHere, spindleLonger, statedChainline } from "./ring-on-crank.js";

const head = {
  id: "J36",
  title: "chainline",
  between: ["crank", "bb", "wheel_rear", "ring_inner", "sprocket", "cassette_spacer"],
} as const;

const NEAR_LIMIT_MM = 0.5;
const MOST_RESPACE_MM = 2;

export const j36Chainline: JointDefinition = {
  ...head,
  attributes: [
    "crank.ports.chainline",
    "crank.ports.ring_chainlines",
    "crank.ports.rings",
    "ring.ports.teeth",
    "crank.ports.design_spindle",
    "bb.ports.spindle_length",
    "wheel_rear.ports.drive",
    "wheel_rear.ports.chainline",
    "wheel_rear.ports.width",
    "wheel_rear.ports.locknut_to_smallest",
    "wheel_rear.ports.cogs",
    "wheel_rear.ports.cog_pitch",
  ],
  reads: ["bb.right_spacer", "wheel_rear.width"],
  changes: ["bb.right_spacer"],
  evaluate: (view) => {
    const crank = partAt(view, "crank", "crank");
    const bb = partAt(view, "bb", "bb");
    const wheel = partAt(view, "wheel_rear", "wheel_rear");
    if (crank === undefined) return notChosen(head, "crank");
    if (bb === undefined) return notChosen(head, "bb");
    if (wheel === undefined) return notChosen(head, "wheel_rear");
    const front = frontOf(view, crank, bb);
    const rear = rearOf(view, wheel);
    const drive = wheel.ports.drive;
    const single = drive === "hub_gear" || drive === "single";
    const most = single ? CHAINLINE_SINGLE_MM : CHAINLINE_ACCEPTABLE_MM;
    const error = minus(span(front.mm), span(rear.mm));
    const measure =
      front.measure ??
      rear.measure ??
      ({
        what: say("fit-drive.j36-chainline.measure-ring-and-sprocket-from-the"),
        at: `bin.parts.${crank.id}.ports.chainline`,
        tool: "rule",
      } as const);
    const checks: Check[] = [
      { name: say("fit-drive.j36-chainline.front-chainline"), unit: "mm", value: span(front.mm) },
      { name: say("fit-drive.j36-chainline.rear-chainline"), unit: "mm", value: span(rear.mm) },
      {
        name: say("fit-drive.j36-chainline.front-minus-rear"),
        unit: "mm",
        value: drive === undefined ? span(undefined) : error,
        limit: {
          low: -most,
          high: most,
          kind: "hard",
          words: single
            ? say("fit-drive.j36-chainline.1-5-or-less-with-one")
            : say("fit-drive.j36-chainline.4-or-less-with-a-derailleur"),
        },
        ...(single
          ? {}
          : {
              wanted: {
                low: -CHAINLINE_GOOD_MM,
                high: CHAINLINE_GOOD_MM,
                words: say("fit-drive.j36-chainline.2-or-less"),
              },
            }),
        measure:
          drive === undefined
            ? {
                what: say("fit-drive.j36-chainline.look-what-drives-the-rear-hub"),
                at: `bin.parts.${wheel.id}.ports.drive`,
                tool: "eye",
              }
            : measure,
      },
    ];
    const settled = settle(checks);
    const off = error.kind === "known" ? error.mid : 0;
    const several = ringsHere(view).length > 1;
    const cautions: Caution[] = [];
    if (settled.outcome === "fits" && Math.abs(off) > most - NEAR_LIMIT_MM) {
      cautions.push({
        code: "chainline-at-its-limit",
        message: say("fit-drive.j36-chainline.mm-of-predicted-from-the-parts", {
          off: rounded(off),
          most: plain(most),
        }),
      });
    }
    return closeJoint(head, {
      settled,
      words: {
        fits: say("fit-drive.j36-chainline.at-sprockets-at", {
          rings: several ? "Rings" : "Ring",
          frontMm: rounded(front.mm ?? 0),
          rearMm: rounded(rear.mm ?? 0),
          offByMm: rounded(Math.abs(off)),
          side: off === 0 ? "off" : off > 0 ? "outside" : "inside",
        }),
        fails: say("fit-drive.j36-chainline.the-mm-the-sprockets-is-the", {
          ringsStand: several ? say("fit-drive.j36-chainline.rings-stand") : say("fit-drive.j36-chainline.ring-stands"),
          offByMm: rounded(Math.abs(off)),
          side: off > 0 ? "outside" : "inside",
          mostMm: plain(most),
        }),
      },
      remedies: settled.outcome === "fails" ? remedies(view, bb, wheel, off, most) : [],
      sources: ["drive-chainline"],
      cautions,
    });
  },
};

interface LineHere {
  readonly mm: number | undefined;
  readonly measure?: Measure;
}

function frontOf(view: FitView, crank: PartOfKind<"crank">, bb: PartOfKind<"bb">): LineHere {
  const { design_spindle } = crank.ports;
  const chainline = statedChainline(crank, ringsHere(view));
  const longer = spindleLonger(crank, bb);
  const at = `bin.parts.${crank.id}.ports`;
  if (chainline === undefined)
    return {
      mm: undefined,
      measure: {
        what: say("fit-drive.j36-chainline.measure-the-ring-to-the-side"),
        at: ringsHere(view).length > 1 ? `${at}.ring_chainlines` : `${at}.chainline`,
        tool: "calliper",
      },
    };
  if (longer === undefined && design_spindle === undefined)
    return {
      mm: undefined,
      measure: {
        what: say("fit-drive.j36-chainline.find-out-for-which-spindle-the"),
        at: `${at}.design_spindle`,
        tool: "rule",
      },
    };
  if (longer === undefined)
    return {
      mm: undefined,
      measure: {
        what: say("fit-drive.crank-clearance.measure-the-spindle-from-end-to"),
        at: `bin.parts.${bb.id}.ports.spindle_length`,
        tool: "rule",
      },
    };
  return {
    mm: predictedFrontChainline({
      statedMm: chainline,
      statedSpindleMm: 0,
      spindleMm: longer,
      rightCupSpacerMm: view.ports["bb.right_spacer"] ?? 0,
    }),
  };
}

function rearOf(view: FitView, wheel: PartOfKind<"wheel_rear">): LineHere {
  const { chainline } = wheel.ports;
  if (chainline !== undefined) return { mm: chainline };
  const { locknut_to_smallest, cogs, cog_pitch } = sprocketsOn(view, wheel);
  const at = `bin.parts.${wheel.id}.ports`;
  const width = portValue(view, "wheel_rear.width", wheel.ports.width);
  if (width === undefined)
    return {
      mm: undefined,
      measure: {
        what: say("fit-drive.j20-rotor-plane.measure-the-rear-hub-between-the"),
        at: `${at}.width`,
        tool: "calliper",
      },
    };
  if (locknut_to_smallest === undefined)
    return {
      mm: undefined,
      measure: {
        what: say("fit-drive.j36-chainline.measure-from-the-right-locknut-to"),
        at: `${at}.locknut_to_smallest`,
        tool: "calliper",
      },
    };
  if (cogs === undefined)
    return {
      mm: undefined,
      measure: { what: say("fit-drive.j36-chainline.count-the-sprockets"), at: `${at}.cogs`, tool: "eye" },
    };
  if (cogs > 1 && cog_pitch === undefined)
    return {
      mm: undefined,
      measure: {
        what: say("fit-drive.j36-chainline.measure-from-one-sprocket-s-middle"),
        at: `${at}.cog_pitch`,
        tool: "calliper",
      },
    };
  return {
    mm: rearChainline({ olnMm: width, locknutToSmallestMm: locknut_to_smallest, cogs, cogPitchMm: cog_pitch ?? 0 }),
  };
}

/** The build's line for this hub with this cassette and spacer goes before what the hub says by itself. */
function sprocketsOn(view: FitView, wheel: PartOfKind<"wheel_rear">) {
  const cassette = partAt(view, "sprocket", "cassette");
  // A freewheel's sprockets are the hub's own.
  if (cassette === undefined || wheel.ports.drive === "freewheel") return wheel.ports;
  const spacer = view.at.cassette_spacer?.id;
  const lines = (view.resolved.build.rear_lines ?? []).filter(
    (row) => row.wheel === wheel.id && row.cassette === cassette.id,
  );
  // Another cassette of the comparison comes with the spacer that its own line names.
  const line = lines.find((row) => row.spacer === spacer) ?? (lines.length === 1 ? lines[0] : undefined);
  return {
    locknut_to_smallest: line?.locknut_to_smallest ?? wheel.ports.locknut_to_smallest,
    cogs: cassette.ports.cogs?.length ?? wheel.ports.cogs,
    cog_pitch: cassette.ports.pitch ?? wheel.ports.cog_pitch,
  };
}

function remedies(
  view: FitView,
  bb: PartOfKind<"bb">,
  wheel: PartOfKind<"wheel_rear">,
  off: number,
  most: number,
): readonly RemedyOffer[] {
  const own = bb.ports.spindle_length ?? 0;
  const wantedSpindle = own - 2 * off;
  const suited = otherBottomBrackets(view, bb)
    .filter((part) => Math.abs(off + ((part.ports.spindle_length ?? 0) - own) / 2) <= most)
    .sort(
      (a, b) =>
        Math.abs((a.ports.spindle_length ?? 0) - wantedSpindle) -
        Math.abs((b.ports.spindle_length ?? 0) - wantedSpindle),
    )[0];
  const change = `${plain(Math.abs(2 * off))} ${off > 0 ? "shorter" : "longer"}`;
  const offers: RemedyOffer[] = [
    offerRemedy(CRANK_REMEDIES.chainline_spindle, view, {
      values: { change, bin: suited === undefined ? "" : `: ${suited.id}` },
      ...(suited === undefined ? {} : { part: asOffered(suited) }),
    }),
  ];
  const there = view.ports["bb.right_spacer"] ?? 0;
  // A spacer only moves the ring out: of those that bring it inside the limit, the thinnest.
  const spacer = off < 0 ? CUP_SPACERS_MM.find((s) => Math.abs(off + s) <= most && there + s <= 2.5) : undefined;
  if (spacer !== undefined)
    offers.push(
      offerRemedy(CRANK_REMEDIES.chainline_spacer, view, { values: { spacer, right_total: there + spacer } }),
    );
  // Cogs move by half of what goes from side to side with the wheel re-dished: the axle's spacers, not a hub gear's.
  const respace = Math.abs(off) - most;
  const plainAxle =
    wheel.ports.axle === "qr_10" ||
    wheel.ports.axle === "m10_solid" ||
    wheel.ports.axle === "qr_9" ||
    wheel.ports.axle === "m9_solid";
  if (plainAxle && wheel.ports.drive !== "hub_gear" && respace <= MOST_RESPACE_MM) {
    offers.push(
      offerRemedy(CRANK_REMEDIES.chainline_respace, view, { values: { spacer: Math.ceil(respace * 2) / 2 } }),
    );
  }
  return offers;
}
