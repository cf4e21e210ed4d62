/**
 * What does this window do so that its entries are handed over, and who is told when records change? There is one queue
 * for all builds and all windows of this browser; it goes on while no build is open, too.
 */
import type { Loaded, SaveAnswer, StoredPlain } from "./api.js";
import { carryOver } from "./carry-over.js";
import { type Entry, entryShelf } from "./entry-shelf.js";
import type { Keep } from "./kept.js";
import type { LiveTools } from "./live.js";
import type { QueueState } from "./queue-types.js";
import { SaveQueue } from "./save-queue.js";
import type { WhichWorkshop } from "./which-workshop.js";

export interface HandOverTools {
  /** The document as the open page has it from the records, without what waits. */
  readonly atHand: (kind: string, id: string) => StoredPlain | undefined;
  /** A document stands like this in the records now. */
  readonly learned: (doc: StoredPlain) => void;
  readonly changed: (state: QueueState) => void;
  /** Documents were changed in the records, by whomever; undefined: it is not known which. */
  readonly recordsChanged: (documents: readonly string[] | undefined) => void;
  /** Another window of this browser made, sent or took out entries. */
  readonly entriesChanged: () => void;
  readonly reached: (reached: boolean) => void;
  /** Another workshop than before answers at this address. */
  readonly otherWorkshop: () => void;
}

/** What a window has around it: its browser and its server. */
export interface Surroundings {
  readonly keep: Keep;
  readonly clock: () => number;
  readonly later: (run: () => void, ms: number) => void;
  readonly letters: () => string;
  readonly alone: (run: () => Promise<void>) => Promise<void>;
  readonly send: (entry: Entry, revision: number) => Promise<SaveAnswer>;
  readonly load: (kind: string, id: string) => Promise<Loaded<StoredPlain>>;
  readonly keepDocument: (doc: StoredPlain) => Promise<void>;
  readonly keptDocument: (kind: string, id: string) => Promise<StoredPlain | undefined>;
  /** Lets go what this browser kept of documents, which were another workshop's. */
  readonly forgetDocuments: () => Promise<void>;
  readonly hearEntries: (tell: () => void) => void;
  readonly hearServer: (tools: LiveTools) => void;
  readonly workshop: WhichWorkshop;
}

export function handOver(around: Surroundings, tools: HandOverTools): SaveQueue {
  const { workshop } = around;
  const shelf = entryShelf(around.keep, around.clock, () => around.letters().slice(0, 6));
  const reachedBy = <T extends { readonly kind: string }>(answer: T): T => {
    tools.reached(answer.kind !== "unreachable");
    return answer;
  };
  carryOver(around.keep, shelf, around);
  const queue = new SaveQueue({
    shelf,
    workshop: workshop.now,
    send: async (entry, revision) => reachedBy(await around.send(entry, revision)),
    load: async (kind, id) => reachedBy(await around.load(kind, id)),
    known: async (kind, id) => tools.atHand(kind, id) ?? (await around.keptDocument(kind, id)),
    learned: async (doc) => {
      await around.keepDocument(doc);
      tools.learned(doc);
    },
    alone: around.alone,
    changed: tools.changed,
    later: around.later,
    clock: around.clock,
    freshId: around.letters,
  });
  workshop.onChange((other) => {
    queue.reread();
    if (!other) return;
    // Copies of the other one must not be shown as this one's; they are read anew when it answers again.
    void around.forgetDocuments();
    tools.otherWorkshop();
    queue.start();
  });
  around.hearEntries(() => {
    queue.reread();
    tools.entriesChanged();
    queue.start();
  });
  around.hearServer({
    changed: tools.recordsChanged,
    began: (name) => {
      workshop.heard(name);
      tools.reached(true);
      tools.recordsChanged(undefined);
      queue.start();
    },
    lost: () => tools.reached(false),
  });
  queue.start();
  return queue;
}
