import fc from "fast-check";
import { expect, it } from "vitest";
import { type Line, PretendedBrowser, PretendedServer, type PretendedWindow } from "./test-windows.js";

const DOCS = ["donor/a", "build/b"] as const;
const PLACES = ["x", "y", "z"] as const;
const docs = () =>
  DOCS.map((key) => {
    const [kind = "", id = ""] = key.split("/");
    return { kind, id, revision: 1, plain: { x: 0, y: 0, z: 0 } };
  });

type Act =
  | {
      readonly act: "edit";
      readonly window: number;
      readonly doc: number;
      readonly place: number;
      readonly value: number;
    }
  | { readonly act: "somebody else"; readonly doc: number; readonly place: number; readonly value: number }
  | { readonly act: "line"; readonly line: Line }
  | { readonly act: "time"; readonly ms: number }
  | { readonly act: "close and open"; readonly window: number }
  | { readonly act: "look"; readonly window: number }
  | { readonly act: "settle"; readonly window: number; readonly mine: boolean };

const window = fc.nat({ max: 1 });
const doc = fc.nat({ max: DOCS.length - 1 });
const place = fc.nat({ max: PLACES.length - 1 });
// Few values, so that two people often write the same.
const value = fc.nat({ max: 4 });
const act: fc.Arbitrary<Act> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ act: fc.constant("edit" as const), window, doc, place, value }) },
  { weight: 2, arbitrary: fc.record({ act: fc.constant("somebody else" as const), doc, place, value }) },
  {
    weight: 2,
    arbitrary: fc.record({
      act: fc.constant("line" as const),
      line: fc.constantFrom<Line>("well", "gone", "loses answers"),
    }),
  },
  { weight: 4, arbitrary: fc.record({ act: fc.constant("time" as const), ms: fc.constantFrom(50, 450, 700, 5000) }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant("close and open" as const), window }) },
  { weight: 2, arbitrary: fc.record({ act: fc.constant("look" as const), window }) },
  { weight: 2, arbitrary: fc.record({ act: fc.constant("settle" as const), window, mine: fc.boolean() }) },
);

/** What a person meant, and what he had seen when he meant it. */
interface Meant {
  readonly key: string;
  readonly doc: string;
  readonly place: string;
  value: number;
  /** Everything that was shown for the place before it may be written over. */
  readonly seen: Set<unknown>;
}

it("two windows, a line that fails, somebody else: nothing twice, nothing over what was not seen, nothing lost unseen", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(act, { minLength: 1, maxLength: 60 }), async (acts) => {
      const server = new PretendedServer(docs());
      const browser = new PretendedBrowser(server);
      const windows: [PretendedWindow, PretendedWindow] = [browser.window(), browser.window()];
      for (const w of windows) w.look();
      const meant = new Map<string, Meant>();
      /** Keys of entries that a person gave up, or that stood in a choice. */
      const chosen = new Set<string>();
      const note = () => {
        for (const w of windows) {
          for (const c of w.queue.now.conflicts) meant.get(c.entry.key)?.seen.add(c.theirs ?? null);
        }
      };
      const settle = async (w: PretendedWindow, mine: boolean) => {
        const [first] = w.queue.now.conflicts;
        if (first === undefined) return;
        const { entry } = first;
        w.queue.reread();
        const shown = w.queue.now.conflicts.find((c) => c.entry.key === entry.key);
        if (shown === undefined) return;
        // All of one place are decided at once, and what is shown is the last word of it.
        const place = w.queue.now.waiting.filter((e) => e.kind === entry.kind && e.path[0] === entry.path[0]);
        expect(shown.mine).toBe(place.at(-1)?.value);
        for (const e of place) {
          chosen.add(e.key);
          meant.get(e.key)?.seen.add(shown.theirs ?? null);
        }
        await Promise.all([w.queue.settle(shown, mine ? "mine" : "theirs"), browser.pass(1)]);
      };
      for (const a of acts) {
        if (a.act === "edit") {
          const w = windows[a.window] ?? windows[0];
          w.queue.reread();
          const key = DOCS[a.doc] ?? DOCS[0];
          const name = PLACES[a.place] ?? "x";
          const before = w.shows(key, [name]);
          w.edit(key, [name], a.value);
          const entry = w.queue.now.waiting.at(-1);
          if (entry === undefined) throw new Error("an edit left no entry");
          const known = meant.get(entry.key);
          if (known === undefined)
            meant.set(entry.key, { key: entry.key, doc: key, place: name, value: a.value, seen: new Set([before]) });
          else known.value = a.value;
        } else if (a.act === "somebody else") server.write(DOCS[a.doc] ?? DOCS[0], [PLACES[a.place] ?? "x"], a.value);
        else if (a.act === "line") server.line = a.line;
        else if (a.act === "time") await browser.pass(a.ms);
        else if (a.act === "look") {
          if (server.line === "well") windows[a.window]?.look();
        } else if (a.act === "settle") await settle(windows[a.window] ?? windows[0], a.mine);
        else {
          const old = windows[a.window];
          if (old !== undefined) old.closed = true;
          const fresh = browser.window();
          fresh.look();
          windows[a.window === 0 ? 0 : 1] = fresh;
          fresh.queue.start();
        }
        note();
      }
      server.line = "well";
      for (let round = 0; round < 200; round += 1) {
        for (const w of windows) {
          w.queue.reread();
          w.queue.start();
        }
        await browser.pass(5000);
        note();
        const stuck = windows.find((w) => w.queue.now.conflicts.length > 0);
        if (stuck !== undefined) await settle(stuck, round % 2 === 0);
        else if (windows[0].shelf.all().length === 0) break;
      }
      // All is handed over, and nothing is left lying.
      expect(windows[0].shelf.all()).toEqual([]);
      expect(browser.keep.all.size).toBe(0);
      // Each once.
      const ids = server.applied.map((x) => x.editId);
      expect(new Set(ids).size).toBe(ids.length);
      for (const done of server.applied) {
        const m = meant.get(done.key);
        if (m === undefined) throw new Error(`${done.key} was never meant`);
        // Nothing was written over that the person had not seen, or been shown as the other side of a choice.
        expect([...m.seen], `${done.key} over ${String(done.over)}`).toContain(done.over ?? null);
      }
      // In order: of each place, and of all that no choice held up.
      const firstApplied = new Map(server.applied.map((x) => [x.key, x] as const).reverse());
      const undisturbed = [...firstApplied.values()].reverse().filter((x) => !chosen.has(x.key));
      for (const d of DOCS) {
        const keys = undisturbed.filter((x) => x.doc === d).map((x) => x.key);
        expect([...keys].sort()).toEqual(keys);
      }
      // Nothing lost: what was meant was applied, or stood in a choice, or stood there already.
      const applied = new Set(server.applied.map((x) => x.key));
      for (const m of meant.values()) {
        if (applied.has(m.key) || chosen.has(m.key)) continue;
        const there = server.everStood(m.doc, [m.place], m.value) || m.seen.has(m.value);
        expect(there, `${m.key} is lost`).toBe(true);
      }
    }),
    { seed: 20261129, numRuns: 400 },
  );
});
