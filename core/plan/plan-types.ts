/**
 * What does a build plan consist of? Operations with needs, waits and gates, a shop with opening days, evidence that
 * people entered, deliveries; and what comes back.
 */
import type { SafetyLevel } from "../quantity/index.js";

/** Work that cannot be taken back. */
export const IRREVERSIBLE_KINDS = ["bend", "heat", "drill", "cut", "paint"] as const;
export type IrreversibleKind = (typeof IRREVERSIBLE_KINDS)[number];

export interface Operation {
  readonly id: string;
  readonly what: string;
  /** Hands-on hours, 0 or more. */
  readonly handsOnH: number;
  /** Days of 24 hours from its end before anything that follows may start. */
  readonly waitDays: number;
  /** Words for abilities the shop must have; see `readNeed`. */
  readonly needs: readonly string[];
  readonly after: readonly string[];
  /** True: this is the dry fit, and a person must say that it passed. */
  readonly gate?: boolean;
  /** Stated by the builder; "no" overrules what its needs or words suggest. */
  readonly irreversible?: IrreversibleKind | "no";
  /** The session for which the builder means it, the first is 1; left out: wherever it falls. */
  readonly session?: number;
  /** True: the builder would accept doing it after the deadline (a clear coat, lights). */
  readonly mayComeLater?: boolean;
}

/** What a person typed to open a gate or to accept a risk; the plan never makes one up. */
export interface Evidence {
  readonly operation: string;
  readonly by: string;
  /** As typed, usually YYYY-MM-DD. */
  readonly on: string;
  readonly what: string;
}

export const WEEK_DAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] as const;
export type WeekDay = (typeof WEEK_DAYS)[number];

export interface WeeklyShop {
  readonly kind: "weekly";
  readonly sessionH: number;
  readonly openDays: readonly WeekDay[];
  /** Ceiling; fewer hours than the open days give means that only the first of them in the week are used. */
  readonly hoursPerWeek: number;
  /** First session; the first open day in the list where left out. */
  readonly startDay?: WeekDay;
  readonly capabilities: readonly string[];
  readonly missing: readonly string[];
}

export interface ListedShop {
  readonly kind: "listed";
  readonly sessionH: number;
  /** Day numbers, the first session's first. */
  readonly days: readonly number[];
  readonly capabilities: readonly string[];
  readonly missing: readonly string[];
}

export type Shop = WeeklyShop | ListedShop;

export interface Delivery {
  readonly part: string;
  /** Days of 24 hours from order to arrival. */
  readonly deliveryDays: number;
  /** Operation that cannot start without it. */
  readonly neededBy: string;
}

export interface PlanInput {
  readonly operations: readonly Operation[];
  readonly shop: Shop;
  /** What a session is called here; "session" where left out. */
  readonly sessionWord?: string;
  readonly evidence?: readonly Evidence[];
  readonly deliveries?: readonly Delivery[];
  /** Days from the start of the first session. */
  readonly deadlineDays?: number;
  readonly hoursMax?: number;
  /** Day of the first session, YYYY-MM-DD; dates are given back only with it. */
  readonly startDate?: string;
}

export interface PlanFinding {
  readonly code: string;
  /** How much weight it has: a safety level, or plain advice. */
  readonly level: SafetyLevel | "advice";
  /** Operation or part it speaks of; "" for the whole plan. */
  readonly at: string;
  readonly message: string;
  /** What a person can do about it. */
  readonly wayOut: string;
}

export interface PlannedOperation {
  readonly id: string;
  readonly what: string;
  /** "1 of 2" where a piece longer than a session was cut, else "". */
  readonly piece: string;
  readonly handsOnH: number;
  /** First session = 1. */
  readonly session: number;
  /** Days from the day of the first session. */
  readonly day: number;
  readonly date: string | undefined;
  readonly hoursIntoSession: number;
  /** Clock hours from the start of the first session. */
  readonly startClockH: number;
  readonly endClockH: number;
  readonly waitDays: number;
  /** Days from the start of the first session when what follows may start. */
  readonly readyAgainDays: number;
  /** How many clock hours later it may start, in this order, without moving the finish. */
  readonly slackH: number;
  readonly critical: boolean;
  readonly irreversible: IrreversibleKind | undefined;
  readonly irreversibleFrom: "stated" | "its needs" | "its words" | undefined;
  readonly needs: readonly string[];
  readonly missing: readonly string[];
  readonly gate: boolean;
  /** True until every gate before it is opened (or, where none is before it, its risk is accepted by name). */
  readonly locked: boolean;
  /** Gates not yet opened, or the operation itself where its risk must be accepted by name. */
  readonly lockedBy: readonly string[];
}

export interface OrderBy {
  readonly part: string;
  readonly neededBy: string;
  readonly neededOnDay: number;
  /** Last day on which the order keeps this plan; below 0 it lies before the first session. */
  readonly orderByDay: number;
  readonly orderByDate: string | undefined;
  /** Days it may come later than that without moving the finish. */
  readonly slackDays: number;
}

export interface Length {
  readonly days: number;
  readonly sessions: number;
  readonly proven: boolean;
}

/** One way that was tried to get the work into the sessions there are. */
export interface IntoSessions {
  readonly what: string;
  readonly sessions: number;
  readonly proven: boolean;
  readonly fits: boolean;
}

export interface PlanValue {
  readonly operations: readonly PlannedOperation[];
  readonly handsOnH: number;
  readonly waitsDays: number;
  readonly criticalPathDays: number;
  readonly criticalOperations: readonly string[];
  readonly onePiece: Length;
  readonly cutAtClosing: Length;
  readonly deadlineDays: number | undefined;
  readonly meetsDeadline: boolean | undefined;
  readonly waysBack: readonly WayBack[];
  /** How many sessions there are in all; undefined where the shop stays open. */
  readonly sessionsListed: number | undefined;
  /** Days from the start of the first session to the end of the last one there is. */
  readonly lastSessionEndsDay: number | undefined;
  readonly sessionWord: string;
  /** Ways tried where the sessions do not suffice. */
  readonly intoSessions: readonly IntoSessions[];
  readonly orders: readonly OrderBy[];
  readonly findings: readonly PlanFinding[];
}

export interface WayBack {
  readonly what: string;
  readonly sessionH: number;
  readonly leftForLater: readonly string[];
  readonly days: number;
  /** True: it is certain that it takes no less. */
  readonly proven: boolean;
  readonly meetsDeadline: boolean;
}
