/** Does a newer page come only when the person wants it, and whole; and can the page be installed? */
import { createHash } from "node:crypto";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { devices, field, kept, LONG, show } from "./device.js";
import { shot } from "./shot.js";

const all = devices();
const { serving, device } = all;

/** The same page with another word in its head, as a later build would be. */
function laterSite(): string {
  const later = mkdtempSync(join(tmpdir(), "coldset-later-"));
  cpSync(all.site(), later, { recursive: true });
  const html = readFileSync(join(all.site(), "index.html"), "utf8").replace(
    "<head>",
    '<head><meta name="later" content="yes" />',
  );
  writeFileSync(join(later, "index.html"), html);
  const integrity = `sha256-${createHash("sha256").update(html).digest("base64")}`;
  const worker = readFileSync(join(all.site(), "service-worker.js"), "utf8")
    .replace(/(\["\/index\.html",)"[^"]+"/, `$1"${integrity}"`)
    .replace(/"version":"[^"]+"/, '"version":"later"');
  writeFileSync(join(later, "service-worker.js"), worker);
  all.atEnd(async () => rmSync(later, { recursive: true, force: true }));
  return later;
}
const isLater = (page: Page) => page.locator("meta[name=later]").count();

describe("a newer page", () => {
  it("is told, waits for the person, and takes over whole; nothing typed is lost", { timeout: 300_000 }, async () => {
    const server = await serving();
    const page = await device().page();
    await show(page, `${server.url}/b/quayside/measure`);
    await kept(page);
    await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
    await server.kill();
    await page.fill(field("head_tube"), "half a fig");
    await server.start(laterSite());
    await page.waitForSelector(".newer", LONG);
    await shot(page, "newer-page-tablet");
    expect(await isLater(page)).toBe(0);
    expect(await page.inputValue(field("head_tube"))).toBe("half a fig");
    await page.click(".newer button");
    await page.waitForSelector("meta[name=later]", { state: "attached", ...LONG });
    await page.waitForSelector("main h1");
    expect(await page.inputValue(field("head_tube"))).toBe("half a fig");
    await server.kill();
    await show(page, `${server.url}/b/quayside`);
    expect(await isLater(page)).toBe(1);
  });

  it("comes with the next loading by hand where it is the only window", { timeout: 300_000 }, async () => {
    const server = await serving();
    const page = await device().page();
    await show(page, `${server.url}/b/quayside`);
    await kept(page);
    await server.kill();
    await server.start(laterSite());
    await page.waitForSelector(".newer", LONG);
    await page.reload();
    await page.waitForSelector("meta[name=later]", { state: "attached", ...LONG });
    await page.waitForSelector("main h1");
  });

  it("that is not whole is not taken: old and new never mix", { timeout: 300_000 }, async () => {
    const server = await serving();
    const page = await device().page();
    await show(page, `${server.url}/b/quayside`);
    await kept(page);
    await server.kill();
    const broken = laterSite();
    writeFileSync(
      join(broken, "mark.svg"),
      `${readFileSync(join(all.site(), "mark.svg"), "utf8")}<!-- of another build -->`,
    );
    await server.start(broken);
    await expect.poll(() => page.locator(".offline").count(), LONG).toBe(0);
    await page.evaluate(() => navigator.serviceWorker.ready.then((r) => r.update().catch(() => undefined)));
    await page.waitForTimeout(2_000);
    expect(await page.locator(".newer").count()).toBe(0);
    expect(await page.evaluate(() => navigator.serviceWorker.ready.then((r) => r.waiting === null))).toBe(true);
    expect(await page.evaluate(() => caches.keys())).toHaveLength(1);
  });
});

it("can be installed, and asks nothing of any other machine", { timeout: 300_000 }, async () => {
  const server = await serving();
  const page = await device().page();
  const elsewhere: string[] = [];
  page.context().on("request", (r) => {
    if (!r.url().startsWith(server.url)) elsewhere.push(r.url());
  });
  await show(page, `${server.url}/`);
  await kept(page);
  const cdp = await page.context().newCDPSession(page);
  const manifest = await cdp.send("Page.getAppManifest");
  expect(manifest.errors).toEqual([]);
  expect(JSON.parse(manifest.data ?? "{}")).toMatchObject({ name: "Coldset", start_url: "/", display: "standalone" });
  const { installabilityErrors } = await cdp.send("Page.getInstallabilityErrors");
  // A browser started for a test keeps nothing for good, and says so; there must be no other reason.
  expect(installabilityErrors.map((e) => e.errorId).filter((id) => id !== "in-incognito")).toEqual([]);
  expect(elsewhere).toEqual([]);
});
