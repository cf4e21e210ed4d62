/** Where the rules of chain, chainline, clearances of the crank and cables come from. */
import type { SourceRow } from "./source-row.js";

export const driveSources: readonly SourceRow[] = [
  {
    id: "iso-606",
    title: "ISO 606, short-pitch roller chains; chain length in pitches from teeth and centre distance",
    kind: "standard",
    where: "formula as printed on engineering pages; the standard itself not re-read",
    mark: "memory",
  },
  {
    id: "drive-chain-length",
    title: "Centre distance of a tight chain, the handbook formula solved for the centre distance",
    kind: "our derivation",
    where: "docs/methods/chain-on-fixed-centres.md",
    mark: "derived",
  },
  {
    id: "drive-fixed-centres",
    title: "Slack of 0 to 0.8 mm in centre distance on fixed centres; 0.5 % of wear as the time to change",
    kind: "common practice",
    where: "method M26",
    mark: "common practice",
  },
  {
    id: "drive-chainline",
    title: "Chainline front and rear; 2 mm good, 4 mm acceptable with a derailleur, 1.5 mm with a hub gear",
    kind: "common practice",
    where: "method M27",
    mark: "common practice",
  },
  {
    id: "drive-arm-gap",
    title: "Arm and ring clearance from the chainstay: 4 mm wanted and 3 the least for the arm, 3 for the ring",
    kind: "common practice",
    where: "method M28",
    mark: "common practice",
  },
  {
    id: "drive-capacity",
    title: "Capacity of a rear derailleur as the sum of both spans of teeth",
    kind: "common practice",
    where: "method M24",
    mark: "common practice",
  },
  {
    id: "drive-development",
    title: "Development, the way in one turn of the crank (defined so in 16 CFR 1512, footnote)",
    kind: "standard",
    where: "16 CFR 1512.5",
    mark: "read",
  },
  {
    id: "drive-spread",
    title: "Set per side and turn of the dropout about the chainstay bridge",
    kind: "our derivation",
    where: "method M10",
    mark: "derived",
  },
  {
    id: "drive-dish",
    title: "The rim follows the middle between the locknuts",
    kind: "our derivation",
    where: "method M14",
    mark: "derived",
  },
  {
    id: "drive-cable-length",
    title: "Cable and hose as a line through its stops, with slack for steering and trimming",
    kind: "common practice",
    where: "method M37",
    mark: "common practice",
  },
  {
    id: "drive-chain-widths",
    title: "Inner and outer widths of bicycle chains, dimension pages of parts trade",
    kind: "page",
    mark: "read",
  },
  {
    id: "drive-chain-widths-memory",
    title: "Outer width of single-speed chains with standard pins",
    kind: "common practice",
    mark: "memory",
  },
];
