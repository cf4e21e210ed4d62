/**
 * J43: does the post slide into the seat tube, and does it sit deep enough for this rider?
 * Post as the tube's size, within 0.1 by calliper; inserted = length - (extension - tube top), at least the post's mark,
 * twice its diameter and below the top tube's joint (S12). Sources: fit-post-sizes, position-insertion.
 */

import { CHAIN_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import type { Caution } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import type { JointAnswer, RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { portValue } from "../port.js";
import { type Check, plain, rounded, settle } from "../settle.js";
import { minus, span } from "../span.js";
import { TOOLS } from "../tool-accuracy.js";
import { partAt } from "../view.js";

const head = {
  id: "J43",
  title: say("fit-drive.j43-post-in-seat-tube.post-seat-tube"),
  between: ["post", "frame", "saddle"],
} as const;

const SIZE_WITHIN_MM = 0.1;
const SHIM = { least: 0.4, most: 4 } as const;
const MOST_REAMED_MM = 0.2;
/** Half of the largest usual top tube, where its diameter is not measured (common practice, no source). */
const TOP_TUBE_HALF_MM = 20;
const HALF_MM = 1;

export const j43PostInSeatTube: JointDefinition = {
  ...head,
  attributes: [
    "donor.interfaces.post",
    "donor.interfaces.seat_tube_ct",
    "post.ports.od",
    "post.ports.length",
    "post.ports.mark_from_bottom",
  ],
  reads: ["frame.seat_tube_bore"],
  changes: ["frame.seat_tube_bore"],
  evaluate: (view) => {
    const post = partAt(view, "post", "post");
    if (post === undefined) return notChosen(head, "post");
    const { interfaces, tube, measured, condition } = view.resolved.donor;
    const at = `bin.parts.${post.id}.ports`;
    const { od, length, mark_from_bottom: mark } = post.ports;
    const bore = portValue(view, "frame.seat_tube_bore", interfaces.post);
    const top = interfaces.seat_tube_ct;
    const extension = view.postExtensionMm;
    const exposed = extension === undefined || top === undefined ? undefined : extension - top;
    const inserted = minus(span(length, TOOLS.rule.half), span(exposed, HALF_MM));
    const twice = od === undefined ? undefined : 2 * od;
    const middle = view.frame?.seat_tube_cc_mm ?? measured.seat_tube_cc?.value;
    const joint =
      top === undefined || middle === undefined
        ? undefined
        : top - middle + (tube.top_tube_od === undefined ? TOP_TUBE_HALF_MM : tube.top_tube_od / 2);
    const readMark = {
      what: say("fit-drive.j43-post-in-seat-tube.read-the-post-s-mark-how"),
      at: `${at}.mark_from_bottom`,
      tool: "rule",
      how: say("fit-drive.j43-post-in-seat-tube.from-the-post-s-lower-end"),
    } as const;
    const measureInserted =
      length === undefined
        ? ({
            what: say("fit-drive.j43-post-in-seat-tube.measure-the-post-from-the-clamp"),
            at: `${at}.length`,
            tool: "rule",
          } as const)
        : top === undefined
          ? ({
              what: say("fit-drive.j43-post-in-seat-tube.measure-the-seat-tube-from-the"),
              at: "donor.interfaces.seat_tube_ct",
              tool: "rule",
            } as const)
          : ({
              what: say("fit-drive.j43-post-in-seat-tube.find-the-saddle-height-the-post"),
              at: "rider.saddle_xy",
              tool: "tape",
            } as const);
    const checks: Check[] = [
      {
        name: say("fit-drive.j43-post-in-seat-tube.post-minus-tube-size"),
        unit: "mm",
        value: minus(span(od, TOOLS.calliper.half), span(bore)),
        limit: {
          low: -SIZE_WITHIN_MM,
          high: SIZE_WITHIN_MM,
          kind: "hard",
          words: say("fit-drive.j43-post-in-seat-tube.one-size-by-calliper-within-0"),
        },
        measure:
          od === undefined
            ? {
                what: say("fit-drive.j43-post-in-seat-tube.measure-the-post-s-diameter"),
                at: `${at}.od`,
                tool: "calliper",
              }
            : {
                what: say("fit-drive.j43-post-in-seat-tube.measure-the-size-of-post-that"),
                at: "donor.interfaces.post",
                tool: "calliper",
              },
      },
      { name: "exposed", unit: "mm", value: span(exposed) },
      { name: "inserted", unit: "mm", value: inserted },
      {
        name: say("fit-drive.j43-post-in-seat-tube.inserted-over-twice-the-diameter"),
        unit: "mm",
        value: minus(inserted, span(twice)),
        limit: {
          low: 0,
          kind: "hard",
          words: say("fit-drive.j43-post-in-seat-tube.2-x-in-the-tube", {
            od: plain(od ?? 0),
            twice: rounded(twice ?? 0),
          }),
        },
        measure: measureInserted,
      },
      {
        name: say("fit-drive.j43-post-in-seat-tube.inserted-over-the-post-s-mark"),
        unit: "mm",
        value: minus(inserted, span(mark, TOOLS.rule.half)),
        limit: {
          low: 0,
          kind: "hard",
          words:
            mark === undefined
              ? say("fit-drive.j43-post-in-seat-tube.mark-in-the-tube")
              : say("fit-drive.j43-post-in-seat-tube.mark-at-in-the-tube", { mark: plain(mark) }),
        },
        measure: mark === undefined ? readMark : measureInserted,
      },
      {
        name: say("fit-drive.j43-post-in-seat-tube.post-s-end-below-the-top"),
        unit: "mm",
        value: minus(inserted, span(joint)),
        limit: {
          low: 0,
          kind: "wanted",
          words:
            joint === undefined
              ? say("fit-drive.j43-post-in-seat-tube.below-the-top-tube-s-joint")
              : say("fit-drive.j43-post-in-seat-tube.or-more-in-the-tube", { joint: rounded(joint) }),
        },
        measure: {
          what: say("fit-drive.j43-post-in-seat-tube.measure-from-the-seat-tube-s"),
          at: "donor.tube.top_tube_od",
          tool: "rule",
        },
        flag:
          joint === undefined || inserted.kind === "unknown"
            ? say("fit-drive.j43-post-in-seat-tube.whether-the-post-ends-below-the")
            : say("fit-drive.j43-post-in-seat-tube.the-post-should-reach-into-the", { joint: rounded(joint) }),
      },
    ];
    const settled = settle(checks);
    const sizeFails = settled.failed.some((check) => check.name === "post minus tube size");
    const shallow = settled.failed.some((check) => check.name.startsWith("inserted over"));
    const needed = Math.max(twice ?? 0, mark ?? 0);
    const cautions: Caution[] = [];
    if (exposed !== undefined && exposed < 0)
      cautions.push({
        code: "saddle-below-tube-top",
        message: say("fit-drive.j43-post-in-seat-tube.the-clamp-would-have-to-sit", { exposed: rounded(-exposed) }),
      });
    if (top !== undefined && inserted.kind === "known" && inserted.mid > top)
      cautions.push({
        code: "post-longer-than-tube",
        at: `${at}.length`,
        message: say("fit-drive.j43-post-in-seat-tube.the-post-is-longer-than-the"),
      });
    if (condition.post === "stuck")
      cautions.push({
        code: "old-post-stuck",
        at: "donor.condition.post",
        message: say("fit-drive.j43-post-in-seat-tube.the-old-post-is-stuck-nothing"),
      });
    const rules: JointAnswer["rules"] = shallow
      ? [
          {
            rule: "S12",
            level: "refuse",
            why: say("fit-drive.j43-post-in-seat-tube.only-of-would-be-in-the", {
              kind: rounded(inserted.kind === "known" ? inserted.mid : 0),
              post: post.id,
              needed: rounded(needed),
            }),
            place: "post",
            part: post.id,
          },
        ]
      : [];
    const offers: RemedyOffer[] = [];
    if (settled.outcome === "fails" && bore !== undefined && od !== undefined) {
      const values = {
        bore,
        post: od,
        length:
          exposed === undefined
            ? say("fit-drive.j43-post-in-seat-tube.as-the-saddle-height-asks")
            : Math.ceil(exposed + Math.max(2 * bore, mark ?? 0)),
      };
      offers.push(offerRemedy(CHAIN_REMEDIES.suited_post, view, { values }));
      const smaller = bore - od;
      if (!shallow && sizeFails && smaller >= SHIM.least - 1e-9 && smaller <= SHIM.most)
        offers.push(offerRemedy(CHAIN_REMEDIES.post_shim, view, { values }));
      if (!shallow && sizeFails && smaller < 0 && -smaller <= MOST_REAMED_MM + 1e-9)
        offers.push(offerRemedy(CHAIN_REMEDIES.ream_post, view, { values }));
    }
    return closeJoint(head, {
      settled,
      words: {
        fits: say("fit-drive.j43-post-in-seat-tube.post-in-a-tube-inserted-needed", {
          od: plain(od ?? 0),
          bore: plain(bore ?? 0),
          kind: rounded(inserted.kind === "known" ? inserted.mid : 0),
          needed: rounded(needed),
        }),
        fails: shallow
          ? say("fit-drive.j43-post-in-seat-tube.only-of-the-post-would-be", {
              kind: rounded(inserted.kind === "known" ? inserted.mid : 0),
              needed: rounded(needed),
            })
          : say("fit-drive.j43-post-in-seat-tube.post-in-a-tube-for", { od: plain(od ?? 0), bore: plain(bore ?? 0) }),
        ...(settled.open[0]?.measure === readMark
          ? {
              open: say("fit-drive.j43-post-in-seat-tube.post-inserted-needed-its-mark-has", {
                od: plain(od ?? 0),
                kind: rounded(inserted.kind === "known" ? inserted.mid : 0),
                needed: rounded(needed),
              }),
            }
          : {}),
      },
      remedies: offers,
      rules,
      sources: ["fit-post-sizes", "position-insertion"],
      cautions,
    });
  },
};
