/** How does a test get the page with a real server behind it? Built into a folder of its own, on records of its own. */
import { execFile } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { reckonHere, startServer } from "@coldset/server";
import { openWorkshop, type Workshop } from "@coldset/store";
import { ROOT } from "../scripts/setup.mjs";

export interface WebWorkshop {
  /** Without a slash at the end. */
  readonly url: string;
  readonly workshop: Workshop;
  /** Stops answering, as a server that has crashed. */
  readonly unplug: () => Promise<void>;
  /** Answers again on the same port. */
  readonly plugIn: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/**
 * The page in a folder of its own, which the caller removes. Where the set-up has just built it (COLDSET_BUILT_PAGE names
 * its folder) it is copied, so that not every file of tests builds it again.
 */
export async function buildPage(): Promise<string> {
  const built = process.env.COLDSET_BUILT_PAGE;
  if (built === undefined) return buildPageAnew();
  const site = mkdtempSync(join(tmpdir(), "coldset-site-"));
  cpSync(built, site, { recursive: true });
  return site;
}

/** By the same command as the set-up: a page built for tests would be another, slower page. */
export async function buildPageAnew(): Promise<string> {
  const site = mkdtempSync(join(tmpdir(), "coldset-site-"));
  const vite = join(ROOT, "node_modules", "vite", "bin", "vite.js");
  const args = [vite, "build", "web", "--outDir", site, "--emptyOutDir", "--logLevel", "warn"];
  const built = await promisify(execFile)(process.execPath, args, {
    cwd: ROOT,
    env: { ...process.env, NODE_ENV: "production" },
  });
  if (built.stderr.trim() !== "") throw new Error(built.stderr);
  return site;
}

/** @param text documents put in at the start; empty: none */
export async function openWebWorkshop(site: string, text = demoText()): Promise<WebWorkshop> {
  const folder = mkdtempSync(join(tmpdir(), "coldset-web-"));
  const opened = await openWorkshop(folder);
  if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
  const { workshop } = opened;
  const put = text === "" ? undefined : await workshop.putText(text, "quayside.yaml");
  if (put?.kind === "refused") throw new Error(JSON.stringify(put.refusals));
  const serve = async (port: number) => {
    const started = await startServer({
      port,
      workshop,
      webRoot: site,
      sheets: new Map(),
      ...reckonHere(() => ({})),
      book: async () => ({ kind: "refused", refusals: [] }),
    });
    if (started.kind === "refused") throw new Error(JSON.stringify(started.refusals));
    return started;
  };
  let server = await serve(0);
  const { port, url } = server;
  return {
    url: url.replace(/\/$/, ""),
    workshop,
    unplug: () => server.close(),
    plugIn: async () => {
      server = await serve(port);
    },
    close: async () => {
      await server.close();
      await workshop.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

export function demoText(): string {
  return readFileSync(join(ROOT, "demo", "quayside.yaml"), "utf8");
}
