/** Are all figures on all pages said in inches and with a comma where somebody wants that, and are both always read? */
import type { BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { all, type ForEveryone, goTo, openForEveryone, PAGES, spokenTree, turnTo } from "./everyone-pages.js";

let here: ForEveryone;
beforeAll(async () => {
  here = await openForEveryone();
}, 240_000);
afterAll(() => here?.close());

async function inWay(units: string, decimal: string): Promise<{ context: BrowserContext; page: Page }> {
  const opened = await here.open("/");
  await opened.page.getByLabel("Units").selectOption(units);
  await opened.page.getByLabel("Decimals").selectOption(decimal);
  return opened;
}

interface Said {
  readonly text: string;
  readonly beside: boolean;
}

/** Every text that is shown or named, without fields (file text), sources (editions, clauses) and moments. */
function textsOf(page: Page): Promise<Said[]> {
  return page.evaluate(() => {
    const said: Said[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const el = node.parentElement;
      const text = node.textContent?.trim() ?? "";
      if (
        el === null ||
        text === "" ||
        el.closest("textarea, option, script, noscript, .sources, .past, .settings, s") !== null
      )
        continue;
      said.push({ text, beside: el.closest(".metric") !== null });
    }
    for (const el of document.querySelectorAll("[aria-label]"))
      said.push({ text: el.getAttribute("aria-label") ?? "", beside: false });
    return said;
  });
}

/** Texts that the documents themselves hold, as they were written: titles, notes, labels. */
async function written(): Promise<string> {
  const docs = await here.web.workshop.listDocuments();
  const texts = await Promise.all(docs.map((d) => here.web.workshop.exportText(d.kind, d.id)));
  return texts.join("\n").replace(/\s+/g, " ").toLowerCase();
}

it("with a comma no figure keeps its point, on any page", { timeout: 550_000 }, async () => {
  const { context, page } = await inWay("inch", "comma");
  const own = await written();
  const kept: string[] = [];
  for (const path of PAGES) {
    await turnTo(page, here.web.url + path);
    for (const { text } of await textsOf(page))
      for (const hit of text.matchAll(/\S*\d\.\d\S*/g)) {
        // A thread, an edition, and words of somebody's own document.
        if (/^\(?\d\.\d+x\d/.test(hit[0]) || /\d\.\d+\.\d/.test(hit[0])) continue;
        if (
          own.includes(
            text
              .replace(/\s+/g, " ")
              .replace(/^t\d+ /, "")
              .toLowerCase(),
          )
        )
          continue;
        kept.push(`${path}: ${hit[0]} in "${text.slice(0, 90)}"`);
      }
  }
  await context.close();
  expect([...new Set(kept)]).toEqual([]);
});

it("in inches every length with its unit has the inches with it, on any page", { timeout: 550_000 }, async () => {
  const { context, page } = await inWay("inch", "point");
  const own = await written();
  const alone: string[] = [];
  for (const path of PAGES) {
    await turnTo(page, here.web.url + path);
    for (const { text, beside } of await textsOf(page)) {
      if (
        beside ||
        own.includes(
          text
            .replace(/\s+/g, " ")
            .replace(/^t\d+ /, "")
            .toLowerCase(),
        )
      )
        continue;
      for (const hit of text.matchAll(/\d[ \u00a0](?:mm|kg)\b(?![ \u00a0]\([^)]*[ \u00a0](?:in|lb)\)|²|³|\/)/g))
        alone.push(`${path}: ${text.slice(Math.max(0, hit.index - 40), hit.index + 30)}`);
    }
  }
  await context.close();
  expect([...new Set(alone)]).toEqual([]);
});

it("key figures are in inches with the millimetres small beside, and a voice hears the unit as a word", async () => {
  const { context, page } = await inWay("inch", "comma");
  await goTo(page, `${here.web.url}/b/quayside`);
  const figures = await page.$$eval(".key .nb", (found) => found.map((el) => el.textContent ?? ""));
  const lengths = figures.filter((f) => / in\b/.test(f));
  expect(lengths.length).toBeGreaterThan(2);
  for (const f of lengths) expect(f).toMatch(/^−?\d+,\d+ in/);
  expect(figures.filter((f) => /\bmm\b/.test(f))).toEqual([]);
  const spoken = all(await spokenTree(page))
    .filter((s) => s.role === "StaticText")
    .map((s) => s.name);
  expect(spoken.some((s) => /^−?\d+,\d+ plus or minus \d+,\d+ inches$/.test(s))).toBe(true);
  await context.close();
});

it("the drawings of the donor and of the measuring page speak inches", async () => {
  const { context, page } = await inWay("inch", "point");
  await goTo(page, `${here.web.url}/b/quayside/measure`);
  const texts = await page.$$eval("figure svg text", (found) => found.map((el) => el.textContent ?? ""));
  // The wheelbase of the demo is about a metre: 41 in.
  expect(
    texts.some((t) => /wheelbase 41\.\d+ ± \d\.\d+ in/.test(t)),
    texts.join(" | "),
  ).toBe(true);
  await context.close();
});

it("either is read in every field, whatever is shown; what could be two figures is refused with three ways", async () => {
  const { context, page } = await inWay("inch", "comma");
  await goTo(page, `${here.web.url}/b/quayside/measure`);
  const field = '[id="f-donor.measured.wheelbase"]';
  const said = () => page.textContent('[id="f-donor.measured.wheelbase-as"]');
  // 41.4 in = 1051.56 mm; 1051 mm = 41.378 in
  for (const [text, read] of [
    ["1051.0", "41,378 in"],
    ["1051,0", "41,378 in"],
    ["105.1 cm", "41,378 in"],
    ["41,4 in", "41,4 in"],
    ['41 3/8"', "41,375 in"],
  ] as const) {
    await page.fill(field, text);
    await expect.poll(said).toContain(`read ${read}`);
  }
  await page.fill(field, "1,051");
  await page.press(field, "Tab");
  await expect.poll(said).toMatch(/could be .*1\.051 or 1051|Write it as .*, or .*, or /);
  await context.close();
});

it("the first guess of the decimal sign is the browser's own language, and a choice is kept against it", async () => {
  const german = await here.open("/b/canalside", { locale: "de-DE" });
  expect(await german.page.getByLabel("Decimals").inputValue()).toBe("comma");
  await german.page.getByLabel("Decimals").selectOption("point");
  await german.page.reload();
  expect(await german.page.getByLabel("Decimals").inputValue()).toBe("point");
  const english = await here.open("/", { locale: "en-GB" });
  expect(await english.page.getByLabel("Decimals").inputValue()).toBe("point");
  await Promise.all([german.context.close(), english.context.close()]);
});
