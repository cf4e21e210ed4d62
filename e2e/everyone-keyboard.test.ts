/** Can the work on a build be done by the keyboard alone, and does the focus stay in hand after every step? */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { type ForEveryone, goTo, openForEveryone } from "./everyone-pages.js";
import { focusWords, nameOf, reach } from "./keyboard.js";

const SOON = { timeout: 30_000 } as const;
let here: ForEveryone;
let page: Page;
beforeAll(async () => {
  here = await openForEveryone();
  ({ page } = await here.open("/", { reducedMotion: "reduce" }));
}, 240_000);
afterAll(() => here?.close());

const donor = () => here.web.workshop.exportText("donor", "q1");
const build = () => here.web.workshop.exportText("build", "quayside");

it("makes a new build, leaves it unmeasured, and stands on its board", { timeout: 240_000 }, async () => {
  await goTo(page, `${here.web.url}/`);
  await reach(page, "link", "A new build");
  await page.keyboard.press("Enter");
  await page.waitForURL("**/new");
  await reach(page, "textbox", "In your words");
  await page.keyboard.type("By hand");
  await page.keyboard.press("Enter");
  await expect.poll(() => focusWords(page), SOON).toMatch(/^H1/);
  expect(await focusWords(page)).not.toContain("What do you call this build");
  await reach(page, "button", "Back");
  await page.keyboard.press("Enter");
  await expect.poll(() => focusWords(page), SOON).toContain("What do you call this build");
  await reach(page, "button", "Make it and open its board");
  await page.keyboard.press("Enter");
  await page.waitForURL("**/b/by-hand");
  await expect.poll(() => focusWords(page), SOON).toMatch(/^H1/);
});

it("gives a build another title, puts it away and takes it out again", { timeout: 240_000 }, async () => {
  await goTo(page, `${here.web.url}/`);
  await reach(page, "button", "Rename Moorside");
  await page.keyboard.press("Enter");
  await expect.poll(() => focusWords(page)).not.toMatch(/^BODY/);
  await reach(page, "textbox", "Title of Moorside");
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("a bag and a hill");
  await page.keyboard.press("Enter");
  await expect.poll(() => page.textContent("main"), SOON).toContain("Moorside has a new title.");
  expect(await focusWords(page)).not.toMatch(/^BODY/);
  await reach(page, "button", "Put away Moorside");
  await page.keyboard.press("Enter");
  await expect.poll(() => page.textContent("main"), SOON).toContain("Moorside is put away, and kept.");
  await expect.poll(() => focusWords(page)).not.toMatch(/^BODY/);
  await page.locator("main h1").focus();
  await reach(page, /DisclosureTriangle|group/, /Put away/);
  await page.keyboard.press("Enter");
  await reach(page, "button", "Take out again Moorside");
  await page.keyboard.press("Enter");
  await expect.poll(() => page.textContent("main"), SOON).toContain("Moorside is in the list again.");
  await expect.poll(() => focusWords(page)).not.toMatch(/^BODY/);
});

it("measures a value, takes it back and puts it back, by its own buttons and by keys", {
  timeout: 240_000,
}, async () => {
  await goTo(page, `${here.web.url}/b/quayside/measure`);
  await reach(page, "textbox", /^Head tube/);
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("14,6 cm");
  await expect.poll(donor, SOON).toContain("head_tube: 14,6 cm");
  await page.locator("main h1").focus();
  await reach(page, "button", "Take it back");
  await page.keyboard.press("Enter");
  await expect.poll(donor, SOON).toContain("head_tube: 145");
  await expect.poll(() => focusWords(page)).not.toMatch(/^BODY/);
  await page.locator("main h1").focus();
  await reach(page, "button", "Put it back");
  await page.keyboard.press("Enter");
  await expect.poll(donor, SOON).toContain("head_tube: 14,6 cm");
  await expect.poll(() => focusWords(page)).not.toMatch(/^BODY/);
  await page.locator("main h1").focus();
  await page.keyboard.press("u");
  await expect.poll(donor, SOON).toContain("head_tube: 145");
});

it("opens question 13 by its number, its working, and goes back", { timeout: 120_000 }, async () => {
  await goTo(page, `${here.web.url}/b/quayside`);
  await page.keyboard.press("1");
  await page.keyboard.press("3");
  await page.waitForURL("**/q/13");
  await expect.poll(() => focusWords(page)).toMatch(/^H1 Did I mis-measure\?/);
  await reach(page, "link", /All questions/);
  await page.keyboard.press("Enter");
  await page.waitForURL(/\/b\/quayside#q13$/);
  await expect.poll(() => focusWords(page)).not.toMatch(/^BODY/);
});

it("chooses a part and hears why another is refused", { timeout: 120_000 }, async () => {
  await goTo(page, `${here.web.url}/b/quayside/fit`);
  await reach(page, "button", /^FC/);
  await page.keyboard.press("Enter");
  expect(await page.textContent("#choose")).toContain("FC is refused by rule S5");
  expect(await focusWords(page)).toMatch(/^BUTTON FC/);
  const other = page.locator("#choose button[aria-pressed=false]:not([aria-disabled=true])").first();
  const name = (await other.textContent())?.split(" ")[0] ?? "";
  await page.locator("main h1").focus();
  await reach(page, "button", new RegExp(`^${name}\\b`));
  await page.keyboard.press("Space");
  await expect.poll(build, SOON).toMatch(new RegExp(`: ${name}\\b`));
  await expect.poll(() => focusWords(page)).toMatch(new RegExp(`^BUTTON ${name}`));
});

it("signs a gate, and the focus stays at the gate", { timeout: 120_000 }, async () => {
  await goTo(page, `${here.web.url}/b/quayside/do`);
  await reach(page, "textbox", "By");
  await page.keyboard.type("A. Person");
  await page.keyboard.press("Tab");
  await page.keyboard.type("2026-05-02");
  await page.keyboard.press("Tab");
  await page.keyboard.type("all clear, bare");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect.poll(build, SOON).toContain("A. Person");
  await expect.poll(() => focusWords(page)).toMatch(/^H3/);
  expect(await page.evaluate(() => document.activeElement?.closest(".gate")?.textContent)).toContain(
    "Signed by A. Person",
  );
});

it("settles a conflict", { timeout: 120_000 }, async () => {
  await goTo(page, `${here.web.url}/b/quayside/measure`);
  await page.route("**/api/live/**", (route) => route.abort());
  const field = '[id="f-donor.measured.chainstay"]';
  await reach(page, "textbox", await nameOf(page, field));
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("44");
  await here.web.workshop.edit("donor", "q1", ["measured", "chainstay"], 443);
  await page.keyboard.type("1");
  await page.keyboard.press("Tab");
  await page.waitForSelector(".trouble", SOON);
  await page.locator("main h1").focus();
  await reach(page, "button", /^Keep yours: 441/);
  await page.keyboard.press("Enter");
  await expect.poll(donor, SOON).toContain("chainstay: 441");
  await expect.poll(() => page.locator(".trouble").count(), SOON).toBe(0);
  await expect.poll(() => focusWords(page)).not.toMatch(/^BODY/);
});

it("switches light, units, decimals and keys; each is kept", { timeout: 120_000 }, async () => {
  await goTo(page, `${here.web.url}/b/quayside`);
  const pick = async (name: string, key: string) => {
    await page.locator("body").evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await reach(page, "combobox", name);
    await page.keyboard.type(key);
  };
  await pick("Light", "dim");
  await pick("Units", "inch");
  await pick("Decimals", "with a c");
  await reach(page, "button", "Keys are on");
  await page.keyboard.press("Space");
  expect(await focusWords(page)).toContain("Keys are off");
  await page.reload();
  await page.waitForSelector("main h1");
  expect(await page.evaluate(() => document.documentElement.dataset.light)).toBe("dim");
  expect(await page.getByLabel("Units").inputValue()).toBe("inch");
  expect(await page.getByLabel("Decimals").inputValue()).toBe("comma");
  await page.locator("main h1").focus();
  await page.keyboard.press("7");
  await page.waitForTimeout(900);
  expect(page.url()).not.toContain("/q/");
});
