/** What is known of the changes of a build and of the versions that people named, and what can be done with them? */
import type { Difference, EditPath } from "@coldset/core/workshop";
import type { StoreRefused } from "./workshop.js";

export type WhatChange = "edit" | "put" | "import" | "undo" | "redo" | "restore";

export interface ChangedDocument {
  readonly kind: string;
  readonly id: string;
  /** The revision that this change made. */
  readonly revision: number;
  /** The place that was edited; null where the whole text changed. */
  readonly path: EditPath | null;
  readonly difference: Difference;
}

export interface HistoryChange {
  /** Higher is later. */
  readonly change: number;
  readonly what: WhatChange;
  /** Name of the file that was put in, or of the version that was restored. */
  readonly words: string | null;
  /** Through which door it came; null where that was not kept. */
  readonly who: string | null;
  readonly at: string;
  /** undo and redo: the change that was taken back or put back. */
  readonly of: number | null;
  /** Is it in force now? A change that only brought in new documents always is. */
  readonly state: "stands" | "taken-back";
  /** Could be asked to be taken back; whether it can is found out then. */
  readonly canTakeBack: boolean;
  readonly documents: readonly ChangedDocument[];
}

export interface BuildHistory {
  readonly kind: "history";
  readonly build: string;
  /** Number of the newest change, 0 where there is none: what a person has seen when deciding. */
  readonly newest: number;
  /** The newest change that can be taken back, and the one that can be put back. */
  readonly undo: number | null;
  readonly redo: number | null;
  /** Newest first. */
  readonly changes: readonly HistoryChange[];
  /** Ask with this as `before` for older ones; null where there are none. */
  readonly older: number | null;
}

export interface HistoryPage {
  /** Only changes with a lower number. */
  readonly before?: number;
  /** 1 to 100. */
  readonly limit?: number;
}

/** Somebody changed the build after the person had looked; nothing was done. */
export interface MovedOn {
  readonly kind: "moved-on";
  readonly newest: number;
}

export interface WrittenDocument {
  readonly kind: string;
  readonly id: string;
  readonly revision: number;
  readonly difference: Difference;
}

export type Turned =
  | {
      readonly kind: "turned";
      readonly what: "undo" | "redo";
      /** Number of the change that this made. */
      readonly change: number;
      /** The change that was taken back or put back. */
      readonly of: number;
      readonly documents: readonly WrittenDocument[];
      /** It had arrived before, and this is what became of it then. */
      readonly repeated?: true;
    }
  | MovedOn
  | StoreRefused;

export interface NamedVersion {
  readonly name: string;
  readonly at: string;
  readonly who: string | null;
  readonly documents: readonly { readonly kind: string; readonly id: string; readonly revision: number }[];
}

export type VersionNamed = { readonly kind: "named"; readonly version: NamedVersion } | StoreRefused;

export type Versions = { readonly kind: "versions"; readonly versions: readonly NamedVersion[] } | StoreRefused;

/** Between two versions, or a version and how it stands now. */
export type VersionDifference =
  | {
      readonly kind: "difference";
      readonly from: string;
      readonly to: string;
      /** Only documents that differ. */
      readonly documents: readonly { readonly kind: string; readonly id: string; readonly difference: Difference }[];
      /** Number of the newest change when this was looked at. */
      readonly newest: number;
    }
  | StoreRefused;

export type Restored =
  | {
      readonly kind: "restored";
      /** null where nothing differed, so nothing was written. */
      readonly change: number | null;
      readonly documents: readonly WrittenDocument[];
    }
  | MovedOn
  | StoreRefused;

export interface WorkshopHistory {
  /** What happened to a build and the documents that it names, newest first. */
  readonly buildHistory: (build: string, page?: HistoryPage) => Promise<BuildHistory | StoreRefused>;
  /** Takes back the newest change that stands, or the one named. `turnId` given: once, however often it arrives. */
  readonly undo: (
    build: string,
    choice?: { readonly change?: number; readonly seen?: number; readonly turnId?: string },
  ) => Promise<Turned>;
  /** Puts back what was taken back last, as long as nothing new was entered since. */
  readonly redo: (build: string, choice?: { readonly seen?: number; readonly turnId?: string }) => Promise<Turned>;
  readonly versions: (build: string) => Promise<Versions>;
  /** Gives a name to how all documents of the build stand now. */
  readonly nameVersion: (build: string, name: string) => Promise<VersionNamed>;
  /** NOW_NAME stands for how it is now. */
  readonly versionDifference: (build: string, from: string, to: string) => Promise<VersionDifference>;
  readonly restoreVersion: (build: string, name: string, seen?: number) => Promise<Restored>;
  readonly restoreDocument: (
    kind: string,
    id: string,
    revision: number,
    expectedRevision?: number,
  ) => Promise<Restored | { readonly kind: "conflict"; readonly revision: number; readonly text: string }>;
}

/** Cannot be given as a name: it stands for how the build is now. */
export const NOW_NAME = "now";
