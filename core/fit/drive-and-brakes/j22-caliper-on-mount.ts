/**
 * J22: does each caliper come to its mount at the right radius for its rotor?
 * Straight on where mount and caliper are of one kind and the mount is made for this rotor; otherwise by an adapter from
 * the one to the other for this rotor. A 51 tab adapter marked for the rear gives 20 more at the front, one marked for the
 * front 20 less at the rear (ruling). A rear tab that is still to be made is taken as a 51 tab: it hangs on J23.
 * Sources: fit-mount-practice, fit-m16-front-shift.
 */

import { MOUNT_REMEDIES } from "../../data/remedies-drive-and-brakes.js";
import { type Caution, capital } from "../../quantity/index.js";
import { say } from "../../texts/say.js";
import type { PartOfKind, Place } from "../../workshop/index.js";
import { closeJoint } from "../close-joint.js";
import { discAt } from "../front-and-wheels/brakes-wanted.js";
import type { RemedyOffer } from "../joint.js";
import { type JointDefinition, notChecked, notChosen } from "../joint-definition.js";
import { offerRemedy } from "../offer-remedy.js";
import { type Check, plain, settle } from "../settle.js";
import { span } from "../span.js";
import { type FitView, partAt } from "../view.js";
import { type CaliperHere, caliperAt, ENDS, type End } from "./calipers.js";
import { endsTogether } from "./ends-together.js";
import { sameWord } from "./same-word.js";

const head = {
  id: "J22",
  title: "caliper – mount",
  between: [
    "caliper",
    "caliper_front",
    "caliper_rear",
    "fork",
    "frame",
    "adapter_front",
    "adapter_rear",
    "rotor_front",
    "rotor_rear",
  ],
} as const;

export const FRONT_GIVES_MORE_MM = 20;
const ROTOR_WITHIN_MM = 1;
type Mount = "post_74" | "tab_51" | "flat" | "none";
export const MOUNT_WORDS: Readonly<Record<Mount, string>> = {
  post_74: say("fit-drive.j22-caliper-on-mount.74-post-mount"),
  tab_51: say("fit-drive.j22-caliper-on-mount.51-tab"),
  flat: say("fit-drive.j22-caliper-on-mount.flat-mount"),
  none: say("fit-drive.j22-caliper-on-mount.no-mount"),
};

/** Which rotor does this adapter give at this end? */
export function adapterRotor(adapter: PartOfKind<"adapter">, end: End): number | undefined {
  const { rotor, from, end: made } = adapter.ports;
  if (rotor === undefined) return undefined;
  // Posts stand where the rotor size says, at both ends alike; only the tab's holes lie further out at the front.
  if (from === "post_74") return rotor;
  if (made === undefined) return undefined;
  return made === end ? rotor : end === "front" ? rotor + FRONT_GIVES_MORE_MM : rotor - FRONT_GIVES_MORE_MM;
}

interface MountHere {
  readonly kind: Mount | undefined;
  readonly rotor: number | undefined;
  readonly at: string;
  readonly rotorAt: string;
  readonly toBeMade: boolean;
}

export const j22CaliperOnMount: JointDefinition = {
  ...head,
  attributes: [
    "fork.ports.mount",
    "fork.ports.mount_rotor",
    "donor.interfaces.rear_tab",
    "caliper.ports.mount",
    "rotor_front.ports.diameter",
    "rotor_rear.ports.diameter",
    "adapter_rear.ports.from",
    "adapter_rear.ports.to",
    "adapter_rear.ports.rotor",
    "adapter_rear.ports.end",
  ],
  reads: [],
  changes: [],
  evaluate: (view) => {
    const checks: Check[] = [];
    const groups: (readonly RemedyOffer[])[] = [];
    const cautions: Caution[] = [];
    const fits: string[] = [];
    let fails: string | undefined;
    let empty: Place | undefined;
    let wanted = false;
    for (const end of ENDS) {
      if (discAt(view, end) === false) continue;
      wanted = true;
      const caliper = caliperAt(view, end);
      const rotor = partAt(view, `rotor_${end}`, "rotor");
      const mount = mountAt(view, end);
      if (caliper === undefined || rotor === undefined || mount === undefined) {
        empty ??= caliper === undefined ? "caliper" : rotor === undefined ? `rotor_${end}` : "fork";
        continue;
      }
      const judged = atEnd(view, end, caliper, rotor, mount);
      checks.push(...judged.checks);
      if (judged.fails === undefined) fits.push(judged.fits);
      else {
        fails ??= judged.fails;
        groups.push(judged.offers);
      }
      if (mount.toBeMade) {
        cautions.push({
          code: "mount-still-to-be-made",
          at: "donor.interfaces.rear_tab",
          message: say("fit-drive.j22-caliper-on-mount.the-rear-tab-does-not-exist"),
        });
      }
    }
    if (checks.length === 0)
      return wanted
        ? notChosen(head, empty ?? "caliper")
        : notChecked(head, say("fit-drive.j19-rotor-on-hub.no-disc-brake-is-planned"));
    if (empty !== undefined)
      cautions.push({
        code: "one-end-not-chosen",
        at: `build.chosen.${empty}`,
        message: say("fit-drive.j19-rotor-on-hub.only-one-end-is-judged-no", { empty: empty.replace("_", " ") }),
      });
    return closeJoint(head, {
      settled: settle(checks),
      words: { fits: `${capital(fits.join("; "))}.`, fails: fails ?? "" },
      remedies: endsTogether(groups),
      sources: ["fit-mount-practice", "fit-m16-front-shift"],
      cautions,
    });
  },
};

function mountAt(view: FitView, end: End): MountHere | undefined {
  if (end === "rear") {
    const tab = view.resolved.donor.interfaces.rear_tab;
    const at = "donor.interfaces.rear_tab";
    return { kind: tab === "none" ? "tab_51" : tab, rotor: undefined, at, rotorAt: at, toBeMade: tab === "none" };
  }
  const fork = partAt(view, "fork", "fork");
  if (fork === undefined) return undefined;
  const at = `bin.parts.${fork.id}.ports.mount`;
  return { kind: fork.ports.mount, rotor: fork.ports.mount_rotor, at, rotorAt: `${at}_rotor`, toBeMade: false };
}

function atEnd(view: FitView, end: End, caliper: CaliperHere, rotor: PartOfKind<"rotor">, mount: MountHere) {
  const adapter = partAt(view, `adapter_${end}`, "adapter");
  const wantedMount = caliper.part.ports.mount;
  const diameter = rotor.ports.diameter;
  const readMount = {
    what: say("fit-drive.j22-caliper-on-mount.look-which-disc-mount-the-has", {
      end: end === "front" ? "fork" : "frame",
    }),
    at: mount.at,
    tool: "eye",
  } as const;
  const readCaliper = {
    what: say("fit-drive.j22-caliper-on-mount.look-how-the-caliper-is-bolted", { end }),
    at: `bin.parts.${caliper.part.id}.ports.mount`,
    tool: "eye",
  } as const;
  const readRotor = {
    what: say("fit-drive.j22-caliper-on-mount.measure-the-rotor-across", { end }),
    at: `bin.parts.${rotor.id}.ports.diameter`,
    tool: "rule",
  } as const;
  const checks: Check[] = [];
  let gives: number | undefined;
  let readGives: Check["measure"];
  if (adapter === undefined) {
    checks.push(
      sameWord({
        name: say("fit-drive.j22-caliper-on-mount.caliper-straight-on-the-mount", { end }),
        a: mount.kind,
        b: wantedMount,
        words: say("fit-drive.j22-caliper-on-mount.one-kind"),
        measureA: readMount,
        measureB: readCaliper,
        suits: (a, b) => a === b && a !== "none",
      }),
    );
    gives = mount.rotor;
    readGives = {
      what: say("fit-drive.j22-caliper-on-mount.read-for-which-rotor-the-mount", { end }),
      at: mount.rotorAt,
      tool: "eye",
    };
  } else {
    const at = `bin.parts.${adapter.id}.ports`;
    checks.push(
      sameWord({
        name: say("fit-drive.j22-caliper-on-mount.adapter-on-the-mount", { end }),
        a: mount.kind,
        b: adapter.ports.from,
        words: say("fit-drive.j22-caliper-on-mount.one-kind"),
        measureA: readMount,
        measureB: {
          what: say("fit-drive.j22-caliper-on-mount.look-which-mount-the-adapter-goes", { end }),
          at: `${at}.from`,
          tool: "eye",
        },
        suits: (a, b) => a === b && a !== "none",
      }),
      sameWord({
        name: say("fit-drive.j22-caliper-on-mount.caliper-on-the-adapter", { end }),
        a: adapter.ports.to,
        b: wantedMount,
        words: say("fit-drive.j22-caliper-on-mount.one-kind"),
        measureA: {
          what: say("fit-drive.j22-caliper-on-mount.look-which-caliper-the-adapter-takes", { end }),
          at: `${at}.to`,
          tool: "eye",
        },
        measureB: readCaliper,
        suits: (a, b) => a === b && a !== "none",
      }),
    );
    gives = adapterRotor(adapter, end);
    readGives = {
      what: say("fit-drive.j22-caliper-on-mount.read-on-the-adapter-its-end", { end }),
      at: adapter.ports.rotor === undefined ? `${at}.rotor` : `${at}.end`,
      tool: "eye",
    };
  }
  const off = gives === undefined || diameter === undefined ? undefined : diameter - gives;
  checks.push({
    name: say("fit-drive.j22-caliper-on-mount.rotor-over-what-the-mount-gives", { end }),
    unit: "mm",
    value: span(off),
    limit: {
      low: -ROTOR_WITHIN_MM,
      high: ROTOR_WITHIN_MM,
      kind: "hard",
      words: say("fit-drive.j22-caliper-on-mount.the-same-rotor"),
    },
    measure: diameter === undefined ? readRotor : readGives,
  });
  const way =
    adapter === undefined
      ? say("fit-drive.j22-caliper-on-mount.straight-on")
      : say("fit-drive.j22-caliper-on-mount.by-on", { adapter: adapter.id });
  const fits = say("fit-drive.j22-caliper-on-mount.caliper-rotor", {
    end,
    way,
    toBeMade: mount.toBeMade
      ? say("fit-drive.j22-caliper-on-mount.the-tab-to-be-made-j23")
      : say("fit-drive.j22-caliper-on-mount.the", {
          kind: mount.kind === undefined ? "mount" : MOUNT_WORDS[mount.kind],
        }),
    diameter: plain(diameter ?? 0),
  });
  const bad = checks.find(
    (check) =>
      check.value.kind === "known" &&
      (check.unit === "count" ? check.value.mid === 0 : Math.abs(check.value.mid) > ROTOR_WITHIN_MM),
  );
  if (bad === undefined) return { checks, offers: [], fits };
  return {
    checks,
    offers: remedies(view, end, mount.kind, wantedMount, diameter, gives),
    fits,
    fails: failWords(end, bad, mount.kind, wantedMount, diameter, gives, adapter?.id),
  };
}

function failWords(
  end: End,
  bad: Check,
  mount: Mount | undefined,
  caliper: Mount | undefined,
  diameter: number | undefined,
  gives: number | undefined,
  adapter: string | undefined,
): string {
  if (mount === "none")
    return say("fit-drive.j22-caliper-on-mount.the-has-no-disc-mount", { end: end === "front" ? "fork" : "frame" });
  if (bad.unit === "mm")
    return say("fit-drive.j22-caliper-on-mount.rotor-the-puts-the-caliper-at", {
      end: capital(end),
      diameter: plain(diameter ?? 0),
      adapter: adapter === undefined ? "mount" : say("fit-drive.j22-caliper-on-mount.adapter", { adapter }),
      gives: plain(gives ?? 0),
    });
  const on = mount === undefined ? "mount" : MOUNT_WORDS[mount];
  const what =
    caliper === undefined
      ? "caliper"
      : say("fit-drive.j22-caliper-on-mount.caliper-for-a", { mountWords: MOUNT_WORDS[caliper] });
  return adapter === undefined
    ? say("fit-drive.j22-caliper-on-mount.on-a", { end: capital(end), what, on })
    : say("fit-drive.j22-caliper-on-mount.adapter-does-not-join-a-to", { end: capital(end), adapter, what, on });
}

function remedies(
  view: FitView,
  end: End,
  from: Mount | undefined,
  to: Mount | undefined,
  diameter: number | undefined,
  gives: number | undefined,
): readonly RemedyOffer[] {
  if (from === undefined || from === "none" || to === undefined || to === "none" || diameter === undefined) return [];
  const words = { from: MOUNT_WORDS[from], to: MOUNT_WORDS[to], rotor: diameter, end };
  const offers: RemedyOffer[] = [offerRemedy(MOUNT_REMEDIES.suited_caliper, view, { values: words })];
  if (gives !== undefined && from === to)
    offers.push(offerRemedy(MOUNT_REMEDIES.suited_rotor, view, { values: { ...words, rotor: gives } }));
  // Nothing leads from posts or a flat mount back to a tab, nor from posts to a flat mount.
  const canBe =
    (from === "tab_51" && to !== "tab_51") ||
    (from === "post_74" && to === "post_74" && gives !== undefined && diameter > gives);
  if (!canBe) return offers;
  const used = Object.values(view.at).map((part) => part?.id);
  let found = false;
  for (const part of view.resolved.parts.values()) {
    if (part.kind !== "adapter" || part.ports.from !== from || part.ports.to !== to) continue;
    const rotor = adapterRotor(part, end);
    if (
      rotor === undefined ||
      Math.abs(rotor - diameter) > ROTOR_WITHIN_MM ||
      used.filter((id) => id === part.id).length >= part.qty
    )
      continue;
    found = true;
    offers.push(
      offerRemedy(MOUNT_REMEDIES.adapter_in_bin, view, {
        values: { ...words, part: part.id },
        part: { id: part.id, cost: part.cost, mass: part.mass },
      }),
    );
  }
  if (!found)
    offers.push(
      offerRemedy(MOUNT_REMEDIES.adapter, view, {
        values: words,
        conditions: [say("fit-drive.j22-caliper-on-mount.the-adapter-s-own-price-is")],
      }),
    );
  return offers;
}
