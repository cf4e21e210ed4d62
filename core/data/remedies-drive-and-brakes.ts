/** Which remedies make the joints J19 to J24, J28, J29, J31 to J37, J42 and J43 fit? Rows of the trade's tables; hours ± 50 %. */
import type { RemedyRow } from "./remedy-row.js";

const sources = ["fit-remedy-practice-drive", "fit-demo-money"] as const;
const hand = { needs: ["hand"], reversible: true, risk: "L", sources } as const;
const swap = { ...hand, replacesPart: true } as const;

export const ROTOR_REMEDIES = {
  spline_adapter: {
    id: "spline-to-six-bolt-adapter",
    joint: "J19",
    what: "Put a splined to six-bolt adapter on the {end} hub",
    ...hand,
    hours: 0.2,
    sideEffects: [
      {
        port: "rotor.plane",
        joints: ["J20"],
        words: "The adapter may shift the rotor sideways: measure its plane again.",
      },
    ],
  },
  other_rotor: {
    id: "rotor-for-the-hub",
    joint: "J19",
    what: "Take a {mount} rotor for the {end} hub",
    ...swap,
    hours: 0.2,
  },
  disc_wheel: {
    id: "wheel-with-rotor-mount",
    joint: "J19",
    what: "Take a {end} wheel with a hub made for a rotor",
    ...swap,
    hours: 0.3,
  },
  home_adapter: {
    id: "home-made-rotor-adapter",
    joint: "J19",
    what: "Make an adapter that holds a rotor on this {end} hub",
    needs: ["lathe", "mill"],
    reversible: true,
    hours: 3,
    risk: "H",
    refused: "A hub without a rotor mount is not made for the torque of a disc; no home-made adapter.",
    sources,
  },
  adapter_shims: {
    id: "shim-caliper-inboard",
    joint: "J20",
    what: "Put {shim} of washers (0.2 to 2.5) between tab and adapter, on both bolts alike",
    ...hand,
    hours: 0.3,
  },
  rotor_spacer: {
    id: "space-rotor-outboard",
    joint: "J20",
    what: "Put a {shim} spacer (2 at most) under the six-bolt rotor, with longer bolts",
    ...hand,
    hours: 0.3,
    risk: "M",
    sideEffects: [
      {
        port: "rotor_rear.plane",
        joints: ["J20"],
        words: "The rotor moves out by {shim}: look at its gap to the stay and the dropout.",
      },
    ],
  },
  face_tab: {
    id: "face-tab",
    joint: "J20",
    what: "Face {shim} off the tab",
    needs: ["mill"],
    reversible: false,
    hours: 1,
    risk: "L",
    sideEffects: [
      { port: "frame.tab_thickness", joints: ["J23", "J52"], words: "The tab becomes {shim} thinner: 6 is the least." },
    ],
    sources,
  },
} as const satisfies Record<string, RemedyRow>;

export const AXLE_REMEDIES = {
  torque_arm: {
    id: "torque-arm",
    joint: "J21",
    what: "Take a torque arm that clamps to the chainstay, with plain washers",
    ...hand,
    hours: 0.5,
    risk: "M",
  },
  suited_washers: {
    id: "washers-for-the-slot",
    joint: "J21",
    what: "Take non-turn washers for this axle and this slot",
    ...swap,
    hours: 0.2,
  },
  longer_axle_hub: {
    id: "hub-with-longer-axle",
    joint: "J21",
    what: "Take a hub whose axle is {needed} or longer",
    ...swap,
    hours: 0.3,
  },
} as const satisfies Record<string, RemedyRow>;

export const MOUNT_REMEDIES = {
  adapter_in_bin: {
    id: "adapter-from-the-bin",
    joint: "J22",
    what: "Bolt on {part}: {from} to {to}, {rotor} rotor at the {end}",
    ...hand,
    hours: 0.2,
  },
  adapter: {
    id: "adapter-for-the-rotor",
    joint: "J22",
    what: "Get an adapter {from} to {to} for a {rotor} rotor at the {end}",
    ...hand,
    hours: 0.2,
  },
  suited_rotor: {
    id: "rotor-for-the-mount",
    joint: "J22",
    what: "Take a {rotor} rotor at the {end}",
    ...swap,
    hours: 0.2,
  },
  suited_caliper: {
    id: "caliper-for-the-mount",
    joint: "J22",
    what: "Take a {end} caliper for the {from}",
    ...swap,
    hours: 0.3,
  },
} as const satisfies Record<string, RemedyRow>;

/** What a welded or brazed tab changes elsewhere. */
const tabEffects = [
  {
    port: "frame.rear_tab",
    joints: ["J20", "J22"],
    words: "The frame has a 51 tab: face 67.5 from the centre plane, measured when tacked and again when cold.",
  },
  {
    port: "frame.paint",
    joints: ["J52"],
    words: "Paint is lost at dropout and stays; the tab's face stays bare. Align and dye-check again.",
  },
] as const;

export const TAB_REMEDIES = {
  weld_tab: {
    id: "weld-tab-and-brace",
    joint: "J23",
    what: "Mill a 51 tab, weld it to the dropout plate between the stays, with a brace",
    needs: ["mill", "weld"],
    reversible: false,
    hours: 6.5,
    risk: "M",
    rules: ["S6"],
    sideEffects: tabEffects,
    sources,
  },
  braze_tab: {
    id: "braze-tab-and-brace",
    joint: "J23",
    what: "Mill a 51 tab, braze it to the dropout plate between the stays, with a brace",
    needs: ["mill", "braze"],
    reversible: false,
    hours: 6.5,
    risk: "M",
    rules: ["S6"],
    sideEffects: tabEffects,
    sources,
  },
  clamped_tab: {
    id: "dropout-clamped-tab",
    joint: "J23",
    what: "Clamp a bolt-on tab to the dropout; only with the path of the torque into the stay proven",
    needs: ["hand"],
    reversible: true,
    hours: 1,
    risk: "H",
    rules: ["S6"],
    sideEffects: [
      {
        port: "frame.rear_tab",
        joints: ["J20", "J21", "J22"],
        words: "The axle clamps the tab too: nut and washer room shrink by its thickness.",
      },
    ],
    sources,
  },
  rim_brake: { id: "leave-rim-brake", joint: "J23", what: "Leave the rim brake at the rear", ...swap, hours: 0 },
  disc_fork: {
    id: "fork-with-disc-mount",
    joint: "J24",
    what: "Take a fork made and rated for a disc",
    ...swap,
    hours: 2,
  },
  add_fork_tab: {
    id: "add-tab-to-fork",
    joint: "J24",
    what: "Add a tab to this fork",
    needs: ["weld"],
    reversible: false,
    hours: 4,
    risk: "H",
    refused: "Blade root, crown and steerer were not built for a disc; no tab is added.",
    rules: ["S5"],
    sources,
  },
} as const satisfies Record<string, RemedyRow>;

export const LEVER_REMEDIES = {
  pull_pulley: {
    id: "pull-ratio-pulley",
    joint: "J28",
    what: "Put a pulley in the cable that turns {lever} of pull into {caliper}",
    ...hand,
    hours: 0.3,
    risk: "M",
  },
  suited_lever: {
    id: "lever-for-the-caliper",
    joint: "J28",
    what: "Take levers with {caliper} of pull",
    ...swap,
    hours: 0.3,
  },
  matched_set: {
    id: "levers-and-calipers-of-one-kind",
    joint: "J28",
    what: "Take levers and calipers that both work by cable or both by fluid",
    ...swap,
    hours: 0.5,
  },
  hose_ends: {
    id: "hose-ends-for-both",
    joint: "J29",
    what: "Make up the {end} hose with barbs and olives for both fittings",
    ...hand,
    hours: 0.5,
  },
  one_family: {
    id: "caliper-of-the-levers-family",
    joint: "J29",
    what: "Take a {end} caliper for {fluid} fluid and the lever's fitting",
    ...swap,
    hours: 0.7,
  },
  suited_hose: {
    id: "hose-of-the-family",
    joint: "J29",
    what: "Take hoses for {fluid} fluid with the lever's fitting",
    ...swap,
    hours: 0.5,
  },
  mix_fluids: {
    id: "fill-with-the-other-fluid",
    joint: "J29",
    what: "Fill both with one of the two fluids",
    ...hand,
    hours: 0.5,
    risk: "H",
    refused: "Seals made for one fluid swell or shrink in the other; the brake is lost.",
    rules: ["S9"],
  },
} as const satisfies Record<string, RemedyRow>;

export const BB_REMEDIES = {
  shell_spacers: {
    id: "cup-spacers-for-shell",
    joint: "J31",
    what: "Put spacers under the cups, {each} on each side",
    ...hand,
    hours: 0.2,
  },
  ream_35_36: {
    id: "retap-35-to-36",
    joint: "J31",
    what: "Ream and tap the shell from 35 x 1 to 36 x 24",
    needs: ["tap"],
    reversible: false,
    hours: 1,
    risk: "M",
    replacesPart: true,
    sources,
  },
  sleeve_bb: {
    id: "threadless-sleeve-bb",
    joint: "J31",
    what: "Take a threadless bottom bracket that clamps in the shell",
    ...swap,
    hours: 1,
    risk: "M",
  },
  other_bb: {
    id: "bb-for-the-shell",
    joint: "J31",
    what: "Take a bottom bracket {thread} for a {width} shell",
    ...swap,
    hours: 0.5,
  },
  other_spindle: {
    id: "spindle-for-the-crank",
    joint: "J32",
    what: "Take a bottom bracket with a {system} spindle",
    ...swap,
    hours: 0.5,
  },
} as const satisfies Record<string, RemedyRow>;

export const CRANK_REMEDIES = {
  longer_spindle_arm: {
    id: "longer-spindle-for-arm",
    joint: "J33",
    what: "Take a spindle {more} longer{bin}",
    ...swap,
    hours: 0.5,
  },
  other_arm: {
    id: "wider-arm",
    joint: "J33",
    what: "Take a crank that stands {half} further out each side",
    ...swap,
    hours: 0.5,
  },
  dimple_arm: {
    id: "dimple-stay-for-arm",
    joint: "J33",
    what: "Press a dimple {deep} deep into the chainstay {at} from the BB axis, cold, on bare steel",
    needs: ["cold_set"],
    reversible: false,
    hours: 1,
    risk: "M",
    sideEffects: [
      { port: "frame.paint", joints: ["J52"], words: "Paint is lost there; the stay is never dimpled again." },
    ],
    sources,
  },
  file_arm: {
    id: "file-arm",
    joint: "J33",
    what: "File the arm",
    ...hand,
    reversible: false,
    hours: 0.3,
    risk: "H",
    refused: "A filed arm cracks where it was filed.",
  },
  cup_spacer: {
    id: "right-cup-spacer",
    joint: "J34",
    what: "Put a {spacer} spacer under the right cup",
    ...hand,
    hours: 0.3,
    sideEffects: [
      {
        port: "bb.right_spacer",
        to: "right_total",
        joints: ["J31", "J33", "J34", "J36"],
        words:
          "Ring and right arm move out by {spacer}, the left arm in by {spacer}: the left gap becomes {left_gap}, the chainline {chainline}.",
      },
    ],
  },
  smaller_ring: { id: "smaller-ring", joint: "J34", what: "Take a smaller ring{bin}", ...swap, hours: 0.3 },
  longer_spindle_ring: {
    id: "longer-spindle-for-ring",
    joint: "J34",
    what: "Take a spindle {more} longer{bin}",
    ...swap,
    hours: 0.5,
  },
  dimple_ring: {
    id: "dimple-stay-for-ring",
    joint: "J34",
    what: "Press a dimple {deep} deep into the chainstay {at} from the BB axis, cold, on bare steel",
    needs: ["cold_set"],
    reversible: false,
    hours: 1,
    risk: "M",
    sideEffects: [
      { port: "frame.paint", joints: ["J52"], words: "Paint is lost there; the stay is never dimpled again." },
    ],
    sources,
  },
  ring_for_spider: {
    id: "ring-for-the-spider",
    joint: "J35",
    what: "Take a ring with a {circle} bolt circle and {least} teeth or more",
    ...swap,
    hours: 0.3,
  },
  other_spider: {
    id: "other-spider",
    joint: "J35",
    what: "Take a spider or crank with a {ring_circle} bolt circle",
    ...swap,
    hours: 0.5,
  },
  chainline_spindle: {
    id: "spindle-for-chainline",
    joint: "J36",
    what: "Take a spindle {change}{bin}",
    ...swap,
    hours: 0.5,
  },
  chainline_spacer: {
    id: "right-cup-spacer-for-chainline",
    joint: "J36",
    what: "Put a {spacer} spacer under the right cup",
    ...hand,
    hours: 0.3,
    sideEffects: [
      {
        port: "bb.right_spacer",
        to: "right_total",
        joints: ["J31", "J33", "J34", "J36"],
        words: "The ring moves out by {spacer}; the left arm comes in by as much.",
      },
    ],
  },
  chainline_respace: {
    id: "move-cogs-by-axle-spacers",
    joint: "J36",
    what: "Move {spacer} of spacers from one side of the rear axle to the other and re-dish",
    ...hand,
    hours: 1.5,
    sideEffects: [
      {
        port: "wheel_rear.rotor_plane",
        joints: ["J20"],
        words: "A rotor moves with the hub: measure its plane again.",
      },
    ],
  },
  suited_chain: {
    id: "chain-for-the-teeth",
    joint: "J37",
    what: "Take a chain {inner} wide inside",
    ...swap,
    hours: 0.3,
  },
  suited_teeth: {
    id: "teeth-for-the-chain",
    joint: "J37",
    what: "Take ring and sprocket for a chain {inner} wide inside",
    ...swap,
    hours: 0.5,
  },
} as const satisfies Record<string, RemedyRow>;

export const CHAIN_REMEDIES = {
  tensioner: { id: "tensioner-on-hanger", joint: "J42", what: "Fit the chain tensioner {part}", ...hand, hours: 0.3 },
  other_pair: {
    id: "other-ring-and-sprocket",
    joint: "J42",
    what: "Take ring and sprocket {pair}",
    ...swap,
    hours: 0.3,
  },
  half_link: {
    id: "half-link",
    joint: "J42",
    what: "Put a half link of the chain's own width in: {links} links",
    ...hand,
    hours: 0.2,
    risk: "M",
  },
  move_dropout: {
    id: "move-dropout",
    joint: "J42",
    what: "Move the dropout",
    needs: ["weld"],
    reversible: false,
    hours: 6,
    risk: "H",
    refused: "A dropout is not moved for a chain; take a tensioner.",
    sources,
  },
  ream_post: {
    id: "ream-seat-tube",
    joint: "J43",
    what: "Ream the seat tube from {bore} to {post}",
    needs: ["ream_face"],
    reversible: false,
    hours: 0.3,
    risk: "L",
    sideEffects: [
      {
        port: "frame.seat_tube_bore",
        to: "post",
        joints: ["J43"],
        words: "The bore becomes {post}: the old post no longer holds.",
      },
    ],
    sources,
  },
  post_shim: {
    id: "post-shim",
    joint: "J43",
    what: "Put a split brass or steel shim from {post} to {bore} round the post",
    ...hand,
    hours: 0.1,
  },
  suited_post: {
    id: "post-of-the-size",
    joint: "J43",
    what: "Take a post of {bore}, {length} or longer",
    ...swap,
    hours: 0.2,
  },
} as const satisfies Record<string, RemedyRow>;

export const driveAndBrakesRemedies: readonly RemedyRow[] = [
  ...Object.values(ROTOR_REMEDIES),
  ...Object.values(AXLE_REMEDIES),
  ...Object.values(MOUNT_REMEDIES),
  ...Object.values(TAB_REMEDIES),
  ...Object.values(LEVER_REMEDIES),
  ...Object.values(BB_REMEDIES),
  ...Object.values(CRANK_REMEDIES),
  ...Object.values(CHAIN_REMEDIES),
];
