/** How does a test get a browser that can be closed and started again as the same one, on a server that can be killed? */
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll } from "vitest";
import { ROOT } from "../scripts/setup.mjs";
import { openProfile, TABLET } from "./browser.js";
import { type KillableServer, killableServer } from "./served-child.js";
import { buildPage } from "./web-workshop.js";

export const LONG = { timeout: 60_000 } as const;
export const demo = (name: string) => readFileSync(join(ROOT, "demo", `${name}.yaml`), "utf8");
const TWO_BUILDS = `${demo("quayside")}\n---\n${demo("canalside")}`;

export interface Devices {
  /** Folder of the built page. */
  readonly site: () => string;
  /** Called after the test, the last one first. */
  readonly atEnd: (end: () => Promise<void>) => void;
  readonly serving: (text?: string, samePort?: number) => Promise<KillableServer>;
  readonly device: (viewport?: { readonly width: number; readonly height: number }) => {
    readonly page: () => Promise<Page>;
    readonly close: () => Promise<void>;
  };
}

/** Once for each file of tests. */
export function devices(): Devices {
  let site: string;
  const ends: (() => Promise<void>)[] = [];
  beforeAll(async () => {
    site = await buildPage();
  });
  afterAll(() => rmSync(site, { recursive: true, force: true }));
  afterEach(async () => {
    for (const end of ends.splice(0).reverse()) await end();
  });
  return {
    site: () => site,
    atEnd: (end) => void ends.push(end),
    serving: async (text = TWO_BUILDS, samePort) => {
      const server = await killableServer(text, samePort);
      ends.push(server.close);
      await server.start(site);
      return server;
    },
    device: (viewport = TABLET) => {
      const folder = mkdtempSync(join(tmpdir(), "coldset-profile-"));
      let context: BrowserContext | undefined;
      const close = async () => {
        await context?.close();
        context = undefined;
      };
      ends.push(async () => {
        await close();
        rmSync(folder, { recursive: true, force: true });
      });
      return {
        page: async () => {
          context ??= await openProfile(folder, viewport);
          return context.newPage();
        },
        close,
      };
    },
  };
}

export const field = (name: string) => `[id="f-donor.measured.${name}"]`;
export async function show(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.waitForSelector("main h1");
}
export const kept = (page: Page) => page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
export const offline = (page: Page) => page.locator(".offline").textContent(LONG);
/** Entries that wait in this browser. */
export const entries = (page: Page) =>
  page.evaluate(() => Object.keys(localStorage).filter((k) => k.startsWith("coldset.entry.")));
