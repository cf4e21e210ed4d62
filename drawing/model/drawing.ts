import type { HatchName, Ink, LetterRole, LineRole } from "./roles.js";

/**
 * What is a drawing? Plain data: a window on the world (mm, x to the right, y up) and the things in it, each with a role.
 * No styling stands here; roles.ts says how a role looks. SVG and PDF are made from the same data.
 */
export interface Drawing {
  /** The sentence that gives the drawing's answer to somebody who cannot see it. */
  readonly label: string;
  /** The window in world mm; (xMm, yMm) is its lower left corner. */
  readonly view: View;
  /** Width on paper, mm; the height follows from the window. Equal to view.widthMm for a template at 1:1. */
  readonly widthMm: number;
  /** Width on a screen, px, for which text and offsets were chosen. */
  readonly nominalWidthPx: number;
  readonly items: readonly Item[];
}

export interface View {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

export type Fill = Ink | "none";

/** One piece of a path, in world mm. An arc turns anticlockwise from startDeg to endDeg when endDeg is the greater. */
export type Segment =
  | { readonly op: "move"; readonly to: Point }
  | { readonly op: "line"; readonly to: Point }
  | { readonly op: "quad"; readonly control: Point; readonly to: Point }
  | { readonly op: "cubic"; readonly control1: Point; readonly control2: Point; readonly to: Point }
  | {
      readonly op: "arc";
      readonly centre: Point;
      readonly radiusMm: number;
      readonly startDeg: number;
      readonly endDeg: number;
    }
  | { readonly op: "close" };

export type Anchor = "start" | "middle" | "end";

export interface LineItem {
  readonly kind: "line";
  readonly role: LineRole;
  readonly from: Point;
  readonly to: Point;
}
export interface PolylineItem {
  readonly kind: "polyline";
  readonly role: LineRole;
  readonly points: readonly Point[];
  readonly closed?: boolean;
  readonly fill?: Fill;
}
export interface PathItem {
  readonly kind: "path";
  readonly role: LineRole;
  readonly path: readonly Segment[];
  readonly fill?: Fill;
}
export interface CircleItem {
  readonly kind: "circle";
  readonly role: LineRole;
  readonly centre: Point;
  readonly radiusMm: number;
  readonly fill?: Fill;
}
export interface ArcItem {
  readonly kind: "arc";
  readonly role: LineRole;
  readonly centre: Point;
  readonly radiusMm: number;
  readonly startDeg: number;
  readonly endDeg: number;
}
/** A tube seen from the side: two lines, its outside diameter apart, hiding what lies behind. */
export interface TubeItem {
  readonly kind: "tube";
  readonly role: LineRole;
  readonly path: readonly Segment[];
  readonly outsideMm: number;
  readonly roundEnds?: boolean;
}
/** A solid plate: bars, arrow heads, triangles. */
export interface SolidItem {
  readonly kind: "solid";
  readonly points: readonly Point[];
  readonly ink: Ink;
}
export interface TextItem {
  readonly kind: "text";
  readonly role: LetterRole;
  readonly at: Point;
  readonly text: string;
  readonly anchor?: Anchor;
  /** Degrees anticlockwise. */
  readonly rotateDeg?: number;
  /** Shift in px of the look, x right and y up, so that letters keep off lines at every scale. */
  readonly shiftPx?: readonly [number, number];
  /** A rim of paper behind the letters, for letters over lines. */
  readonly halo?: boolean;
}
/** A dimension with slash ends. offsetMm: the line lies this far to the left of from→to. */
export interface DimensionItem {
  readonly kind: "dimension";
  readonly role: LineRole;
  readonly from: Point;
  readonly to: Point;
  readonly offsetMm: number;
  readonly text: string;
  /** The value before, in pencil beside it. */
  readonly was?: string;
  /** "outside": beside the line's end at `to`, for short dimensions. */
  readonly place?: "middle" | "outside";
}
/** An angle: arc with a text beside it. */
export interface AngleItem {
  readonly kind: "angle";
  readonly centre: Point;
  readonly radiusMm: number;
  readonly startDeg: number;
  readonly endDeg: number;
  readonly text: string;
  readonly was?: string;
  readonly anchor?: Anchor;
  readonly textAt?: Point;
}
export interface HatchItem {
  readonly kind: "hatch";
  readonly hatch: HatchName;
  readonly path: readonly Segment[];
  readonly role?: LineRole;
}
/**
 * Uncertainty as stipple. "ellipse": a cloud in two directions, 95 % of the dots inside 2.45 sd. "strip": spread along x only,
 * 95 % inside 1.96 sd, evenly across heightMm. "ring": round a circle whose radius is uncertain, 95 % inside 1.96 sd of it.
 * The dots are fixed by the seed.
 */
export interface DustItem {
  readonly kind: "dust";
  readonly shape: "ellipse" | "strip" | "ring";
  readonly at: Point;
  readonly sdXMm: number;
  /** Second standard deviation of an ellipse, the full height of a strip, or the radius of a ring. */
  readonly sdYMm: number;
  readonly rotateDeg?: number;
  readonly seed: number;
  readonly dots?: number;
  readonly accent?: boolean;
}
export type BalloonOutline = "settled" | "work" | "measure" | "no" | "refuse" | "gate";
export interface BalloonItem {
  readonly kind: "balloon";
  readonly at: Point;
  readonly target?: Point;
  readonly text: string;
  readonly outline: BalloonOutline;
  /** A place on the same page, "#q1". Left out of the tab order: a balloon doubles the list. */
  readonly href?: string;
}
export interface ArrowItem {
  readonly kind: "arrow";
  readonly role: LineRole;
  readonly from: Point;
  readonly to: Point;
  readonly text?: string;
  readonly textRole?: LetterRole;
}
export interface GroupItem {
  readonly kind: "group";
  /** A short word for styling and for finding it again: "before", "after", "dust". Letters and hyphens. */
  readonly name: string;
  readonly items: readonly Item[];
}

export type Item =
  | LineItem
  | PolylineItem
  | PathItem
  | CircleItem
  | ArcItem
  | TubeItem
  | SolidItem
  | TextItem
  | DimensionItem
  | AngleItem
  | HatchItem
  | DustItem
  | BalloonItem
  | ArrowItem
  | GroupItem;
