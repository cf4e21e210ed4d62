/**
 * What does the page know and how does an edit go through it? The documents, the reckoning made from them in this
 * browser, what moved, and what waits to be saved. An edit is answered first and saved after.
 */
import { type Reckoning, reckon } from "@coldset/core/questions";
import {
  type AnyDoc,
  type EditPath,
  editPlain,
  type PlainRefusal,
  readPlain,
  resolveBuild,
} from "@coldset/core/workshop";
import { create } from "zustand";
import { loadWorkshop, type StoredPlain, sendEdit } from "./api.js";
import { browserKeep, keptJson } from "./kept.js";
import { type Entry, type QueueState, SaveQueue, valueAt } from "./save-queue.js";

export interface OpenDoc extends StoredPlain {
  readonly doc: AnyDoc;
}

/** A text that a person typed and that cannot be read. It stays as typed. */
export interface Draft {
  readonly text: string;
  readonly messages: readonly string[];
}

export interface Edit {
  readonly kind: string;
  readonly id: string;
  readonly path: EditPath;
  readonly value: unknown;
  readonly words: string;
}

export type Status = "loading" | "ready" | "missing" | "unreachable" | "failed" | "unreadable";

export interface Workshop {
  readonly buildId: string;
  readonly status: Status;
  readonly problems: readonly string[];
  readonly docs: readonly OpenDoc[];
  readonly reckoning?: Reckoning;
  /** The reckoning before the last edit, and the edit. */
  readonly last?: { readonly before: Reckoning; readonly edit: Edit; readonly was: unknown };
  /** Edits that can be taken back, the newest last. */
  readonly made: readonly { readonly edit: Edit; readonly was: unknown }[];
  readonly drafts: Readonly<Record<string, Draft>>;
  readonly queue: QueueState;
  /** Said aloud to somebody who does not see the page. */
  readonly said: string;
  readonly open: (buildId: string) => Promise<void>;
  /** `more`: the same field is still being written in, so that it counts as one edit. */
  readonly edit: (edit: Edit, more?: boolean) => boolean;
  readonly takeBack: () => void;
  readonly settle: (keepMine: boolean) => void;
  readonly sendAgain: (index: number) => void;
  readonly say: (words: string) => void;
}

const EMPTY_QUEUE: QueueState = { waiting: [], sending: false, notSaved: [] };
const isDrafts = (v: unknown): v is Readonly<Record<string, Draft>> =>
  v !== null &&
  typeof v === "object" &&
  Object.values(v).every((d) => d !== null && typeof d === "object" && "text" in d);

export const draftKey = (kind: string, id: string, path: EditPath) => `${kind}/${id}/${path.join(".")}`;

let queue: SaveQueue | undefined;

/** How often an answer is rehearsed after loading. */
const REHEARSALS = 40;

export const useWorkshop = create<Workshop>()((set, get) => {
  const read = (stored: readonly StoredPlain[]): { docs: OpenDoc[]; problems: string[] } => {
    const docs: OpenDoc[] = [];
    const problems: string[] = [];
    const old = new Map(get().docs.map((d) => [`${d.kind}/${d.id}`, d]));
    for (const s of stored) {
      const was = old.get(`${s.kind}/${s.id}`);
      if (was !== undefined && JSON.stringify(was.plain) === JSON.stringify(s.plain)) {
        docs.push({ ...was, revision: s.revision });
        continue;
      }
      const one = readPlain(s.plain);
      if (one.kind === "read") docs.push({ ...s, doc: one.doc });
      else problems.push(...one.refusals.map((r) => `${s.kind} ${s.id}: ${refusalText(r)}`));
    }
    return { docs, problems };
  };
  const reckoned = (docs: readonly OpenDoc[], before?: Reckoning): { reckoning?: Reckoning; problems?: string[] } => {
    try {
      const resolved = resolveBuild(
        docs.map((d) => d.doc),
        get().buildId,
      );
      if (resolved.kind === "refused") return { problems: resolved.refusals.map((r) => r.message) };
      return { reckoning: reckon(resolved.resolved, before) };
    } catch (cause) {
      // A fault of ours must not cost anybody what they typed: it is shown beside the text, which stays.
      const word = cause instanceof Error ? cause.message : String(cause);
      return { problems: [`A fault of ours, not of what you entered (${word}). Your text is kept as you wrote it.`] };
    }
  };
  /** Entries that wait are laid over what the server has, so that the page shows what the person meant. */
  const withWaiting = (docs: readonly OpenDoc[], waiting: readonly Entry[]): readonly OpenDoc[] => {
    let out = docs;
    for (const e of waiting) {
      out = out.map((d) => {
        if (d.kind !== e.kind || d.id !== e.id) return d;
        const edited = editPlain(d.plain, e.path, e.value);
        return edited.kind === "read" ? { ...d, plain: edited.plain, doc: edited.doc } : d;
      });
    }
    return out;
  };
  const takeOver = (stored: readonly StoredPlain[]) => {
    const first = get().status === "loading";
    const { docs, problems } = read(stored);
    const laid = withWaiting(docs, queue?.now.waiting ?? []);
    const result = reckoned(laid, get().reckoning);
    if (problems.length > 0 || result.reckoning === undefined)
      set({ docs: laid, problems: [...problems, ...(result.problems ?? [])], status: "unreadable" });
    else set({ docs: laid, problems: [], reckoning: result.reckoning, status: "ready" });
    if (first) rehearse(REHEARSALS);
  };
  /**
   * The first keystrokes would meet code that the browser has not yet compiled, and wait some 20 ms each. In free moments
   * after loading the same answer is worked out a few times and thrown away, so that they find it ready.
   */
  const rehearse = (left: number) => {
    if (left <= 0 || typeof requestIdleCallback === "undefined") return;
    requestIdleCallback(() => {
      const { reckoning } = get();
      if (reckoning === undefined) return;
      reckoned(
        get().docs.map((d) => (d.doc.kind === "donor" ? { ...d, doc: { ...d.doc } } : d)),
        reckoning,
      );
      rehearse(left - 1);
    });
  };
  const keepDrafts = (drafts: Readonly<Record<string, Draft>>) => {
    browserKeep.set(`drafts.${get().buildId}`, Object.keys(drafts).length === 0 ? undefined : JSON.stringify(drafts));
    return drafts;
  };

  return {
    buildId: "",
    status: "loading",
    problems: [],
    docs: [],
    made: [],
    drafts: {},
    queue: EMPTY_QUEUE,
    said: "",

    open: async (buildId) => {
      if (get().buildId === buildId && get().status === "ready") return;
      const { reckoning: _old, last: _last, ...rest } = get();
      set({ ...rest, buildId, status: "loading", docs: [], made: [], problems: [], said: "" }, true);
      const loaded = await loadWorkshop(buildId);
      if (get().buildId !== buildId) return;
      if (loaded.kind !== "loaded") {
        set({
          status: loaded.kind,
          problems: loaded.kind === "failed" ? [loaded.reference] : [],
        });
        return;
      }
      queue = new SaveQueue(`waiting.${buildId}`, {
        send: (edit) => sendEdit(edit),
        reload: async () => {
          const again = await loadWorkshop(buildId);
          return again.kind === "loaded" ? again.value : undefined;
        },
        others: takeOver,
        changed: (state) => set({ queue: state }),
        later: (run, ms) => void setTimeout(run, ms),
        keep: browserKeep,
      });
      set({ queue: queue.now, drafts: keptJson(browserKeep, `drafts.${buildId}`, isDrafts, {}) });
      takeOver(loaded.value);
      queue.start();
    },

    edit: (edit, more = false) => {
      const state = get();
      const doc = state.docs.find((d) => d.kind === edit.kind && d.id === edit.id);
      if (doc === undefined) return false;
      const key = draftKey(edit.kind, edit.id, edit.path);
      const from = performance.now();
      const result = editPlain(doc.plain, edit.path, edit.value);
      if (result.kind === "refused") {
        const draft = { text: String(edit.value ?? ""), messages: result.refusals.map((r) => r.message) };
        set({ drafts: keepDrafts({ ...state.drafts, [key]: draft }) });
        return false;
      }
      const docs = state.docs.map((d) => (d === doc ? { ...d, plain: result.plain, doc: result.doc } : d));
      const after = reckoned(docs, state.reckoning);
      // For the bench: from the keystroke to the answered board, before anything is written to the page.
      performance.clearMeasures("answered");
      performance.measure("answered", { start: from, end: performance.now() });
      if (after.reckoning === undefined) {
        const draft = { text: String(edit.value ?? ""), messages: after.problems ?? [] };
        set({ drafts: keepDrafts({ ...state.drafts, [key]: draft }) });
        return false;
      }
      const was = valueAt(doc.plain, edit.path);
      const lastMade = state.made.at(-1);
      const goesOn =
        more && lastMade !== undefined && draftKey(lastMade.edit.kind, lastMade.edit.id, lastMade.edit.path) === key;
      const first = goesOn ? lastMade.was : was;
      const before = goesOn && state.last !== undefined ? state.last.before : state.reckoning;
      const { [key]: _read, ...drafts } = state.drafts;
      set({
        docs,
        said: "",
        reckoning: after.reckoning,
        ...(before === undefined ? {} : { last: { before, edit, was: first } }),
        made: [...(goesOn ? state.made.slice(0, -1) : state.made), { edit, was: first }].slice(-200),
        drafts: key in state.drafts ? keepDrafts(drafts) : state.drafts,
      });
      queue?.add({ ...edit, before: was, base: doc.revision });
      return true;
    },

    takeBack: () => {
      const { made } = get();
      const top = made.at(-1);
      if (top === undefined) return;
      // What was not there before is taken out again.
      if (!get().edit({ ...top.edit, value: top.was })) return;
      const { last: _last, ...rest } = get();
      set({ ...rest, made: made.slice(0, -1), said: `Taken back: ${top.edit.words}.` }, true);
    },

    settle: (keepMine) => {
      const trouble = get().queue.trouble;
      queue?.settle(keepMine);
      if (!keepMine && trouble?.kind === "conflict") {
        void loadWorkshop(get().buildId).then((loaded) => {
          if (loaded.kind === "loaded") takeOver(loaded.value);
        });
      }
    },

    sendAgain: (index) => {
      const row = get().queue.notSaved[index];
      queue?.forget(index);
      if (row !== undefined) queue?.add(row.entry);
    },

    say: (words) => set({ said: words }),
  };
});

export function refusalText(r: PlainRefusal): string {
  const path = r.path.map(String).join(".");
  return path === "" || r.message.startsWith(path) ? r.message : `${path}: ${r.message}`;
}
