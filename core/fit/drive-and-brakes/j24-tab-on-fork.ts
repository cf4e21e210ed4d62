/**
 * J24: is the fork made for a disc?
 * Made and rated for it, with a mount: then it fits. Otherwise the fork is replaced; no tab is ever added (S5).
 * How the wheel is held in its ends is J12. Source: fit-disc-fork.
 */

import { TAB_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import { say } from "../../texts/say.js";
import { closeJoint } from "../close-joint.js";
import { discAt } from "../front-and-wheels/brakes-wanted.js";
import { type JointDefinition, notChecked, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { settle, yesNo } from "../settle.js";
import { partAt } from "../view.js";
import { MOUNT_WORDS } from "./j22-caliper-on-mount.js";

const head = { id: "J24", title: "tab – fork", between: ["fork", "caliper", "caliper_front"] } as const;

export const j24TabOnFork: JointDefinition = {
  ...head,
  attributes: ["fork.ports.rated_disc", "fork.ports.mount"],
  reads: [],
  changes: [],
  evaluate: (view) => {
    if (discAt(view, "front") === false)
      return notChecked(head, say("fit-drive.j24-tab-on-fork.no-disc-brake-is-planned-at"));
    const fork = partAt(view, "fork", "fork");
    if (fork === undefined) return notChosen(head, "fork");
    const at = `bin.parts.${fork.id}.ports`;
    const { mount, rated_disc: rated } = fork.ports;
    const settled = settle([
      yesNo(
        say("fit-drive.j24-tab-on-fork.fork-made-and-rated-for-a"),
        rated,
        say("fit-drive.j24-tab-on-fork.made-for-a-disc"),
        {
          what: say("fit-drive.j24-tab-on-fork.find-out-whether-the-fork-was"),
          at: `${at}.rated_disc`,
          tool: "eye",
        },
      ),
      yesNo(
        say("fit-drive.j24-tab-on-fork.disc-mount-on-the-fork"),
        mount === undefined ? undefined : mount !== "none",
        say("fit-drive.j24-tab-on-fork.a-mount-made-with-the-fork"),
        { what: say("fit-drive.j24-tab-on-fork.look-which-disc-mount-the-fork"), at: `${at}.mount`, tool: "eye" },
      ),
    ]);
    const fails = settled.outcome === "fails";
    return closeJoint(head, {
      settled,
      words: {
        fits: say("fit-drive.j24-tab-on-fork.is-made-for-a-disc-with", {
          fork: fork.id,
          mount: mount === undefined ? "mount" : MOUNT_WORDS[mount],
        }),
        fails:
          rated === false
            ? say("fit-drive.j24-tab-on-fork.was-not-made-for-a-disc", { fork: fork.id })
            : say("fit-drive.j24-tab-on-fork.has-no-disc-mount", { fork: fork.id }),
      },
      remedies: fails ? [offerRemedy(TAB_REMEDIES.disc_fork, view), offerRemedy(TAB_REMEDIES.add_fork_tab, view)] : [],
      rules: fails
        ? [
            {
              rule: "S5",
              level: "refuse",
              why: say("fit-drive.j24-tab-on-fork.a-disc-brake-is-planned-on", { fork: fork.id }),
              place: "fork",
              part: fork.id,
            },
          ]
        : [],
      sources: ["fit-disc-fork"],
      cautions:
        fork.ports.end === "open_slot"
          ? [
              {
                code: "open-fork-end",
                at: `${at}.end`,
                message: say("fit-drive.j24-tab-on-fork.the-fork-end-is-an-open"),
              },
            ]
          : [],
    });
  },
};
