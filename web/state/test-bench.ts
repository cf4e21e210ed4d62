/** For tests: one window on a donor and a build. */
import type { Choice } from "./queue-types.js";
import { PretendedBrowser, PretendedServer, type PretendedWindow } from "./test-windows.js";

export const DONOR = "donor/q1";
export const BUILD = "build/b";
export const at = (name: string) => ["measured", name] as const;

export async function bench() {
  const server = new PretendedServer([
    { kind: "donor", id: "q1", revision: 1, plain: { measured: { chainstay: 442, wheelbase: 1050 } } },
    { kind: "build", id: "b", revision: 1, plain: { evidence: [{ gate: "G1", by: "A" }], parts: ["p", "q", "r"] } },
  ]);
  const browser = new PretendedBrowser(server);
  const window = browser.window();
  window.look();
  return { server, browser, window };
}
/** A person presses a button of the choice that is shown. */
export async function settleFirst(window: PretendedWindow, choice: Choice): Promise<void> {
  const [shown] = window.queue.now.conflicts;
  if (shown === undefined) throw new Error("no choice is shown");
  await window.queue.settle(shown, choice);
}
export const values = (server: PretendedServer) => server.applied.map((a) => [a.path.at(-1), a.value]);
