/** Two windows on one build: does each see the other's edits, and is nothing ever written over unseen? */
import { rmSync } from "node:fs";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { chance } from "../scripts/chance.mjs";
import { openBrowser, TABLET } from "./browser.js";
import { shot } from "./shot.js";
import { buildPage, openWebWorkshop, type WebWorkshop } from "./web-workshop.js";

const LONG = { timeout: 30_000 } as const;
const FIELDS = ["head_tube", "wheelbase", "chainstay", "front_centre"] as const;
type Field = (typeof FIELDS)[number];
const field = (name: Field) => `[id="f-donor.measured.${name}"]`;

let site: string;
let browser: Browser;
let web: WebWorkshop;
const contexts: BrowserContext[] = [];
beforeAll(async () => {
  [site, browser] = await Promise.all([buildPage(), openBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  if (site !== undefined) rmSync(site, { recursive: true, force: true });
});
afterEach(async () => {
  for (const context of contexts.splice(0)) await context.close();
  await web.close();
});

async function device(): Promise<BrowserContext> {
  const context = await browser.newContext({ viewport: TABLET, reducedMotion: "reduce" });
  contexts.push(context);
  return context;
}

async function measuring(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await page.goto(`${web.url}/b/quayside/measure`);
  await page.waitForSelector(field("head_tube"));
  return page;
}

async function write(page: Page, name: Field, text: string): Promise<void> {
  await page.fill(field(name), text);
  await page.press(field(name), "Tab");
}

const pageOf = (page: Page) => page.textContent("main");
const waiting = (page: Page) =>
  page.evaluate(() => Object.keys(localStorage).filter((k) => k.startsWith("coldset.entry.")).length);

describe.each(["two windows of one browser", "two devices"])("%s", (what) => {
  const two = async (): Promise<[Page, Page]> => {
    web = await openWebWorkshop(site);
    const first = await device();
    const second = what === "two devices" ? await device() : first;
    return [await measuring(first), await measuring(second)];
  };

  it("each sees the other's edit, marked and in words", { timeout: 240_000 }, async () => {
    const [a, b] = await two();
    await write(a, "head_tube", "147");
    await expect.poll(() => b.inputValue(field("head_tube")), LONG).toBe("147");
    expect(await b.textContent(".bar-top")).toContain("Changed in another window");
    expect(await b.textContent(".bar-top")).toContain("head tube: 145 → 147");
    await shot(b, "two-windows-tablet");
    await write(b, "wheelbase", "1053");
    await expect.poll(() => a.inputValue(field("wheelbase")), LONG).toBe("1053");
    expect(await pageOf(a)).not.toContain("Two values for");
    // Windows of one browser share what waits, so the other window may show it before the records hold it.
    await expect.poll(() => web.workshop.exportText("donor", "q1"), LONG).toContain("wheelbase: 1053");
    expect(await web.workshop.exportText("donor", "q1")).toContain("head_tube: 147");
  });

  it("does not touch a field that is being written in; two values become a choice, in both a clear end", {
    timeout: 240_000,
  }, async () => {
    const [a, b] = await two();
    // Half a figure, that cannot be read yet.
    await b.focus(field("chainstay"));
    await b.fill(field("chainstay"), "44 m");
    await write(a, "chainstay", "443");
    await expect.poll(() => web.workshop.exportText("donor", "q1"), LONG).toContain("chainstay: 443");
    await b.waitForTimeout(1_000);
    expect(await b.inputValue(field("chainstay"))).toBe("44 m");
    await b.fill(field("chainstay"), "441");
    await b.press(field("chainstay"), "Tab");
    await b.waitForSelector(".trouble", LONG);
    expect(await b.textContent(".trouble")).toContain("You wrote 441. Meanwhile somebody else wrote 443.");
    expect(await web.workshop.exportText("donor", "q1")).toContain("chainstay: 443");
    await b.click(".trouble button:has-text('Keep yours: 441')");
    await expect.poll(() => web.workshop.exportText("donor", "q1"), LONG).toContain("chainstay: 441");
    await expect.poll(() => a.inputValue(field("chainstay")), LONG).toBe("441");
    await expect.poll(() => a.locator(".trouble").count(), LONG).toBe(0);
  });
});

it("shows what somebody else did by another door: a text put in, a document edited", { timeout: 240_000 }, async () => {
  web = await openWebWorkshop(site);
  const page = await measuring(await device());
  const text = (await web.workshop.exportText("donor", "q1")) ?? "";
  const from = Date.now();
  await web.workshop.putText(text.replace("wheelbase: 1052", "wheelbase: 1054"), "again.yaml");
  await expect.poll(() => page.inputValue(field("wheelbase")), { timeout: 20_000, interval: 20 }).toBe("1054");
  process.stderr.write(`another door, seen after ${Date.now() - from} ms\n`);
  expect(await page.textContent("[role=status]:has-text('Changed')")).toContain(
    "Changed in another window: wheelbase.",
  );
});

it.each([3, 8])(
  "seed %i: three windows on two devices, and a server that comes and goes: nothing is lost without a choice shown",
  {
    timeout: 480_000,
  },
  async (seed) => {
    web = await openWebWorkshop(site);
    const random = chance(seed);
    const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
    const one = await device();
    const pages = [await measuring(one), await measuring(one), await measuring(await device())];
    const before = { head_tube: 145, wheelbase: 1052, chainstay: 442, front_centre: 0 };
    const wrote: { readonly page: number; readonly name: Field; readonly value: string }[] = [];
    const shown = new Set<string>();
    let up = true;
    for (let step = 0; step < 24; step += 1) {
      if (random() < 0.2) {
        if (up) await web.unplug();
        else await web.plugIn();
        up = !up;
      }
      const at = Math.floor(random() * pages.length);
      const name = pick(FIELDS);
      // Each value once, near what is there, so that it can be told in the records who wrote it.
      const value = String((before[name] === 0 ? 600 : before[name]) + (step + 1) / 100);
      await write(pages[at] as Page, name, value);
      wrote.push({ page: at, name, value });
      // Longer than keystrokes of one figure follow each other.
      await (pages[at] as Page).waitForTimeout(450 + random() * 300);
    }
    if (!up) await web.plugIn();
    const settled = async (): Promise<boolean> => {
      for (const page of pages) {
        const box = page.locator(".trouble[data-entry]").first();
        if ((await box.count()) > 0) {
          const key = (await box.getAttribute("data-entry", { timeout: 2_000 }).catch(() => null)) ?? "none";
          const words = (await box.textContent({ timeout: 2_000 }).catch(() => null)) ?? "";
          for (const v of words.matchAll(/\d+\.\d+|\d{3,4}/g)) shown.add(v[0]);
          // Only the choice whose words were read, not one that has come in its place meanwhile.
          const choice = page.locator(`.trouble[data-entry="${key}"] button`).nth(random() < 0.5 ? 0 : 1);
          if (words !== "") await choice.click({ timeout: 2_000 }).catch(() => undefined);
          return false;
        }
      }
      const left = await Promise.all(pages.map(waiting));
      return left.every((n) => n === 0);
    };
    await expect.poll(settled, { timeout: 150_000, interval: 300 }).toBe(true);
    const history = await web.workshop.history("donor", "q1");
    const stood = new Set(history.flatMap((h) => [...h.after.matchAll(/\d+(?:\.\d+)?/g)].map((m) => m[0])));
    for (const w of wrote) {
      // What this device wrote into the place later was written knowing it, and a choice shows the last of a place.
      const device = (page: number) => (page < 2 ? "one" : "two");
      const later = wrote
        .slice(wrote.indexOf(w) + 1)
        .some((l) => device(l.page) === device(w.page) && l.name === w.name && shown.has(l.value));
      expect(stood.has(w.value) || shown.has(w.value) || later, `${w.value} of window ${w.page} is lost`).toBe(true);
    }
    // Each once: no value came back after another had followed it, but by a choice.
    for (const w of wrote) {
      const times = history.filter(
        (h) =>
          h.path?.[1] === w.name &&
          h.after.includes(`${w.name}: ${w.value}`) &&
          !(h.before ?? "").includes(`${w.name}: ${w.value}`),
      );
      if (!shown.has(w.value)) expect(times.length, w.value).toBeLessThanOrEqual(1);
    }
    // All windows end with the same.
    const end = await web.workshop.exportText("donor", "q1");
    for (const name of FIELDS) {
      const last = end?.match(new RegExp(`^\\s+${name}: (\\S+)`, "m"))?.[1];
      for (const page of pages) await expect.poll(() => page.inputValue(field(name)), LONG).toBe(last);
    }
  },
);
