/** Where do the limits of the joints J1 to J16 and their tables come from? */
import type { SourceRow } from "./source-row.js";

export const fitSources: readonly SourceRow[] = [
  {
    id: "fit-headset-guide",
    title:
      "Headset identification guide on a public page: bores 30.05 to 30.10 for 30.2 cups, 29.85 to 29.90 for 30.0 cups",
    kind: "page",
    where: "table of cup outside diameters and head tube bores; verify before cutting metal",
    mark: "read",
  },
  {
    id: "fit-headset-practice",
    title: "Press of headset cups 0.10 to 0.20 and of crown races 0.05 to 0.15, bores for 34, 37, 44 and 56 cups",
    kind: "common practice",
    mark: "common practice",
  },
  {
    id: "fit-headset-codes",
    title:
      "Headset codes: bore and steerer or crown seat of each end (34 goes with 28.6 and 30.0, 30.2 with 25.4 and 26.4)",
    kind: "page",
    where: "several public pages that agree",
    mark: "read",
  },
  {
    id: "fit-steerer-tables",
    title: "Cycle mechanics' handbook tables: steerers 25.4 x 24 and 28.6 x 26 threads per inch, quills 22.2 and 25.4",
    kind: "book",
    mark: "memory",
  },
  {
    id: "fit-clamp-practice",
    title: "Clamp sizes of stems, bars and levers; equal within 0.1; spacers under the stem 30 to 40 at most",
    kind: "common practice",
    mark: "common practice",
  },
  {
    id: "fit-iso-4210-2",
    title:
      "ISO 4210-2, safety requirements: quill mark at 2.5 diameters, tyre clearance 6 (racing 4), toe clearance 100 or 89",
    kind: "standard",
    where: "clauses not re-read",
    mark: "memory",
  },
  {
    id: "fit-16-cfr-1512",
    title: "16 CFR 1512.17(d): toe clearance at least 89 mm, pedal centre to tyre or guard, forward, at any steer",
    kind: "standard",
    where: "1512.17(d)",
    mark: "read",
  },
  {
    id: "fit-iso-5775",
    title: "ISO 5775: bead seat diameters, and the older table of rim inner widths by nominal tyre width",
    kind: "standard",
    where: "part 1, crotchet rims",
    mark: "memory",
  },
  {
    id: "fit-tyre-rim-practice",
    title:
      "Tyre width over inner rim width 1.4 to 2.2; flag above 2.2 unless the table lists the pair, refuse above 2.6",
    kind: "common practice",
    mark: "common practice",
  },
  {
    id: "fit-hub-widths",
    title:
      "Crib sheet of hub widths between the locknuts: 120, 126, 130, 135 rear, 100 front; 142 and 148 with through axle",
    kind: "page",
    where: "public pages that agree",
    mark: "read",
  },
  {
    id: "fit-hub-practice",
    title:
      "How far a hub may be off the gap: 1 by hand, 2 sprung in, more is set; 10 in all at most outside a builder's shop",
    kind: "common practice",
    mark: "common practice",
  },
  {
    id: "fit-m10-set",
    title: "Set per side and splay: half the difference of widths; angle = atan(set / distance of dropout and root)",
    kind: "our derivation",
    where: "M10",
    mark: "derived",
  },
  {
    id: "fit-m11-push",
    title: "First guess of the push: elastic limit of a cantilevered stay, yield x L2 / (3 E c), good to 40 %",
    kind: "our derivation",
    where: "M11",
    mark: "derived",
  },
  {
    id: "fit-m17-retention",
    title: "Forces at the front axle under a disc: brake force, pad force, share of the left end",
    kind: "our derivation",
    where: "M17",
    mark: "derived",
  },
  {
    id: "fit-wheel-retention-test",
    title:
      "EN 14764 family and ISO 4210-2: 2300 N pull on the clamped wheel for 1 minute, shared by both ends; 100 N unclamped",
    kind: "standard",
    where: "text read in EN 14766:2005 4.10.4",
    mark: "read",
  },
  {
    id: "fit-m4-swap",
    title:
      "Same frame, new fork or wheels: exact turn about the bottom bracket; a fork 10 longer gives about 0.5 degrees slacker",
    kind: "our derivation",
    where: "M4, M5",
    mark: "derived",
  },
  {
    id: "fit-m8-toe",
    title: "Toe clearance: pedal centre straight forward to the steered tyre or guard",
    kind: "our derivation",
    where: "M8",
    mark: "derived",
  },
  {
    id: "fit-m9-gaps",
    title: "Tyre gaps at stays, bridges, blades and crown; 6 wanted, 4 at least; 10 to 14 more for a guard",
    kind: "common practice",
    where: "M9; the 6 and 4 also in ISO 4210-2 from memory",
    mark: "common practice",
  },
  {
    id: "fit-m22-reach",
    title:
      "Rim brake reach changes by half the change of bead seat diameter; boss radius 283, 265, 253.5 for 622, 584, 559",
    kind: "page",
    where: "M22; boss radii from a framebuilders' list",
    mark: "read",
  },
  {
    id: "fit-remedy-practice",
    title: "Hours, risk and side effects of the remedies of J1 to J16",
    kind: "common practice",
    where: "hours ± 50 %",
    mark: "common practice",
  },
  {
    id: "fit-demo-money",
    title: "Money of a remedy where no price is given: hours x shop rate and the shop's consumables",
    kind: "demo",
    mark: "invented for the demo",
  },
];
