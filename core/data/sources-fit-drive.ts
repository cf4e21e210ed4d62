/** Where do the limits of the joints J19 to J43 (brakes, drive, post) come from? Rows of core/data/sources-drive.ts are used too. */
import type { SourceRow } from "./source-row.js";

const practice = { kind: "common practice", mark: "common practice" } as const;

export const fitDriveSources: readonly SourceRow[] = [
  {
    id: "fit-rotor-mounts",
    title: "Rotor mounts: six bolts M5 on a 44.0 circle, or splined with a lockring; the same on both",
    ...practice,
  },
  {
    id: "fit-rotor-wear",
    title: "Rotor thickness 1.80 new and 1.50 worn out",
    kind: "page",
    where: "road-cycling article; other makers 1.52 to 1.55",
    mark: "read",
  },
  {
    id: "fit-m15-rotor-plane",
    title:
      "Six-bolt hub practice of 2000: rotor flange 15.3 inside the 135 reference face at the rear, 10.5 at the front",
    kind: "page",
    where: "M15",
    mark: "memory",
  },
  {
    id: "fit-m16-tab",
    title:
      "Framebuilders' dimension list of 2002: rear tab holes 39.9 and 79.1 from the axle, 51 apart, ± 0.1, plate 6 to 9, face flush with the dropout",
    kind: "page",
    where: "M16; verify before cutting metal",
    mark: "read",
  },
  {
    id: "fit-m16-angle",
    title: "Angle of the two tab holes at the axle, 33.76 degrees, from the three sides",
    kind: "our derivation",
    where: "M16, law of cosines",
    mark: "derived",
  },
  {
    id: "fit-m16-front-shift",
    title: "Front tab holes lie 10 further out than rear ones: an adapter for 160 at the rear gives 180 at the front",
    kind: "page",
    where: "three pages that agree; M16",
    mark: "read",
  },
  {
    id: "fit-mount-practice",
    title:
      "Disc mounts: 51 tab, posts 74 apart, flat; adapters by rotor size; no flat mount from posts on old steel forks",
    ...practice,
  },
  {
    id: "fit-m19-m20-tab-work",
    title: "Load of a rear tab and reach of the weld's heat: brace needed, 15 from brazed joints",
    kind: "our derivation",
    where: "M19, M20",
    mark: "derived",
  },
  { id: "fit-disc-fork", title: "A disc needs a fork made for it", ...practice },
  {
    id: "fit-hub-gear-axle",
    title:
      "Hub gear axle: hub, both dropouts, on each side a non-turn washer of 3 and a nut of 8; flats of axle and washer within 0.2",
    ...practice,
  },
  {
    id: "fit-m21-pull",
    title: "Cable pull about 7 (short) or 14 (long); lever and caliper within 2",
    ...practice,
    where: "M21; the 2 is ours",
  },
  {
    id: "fit-fluid-family",
    title: "One fluid family, one hose fitting, one piston family from lever to caliper",
    ...practice,
    where: "M21",
  },
  {
    id: "fit-bb-threads",
    title:
      "Bottom bracket threads 1.37 x 24 (34.8, right side left-hand), 36 x 24 (both right-hand), 35 x 1 (either); shells 68, 70, 73",
    kind: "page",
    where: "glossary and crib pages; hands from memory",
    mark: "read",
  },
  {
    id: "fit-bb-practice",
    title: "Shell and bottom bracket within 0.5 in width; two spacers of 2.5 for cups made for 73 in a 68 shell",
    ...practice,
  },
  {
    id: "fit-taper-practice",
    title: "Square tapers have 2 degree sides but two lengths of end; arm and spindle of one system",
    kind: "common practice",
    mark: "memory",
  },
  {
    id: "fit-bolt-circles",
    title: "Bolt circles and their smallest rings: 130/38, 110/34, 104/32, 94/29, 74/24, 64/22",
    kind: "page",
    where: "crib sheet; 110/33 and 104/30 common practice",
    mark: "read",
  },
  { id: "fit-tooth-widths", title: "Teeth 2.1 wide for 3/32 and 3.0 for 1/8", ...practice },
  { id: "fit-dimple", title: "Dimple at most 2 deep, once, in bare plain steel, 30 from a joint", ...practice },
  {
    id: "fit-post-sizes",
    title: "Posts from 25.0 to 27.2 by 0.2, and 28.6, 30.9, 31.6; slide fit 0.05 to 0.1; shims 0.4 to 4",
    ...practice,
  },
  {
    id: "fit-remedy-practice-drive",
    title: "Hours, risk and side effects of the remedies of J19 to J43",
    ...practice,
    where: "hours ± 50 %",
  },
];
