/** How does a test get a server that it can kill and start again, on the same folder and the same port? */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openWorkshop, type Workshop } from "@coldset/store";
import { ROOT } from "../scripts/setup.mjs";

const START_MS = 120_000;

export interface KillableServer {
  /** Without a slash at the end. */
  readonly url: string;
  /** `dieAfter`: is killed right after so many edits are on the disk, before the last is answered. */
  readonly start: (site: string, dieAfter?: number) => Promise<void>;
  /** As when the power fails. */
  readonly kill: () => Promise<void>;
  readonly alive: () => boolean;
  /** Reads and writes the records while no server runs. */
  readonly records: <T>(work: (workshop: Workshop) => Promise<T>) => Promise<T>;
  readonly close: () => Promise<void>;
}

/**
 * @param text documents put in at the start
 * @param samePort left out: one that is free
 */
export async function killableServer(text: string, samePort?: number): Promise<KillableServer> {
  const folder = mkdtempSync(join(tmpdir(), "coldset-child-"));
  const port = samePort ?? (await freePort());
  let child: ChildProcess | undefined;
  const alive = () => child !== undefined && child.exitCode === null && child.signalCode === null;
  const ended = async () => {
    const running = child;
    if (running !== undefined && alive()) await new Promise((resolve) => running.once("exit", resolve));
  };
  const records = async <T>(work: (workshop: Workshop) => Promise<T>): Promise<T> => {
    const opened = await openWorkshop(folder);
    if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
    try {
      return await work(opened.workshop);
    } finally {
      await opened.workshop.close();
    }
  };
  await records((workshop) => workshop.putText(text, "start.yaml"));
  const kill = async () => {
    child?.kill("SIGKILL");
    await ended();
  };
  return {
    url: `http://127.0.0.1:${port}`,
    start: (site, dieAfter) => {
      const more = dieAfter === undefined ? [] : [String(dieAfter)];
      const args = [join(ROOT, "e2e", "serve-child.mjs"), site, folder, String(port), ...more];
      const started = spawn(process.execPath, args, { cwd: ROOT, stdio: ["ignore", "pipe", "pipe"] });
      child = started;
      return new Promise<void>((resolve, reject) => {
        let said = "";
        const late = setTimeout(() => reject(new Error(`the server did not start:\n${said}`)), START_MS);
        const hear = (chunk: Buffer) => {
          said += chunk.toString("utf8");
          if (!said.includes("http://")) return;
          clearTimeout(late);
          resolve();
        };
        started.stdout.on("data", hear);
        started.stderr.on("data", hear);
        started.once("exit", () => reject(new Error(`the server ended:\n${said}`)));
      });
    },
    kill,
    alive,
    records,
    close: async () => {
      await kill();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() =>
        address === null || typeof address === "string" ? reject(new Error("no port")) : resolve(address.port),
      );
    });
  });
}
