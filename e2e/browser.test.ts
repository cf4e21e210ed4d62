/** Is the browser there, and does it measure as a ruler does? Other browser tests stand on this. */
import { existsSync, rmSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openBrowser, PHONE, TABLET } from "./browser.js";
import { buildPageAnew } from "./web-workshop.js";

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
});

describe("browser", () => {
  it.each([
    ["tablet", TABLET],
    ["phone", PHONE],
  ])("opens a page of %s width", async (_, viewport) => {
    const page = await browser.newPage({ viewport });
    await page.setContent("<title>bench</title><p>A line</p>");
    expect(await page.evaluate(() => [document.title, window.innerWidth])).toEqual(["bench", viewport.width]);
    await page.close();
  });

  it("draws 100 mm as 100 mm", async () => {
    const page = await browser.newPage();
    await page.setContent('<div id="bar" style="width: 100mm; height: 1mm"></div>');
    const width = await page.evaluate(() => document.getElementById("bar")?.getBoundingClientRect().width ?? 0);
    // CSS Values and Units 4, section 6.2: 1 in = 2.54 cm = 96 px, so 100 mm = 377.95 px; layout rounds to 1/64 px.
    expect(Math.abs(width - (100 / 25.4) * 96)).toBeLessThan(1 / 64);
    await page.close();
  });
});

it("the page builds, and the builder has nothing to complain of", { timeout: 120_000 }, async () => {
  const site = await buildPageAnew();
  try {
    expect(existsSync(join(site, "index.html"))).toBe(true);
  } finally {
    rmSync(site, { recursive: true, force: true });
  }
});
