/** Which words may a document use for places, abilities and materials? One list, used by schema, page and command. */

/** What a shop can do. The same ability is one word everywhere. */
export const ABILITIES = [
  "hand",
  "press",
  "ream_face",
  "tap",
  "drill",
  "lathe",
  "mill",
  "braze",
  "weld",
  "cold_set",
  "spray",
] as const;
export type Ability = (typeof ABILITIES)[number];

/** Material class of the donor's tubes; unknown counts as heat-treated and thin until it is identified. */
export const TUBE_CLASSES = [
  "plain_steel",
  "plain_chromoly",
  "heat_treated",
  "air_hardening",
  "stainless",
  "aluminium",
  "titanium",
  "carbon",
  "magnesium",
  "unknown",
] as const;
export type TubeClass = (typeof TUBE_CLASSES)[number];

/** Places of a build; one part each (a pair counts as one part). */
export const PLACES = [
  "fork",
  "headset",
  "stem",
  "bar",
  "spacers",
  "lever",
  "shifter",
  "wheel_front",
  "wheel_rear",
  "tyre_front",
  "tyre_rear",
  "tube_front",
  "tube_rear",
  "caliper",
  "caliper_front",
  "caliper_rear",
  "rotor_front",
  "rotor_rear",
  "adapter_front",
  "adapter_rear",
  "hose",
  "cable",
  "bb",
  "crank",
  "ring",
  "sprocket",
  "chain",
  "tensioner",
  "washers",
  "guards",
  "rack",
  "post",
  "saddle",
  "light",
  "axle_kit",
  "wheels",
  "rims",
  "hub_front",
  "hub_rear",
  "spokes",
  "ring_inner",
  "cassette_spacer",
  "derailleur_front",
  "derailleur_rear",
  "child_seat",
  "stand",
] as const;
export type Place = (typeof PLACES)[number];
