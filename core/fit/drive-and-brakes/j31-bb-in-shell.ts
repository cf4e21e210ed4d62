/**
 * J31: does the bottom bracket go into this shell?
 * One thread with one hand on the right side, and one width within 0.5; outside cups (24 or 30 spindle) made for 73 go on 68
 * with spacers of 2.5 on each side, a cartridge made for 73 does not. A 35 x 1 shell may have either hand: look before a cup is turned in. Sources: fit-bb-threads, fit-bb-practice.
 */

import { BB_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import type { Caution } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import type { RemedyOffer } from "../joint.js";
import { type JointDefinition, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { portSpan, portValue } from "../port.js";
import { plain, settle } from "../settle.js";
import { minus, span } from "../span.js";
import { partAt } from "../view.js";
import { bbThread } from "./bb-thread.js";
import { sameWord } from "./same-word.js";

const head = { id: "J31", title: "BB – shell", between: ["bb", "frame"] } as const;

const WIDTH_WITHIN_MM = 0.5;
const MOST_SPACERS_MM = 5;

export const j31BbInShell: JointDefinition = {
  ...head,
  attributes: [
    "donor.interfaces.shell_thread",
    "donor.interfaces.shell_width",
    "bb.ports.thread",
    "bb.ports.shell_width",
  ],
  reads: ["frame.shell_width"],
  changes: [],
  evaluate: (view) => {
    const bb = partAt(view, "bb", "bb");
    if (bb === undefined) return notChosen(head, "bb");
    const { interfaces } = view.resolved.donor;
    const at = `bin.parts.${bb.id}.ports`;
    const shell = interfaces.shell_thread === undefined ? undefined : bbThread(interfaces.shell_thread);
    const cups = bb.ports.thread === undefined ? undefined : bbThread(bb.ports.thread);
    const readShell = {
      what: say("fit-drive.j31-bb-in-shell.read-or-measure-the-shell-s"),
      at: "donor.interfaces.shell_thread",
      tool: "calliper",
      how: say("fit-drive.j31-bb-in-shell.take-a-cup-out-thread-gauge"),
    } as const;
    const readCups = {
      what: say("fit-drive.j31-bb-in-shell.read-the-thread-on-the-cups"),
      at: `${at}.thread`,
      tool: "calliper",
    } as const;
    const width = portValue(view, "frame.shell_width", interfaces.shell_width);
    const over = minus(
      span(bb.ports.shell_width),
      portSpan(view, "frame.shell_width", interfaces.shell_width, "calliper"),
    );
    // Only cups that stand outside the shell take spacers; a cartridge made for a wider shell does not close.
    const externalCups = bb.ports.spindle === "24" || bb.ports.spindle === "30";
    const sameSize = shell !== undefined && cups !== undefined && shell.size === cups.size;
    const settled = settle([
      sameWord({
        name: "thread",
        a: shell?.size,
        b: cups?.size,
        words: say("fit-drive.j31-bb-in-shell.one-thread"),
        measureA: readShell,
        measureB: readCups,
      }),
      ...(sameSize
        ? [
            sameWord({
              name: say("fit-drive.j31-bb-in-shell.hand-of-the-right-side"),
              a: shell.rightSide,
              b: cups.rightSide,
              words: say("fit-drive.j31-bb-in-shell.one-hand"),
              measureA: {
                ...readShell,
                what: say("fit-drive.j31-bb-in-shell.look-which-hand-the-shell-s"),
              },
              measureB: {
                ...readCups,
                what: say("fit-drive.j31-bb-in-shell.look-which-hand-the-right-cup"),
              },
            }),
          ]
        : []),
      {
        name: say("fit-drive.j31-bb-in-shell.cups-made-wider-than-the-shell"),
        unit: "mm",
        value: over,
        limit: {
          low: -WIDTH_WITHIN_MM,
          high: WIDTH_WITHIN_MM,
          kind: "hard",
          words: say("fit-drive.j31-bb-in-shell.0-5-or-less"),
        },
        measure:
          bb.ports.shell_width === undefined
            ? {
                what: say("fit-drive.j31-bb-in-shell.read-for-which-shell-the-bottom"),
                at: `${at}.shell_width`,
                tool: "eye",
              }
            : {
                what: say("fit-drive.j31-bb-in-shell.measure-the-shell-from-face-to"),
                at: "donor.interfaces.shell_width",
                tool: "calliper",
              },
      },
    ]);
    const offers: RemedyOffer[] = [];
    const threadFails = settled.failed.some((check) => check.name !== "cups made wider than the shell");
    if (settled.outcome === "fails") {
      offers.push(
        offerRemedy(BB_REMEDIES.other_bb, view, {
          values: {
            thread: interfaces.shell_thread ?? say("fit-drive.j31-bb-in-shell.for-the-shell"),
            width: width ?? "measured",
          },
        }),
      );
      if (threadFails) {
        offers.push(offerRemedy(BB_REMEDIES.sleeve_bb, view));
        if (shell?.size === "35x1" && cups?.size === "36x24") offers.push(offerRemedy(BB_REMEDIES.ream_35_36, view));
      } else if (
        externalCups &&
        over.kind === "known" &&
        over.mid > 0 &&
        over.mid <= MOST_SPACERS_MM + WIDTH_WITHIN_MM
      ) {
        const total = Math.round(over.mid * 2) / 2;
        offers.push(offerRemedy(BB_REMEDIES.shell_spacers, view, { values: { each: total / 2 } }));
      }
    }
    const cautions: Caution[] = [
      {
        code: "chase-and-face",
        at: "donor.interfaces.shell_thread",
        message: say("fit-drive.j31-bb-in-shell.turn-the-cup-in-by-hand"),
      },
    ];
    return closeJoint(head, {
      settled,
      words: {
        fits: say("fit-drive.j31-bb-in-shell.in-both-right-side-shell-made", {
          size: shell?.size ?? "",
          rightSide: shell?.rightSide ?? "",
          width: plain(width ?? 0),
          shellWidth: plain(bb.ports.shell_width ?? 0),
        }),
        fails: threadFails
          ? sameSize
            ? say("fit-drive.j31-bb-in-shell.shell-and-cups-have-right-sides")
            : say("fit-drive.j31-bb-in-shell.cups-in-a-shell", {
                thread: bb.ports.thread ?? "",
                shellThread: interfaces.shell_thread ?? "",
              })
          : say("fit-drive.j31-bb-in-shell.made-for-a-shell-this-one", {
              shellWidth: plain(bb.ports.shell_width ?? 0),
              width: plain(width ?? 0),
            }),
      },
      remedies: offers,
      sources: ["fit-bb-threads", "fit-bb-practice"],
      cautions,
    });
  },
};
