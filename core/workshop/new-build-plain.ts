/** How does each document of a build look while nothing in it is known? Plain data: what one entry is tried against. */
import type { DocKind } from "./documents.js";

const ID = "new-build";

const EMPTY: Readonly<Record<DocKind, Readonly<Record<string, unknown>>>> = {
  donor: {
    label: "",
    tube: { class: "unknown" },
    wheels_now: {},
    measured: {},
    interfaces: {},
    gaps_rear: {},
    stays: {},
    condition: { cracks: "not_looked" },
  },
  rider: {},
  intent: { purpose: "", brakes: "any", gears: "any" },
  shop: { abilities: ["hand"] },
  bin: { parts: [{ id: "wanted-tyre", kind: "tyre", condition: "A", qty: 2, ports: { size: "?" } }] },
  prices: {},
  route: { sections: [{ km: 1, grade: 0 }] },
  build: {
    title: "",
    donor: ID,
    rider: ID,
    intent: ID,
    shop: ID,
    bin: ID,
    prices: ID,
    chosen: {},
    operations: [],
  },
};

export function emptyPlain(kind: DocKind): unknown {
  return { kind, version: 1, id: ID, ...EMPTY[kind] };
}
