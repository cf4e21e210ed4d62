/** What do side view, fork swap, clearances, front retention and rotor plane rest on? */
import type { SourceRow } from "./source-row.js";

export const geometrySources: readonly SourceRow[] = [
  {
    id: "m1-planar-solve",
    title: "Plane layout of frame and fork from lengths and angles",
    kind: "our derivation",
    where: "docs/methods/side-view.md",
    mark: "derived",
  },
  {
    id: "m2-usual-spread",
    title: "Usual spread of workshop measuring: angles 0.3 deg, lengths 1 to 2 mm (no source)",
    kind: "common practice",
    mark: "common practice",
  },
  {
    id: "baarda-3-29",
    title: "Test of single readings at 0.1 %: 3.29 standard deviations; Ghilani, Adjustment Computations",
    kind: "book",
    mark: "memory",
  },
  {
    id: "m4-same-frame-new-fork",
    title: "Rigid frame turned about the BB until both tyres stand level",
    kind: "our derivation",
    where: "docs/methods/fork-swap.md",
    mark: "derived",
  },
  {
    id: "m5-trail",
    title: "Trail of a steered wheel; Meijaard, Papadopoulos, Ruina and Schwab 2007, Proc. R. Soc. A 463",
    kind: "paper",
    where: "Table 1: tilt 18 deg, front radius 0.35 m, trail 0.08 m",
    mark: "read",
  },
  {
    id: "m6-sagged-radius",
    title: "Loaded radius = BSD / 2 + tyre width, ± 3 mm (no source)",
    kind: "common practice",
    mark: "common practice",
  },
  {
    id: "m8-toe-clearance",
    title: "Least straight forward distance from the pedal centre to the turned tyre",
    kind: "our derivation",
    where: "docs/methods/clearances.md",
    mark: "derived",
  },
  {
    id: "iso-4210-2-toe",
    title:
      "ISO 4210-2, toe clearance: 100 mm without foot retention, 89 mm for racing; editions differ on young adult bicycles",
    kind: "standard",
    where: "4.13",
    mark: "memory",
  },
  {
    id: "cfr-1512-17",
    title: "16 CFR 1512.17: pedal ground clearance 25 deg, toe clearance 89 mm",
    kind: "standard",
    where: "1512.17(c) and (d)",
    mark: "read",
  },
  {
    id: "m9-tyre-clearance",
    title: "Tyre gaps: 6 mm wanted, 4 least; width grows 0.4 mm per mm of inner rim width (no source)",
    kind: "common practice",
    mark: "common practice",
  },
  {
    id: "iso-4210-2-clearance",
    title: "ISO 4210-2, wheel and tyre clearance: 6 mm to any frame or fork part",
    kind: "standard",
    where: "4.10.2",
    mark: "memory",
  },
  {
    id: "m15-rotor-plane",
    title: "Rotor seat 15.3 mm (rear) or 10.5 mm (front) inside the locknut face",
    kind: "standard",
    where: "hub practice for six-bolt rotors",
    mark: "memory",
  },
  {
    id: "m17-front-retention",
    title: "Forces on the dropouts of a front wheel with a disc on one side",
    kind: "our derivation",
    where: "docs/methods/clearances.md",
    mark: "derived",
  },
  {
    id: "iso-4210-2-retention",
    title: "Front wheel retention: 2300 N shared by both ends for 1 min, 100 N with the clamp open",
    kind: "standard",
    where: "ISO 4210-2 / EN 14764 family",
    mark: "memory",
  },
];
