/** Which documents belong to this build, and which parts stand in its places? Everything missing is told at once. */

import { nearestName, type Refusal } from "../quantity/index.js";
import { say } from "../texts/say.js";
import type { BuildDoc } from "./build.js";
import type { AnyDoc, DocKind, DocOfKind } from "./documents.js";
import type { DonorDoc } from "./donor.js";
import type { Part } from "./part.js";
import type { IntentDoc, RiderDoc, RouteDoc } from "./people.js";
import type { BinDoc, PricesDoc, ShopDoc } from "./shop.js";
import { withWheels } from "./wheels-of.js";
import { PLACES, type Place } from "./words.js";

export interface ResolvedBuild {
  readonly build: BuildDoc;
  readonly donor: DonorDoc;
  readonly rider: RiderDoc;
  readonly intent: IntentDoc;
  readonly shop: ShopDoc;
  readonly bin: BinDoc;
  readonly prices: PricesDoc;
  readonly route?: RouteDoc;
  readonly parts: ReadonlyMap<string, Part>;
  /** Part in each chosen place; wheels chosen as a pair, or as hubs and rims, stand in both wheel places. */
  readonly at: Readonly<Partial<Record<Place, Part>>>;
  readonly also: readonly { readonly part: Part; readonly qty: number }[];
}

/** Which kinds of part may stand in which place. */
export const KINDS_OF_PLACE: Readonly<Record<Place, readonly Part["kind"][]>> = {
  fork: ["fork"],
  headset: ["headset"],
  stem: ["stem", "quill_stem"],
  bar: ["bar"],
  spacers: ["spacers"],
  lever: ["lever_pair"],
  shifter: ["shifter"],
  wheel_front: ["wheel_front"],
  wheel_rear: ["wheel_rear"],
  tyre_front: ["tyre"],
  tyre_rear: ["tyre"],
  tube_front: ["tube"],
  tube_rear: ["tube"],
  caliper: ["caliper_pair"],
  caliper_front: ["caliper"],
  caliper_rear: ["caliper"],
  rotor_front: ["rotor"],
  rotor_rear: ["rotor"],
  adapter_front: ["adapter"],
  adapter_rear: ["adapter"],
  hose: ["hose_kit"],
  cable: ["cable_kit"],
  bb: ["bb"],
  crank: ["crank"],
  ring: ["ring"],
  sprocket: ["sprocket", "cassette"],
  chain: ["chain"],
  tensioner: ["chain_tensioner"],
  washers: ["washers"],
  guards: ["guards"],
  rack: ["rack"],
  post: ["post"],
  saddle: ["saddle"],
  light: ["light_set"],
  axle_kit: ["axle_kit"],
  wheels: ["wheel_pair"],
  rims: ["rim_pair"],
  hub_front: ["hub_front"],
  hub_rear: ["hub_rear"],
  spokes: ["spokes"],
  ring_inner: ["ring"],
  cassette_spacer: ["cassette_spacer"],
  derailleur_front: ["derailleur_front"],
  stand: ["stand"],
  child_seat: ["child_seat"],
  derailleur_rear: ["derailleur_rear"],
};

export function resolveBuild(
  docs: readonly AnyDoc[],
  buildId?: string,
):
  | { readonly kind: "resolved"; readonly resolved: ResolvedBuild }
  | { readonly kind: "refused"; readonly refusals: readonly Refusal[] } {
  const refusals: Refusal[] = [];
  const builds = docs.filter((d): d is BuildDoc => d.kind === "build");
  const build = buildId === undefined ? builds[0] : builds.find((b) => b.id === buildId);
  if (build === undefined || (buildId === undefined && builds.length > 1)) {
    const ids = builds.map((b) => b.id);
    return {
      kind: "refused",
      refusals: [
        {
          code: builds.length > 1 ? "which-build" : "no-build",
          at: "build",
          given: buildId ?? null,
          allowed: ids.length > 0 ? ids.join(", ") : say("workshop.resolve.a-document-of-kind-build"),
          message:
            builds.length > 1 && buildId === undefined
              ? say("workshop.resolve.more-than-one-build-here-name", { ids: ids.join(", ") })
              : say("workshop.resolve.no-build-here", {
                  buildId: buildId ?? "",
                  idsCount:
                    ids.length > 0
                      ? say("workshop.resolve.there-is", { ids: ids.join(", ") })
                      : say("workshop.resolve.a-file-to-be-checked-needs"),
                }),
        },
      ],
    };
  }
  const find = <K extends DocKind>(kind: K, id: string): DocOfKind<K> | undefined => {
    const hit = docs.find((d) => d.kind === kind && d.id === id) as DocOfKind<K> | undefined;
    if (hit === undefined) {
      const ids = docs.filter((d) => d.kind === kind).map((d) => d.id);
      const near = nearestName(id, ids);
      refusals.push({
        code: "not-found",
        at: `build.${kind}`,
        given: id,
        allowed: ids.length > 0 ? ids.join(", ") : say("workshop.resolve.a-document-of-kind", { kind }),
        message: say("workshop.resolve.build-names-which-is-not-here", {
          build: build.id,
          kind,
          id,
          near: near === undefined ? "" : say("workshop.load.did-you-mean", { near }),
        }),
      });
    }
    return hit;
  };
  const donor = find("donor", build.donor);
  const rider = find("rider", build.rider);
  const intent = find("intent", build.intent);
  const shop = find("shop", build.shop);
  const bin = find("bin", build.bin);
  const prices = find("prices", build.prices);
  const route = build.route === undefined ? undefined : find("route", build.route);
  const parts = new Map<string, Part>();
  for (const [i, part] of (bin?.parts ?? []).entries()) {
    if (parts.has(part.id))
      refusals.push({
        code: "twice",
        at: `bin.parts[${i}].id`,
        given: part.id,
        allowed: say("workshop.parts-from-csv.each-id-once"),
        message: say("workshop.resolve.part-stands-twice-in-bin", { part: part.id, bin: bin?.id }),
      });
    parts.set(part.id, part);
  }
  const partAt = (id: string, at: string): Part | undefined => {
    const part = parts.get(id);
    if (part === undefined && bin !== undefined) {
      const near = nearestName(id, [...parts.keys()]);
      refusals.push({
        code: "not-found",
        at,
        given: id,
        allowed: say("workshop.resolve.a-part-of-bin", { bin: bin.id }),
        message: say("workshop.resolve.part-is-not-in-bin", {
          at,
          id,
          bin: bin.id,
          near: near === undefined ? "" : say("workshop.load.did-you-mean", { near }),
        }),
      });
    }
    return part;
  };
  const checkKind = (place: Place, part: Part | undefined, at: string) => {
    if (part !== undefined && !KINDS_OF_PLACE[place].includes(part.kind)) {
      refusals.push({
        code: "wrong-kind",
        at,
        given: `${part.id} (${part.kind})`,
        allowed: KINDS_OF_PLACE[place].join(" or "),
        message: say("workshop.resolve.is-a-this-place-takes", {
          at,
          part: part.id,
          kind: part.kind,
          kindsOfPlace: KINDS_OF_PLACE[place].join(" or "),
        }),
      });
    }
  };
  const at: Partial<Record<Place, Part>> = {};
  const used = new Map<string, number>();
  for (const place of PLACES) {
    const id = build.chosen[place];
    if (id !== undefined) {
      const part = partAt(id, `build.chosen.${place}`);
      checkKind(place, part, `build.chosen.${place}`);
      if (part) {
        at[place] = part;
        used.set(part.id, (used.get(part.id) ?? 0) + 1);
      }
    }
    for (const [i, other] of (build.consider?.[place] ?? []).entries())
      checkKind(place, partAt(other, `build.consider.${place}[${i}]`), `build.consider.${place}[${i}]`);
  }
  const also: { part: Part; qty: number }[] = [];
  for (const [i, row] of (build.also ?? []).entries()) {
    const part = partAt(row.part, `build.also[${i}].part`);
    if (part) {
      also.push({ part, qty: row.qty });
      used.set(part.id, (used.get(part.id) ?? 0) + row.qty);
    }
  }
  for (const [id, n] of used) {
    const part = parts.get(id);
    if (part && n > part.qty) {
      refusals.push({
        code: "not-enough",
        at: "build.chosen",
        given: say("workshop.resolve.of", { count: n, id }),
        allowed: say("workshop.resolve.in-the-bin", { qty: part.qty }),
        message: say("workshop.resolve.is-used-times-the-bin-has", { id, times: n, qty: part.qty }),
      });
    }
  }
  for (const [i, alternative] of (build.alternatives ?? []).entries()) {
    for (const [place, id] of Object.entries(alternative.change)) {
      if (typeof id === "string")
        checkKind(
          place as Place,
          partAt(id, `build.alternatives[${i}].change.${place}`),
          `build.alternatives[${i}].change.${place}`,
        );
    }
  }
  if (refusals.length > 0 || !donor || !rider || !intent || !shop || !bin || !prices)
    return { kind: "refused", refusals };
  return {
    kind: "resolved",
    resolved: {
      build,
      donor,
      rider,
      intent,
      shop,
      bin,
      prices,
      ...(route ? { route } : {}),
      parts,
      at: withWheels(at),
      also,
    },
  };
}
