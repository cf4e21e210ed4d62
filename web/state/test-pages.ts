/**
 * For tests: whole pages without a screen, in windows of pretended browsers, before one pretended server. Store, queue and
 * hand-over are the real ones; lines take time, may break on the way there or back, and time passes only when told.
 */
import type { Reckoning } from "@coldset/core/questions";
import type { StoreApi, UseBoundStore } from "zustand";
import type { Loaded, StoredPlain } from "./api.js";
import { handOver } from "./hand-over.js";
import type { Keep } from "./kept.js";
import type { LiveTools } from "./live.js";
import { makeWorkshop } from "./make-workshop.js";
import type { Conflict } from "./queue-types.js";
import type { SaveQueue } from "./save-queue.js";
import { memoryKeep, type PretendedServer } from "./test-windows.js";
import { type WhichWorkshop, whichWorkshop } from "./which-workshop.js";
import type { Workshop } from "./workshop-types.js";

export class PretendedTime {
  now = 1_000_000;
  private due: { readonly at: number; readonly run: () => void }[] = [];

  constructor(readonly random: () => number) {}

  readonly later = (run: () => void, ms: number): void => void this.due.push({ at: this.now + Math.round(ms), run });
  readonly wait = (ms: number) => new Promise<void>((done) => this.later(done, ms));
  /** As long as a message takes on the own machine. */
  readonly onTheWay = () => this.wait(this.random() * 60);

  async pass(ms: number): Promise<void> {
    const until = this.now + Math.round(ms);
    for (;;) {
      // A turn of Node's own loop: every promise that waits for no time has gone on.
      await new Promise<void>((done) => setImmediate(done));
      this.due.sort((a, b) => a.at - b.at);
      const [next] = this.due;
      if (next === undefined || next.at > until) break;
      this.due.shift();
      this.now = Math.max(this.now, next.at);
      next.run();
    }
    this.now = until;
  }
}

/** The wire to the server of one address. Another workshop may be put behind it. */
export class PretendedWire {
  up = true;
  private readonly ears = new Set<LiveTools>();
  private ids = 0;

  constructor(
    readonly time: PretendedTime,
    public server: PretendedServer,
    public workshop: string,
  ) {
    this.follow(server);
  }

  readonly letters = () => `${String(++this.ids).padStart(6, "0")}-pretended`;

  /** Each commit is told to all that listen, as long as the line is there. */
  private follow(server: PretendedServer): void {
    server.wrote = (doc) => {
      if (!this.up || server !== this.server) return;
      for (const ear of this.ears) this.time.later(() => this.up && ear.changed([doc]), this.time.random() * 60);
    };
  }

  hear(tools: LiveTools): void {
    this.ears.add(tools);
    this.time.later(() => (this.up ? tools.began(this.workshop) : tools.lost()), 10);
  }

  deaf(tools: LiveTools): void {
    this.ears.delete(tools);
  }

  turn(up: boolean): void {
    if (this.up === up) return;
    this.up = up;
    for (const ear of this.ears)
      this.time.later(
        () => {
          if (this.up !== up) return;
          if (up) ear.began(this.workshop);
          else ear.lost();
        },
        up ? this.time.random() * 2000 : this.time.random() * 60,
      );
  }

  /** Another data folder is served on the same port. */
  serve(server: PretendedServer, workshop: string): void {
    this.turn(false);
    this.server = server;
    this.workshop = workshop;
    this.follow(server);
    this.turn(true);
  }

  /** Asks the server; the line may break before it arrives, or before the answer is back. */
  async ask<T>(which: WhichWorkshop, work: (server: PretendedServer) => Promise<T>): Promise<T | undefined> {
    await this.time.onTheWay();
    if (!this.up) return undefined;
    const { workshop } = this;
    const answer = await work(this.server);
    await this.time.onTheWay();
    if (!this.up) return undefined;
    which.heard(workshop);
    return answer;
  }
}

export class PretendedDevice {
  readonly keep = memoryKeep();
  private readonly records = new Map<string, StoredPlain>();
  private readonly windows = new Set<PretendedPage>();
  private lock: Promise<unknown> = Promise.resolve();

  constructor(
    readonly wire: PretendedWire,
    readonly build: string,
  ) {}

  readonly alone = (run: () => Promise<void>): Promise<void> => {
    const mine = this.lock.then(run);
    this.lock = mine.catch(() => undefined);
    return mine;
  };

  /** The browser's storage as one window has it: the others are told a little later. */
  keepOf(page: PretendedPage): Keep {
    const { keep, wire } = this;
    return {
      get: keep.get,
      names: keep.names,
      set: (name, value) => {
        const done = keep.set(name, value);
        for (const w of this.windows)
          if (w !== page) wire.time.later(() => w.heardStorage(name), wire.time.random() * 30);
        return done;
      },
    };
  }

  readonly kept = {
    one: async (key: string) => this.records.get(key),
    all: async () => (this.records.size === 0 ? undefined : [...this.records.values()]),
    put: async (docs: readonly StoredPlain[]) => {
      for (const doc of docs) this.records.set(`${doc.kind}/${doc.id}`, doc);
    },
    forget: async () => this.records.clear(),
  };

  async page(): Promise<PretendedPage> {
    const page = new PretendedPage(this);
    this.windows.add(page);
    page.store.getState().start();
    void page.store.getState().open(this.build);
    await this.wire.time.pass(500);
    return page;
  }

  close(page: PretendedPage): void {
    page.end();
    this.windows.delete(page);
  }
}

export class PretendedPage {
  readonly store: UseBoundStore<StoreApi<Workshop>>;
  readonly which: WhichWorkshop;
  private queue: SaveQueue | undefined;
  private ears: LiveTools | undefined;
  private closed = false;
  private entriesHeard = () => {};

  constructor(readonly device: PretendedDevice) {
    const { wire, kept } = device;
    const { time } = wire;
    const keep = device.keepOf(this);
    this.which = whichWorkshop(keep);
    const loaded = <T>(value: T | undefined): Loaded<T> =>
      value === undefined ? { kind: "unreachable" } : { kind: "loaded", value };
    /** Nothing goes on in a window that was closed. */
    const living = <T>(work: Promise<T>): Promise<T> =>
      work.then((answer) => (this.closed ? new Promise<T>(() => {}) : answer));
    this.store = makeWorkshop({
      load: (build) => living(wire.ask(this.which, (server) => server.loadBuild(build)).then(loaded)),
      keepBuild: (_build, docs) => kept.put(docs),
      keptBuild: () => kept.all(),
      keep,
      reckon: () => ({ reckoning: {} as Reckoning }),
      reached: () => {},
      workshop: this.which.now,
      handOver: (tools) => {
        this.queue = handOver(
          {
            keep,
            clock: () => time.now,
            later: (run, ms) => time.later(() => (this.closed ? undefined : run()), ms),
            letters: wire.letters,
            // A closed window lets go of the lock at once.
            alone: (run) => device.alone(() => (this.closed ? Promise.resolve() : Promise.race([run(), this.over]))),
            send: (entry, revision) =>
              living(
                wire
                  .ask(this.which, async (server) =>
                    entry.workshop !== undefined && entry.workshop !== wire.workshop
                      ? ({ kind: "apart" } as const)
                      : server.send(entry, revision),
                  )
                  .then((answer) => answer ?? ({ kind: "unreachable" } as const)),
              ),
            load: (kind, id) =>
              living(
                wire
                  .ask(this.which, (server) => server.load(kind, id))
                  .then((answer) => answer ?? ({ kind: "unreachable" } as const)),
              ),
            keepDocument: (doc) => kept.put([doc]),
            keptDocument: (kind, id) => kept.one(`${kind}/${id}`),
            forgetDocuments: kept.forget,
            hearEntries: (tell) => {
              this.entriesHeard = tell;
            },
            hearServer: (ears) => {
              this.ears = ears;
              wire.hear(ears);
            },
            workshop: this.which,
          },
          tools,
        );
        return this.queue;
      },
    });
  }

  private endNow = () => {};
  private readonly over = new Promise<void>((done) => {
    this.endNow = done;
  });

  end(): void {
    this.closed = true;
    if (this.ears !== undefined) this.device.wire.deaf(this.ears);
    this.endNow();
  }

  heardStorage(name: string): void {
    if (this.closed) return;
    if (name.startsWith("entry.")) this.entriesHeard();
    if (name === "workshop") this.which.heard(this.device.keep.get(name));
  }

  shows(kind: string, id: string, path: readonly string[]): unknown {
    const doc = this.store.getState().docs.find((d) => d.kind === kind && d.id === id);
    return path.reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], doc?.plain);
  }

  get choices(): readonly Conflict[] {
    return this.store.getState().queue.conflicts;
  }
}
