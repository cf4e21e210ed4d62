/** What does the chosen build cost, weigh and take in hours, and what is the cheapest way back inside the budget? */

import {
  type HoursValue,
  hoursLedger,
  type MassValue,
  type MoneyLine,
  type MoneyValue,
  massLedger,
  moneyLedger,
} from "../plan/index.js";
import type { Answer } from "../quantity/index.js";
import { say } from "../texts/say.js";
import type { Part, Place, ResolvedBuild } from "../workshop/index.js";

export interface AlternativeCost {
  readonly name: string;
  readonly total: number | undefined;
  /** Budget less total; below zero it is over. */
  readonly toSpare: number | undefined;
}

export interface BuyLine {
  readonly part: Part;
  readonly places: readonly Place[];
  readonly qty: number;
  readonly cost: number | undefined;
}

export interface LedgerOfBuild {
  readonly money: Answer<MoneyValue>;
  readonly mass: Answer<MassValue>;
  readonly hours: Answer<HoursValue>;
  readonly alternatives: readonly AlternativeCost[];
  readonly lines: readonly BuyLine[];
}

const GROUPS: Readonly<Partial<Record<Part["kind"], string>>> = {
  fork: "frame",
  headset: "frame",
  plate: "frame",
  paint: "frame",
  wheel_front: "wheels",
  wheel_rear: "wheels",
  tyre: "wheels",
  tube: "wheels",
  axle_kit: "wheels",
  washers: "wheels",
  bb: "drive",
  crank: "drive",
  ring: "drive",
  sprocket: "drive",
  cassette: "drive",
  chain: "drive",
  chain_tensioner: "drive",
  shifter: "drive",
  lever_pair: "brakes",
  caliper_pair: "brakes",
  caliper: "brakes",
  rotor: "brakes",
  adapter: "brakes",
  hose_kit: "brakes",
  cable_kit: "brakes",
  guards: say("questions.ledger-of-build.load-gear"),
  rack: say("questions.ledger-of-build.load-gear"),
  light_set: say("questions.ledger-of-build.load-gear"),
  derailleur_rear: "drive",
  pads: "brakes",
  child_seat: say("questions.ledger-of-build.load-gear"),
  stand: say("questions.ledger-of-build.load-gear"),
  chain_guard: "drive",
  spoke_guard: say("questions.ledger-of-build.load-gear"),
  bell_reflectors: say("questions.ledger-of-build.load-gear"),
};

/** Every part of the build once, with how many and where. */
export function buyLines(
  build: ResolvedBuild,
  change: Readonly<Record<string, string | null | undefined>> = {},
): readonly BuyLine[] {
  const rows = new Map<string, { part: Part; places: Place[]; qty: number }>();
  const add = (part: Part, qty: number, place?: Place) => {
    const row = rows.get(part.id) ?? { part, places: [], qty: 0 };
    row.qty += qty;
    if (place !== undefined) row.places.push(place);
    rows.set(part.id, row);
  };
  const chosen: Record<string, string | null | undefined> = { ...build.build.chosen, ...change };
  for (const [place, id] of Object.entries(chosen)) {
    const part = typeof id === "string" ? build.parts.get(id) : undefined;
    if (part !== undefined) add(part, 1, place as Place);
  }
  for (const row of build.also) add(row.part, row.qty);
  return [...rows.values()].map((r) => ({ ...r, cost: r.part.cost === undefined ? undefined : r.part.cost * r.qty }));
}

function moneyLines(build: ResolvedBuild, lines: readonly BuyLine[]): MoneyLine[] {
  return [
    {
      id: "donor",
      what: say("questions.ledger-of-build.donor", { donor: build.donor.id }),
      kind: "donor",
      qty: 1,
      price: build.donor.price ?? null,
      spent: false,
    },
    ...lines.map(
      (l): MoneyLine => ({
        id: l.part.id,
        what: l.part.kind.replaceAll("_", " "),
        kind: l.part.kind === "paint" ? "consumable" : "part",
        qty: l.qty,
        price: l.part.cost ?? null,
        spent: false,
      }),
    ),
  ];
}

export function ledgerOfBuild(build: ResolvedBuild): LedgerOfBuild {
  const lines = buyLines(build);
  const budget = build.intent.budget;
  const hours = build.build.operations.reduce((sum, o) => sum + o.h, 0);
  const money = moneyLedger({
    lines: moneyLines(build, lines),
    ...(budget === undefined ? {} : { budget }),
    hours,
    ...(build.shop.rate_per_hour === undefined ? {} : { ratePerHour: build.shop.rate_per_hour }),
    ...(build.prices.same_bike_used === undefined ? {} : { readyBicycle: build.prices.same_bike_used }),
  });
  const alternatives = (build.build.alternatives ?? []).map((a): AlternativeCost => {
    const m = moneyLedger({ lines: moneyLines(build, buyLines(build, a.change)) });
    const known = m.kind === "answered" && m.value.priceNotKnown.length === 0 ? m.value.total : undefined;
    return {
      name: a.name,
      total: known,
      toSpare: known === undefined || budget === undefined ? undefined : budget - known,
    };
  });
  const bare = build.donor.condition.mass_bare;
  const mass = massLedger({
    lines: [
      {
        id: "donor",
        what: say("questions.ledger-of-build.bare-frame"),
        group: "frame",
        qty: 1,
        massG: bare ?? null,
        known: "weighed",
      },
      ...lines
        .filter((l) => l.part.kind !== "paint")
        .map((l) => ({
          id: l.part.id,
          what: l.part.kind.replaceAll("_", " "),
          group: GROUPS[l.part.kind] ?? "contact",
          qty: l.qty,
          massG: l.part.mass ?? null,
          known: "weighed" as const,
        })),
    ],
  });
  return {
    money,
    mass,
    hours: hoursLedger({
      lines: build.build.operations.map((o) => ({ id: o.id, what: o.what, handsOnH: o.h, done: false })),
      ...(build.intent.hours_max === undefined ? {} : { hoursMax: build.intent.hours_max }),
    }),
    alternatives,
    lines,
  };
}
