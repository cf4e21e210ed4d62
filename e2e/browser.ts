/** How does a test open the page? With the system's own Chromium, never one downloaded for the test. */
import { type Browser, type BrowserContext, chromium } from "playwright-core";
import { findChromium } from "../scripts/system-packages.mjs";

const FLAGS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** Widths at which every page is tried: a tablet on the bench, a phone in front of an advert. */
export const TABLET = { width: 1024, height: 768 } as const;
export const PHONE = { width: 390, height: 844 } as const;

/** A running browser. A missing one is an error, never a skip. The caller closes it. */
export async function openBrowser(more: readonly string[] = []): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === undefined)
    throw new Error("no Chromium found; node scripts/system-packages.mjs brings one in");
  return chromium.launch({ executablePath, args: [...FLAGS, ...more], timeout: 60_000 });
}

/** A browser that keeps what it knows in this folder, so that it can be closed and started again as the same one. */
export async function openProfile(
  folder: string,
  viewport: { readonly width: number; readonly height: number },
): Promise<BrowserContext> {
  const executablePath = findChromium();
  if (executablePath === undefined)
    throw new Error("no Chromium found; node scripts/system-packages.mjs brings one in");
  return chromium.launchPersistentContext(folder, { executablePath, args: FLAGS, timeout: 60_000, viewport });
}
