/**
 * How does an edit go through the page? It is answered first and saved after: the documents, the reckoning made from them
 * here, what moved, and what waits to be saved. All that it needs of the browser comes in from outside.
 */

import type { Reckoning } from "@coldset/core/questions";
import { say as sayText } from "@coldset/core/texts";
import { type EditPath, editPlain } from "@coldset/core/workshop";
import type { StoreApi, UseBoundStore } from "zustand";
import { create } from "zustand";
import type { Loaded, StoredPlain } from "./api.js";
import type { HandOverTools } from "./hand-over.js";
import { type Keep, keptJson } from "./kept.js";
import { changedPlaces, type OpenDoc, placeName, readDocs, withWaiting } from "./laid.js";
import { rowsOf, valueAt } from "./place.js";
import { EMPTY_QUEUE } from "./queue-types.js";
import type { reckonDocs } from "./reckon-docs.js";
import { refresher } from "./refresh.js";
import type { SaveQueue } from "./save-queue.js";
import { same } from "./three-way.js";
import { turning } from "./turning.js";
import { type Draft, draftKey, type Workshop } from "./workshop-types.js";

export interface WorkshopTools {
  readonly load: (buildId: string) => Promise<Loaded<readonly StoredPlain[]>>;
  readonly keepBuild: (buildId: string, docs: readonly StoredPlain[]) => Promise<void>;
  readonly keptBuild: (buildId: string) => Promise<readonly StoredPlain[] | undefined>;
  readonly keep: Keep;
  readonly reckon: typeof reckonDocs;
  readonly handOver: (tools: HandOverTools) => SaveQueue;
  readonly reached: (reached: boolean) => void;
  /** The workshop that answers here, as far as is known. */
  readonly workshop: () => string | undefined;
}

const isDrafts = (v: unknown): v is Readonly<Record<string, Draft>> =>
  v !== null &&
  typeof v === "object" &&
  Object.values(v).every((d) => d !== null && typeof d === "object" && "text" in d);

/** How often an answer is rehearsed after loading. */
const REHEARSALS = 40;

export function makeWorkshop(tools: WorkshopTools): UseBoundStore<StoreApi<Workshop>> {
  let queue: SaveQueue | undefined;
  /** The documents of the open build as the records have them, without what waits. */
  let base: readonly StoredPlain[] = [];
  /** Counts openings: only the newest one shows what it read. */
  let opening = 0;
  return create<Workshop>()((set, get) => {
    const reckoned = (docs: readonly OpenDoc[], before?: Reckoning) => tools.reckon(docs, get().buildId, before);
    /** Shows what the records say, with what waits laid over it. Whatever that moves was done elsewhere. */
    const lay = (stored: readonly StoredPlain[]) => {
      const { docs: old, status, reckoning, buildId } = get();
      base = stored;
      const { docs: read, problems } = readDocs(stored, old);
      const docs = withWaiting(read, queue?.now.waiting ?? []);
      const moved = status === "ready" ? changedPlaces(old, docs) : [];
      if (status === "ready" && moved.length === 0 && docs.length === old.length && problems.length === 0) {
        set({
          docs: docs.map((d, i) =>
            same(d.plain, old[i]?.plain) && old[i] !== undefined ? { ...old[i], revision: d.revision } : d,
          ),
        });
        return;
      }
      const result = reckoned(docs, reckoning);
      if (problems.length > 0 || result.reckoning === undefined) {
        set({ docs, problems: [...problems, ...(result.problems ?? [])], status: "unreadable" });
        return;
      }
      set({ docs, problems: [], reckoning: result.reckoning, status: "ready" });
      const [first] = moved;
      if (first !== undefined && reckoning !== undefined && get().buildId === buildId && !turning.on) {
        const words = elsewhereWords(moved.map((m) => m.path));
        const edit = { kind: first.kind, id: first.id, path: first.path, value: first.now, words };
        set({
          last: { before: reckoning, edit, was: first.was, elsewhere: true },
          said: sayText("web.make-workshop.changed-in-another-window", { words }),
        });
      }
      if (status === "loading") rehearse(REHEARSALS);
    };
    const load = async (buildId: string) => {
      const loaded = await tools.load(buildId);
      if (loaded.kind !== "missing") tools.reached(loaded.kind !== "unreachable");
      return loaded;
    };
    const fresh = refresher({
      openBuild: () => (get().buildId === "" || get().status === "loading" ? undefined : get().buildId),
      load,
      keep: tools.keepBuild,
      kept: async (buildId) => (get().status === "ready" ? tools.keptBuild(buildId) : undefined),
      show: (docs, asRead) => {
        if (asRead) queue?.standing(docs);
        lay(docs);
      },
    });
    const learn = (doc: StoredPlain) => {
      fresh.learned();
      if (!base.some((d) => d.kind === doc.kind && d.id === doc.id)) return;
      lay(base.map((d) => (d.kind === doc.kind && d.id === doc.id ? doc : d)));
    };
    /** Another workshop answers here: nothing of the one before is shown as if it were of this one. */
    const otherWorkshop = () => {
      base = [];
      const { buildId } = get();
      const { reckoning: _old, last: _last, ...rest } = get();
      set({ ...rest, status: "loading", docs: [], made: [], drafts: {}, problems: [], said: "" }, true);
      if (buildId !== "") void get().open(buildId);
    };
    const startQueue = () => {
      queue ??= tools.handOver({
        atHand: (kind, id) => base.find((d) => d.kind === kind && d.id === id),
        learned: learn,
        changed: (state) => set({ queue: state }),
        recordsChanged: (documents) => {
          // A build that was never opened on this device opens by itself once the server is there.
          if (documents === undefined && get().status === "unreachable") void get().open(get().buildId);
          const known = new Set(base.map((d) => `${d.kind}/${d.id}`));
          if (documents === undefined || documents.some((d) => known.has(d))) fresh.soon();
        },
        entriesChanged: fresh.soon,
        reached: tools.reached,
        otherWorkshop,
      });
      set({ queue: queue.now });
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
    const draftsName = (buildId: string) => {
      const workshop = tools.workshop();
      return workshop === undefined ? `drafts.${buildId}` : `drafts.${workshop}.${buildId}`;
    };
    const keptDrafts = (buildId: string) => {
      // Kept before the workshop was known by name.
      const [nameless, name] = [`drafts.${buildId}`, draftsName(buildId)];
      const text = tools.keep.get(nameless);
      if (text !== undefined && name !== nameless && (tools.keep.get(name) !== undefined || tools.keep.set(name, text)))
        tools.keep.set(nameless, undefined);
      return keptJson(tools.keep, name, isDrafts, {});
    };
    const keepDrafts = (drafts: Readonly<Record<string, Draft>>) => {
      const text = Object.keys(drafts).length === 0 ? undefined : JSON.stringify(drafts);
      tools.keep.set(draftsName(get().buildId), text);
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

      start: startQueue,

      open: async (buildId) => {
        if (get().buildId === buildId && get().status === "ready") return;
        const { reckoning: _old, last: _last, ...rest } = get();
        base = [];
        set({ ...rest, buildId, status: "loading", docs: [], made: [], problems: [], said: "" }, true);
        startQueue();
        opening += 1;
        const mine = opening;
        const loaded = await load(buildId);
        if (loaded.kind === "loaded") await tools.keepBuild(buildId, loaded.value);
        const stored = loaded.kind === "loaded" ? loaded.value : await tools.keptBuild(buildId);
        if (mine !== opening) return;
        if (stored === undefined || loaded.kind === "missing") {
          const status = loaded.kind === "loaded" ? "failed" : loaded.kind;
          set({ status, problems: loaded.kind === "failed" ? [loaded.reference] : [] });
          return;
        }
        set({ drafts: keptDrafts(buildId) });
        lay(stored);
        queue?.start();
      },

      edit: (edit, more = false, seen) => {
        const state = get();
        const doc = state.docs.find((d) => d.kind === edit.kind && d.id === edit.id);
        if (doc === undefined) return false;
        const key = draftKey(edit.kind, edit.id, edit.path);
        const began = performance.now();
        const result = editPlain(doc.plain, edit.path, edit.value);
        const was = valueAt(doc.plain, edit.path);
        const seenNow = seen === undefined ? was : seen.value;
        const asDraft = (messages: readonly string[]) => {
          const draft = { text: String(edit.value ?? ""), messages, seen: seenNow };
          set({ drafts: keepDrafts({ ...state.drafts, [key]: draft }) });
          return false;
        };
        if (result.kind === "refused") return asDraft(result.refusals.map((r) => r.message));
        const docs = state.docs.map((d) => (d === doc ? { ...d, plain: result.plain, doc: result.doc } : d));
        const after = reckoned(docs, state.reckoning);
        // For the bench: from the keystroke to the answered board, before anything is written to the page.
        performance.clearMeasures("answered");
        performance.measure("answered", { start: began, end: performance.now() });
        if (after.reckoning === undefined) return asDraft(after.problems ?? []);
        const lastMade = state.made.at(-1);
        const goesOn =
          more && lastMade !== undefined && draftKey(lastMade.edit.kind, lastMade.edit.id, lastMade.edit.path) === key;
        const first = goesOn ? lastMade.was : was;
        const from =
          goesOn && state.last !== undefined && state.last.elsewhere !== true ? state.last.before : state.reckoning;
        const { [key]: _read, ...drafts } = state.drafts;
        set({
          docs,
          said: "",
          reckoning: after.reckoning,
          ...(from === undefined ? {} : { last: { before: from, edit, was: first } }),
          made: [...(goesOn ? state.made.slice(0, -1) : state.made), { edit, was: first }].slice(-200),
          drafts: key in state.drafts ? keepDrafts(drafts) : state.drafts,
        });
        // What was saved of this same typing is what the person saw last, whatever others wrote into the place meanwhile.
        const before = goesOn ? lastMade.edit.value : seenNow;
        const rows = rowsOf(doc.plain, edit.path);
        const workshop = tools.workshop();
        queue?.add({
          ...edit,
          build: state.buildId,
          before,
          ...(workshop === undefined ? {} : { workshop }),
          ...(rows.length === 0 ? {} : { rows }),
        });
        return true;
      },

      takeBack: () => {
        const { made } = get();
        const top = made.at(-1);
        if (top === undefined) return;
        // What was not there before is taken out again.
        if (!get().edit({ ...top.edit, value: top.was, takesBack: true }, false, { value: top.edit.value })) return;
        const { last: _last, ...rest } = get();
        set(
          {
            ...rest,
            made: made.slice(0, -1),
            said: sayText("web.make-workshop.taken-back", { words: top.edit.words }),
          },
          true,
        );
      },

      reload: fresh.done,

      turned: (words) => {
        const { last: _last, ...rest } = get();
        set({ ...rest, made: [], said: words }, true);
      },

      settle: (shown, choice) => {
        void queue?.settle(shown, choice).then(fresh.soon);
      },

      sendAgain: (key) => {
        const entry = get().queue.notSaved.find((e) => e.key === key);
        if (entry === undefined) return;
        const { refused: _why, triedOn: _tried, key: _key, editId: _id, changedAt: _at, ...again } = entry;
        queue?.forget(key);
        queue?.add(again);
        fresh.soon();
      },

      letGo: (key) => queue?.forget(key),

      say: (words) => set({ said: words }),
    };
  });
}

/** "top tube cc, wheelbase and 2 more" */
function elsewhereWords(paths: readonly EditPath[]): string {
  const names = [...new Set(paths.map(placeName))];
  return names.length <= 3
    ? names.join(", ")
    : sayText("web.make-workshop.and-more", { names: names.slice(0, 2).join(", "), namesCount: names.length - 2 });
}
