/**
 * In which order are edits saved, and what becomes of one that cannot be? One after the other, as they were made. What
 * waits is kept in the browser, so that closing the page loses nothing.
 */
import type { EditPath } from "@coldset/core/workshop";
import type { EditCall, SaveAnswer, StoredPlain } from "./api.js";
import { type Keep, keptJson } from "./kept.js";

export interface Entry {
  readonly kind: string;
  readonly id: string;
  readonly path: EditPath;
  readonly value: unknown;
  /** What stood there before, as far as this page knew. */
  readonly before: unknown;
  /** Revision of the document that the edit was made on. */
  readonly base: number;
  /** What the person sees it as: "top tube". */
  readonly words: string;
}

export type Trouble =
  | { readonly kind: "unreachable" }
  | { readonly kind: "failed"; readonly reference: string }
  /** Somebody else wrote another value into the same place. */
  | { readonly kind: "conflict"; readonly entry: Entry; readonly theirs: unknown; readonly revision: number };

export interface QueueState {
  readonly waiting: readonly Entry[];
  readonly sending: boolean;
  readonly trouble?: Trouble;
  /** Entries the server would not take. Their text is kept here. */
  readonly notSaved: readonly { readonly entry: Entry; readonly messages: readonly string[] }[];
  readonly lastSaved?: Entry;
}

export interface QueueTools {
  readonly send: (edit: EditCall) => Promise<SaveAnswer>;
  /** All documents as the server has them now, for finding out what somebody else changed. */
  readonly reload: () => Promise<readonly StoredPlain[] | undefined>;
  /** Others changed documents in other places: the page takes them over. */
  readonly others: (docs: readonly StoredPlain[]) => void;
  readonly changed: (state: QueueState) => void;
  readonly later: (run: () => void, ms: number) => void;
  readonly keep: Keep;
}

const RETRY_MS = 4000;
/** Keystrokes of one figure go out together. What waits is in the browser's keeping from the first one. */
const QUIET_MS = 350;

export function valueAt(plain: unknown, path: EditPath): unknown {
  let here: unknown = plain;
  for (const step of path) {
    if (here === null || typeof here !== "object") return undefined;
    here = (here as Record<string | number, unknown>)[step];
  }
  return here;
}

const same = (a: unknown, b: unknown) => JSON.stringify(a ?? null) === JSON.stringify(b ?? null);
const key = (e: { readonly kind: string; readonly id: string }) => `${e.kind}/${e.id}`;

const isEntry = (v: unknown): v is Entry =>
  v !== null &&
  typeof v === "object" &&
  "kind" in v &&
  "id" in v &&
  "path" in v &&
  Array.isArray(v.path) &&
  "base" in v &&
  typeof v.base === "number";
const areEntries = (v: unknown): v is readonly Entry[] => Array.isArray(v) && v.every(isEntry);

export class SaveQueue {
  private state: QueueState;
  /** Revision that our own saves brought each document to. */
  private readonly reached = new Map<string, number>();
  private retrying = false;

  constructor(
    private readonly name: string,
    private readonly tools: QueueTools,
  ) {
    this.state = { waiting: keptJson(tools.keep, name, areEntries, []), sending: false, notSaved: [] };
  }

  get now(): QueueState {
    return this.state;
  }

  /** An edit of the same place that has not gone out yet is replaced: only what was meant last is saved. */
  add(entry: Entry): void {
    const waiting = this.state.waiting;
    const last = waiting.at(-1);
    const first = waiting.length === 1 && this.state.sending;
    const merged =
      last !== undefined && !first && key(last) === key(entry) && same(last.path, entry.path)
        ? [...waiting.slice(0, -1), { ...last, value: entry.value, words: entry.words }]
        : [...waiting, entry];
    this.set({ ...this.state, waiting: merged });
    this.tools.later(() => this.start(), QUIET_MS);
  }

  /** Starts sending if anything waits and nothing stands in the way. */
  start(): void {
    if (this.state.sending || this.state.waiting.length === 0 || this.state.trouble?.kind === "conflict") return;
    void this.run();
  }

  /** "Keep mine": the entry goes out on the other's revision. "Take theirs": it is dropped. */
  settle(keepMine: boolean): void {
    const { trouble } = this.state;
    if (trouble?.kind !== "conflict") return;
    if (keepMine) this.reached.set(key(trouble.entry), trouble.revision);
    const { trouble: _gone, ...rest } = this.state;
    this.set({ ...rest, waiting: keepMine ? this.state.waiting : this.state.waiting.slice(1) });
    this.start();
  }

  forget(index: number): void {
    this.set({ ...this.state, notSaved: this.state.notSaved.filter((_, i) => i !== index) });
  }

  private set(state: QueueState): void {
    this.state = state;
    const { keep } = this.tools;
    keep.set(this.name, state.waiting.length === 0 ? undefined : JSON.stringify(state.waiting));
    this.tools.changed(state);
  }

  private async run(): Promise<void> {
    this.set({ ...this.state, sending: true });
    for (;;) {
      const entry = this.state.waiting[0];
      if (entry === undefined) break;
      const revision = Math.max(entry.base, this.reached.get(key(entry)) ?? 0);
      const answer = await this.tools.send({ ...entry, revision });
      if (answer.kind === "saved") {
        this.reached.set(key(entry), answer.revision);
        const { trouble: _gone, ...rest } = this.state;
        this.set({ ...rest, waiting: this.state.waiting.slice(1), lastSaved: entry });
      } else if (answer.kind === "refused") {
        const notSaved = [...this.state.notSaved, { entry, messages: answer.messages }];
        const { trouble: _gone, ...rest } = this.state;
        this.set({ ...rest, waiting: this.state.waiting.slice(1), notSaved });
      } else if (answer.kind === "conflict") {
        if (!(await this.meet(entry))) break;
      } else {
        this.set({ ...this.state, trouble: answer });
        this.retry();
        break;
      }
    }
    this.set({ ...this.state, sending: false });
  }

  /** Somebody else wrote meanwhile. Only another value in the same place needs a person; gives true to go on. */
  private async meet(entry: Entry): Promise<boolean> {
    const docs = await this.tools.reload();
    const doc = docs?.find((d) => key(d) === key(entry));
    if (docs === undefined || doc === undefined) {
      this.set({ ...this.state, trouble: { kind: "unreachable" } });
      this.retry();
      return false;
    }
    const theirs = valueAt(doc.plain, entry.path);
    if (same(theirs, entry.value) || same(theirs, entry.before)) {
      this.reached.set(key(entry), doc.revision);
      this.tools.others(docs);
      if (same(theirs, entry.value))
        this.set({ ...this.state, waiting: this.state.waiting.slice(1), lastSaved: entry });
      return true;
    }
    this.set({ ...this.state, trouble: { kind: "conflict", entry, theirs, revision: doc.revision } });
    return false;
  }

  private retry(): void {
    if (this.retrying) return;
    this.retrying = true;
    this.tools.later(() => {
      this.retrying = false;
      this.start();
    }, RETRY_MS);
  }
}
