/**
 * What has somebody entered of a build that is not made yet? It is kept in this browser with each keystroke, so that a
 * reload, or a server that is away, loses nothing; it goes when the build is made.
 */
import { LENT_KINDS, type LentKind, NEW_BUILD_KEYS } from "@coldset/core/workshop";
import { create } from "zustand";
import { browserKeep, keptJson } from "./kept.js";

const NAME = "new-build";

interface Draft {
  readonly entries: Readonly<Record<string, string>>;
  readonly lent: Readonly<Partial<Record<LentKind, string>>>;
  readonly step: string;
}

const isRecord = (v: unknown): v is Record<string, unknown> => v !== null && typeof v === "object" && !Array.isArray(v);
const isDraft = (v: unknown): v is Draft =>
  isRecord(v) &&
  typeof v.step === "string" &&
  isRecord(v.entries) &&
  isRecord(v.lent) &&
  Object.values(v.entries).every((e) => typeof e === "string") &&
  Object.keys(v.entries).every((key) => NEW_BUILD_KEYS.includes(key)) &&
  Object.entries(v.lent).every(([k, e]) => LENT_KINDS.includes(k as LentKind) && typeof e === "string");

const EMPTY: Draft = { entries: {}, lent: {}, step: "name" };

interface NewBuildState extends Draft {
  readonly write: (key: string, text: string) => void;
  readonly lend: (kind: LentKind, id: string | undefined) => void;
  readonly goTo: (step: string) => void;
  readonly begin: () => void;
}

export const useNewBuild = create<NewBuildState>()((set, get) => {
  const keep = (draft: Draft) => {
    browserKeep.set(NAME, JSON.stringify({ entries: draft.entries, lent: draft.lent, step: draft.step }));
    set(draft);
  };
  const now = (): Draft => ({ entries: get().entries, lent: get().lent, step: get().step });
  return {
    ...keptJson(browserKeep, NAME, isDraft, EMPTY),
    write: (key, text) => keep({ ...now(), entries: { ...get().entries, [key]: text } }),
    lend: (kind, id) => {
      const { [kind]: _old, ...rest } = get().lent;
      keep({ ...now(), lent: id === undefined ? rest : { ...rest, [kind]: id } });
    },
    goTo: (step) => keep({ ...now(), step }),
    begin: () => {
      browserKeep.set(NAME, undefined);
      set(EMPTY);
    },
  };
});

/** Is there something entered that would be lost? */
export const hasEntries = (entries: Readonly<Record<string, string>>) =>
  Object.values(entries).some((e) => e.trim() !== "" && e.trim() !== "?");
