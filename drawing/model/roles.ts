/**
 * How heavy and in which colour is each kind of line, letter and hatch drawn? One table; nothing else holds such values.
 * Weights and sizes are in px of the screen look; each weight is 1.4 times the one before, and is a rank, never decoration.
 * Colours are names of the look's tokens; a screen takes the custom property of that name, print takes the value given here.
 */

/** Names of the look's colour tokens. */
export const INKS = ["ink", "ink-2", "pencil", "rule", "mark-line", "mark-text", "paper", "sheet", "on-ink"] as const;
export type Ink = (typeof INKS)[number];

/** What each token is on paper: black on white, the accent survives as a doubled line. */
export const PRINT_COLOUR: Readonly<Record<Ink, string>> = {
  ink: "#000",
  "ink-2": "#000",
  pencil: "#555",
  rule: "#999",
  "mark-line": "#000",
  "mark-text": "#000",
  paper: "#fff",
  sheet: "#fff",
  "on-ink": "#fff",
};

export interface LineStyle {
  readonly ink: Ink;
  readonly weightPx: number;
  /** Dash lengths in px; absent means a full line. */
  readonly dashPx?: readonly number[];
}

/** before: as it stands, pencil. after: as it will be, ink. cut: edge of a section. ornament: carries no meaning. */
export const LINE_ROLES = {
  before: { ink: "pencil", weightPx: 1.4 },
  after: { ink: "ink", weightPx: 2 },
  cut: { ink: "ink", weightPx: 2.8 },
  ground: { ink: "ink", weightPx: 4 },
  construction: { ink: "ink", weightPx: 1 },
  axis: { ink: "ink", weightPx: 1, dashPx: [12, 3, 2, 3] },
  dimension: { ink: "ink", weightPx: 1.4 },
  accent: { ink: "mark-line", weightPx: 2.8 },
  unknown: { ink: "ink", weightPx: 2, dashPx: [6, 4] },
  ornament: { ink: "rule", weightPx: 1 },
} as const satisfies Record<string, LineStyle>;
export type LineRole = keyof typeof LINE_ROLES;

export interface LetterStyle {
  readonly ink: Ink;
  readonly sizePx: number;
  readonly weight: 500 | 700;
}

export const LETTER_ROLES = {
  note: { ink: "ink-2", sizePx: 16, weight: 500 },
  body: { ink: "ink", sizePx: 18, weight: 500 },
  strong: { ink: "ink", sizePx: 18, weight: 700 },
  figure: { ink: "ink", sizePx: 22, weight: 700 },
  before: { ink: "pencil", sizePx: 16, weight: 500 },
  accent: { ink: "mark-text", sizePx: 18, weight: 700 },
  balloon: { ink: "ink", sizePx: 20, weight: 700 },
  plate: { ink: "on-ink", sizePx: 20, weight: 700 },
} as const satisfies Record<string, LetterStyle>;
export type LetterRole = keyof typeof LETTER_ROLES;

export interface HatchStyle {
  readonly pitchPx: number;
  readonly weightPx: number;
  /** Angles of the line families, degrees anticlockwise from level. Empty for dots. */
  readonly anglesDeg: readonly number[];
  /** Where lines stand inside one pitch, px. */
  readonly atPx: readonly number[];
}

/** One meaning each: short = no room; tight = less than 2 to spare; steel and rubber = cut; keep = what stays; ground. */
export const HATCHES = {
  short: { pitchPx: 6, weightPx: 2.2, anglesDeg: [45], atPx: [0] },
  tight: { pitchPx: 9, weightPx: 1, anglesDeg: [45], atPx: [0] },
  steel: { pitchPx: 9, weightPx: 1, anglesDeg: [45], atPx: [1, 4] },
  rubber: { pitchPx: 7, weightPx: 0.7, anglesDeg: [45, 135], atPx: [0] },
  keep: { pitchPx: 8, weightPx: 2, anglesDeg: [], atPx: [2, 6] },
  ground: { pitchPx: 10, weightPx: 1, anglesDeg: [45], atPx: [0] },
} as const satisfies Record<string, HatchStyle>;
export type HatchName = keyof typeof HATCHES;

/** Dots of the stipple, and half-length of a dimension's slash, and balloons, in px. */
export const DUST_DOT_PX = 2.1;
export const SLASH_PX = 4;
export const BALLOON_RADIUS_PX = 25;
/** Least letter on a screen inside a scaled drawing, and in print (10 pt), with the paper sizes of one look px. */
export const LEAST_LETTER_PX = 13.5;
export const LEAST_PRINT_LETTER_MM = (10 * 25.4) / 72;
export const PRINT_LETTER_MM_PER_PX = 0.2;
export const PRINT_WEIGHT_MM_PER_PX = 0.176;
export const HAZE_SCREEN = "var(--haze)";
