/**
 * J19: does each rotor sit on its hub?
 * Six bolts on a 44.0 circle, or a spline with a lockring: the same on both. A splined hub takes a six-bolt rotor by an
 * adapter; a hub without a mount takes none. Rotor 1.5 thick or more. Sources: fit-rotor-mounts, fit-rotor-wear.
 */

import { ROTOR_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import { capital } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import type { PartOfKind, Place } from "../../workshop/index.js";
import { closeJoint } from "../close-joint.js";
import { discAt } from "../front-and-wheels/brakes-wanted.js";
import type { RemedyOffer } from "../joint.js";
import { type JointDefinition, notChecked, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, settle } from "../settle.js";
import { span } from "../span.js";
import { type FitView, partAt } from "../view.js";
import { ENDS, type End } from "./calipers.js";
import { endsTogether } from "./ends-together.js";
import { sameWord } from "./same-word.js";

const head = {
  id: "J19",
  title: "rotor – hub",
  between: ["rotor_front", "wheel_front", "rotor_rear", "wheel_rear"],
} as const;

export const ROTOR_WORN_MM = 1.5;
const MOUNT_WORDS = {
  six_bolt: "six-bolt",
  splined: "splined",
  none: say("fit-drive.j19-rotor-on-hub.no-rotor-mount"),
} as const;

export const j19RotorOnHub: JointDefinition = {
  ...head,
  attributes: [
    "rotor_front.ports.mount",
    "rotor_rear.ports.mount",
    "rotor_front.ports.thickness",
    "rotor_rear.ports.thickness",
    "wheel_front.ports.rotor_mount",
    "wheel_rear.ports.rotor_mount",
  ],
  reads: [],
  changes: [],
  evaluate: (view) => {
    const checks: Check[] = [];
    const groups: (readonly RemedyOffer[])[] = [];
    const fits: string[] = [];
    let fails: string | undefined;
    let empty: Place | undefined;
    let wanted = false;
    for (const end of ENDS) {
      const rotor = partAt(view, `rotor_${end}`, "rotor");
      const wheel =
        end === "front" ? partAt(view, "wheel_front", "wheel_front") : partAt(view, "wheel_rear", "wheel_rear");
      if (rotor === undefined && discAt(view, end) !== true) continue;
      wanted = true;
      if (rotor === undefined || wheel === undefined) {
        empty ??= rotor === undefined ? `rotor_${end}` : `wheel_${end}`;
        continue;
      }
      const judged = atEnd(view, end, rotor, wheel);
      checks.push(...judged.checks);
      if (judged.fails === undefined) fits.push(judged.fits);
      else {
        fails ??= judged.fails;
        groups.push(judged.offers);
      }
    }
    if (checks.length === 0) {
      if (!wanted) return notChecked(head, say("fit-drive.j19-rotor-on-hub.no-disc-brake-is-planned"));
      return notChosen(head, empty ?? "rotor_rear");
    }
    return closeJoint(head, {
      settled: settle(checks),
      words: { fits: `${capital(fits.join("; "))}.`, fails: fails ?? "" },
      remedies: endsTogether(groups),
      sources: ["fit-rotor-mounts", "fit-rotor-wear"],
      cautions:
        empty === undefined
          ? []
          : [
              {
                code: "one-end-not-chosen",
                at: `build.chosen.${empty}`,
                message: say("fit-drive.j19-rotor-on-hub.only-one-end-is-judged-no", {
                  empty: empty.replace("_", " "),
                }),
              },
            ],
    });
  },
};

function atEnd(
  view: FitView,
  end: End,
  rotor: PartOfKind<"rotor">,
  wheel: PartOfKind<"wheel_front"> | PartOfKind<"wheel_rear">,
) {
  const hub = wheel.ports.rotor_mount;
  const mount = rotor.ports.mount;
  const thickness = rotor.ports.thickness;
  const checks: Check[] = [
    sameWord({
      name: say("fit-drive.j19-rotor-on-hub.rotor-mount-as-on-the-hub", { end }),
      a: hub,
      b: mount,
      words: say("fit-drive.j19-rotor-on-hub.the-same-six-bolts-on-44"),
      measureA: {
        what: say("fit-drive.j19-rotor-on-hub.look-how-the-hub-takes-a", { end }),
        at: `bin.parts.${wheel.id}.ports.rotor_mount`,
        tool: "eye",
      },
      measureB: {
        what: say("fit-drive.j19-rotor-on-hub.look-how-the-rotor-is-held", { end }),
        at: `bin.parts.${rotor.id}.ports.mount`,
        tool: "eye",
      },
      suits: (a, b) => a === b && a !== "none",
    }),
    {
      name: say("fit-drive.j19-rotor-on-hub.rotor-thickness", { end }),
      unit: "mm",
      value: span(thickness, 0.02),
      limit: { low: ROTOR_WORN_MM, kind: "hard", words: say("fit-drive.j19-rotor-on-hub.1-5-or-more-the-rotor") },
      measure: {
        what: say("fit-drive.j19-rotor-on-hub.measure-the-rotor-s-thickness-where", { end }),
        at: `bin.parts.${rotor.id}.ports.thickness`,
        tool: "micrometer",
        accuracy: "± 0.02 mm",
      },
    },
  ];
  const fits = say("fit-drive.j19-rotor-on-hub.rotor-and-hub-both", {
    end,
    mount: mount === undefined ? "" : MOUNT_WORDS[mount],
  });
  const worn = thickness !== undefined && thickness < ROTOR_WORN_MM;
  const same = hub === undefined || mount === undefined || (hub === mount && hub !== "none");
  const offers: RemedyOffer[] = [];
  if (same && !worn) return { checks, offers, fits };
  if (hub === "none") {
    offers.push(
      offerRemedy(ROTOR_REMEDIES.disc_wheel, view, { values: { end } }),
      offerRemedy(ROTOR_REMEDIES.home_adapter, view, { values: { end } }),
    );
    return { checks, offers, fits, fails: say("fit-drive.j19-rotor-on-hub.the-hub-has-no-rotor-mount", { end }) };
  }
  if (!same && !worn && hub === "splined" && mount === "six_bolt")
    offers.push(offerRemedy(ROTOR_REMEDIES.spline_adapter, view, { values: { end } }));
  if (hub !== undefined)
    offers.push(offerRemedy(ROTOR_REMEDIES.other_rotor, view, { values: { end, mount: MOUNT_WORDS[hub] } }));
  const fails = worn
    ? say("fit-drive.j19-rotor-on-hub.the-rotor-is-thick-worn-under", { end, thickness })
    : say("fit-drive.j19-rotor-on-hub.the-rotor-is-the-hub", {
        end,
        mount: mount === undefined ? "" : MOUNT_WORDS[mount],
        hub: hub === undefined ? "" : MOUNT_WORDS[hub],
      });
  return { checks, offers, fits, fails };
}
