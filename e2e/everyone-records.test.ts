/** Can versions, photos and copies be handled by the keyboard alone, and does the focus stay in hand? */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { ROOT } from "../scripts/setup.mjs";
import { type ForEveryone, goTo, openForEveryone } from "./everyone-pages.js";
import { focusWords, reach } from "./keyboard.js";

const SOON = { timeout: 30_000 } as const;
const folder = mkdtempSync(join(tmpdir(), "coldset-records-"));
let here: ForEveryone;
let page: Page;
beforeAll(async () => {
  here = await openForEveryone();
  ({ page } = await here.open("/", { reducedMotion: "reduce" }));
}, 240_000);
afterAll(async () => {
  await here?.close();
  rmSync(folder, { recursive: true, force: true });
});

const donor = () => here.web.workshop.exportText("donor", "q1");

it("names a version, compares it with now, and restores it", { timeout: 240_000 }, async () => {
  await goTo(page, `${here.web.url}/b/quayside/history`);
  await reach(page, "textbox", "Name for how it stands now");
  await page.keyboard.type("before welding");
  await page.keyboard.press("Enter");
  await expect.poll(() => page.textContent("main"), SOON).toContain("Compare with now");
  await expect.poll(() => focusWords(page)).not.toMatch(/^BODY/);
  await here.web.workshop.edit("donor", "q1", ["measured", "head_tube"], 149);
  await goTo(page, `${here.web.url}/b/quayside/history`);
  await reach(page, "button", /^Compare with now/);
  await page.keyboard.press("Enter");
  await expect.poll(() => focusWords(page), SOON).toMatch(/^H3 From before welding/);
  await reach(page, "button", "Close");
  await page.keyboard.press("Enter");
  await expect.poll(() => focusWords(page)).not.toMatch(/^BODY/);
  await page.locator("main h1").focus();
  await reach(page, "button", /^Restore/);
  await page.keyboard.press("Enter");
  await expect.poll(() => focusWords(page), SOON).toMatch(/^H3 Restore before welding/);
  await reach(page, "button", "Restore it");
  await page.keyboard.press("Enter");
  await expect.poll(donor, SOON).toContain("head_tube: 145");
  await expect.poll(() => focusWords(page), SOON).not.toMatch(/^BODY/);
});

it("adds a photo, takes it away and puts it back", { timeout: 240_000 }, async () => {
  await goTo(page, `${here.web.url}/b/quayside/measure`);
  await reach(page, /button|LabelText|textbox/, /^Choose or take a photo/);
  const chooser = page.waitForEvent("filechooser");
  await page.keyboard.press("Enter");
  await (await chooser).setFiles(join(ROOT, "web", "public", "icon-192.png"));
  await reach(page, "textbox", /^What it shows/);
  await page.keyboard.type("left dropout");
  await page.keyboard.press("Enter");
  await expect.poll(() => page.locator(".photos img").count(), SOON).toBe(1);
  expect(await page.getAttribute(".photos img", "alt")).toBe("left dropout");
  await expect.poll(() => focusWords(page)).not.toMatch(/^BODY/);
  await page.locator(".photos h2").evaluate((el) => {
    (el as HTMLElement).tabIndex = -1;
    (el as HTMLElement).focus();
  });
  await reach(page, "button", /^Take away ?: left dropout$/);
  await page.keyboard.press("Enter");
  await expect.poll(() => page.locator(".photos img").count(), SOON).toBe(0);
  await expect.poll(() => focusWords(page), SOON).toMatch(/^H2 Photos/);
  await reach(page, "DisclosureTriangle", /Taken away: 1/);
  await page.keyboard.press("Enter");
  await reach(page, "button", /^Put back ?: left dropout$/);
  await page.keyboard.press("Enter");
  await expect.poll(() => page.locator(".photos img").count(), SOON).toBe(1);
  await expect.poll(() => focusWords(page), SOON).not.toMatch(/^BODY/);
});

it("takes a copy of everything and brings it in, choosing where it differs", { timeout: 240_000 }, async () => {
  await goTo(page, `${here.web.url}/`);
  await reach(page, "link", "Take a copy of everything");
  const coming = page.waitForEvent("download");
  await page.keyboard.press("Enter");
  const file = join(folder, "workshop.zip");
  await (await coming).saveAs(file);
  await here.web.workshop.edit("donor", "q1", ["measured", "head_tube"], 151);
  await goTo(page, `${here.web.url}/`);
  await reach(page, /button|textbox/, /^Bring in a copy/);
  const chooser = page.waitForEvent("filechooser");
  await page.keyboard.press("Enter");
  await (await chooser).setFiles(file);
  await page.waitForSelector(".copies h3", SOON);
  await expect.poll(() => focusWords(page)).not.toMatch(/^BODY/);
  await reach(page, "button", /^Take what comes/);
  await page.keyboard.press("Space");
  await reach(page, "button", "Take it in");
  await page.keyboard.press("Enter");
  await expect.poll(donor, SOON).toContain("head_tube: 145");
  await expect.poll(() => page.textContent(".copies"), SOON).toContain("was taken in");
  await expect.poll(() => focusWords(page), SOON).not.toMatch(/^BODY/);
});
