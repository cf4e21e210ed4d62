/**
 * J31: does the bottom bracket go into this shell?
 * One thread with one hand on the right side, and one width within 0.5; outside cups (24 or 30 spindle) made for 73 go on 68
 * with spacers of 2.5 on each side, a cartridge made for 73 does not. A 35 x 1 shell may have either hand: look before a cup is turned in. Sources: fit-bb-threads, fit-bb-practice.
 */
import { BB_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import type { Caution } from "../../quantity/index.js";
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
      what: "Read or measure the shell's thread: diameter and threads per inch",
      at: "donor.interfaces.shell_thread",
      tool: "calliper",
      how: "take a cup out; thread gauge",
    } as const;
    const readCups = { what: "Read the thread on the cups", at: `${at}.thread`, tool: "calliper" } as const;
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
        words: "one thread",
        measureA: readShell,
        measureB: readCups,
      }),
      ...(sameSize
        ? [
            sameWord({
              name: "hand of the right side",
              a: shell.rightSide,
              b: cups.rightSide,
              words: "one hand",
              measureA: {
                ...readShell,
                what: "Look which hand the shell's right side has, and write it behind the thread: LH or RH",
              },
              measureB: {
                ...readCups,
                what: "Look which hand the right cup has, and write it behind the thread: LH or RH",
              },
            }),
          ]
        : []),
      {
        name: "cups made wider than the shell",
        unit: "mm",
        value: over,
        limit: { low: -WIDTH_WITHIN_MM, high: WIDTH_WITHIN_MM, kind: "hard", words: "0.5 or less" },
        measure:
          bb.ports.shell_width === undefined
            ? { what: "Read for which shell the bottom bracket is made", at: `${at}.shell_width`, tool: "eye" }
            : { what: "Measure the shell from face to face", at: "donor.interfaces.shell_width", tool: "calliper" },
      },
    ]);
    const offers: RemedyOffer[] = [];
    const threadFails = settled.failed.some((check) => check.name !== "cups made wider than the shell");
    if (settled.outcome === "fails") {
      offers.push(
        offerRemedy(BB_REMEDIES.other_bb, view, {
          values: { thread: interfaces.shell_thread ?? "for the shell", width: width ?? "measured" },
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
        message: "Turn the cup in by hand first. Chase and face where it does not run free; never force it.",
      },
    ];
    return closeJoint(head, {
      settled,
      words: {
        fits: `${shell?.size ?? ""} in both, right side ${shell?.rightSide ?? ""}; shell ${plain(width ?? 0)}, made for ${plain(bb.ports.shell_width ?? 0)}.`,
        fails: threadFails
          ? sameSize
            ? `Shell and cups have right sides of different hand.`
            : `${bb.ports.thread ?? ""} cups in a ${interfaces.shell_thread ?? ""} shell.`
          : `Made for a ${plain(bb.ports.shell_width ?? 0)} shell, this one is ${plain(width ?? 0)}.`,
      },
      remedies: offers,
      sources: ["fit-bb-threads", "fit-bb-practice"],
      cautions,
    });
  },
};
