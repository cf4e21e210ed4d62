/**
 * In which order are edits handed over, and what becomes of one that cannot be? One after the other, as they were made,
 * whichever window or build they were made in. Nothing goes out over a value that the person had not seen: a place that
 * somebody else changed meanwhile is a choice, and what was entered into that document after it waits for the choice.
 */
import { say } from "@coldset/core/texts";
import { withValue } from "@coldset/core/workshop";
import type { SaveAnswer, StoredPlain } from "./api.js";
import type { Entry, NewEntry } from "./entry-shelf.js";
import { meet } from "./meet.js";
import { docKey, lastWord, ofOnePlace, sameChoice, stillStands } from "./one-place.js";
import {
  type Choice,
  type Conflict,
  EMPTY_QUEUE,
  type QueueState,
  type QueueTools,
  type Trouble,
} from "./queue-types.js";

const RETRY_MS = 4000;
/** Keystrokes of one figure are one entry as long as they follow each other this quickly. */
const MERGE_MS = 400;
/** So long nothing must have been written on an entry before it goes out: more than MERGE_MS, so that none changes on its way. */
const QUIET_MS = 550;

type Step = "on" | "stop";

export class SaveQueue {
  private state: QueueState = EMPTY_QUEUE;
  private retrying = false;
  private wanted = false;

  constructor(private readonly tools: QueueTools) {
    this.reread();
  }

  get now(): QueueState {
    return this.state;
  }

  /** An entry of the same place that was only just written on goes on being one: what was meant last is saved. */
  add(fresh: NewEntry): void {
    const { shelf, clock, freshId } = this.tools;
    const at = clock();
    const last = this.state.waiting.at(-1);
    const goesOn =
      last !== undefined &&
      last.triedOn === undefined &&
      at - last.changedAt < MERGE_MS &&
      // What another window wrote was meant by itself.
      shelf.isOwn(last.key) &&
      ofOnePlace(last, fresh) &&
      last.workshop === fresh.workshop &&
      last.takesBack === fresh.takesBack;
    const entry: Entry = goesOn
      ? { ...last, value: fresh.value, words: fresh.words, changedAt: at, editId: freshId() }
      : { ...fresh, key: shelf.freshKey(), editId: freshId(), changedAt: at };
    shelf.put(entry);
    this.reread();
    this.tools.later(() => this.start(), QUIET_MS);
  }

  /** Another window wrote on the shelf, or this one begins. */
  reread(): void {
    const all = this.tools.shelf.all();
    const here = this.tools.workshop();
    const isApart = (e: Entry) => e.workshop !== undefined && here !== undefined && e.workshop !== here;
    const ours = all.filter((e) => !isApart(e));
    const waiting = ours.filter((e) => e.refused === undefined);
    const conflicts = this.state.conflicts
      .filter((c) => waiting.some((e) => e.key === c.entry.key && e.editId === c.entry.editId))
      .map((c) => ({ ...c, mine: lastWord(c.entry, waiting) }));
    this.set({
      ...this.state,
      waiting,
      conflicts,
      notSaved: ours.filter((e) => e.refused !== undefined),
      apart: all.filter(isApart),
      unkept: this.tools.shelf.unkept(),
    });
  }

  /** Starts sending if anything waits and nothing stands in the way. */
  start(): void {
    this.wanted = true;
    if (this.state.sending || this.next() === undefined) return;
    this.wanted = false;
    this.set({ ...this.state, sending: true });
    void this.tools
      .alone(() => this.run())
      .finally(() => {
        this.set({ ...this.state, sending: false });
        if (this.wanted && this.state.trouble === undefined) this.start();
      });
  }

  /**
   * Chooses between two values for one place. All entries of that place that wait become one, or none. A choice that the
   * person did not see like this, because something was written meanwhile, decides nothing and is put anew.
   */
  async settle(shown: Conflict, choice: Choice): Promise<void> {
    const { shelf, alone, freshId } = this.tools;
    const { key } = shown.entry;
    await alone(async () => {
      this.reread();
      const conflict = this.state.conflicts.find((c) => c.entry.key === key);
      if (conflict === undefined || !sameChoice(conflict, shown)) return;
      const { entry, mine, theirs } = conflict;
      for (const e of this.ofSamePlace(entry)) if (e.key !== key) shelf.remove(e.key);
      if (choice === "theirs" || conflict.gone) shelf.remove(key);
      else {
        const { triedOn: _tried, ...rest } = entry;
        const value = choice === "mine" ? mine : choice.value;
        shelf.put({ ...rest, value, before: theirs, editId: freshId() });
      }
    });
    this.reread();
    this.start();
  }

  /** Documents were read anew. A choice whose other side has changed again is put anew. */
  standing(docs: readonly StoredPlain[]): void {
    const conflicts = this.state.conflicts.filter((c) => stillStands(c, docs));
    if (conflicts.length === this.state.conflicts.length) return;
    this.set({ ...this.state, conflicts });
    this.start();
  }

  /** The person has seen to an entry that the records would not take. */
  forget(key: string): void {
    this.tools.shelf.remove(key);
    this.reread();
  }

  private set(state: QueueState): void {
    this.state = state;
    this.tools.changed(state);
  }

  private ofSamePlace(entry: Entry): readonly Entry[] {
    return this.state.waiting.filter((e) => ofOnePlace(e, entry));
  }

  /** The first entry that no choice holds up. */
  private next(): Entry | undefined {
    const held = new Set(this.state.conflicts.map((c) => docKey(c.entry)));
    return this.state.waiting.find((e) => !held.has(docKey(e)));
  }

  private async run(): Promise<void> {
    for (;;) {
      this.reread();
      const entry = this.next();
      if (entry === undefined) return;
      const quietIn = entry.changedAt + QUIET_MS - this.tools.clock();
      // A clock that was set back must not hold an entry up for ever.
      if (quietIn > 0 && quietIn <= QUIET_MS) {
        this.tools.later(() => this.start(), quietIn);
        return;
      }
      if ((await this.handOver(entry)) === "stop") return;
    }
  }

  /** Brings one entry on by one step: sent, or changed into what is to be sent, or put aside. */
  private async handOver(entry: Entry): Promise<Step> {
    const { tools } = this;
    let known = await tools.known(entry.kind, entry.id);
    if (known === undefined) {
      const loaded = await this.fresh(entry);
      if (loaded === undefined) return "stop";
      if (loaded === "gone") return "on";
      known = loaded;
    }
    // Without an answer nobody knows whether it arrived: it is asked again in the same words, which changes nothing twice.
    if (entry.triedOn === undefined) {
      const met = this.met(entry, known);
      if (met !== "send") return met;
    }
    const revision = entry.triedOn ?? known.revision;
    const workshop = entry.workshop ?? tools.workshop();
    const tried: Entry = { ...entry, triedOn: revision, ...(workshop === undefined ? {} : { workshop }) };
    tools.shelf.put(tried);
    const answer = await tools.send(tried, revision);
    if (answer.kind === "saved") return this.saved(tried, answer, known);
    if (answer.kind === "conflict") {
      const { triedOn: _tried, ...again } = entry;
      this.putIfSame(tried, again);
      return (await this.fresh(entry)) === undefined ? "stop" : "on";
    }
    if (answer.kind === "refused") return this.refuse(tried, answer.messages);
    if (answer.kind === "apart") return this.setApart(tried);
    return this.wait(answer);
  }

  private async saved(
    entry: Entry,
    answer: Extract<SaveAnswer, { readonly kind: "saved" }>,
    known: StoredPlain,
  ): Promise<Step> {
    const { tools } = this;
    const asKnown = answer.repeated !== true && known.revision === entry.triedOn;
    if (asKnown)
      await tools.learned({
        ...known,
        revision: answer.revision,
        plain: withValue(known.plain, entry.path, entry.value),
      });
    else if ((await this.fresh(entry)) === undefined) return "stop";
    const now = tools.shelf.get(entry.key);
    if (now !== undefined && now.editId !== entry.editId) {
      // It was written on after it went out: the rest of it is an edit of what is now saved.
      const { triedOn: _tried, ...rest } = now;
      tools.shelf.put({ ...rest, before: entry.value });
    } else tools.shelf.remove(entry.key);
    const { trouble: _gone, ...rest } = this.state;
    this.set({ ...rest, lastSaved: entry });
    this.reread();
    // Somebody may have written over it since: shown once more, now that the entry does not lie over it any longer.
    return asKnown || (await this.fresh(entry)) !== undefined ? "on" : "stop";
  }

  private met(entry: Entry, known: StoredPlain): Step | "send" {
    const { shelf, freshId } = this.tools;
    const meeting = meet(entry, known);
    switch (meeting.kind) {
      case "send":
        return "send";
      case "conflict":
        return this.conflict(entry, meeting.theirs, meeting.gone);
      case "there":
        shelf.remove(entry.key);
        this.set({ ...this.state, lastSaved: entry });
        return "on";
      case "moved":
        for (const e of this.ofSamePlace(entry)) shelf.put({ ...e, path: meeting.path });
        return "on";
      case "merged":
        shelf.put({ ...entry, value: meeting.value, before: meeting.before, editId: freshId() });
        return "on";
    }
  }

  private conflict(entry: Entry, theirs: unknown, gone: boolean): Step {
    const mine = lastWord(entry, this.state.waiting);
    this.set({ ...this.state, conflicts: [...this.state.conflicts, { entry, mine, theirs, gone }] });
    return "on";
  }

  private refuse(entry: Entry, messages: readonly string[]): Step {
    this.putIfSame(entry, { ...entry, refused: messages });
    const { trouble: _gone, ...rest } = this.state;
    this.set(rest);
    this.reread();
    return "on";
  }

  /** The server says that it is another workshop: the entry stays as it is, and what is of this one goes on. */
  private setApart(entry: Entry): Step {
    this.reread();
    if (!this.state.waiting.some((e) => e.key === entry.key)) return "on";
    return this.wait({ kind: "failed", reference: say("web.save-queue.this-entry-was-made-for-another") });
  }

  /** Another window may have written on it meanwhile; then it stays as it is. */
  private putIfSame(sent: Entry, fresh: Entry): void {
    const now = this.tools.shelf.get(sent.key);
    if (now?.editId === sent.editId) this.tools.shelf.put(fresh);
  }

  private async fresh(entry: Entry): Promise<StoredPlain | "gone" | undefined> {
    const loaded = await this.tools.load(entry.kind, entry.id);
    if (loaded.kind === "loaded") {
      const { trouble: _gone, ...rest } = this.state;
      this.set(rest);
      await this.tools.learned(loaded.value);
      return loaded.value;
    }
    if (loaded.kind === "missing") {
      this.refuse(entry, [say("web.save-queue.there-is-no-in-the-workshop", { kind: entry.kind, entry: entry.id })]);
      return "gone";
    }
    this.wait(loaded);
    return undefined;
  }

  private wait(trouble: Trouble): Step {
    this.set({ ...this.state, trouble });
    if (!this.retrying) {
      this.retrying = true;
      this.tools.later(() => {
        this.retrying = false;
        this.start();
      }, RETRY_MS);
    }
    return "stop";
  }
}
