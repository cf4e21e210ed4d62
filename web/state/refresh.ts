/**
 * When is the open build read anew, so that an older answer never undoes what is known already? One reading at a time;
 * a wish that comes meanwhile makes one more. Where the server does not answer, this device's copy is shown.
 */
import type { Loaded, StoredPlain } from "./api.js";

export interface RefreshTools {
  /** The build to read; undefined while none is open, or it is being opened. */
  readonly openBuild: () => string | undefined;
  readonly load: (buildId: string) => Promise<Loaded<readonly StoredPlain[]>>;
  readonly keep: (buildId: string, docs: readonly StoredPlain[]) => Promise<void>;
  readonly kept: (buildId: string) => Promise<readonly StoredPlain[] | undefined>;
  /** The records say this. `fresh`: as read from the server just now. */
  readonly show: (docs: readonly StoredPlain[], fresh: boolean) => void;
}

export interface Refresher {
  readonly soon: () => void;
  /** Done when the wish was met. */
  readonly done: () => Promise<void>;
  /** One document was learned by another way: an answer that is on its way is older. */
  readonly learned: () => void;
}

export function refresher(tools: RefreshTools): Refresher {
  let learnedCount = 0;
  let running = false;
  let again = false;
  const waiting: (() => void)[] = [];
  const once = async (buildId: string) => {
    const from = learnedCount;
    const current = () => from === learnedCount && tools.openBuild() === buildId;
    const loaded = await tools.load(buildId);
    if (tools.openBuild() !== buildId) return;
    if (from !== learnedCount) again = true;
    else if (loaded.kind === "loaded") {
      await tools.keep(buildId, loaded.value);
      if (current()) tools.show(loaded.value, true);
      else again = true;
    } else {
      const kept = await tools.kept(buildId);
      if (kept !== undefined && current()) tools.show(kept, false);
    }
  };
  const run = async () => {
    do {
      again = false;
      const buildId = tools.openBuild();
      if (buildId !== undefined) await once(buildId);
    } while (again);
  };
  const soon = () => {
    again = true;
    if (running) return;
    running = true;
    void run().finally(() => {
      running = false;
      for (const done of waiting.splice(0)) done();
    });
  };
  return {
    soon,
    done: () =>
      new Promise((done) => {
        waiting.push(done);
        soon();
      }),
    learned: () => {
      learnedCount += 1;
    },
  };
}
