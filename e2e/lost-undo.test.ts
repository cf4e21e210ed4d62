/** The answer to "Take it back" is lost on the way: does the next press take back one more? */
import { rmSync } from "node:fs";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { openBrowser, TABLET } from "./browser.js";
import { buildPage, openWebWorkshop } from "./web-workshop.js";

let site: string;
let browser: Browser;
beforeAll(async () => {
  [site, browser] = await Promise.all([buildPage(), openBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  if (site !== undefined) rmSync(site, { recursive: true, force: true });
});

it("takes back one change, not two", { timeout: 240_000 }, async () => {
  const web = await openWebWorkshop(site);
  for (const mm of [441, 440, 439]) await web.workshop.edit("donor", "q1", ["measured", "chainstay"], mm);
  // So that the test, and not the service worker, is asked first.
  const context = await browser.newContext({ viewport: TABLET, serviceWorkers: "block" });
  const page = await context.newPage();
  // A stream that never tells of a change: once the window saw what was done, a press would mean one more.
  await page.addInitScript(() => {
    class Silent extends EventTarget {
      constructor() {
        super();
        setTimeout(() => this.dispatchEvent(new MessageEvent("began", { data: "" })), 50);
      }
      close() {}
    }
    Object.assign(window, { EventSource: Silent });
  });
  await page.goto(`${web.url}/b/quayside/measure`);
  const button = page.locator("button:has-text('Take it back')").first();
  await button.waitFor();
  const asked: string[] = [];
  await page.route("**/api/history/quayside/undo", async (route) => {
    asked.push(route.request().postData() ?? "");
    const answer = await route.fetch();
    if (asked.length === 1) await route.abort();
    else await route.fulfill({ response: answer });
  });
  const chainstay = async () => /chainstay: (\S+)/.exec((await web.workshop.exportText("donor", "q1")) ?? "")?.[1];
  await button.click();
  await expect.poll(() => asked.length, { timeout: 20_000 }).toBe(1);
  await expect.poll(chainstay).toBe("440");
  await expect
    .poll(
      async () => {
        if (asked.length < 2) await button.click({ timeout: 1000 }).catch(() => undefined);
        return asked.length;
      },
      { timeout: 30_000, interval: 1000 },
    )
    .toBeGreaterThan(1);
  expect(asked[1]).toBe(asked[0]);
  expect(await chainstay()).toBe("440");
  await context.close();
  await web.close();
});
