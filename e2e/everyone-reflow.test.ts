/** Does every page hold at 200 % and at 320 px, without motion, in forced colours, and in the light that was chosen? */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { type ForEveryone, goTo, openForEveryone, PAGES, SORTS, turnTo } from "./everyone-pages.js";

let here: ForEveryone;
beforeAll(async () => {
  here = await openForEveryone();
}, 240_000);
afterAll(() => here?.close());

/** Sideways scroll, text that is cut off, and text that lies on other text. */
async function misfits(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const over = document.documentElement.scrollWidth - innerWidth;
    if (over > 0) found.push(`${over} px sideways`);
    const shown = (el: Element) =>
      el.checkVisibility({ opacityProperty: true, visibilityProperty: true }) &&
      el.closest(".hide, .skip, noscript") === null &&
      // The head of a table that stands as blocks on a phone is for a screen reader alone.
      getComputedStyle(el.closest("thead") ?? el).clipPath !== "inset(50%)";
    const boxes: { readonly box: DOMRect; readonly el: Element; readonly text: string }[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const el = node.parentElement;
      const text = node.textContent?.trim() ?? "";
      // A drawing has its own checks; what a closed disclosure or a select holds is not laid out.
      if (el === null || text === "" || el.closest("svg, option, script") !== null || !shown(el)) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      for (const box of range.getClientRects()) {
        if (box.width < 1 || box.height < 1) continue;
        if (box.right > innerWidth + 1 || box.left < -1) found.push(`out of the window: ${text.slice(0, 40)}`);
        boxes.push({ box, el, text });
      }
      for (let up: Element | null = el; up !== null; up = up.parentElement) {
        const style = getComputedStyle(up);
        if (!/hidden|clip/.test(style.overflow + style.overflowX + style.overflowY)) continue;
        if (up.scrollWidth > up.clientWidth + 1 || up.scrollHeight > up.clientHeight + 1)
          found.push(`cut off: ${text.slice(0, 40)}`);
      }
    }
    const bars = new Set([...document.querySelectorAll(".bar-top, .zones nav")]);
    // What stays in sight while the sheet is scrolled lies over the sheet by intention.
    const barOf = (el: Element) =>
      [...bars].find((bar) => bar.contains(el) && /sticky|fixed/.test(getComputedStyle(bar).position));
    const sorted = boxes.filter((b) => barOf(b.el) === undefined).sort((a, b) => a.box.top - b.box.top);
    for (const [i, a] of sorted.entries()) {
      for (let j = i + 1; j < sorted.length; j += 1) {
        const b = sorted[j];
        if (b === undefined || b.box.top > a.box.bottom) break;
        if (a.el === b.el || a.el.contains(b.el) || b.el.contains(a.el)) continue;
        const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
        const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
        // Line boxes of neighbouring lines touch; letters lie in the middle of them.
        if (wide > 2 && high > 0.45 * Math.min(a.box.height, b.box.height))
          found.push(`"${a.text.slice(0, 30)}" on "${b.text.slice(0, 30)}"`);
      }
    }
    return [...new Set(found)];
  });
}

async function faultsAt(at: ForEveryone, width: number, paths: readonly string[], scale = 1): Promise<string[]> {
  const { context, page } = await at.open("/", {
    viewport: { width, height: 800 },
    reducedMotion: "reduce",
    deviceScaleFactor: scale,
  });
  const faults: string[] = [];
  for (const path of paths) {
    await turnTo(page, at.web.url + path);
    faults.push(...(await misfits(page)).map((f) => `${path}: ${f}`));
  }
  await context.close();
  return faults;
}

it("1280 px at 200 %: nothing is cut off, overlaps or scrolls sideways", { timeout: 400_000 }, async () => {
  expect(await faultsAt(here, 640, SORTS, 2)).toEqual([]);
});

it("1280 px at 400 %, as in WCAG 2.2, 1.4.10: neither", { timeout: 400_000 }, async () => {
  expect(await faultsAt(here, 320, PAGES)).toEqual([]);
});

it("the browser's own letters at 200 %: neither", { timeout: 550_000 }, async () => {
  // Twice the usual 16 px, as somebody sets it in the browser's settings.
  const large = await openForEveryone(["--blink-settings=defaultFontSize=32"]);
  try {
    const { context, page } = await large.open("/");
    expect(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize)).toBe("32px");
    await context.close();
    expect(await faultsAt(large, 1280, SORTS)).toEqual([]);
    expect(await faultsAt(large, 640, SORTS)).toEqual([]);
  } finally {
    await large.close();
  }
});

it("nothing moves where less motion is wanted, not after an edit either; elsewhere the stroke does", {
  timeout: 120_000,
}, async () => {
  for (const [reducedMotion, moves] of [
    ["reduce", false],
    ["no-preference", true],
  ] as const) {
    const { context, page } = await here.open("/b/quayside/measure", { reducedMotion });
    await page.evaluate(() => {
      const seen: string[] = [];
      Object.assign(globalThis, { seen });
      for (const kind of ["animationstart", "transitionrun"])
        document.addEventListener(kind, (event) => seen.push(`${kind} ${(event.target as Element).className}`));
    });
    await page.fill('[id="f-donor.measured.top_tube_cc"]', moves ? "552" : "551");
    await page.getByRole("navigation", { name: "Stations" }).getByRole("link", { name: "Ask" }).click();
    await page.waitForSelector(".row.moved, .settled .moved");
    await page.waitForTimeout(300);
    const seen = (await page.evaluate(() => Reflect.get(globalThis, "seen"))) as string[];
    if (moves) expect(seen.length).toBeGreaterThan(0);
    else expect(seen).toEqual([]);
    for (const path of moves ? [] : SORTS) {
      await goTo(page, here.web.url + path);
      expect(await page.evaluate(() => document.getAnimations().length), path).toBe(0);
    }
    await context.close();
  }
});

it("forced colours keep the outlines of the verdicts, the edges of fields and the ring of the focus", {
  timeout: 120_000,
}, async () => {
  for (const colorScheme of ["light", "dark"] as const) {
    const { context, page } = await here.open("/b/quayside", { forcedColors: "active", colorScheme });
    const outlines = await page.evaluate(() =>
      Object.fromEntries(
        [...document.querySelectorAll(".v")].map((el) => {
          const s = getComputedStyle(el);
          const ground = getComputedStyle(document.documentElement).backgroundColor;
          const edges = [s.borderTopWidth, s.borderRightWidth, s.borderBottomWidth, s.borderLeftWidth].map(
            (w) => Number.parseFloat(w) > 0,
          );
          const mark = el.querySelector("svg path");
          return [
            [...el.classList].find((c) => c.startsWith("v-")) ?? "",
            {
              edges: edges.filter(Boolean).length,
              seen: s.color !== ground || s.backgroundColor !== ground,
              mark: mark === null ? "" : getComputedStyle(mark).stroke,
              filled: s.backgroundColor !== ground,
            },
          ];
        }),
      ),
    );
    expect(Object.keys(outlines).length).toBeGreaterThan(3);
    for (const [kind, look] of Object.entries(outlines)) expect(look.seen, kind).toBe(true);
    expect(new Set(Object.values(outlines).map((l) => `${l.edges} ${l.mark !== ""} ${l.filled}`)).size).toBeGreaterThan(
      2,
    );
    await page.keyboard.press("Tab");
    await page.keyboard.press("Tab");
    const ring = await page.evaluate(() => {
      const s = getComputedStyle(document.activeElement ?? document.body);
      return [
        s.outlineStyle,
        s.outlineWidth,
        s.outlineColor === getComputedStyle(document.documentElement).backgroundColor,
      ];
    });
    expect(ring).toEqual(["solid", "4px", false]);
    await goTo(page, `${here.web.url}/b/quayside/measure`);
    const edge = await page.$eval(".field .box, .resid input", (el) => {
      const s = getComputedStyle(el);
      return [
        s.borderBottomStyle !== "none",
        s.borderBottomColor === getComputedStyle(document.documentElement).backgroundColor,
      ];
    });
    expect(edge).toEqual([true, false]);
    await context.close();
  }
});

it("the light follows the device, and a light that was chosen is kept against it", async () => {
  const ground = (page: Page) => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  const light = await here.open("/", { colorScheme: "light" });
  const dark = await here.open("/", { colorScheme: "dark" });
  const [day, dim] = [await ground(light.page), await ground(dark.page)];
  expect(day).not.toBe(dim);
  await light.page.getByLabel("Light").selectOption("dim");
  expect(await ground(light.page)).toBe(dim);
  await light.page.reload();
  expect(await ground(light.page)).toBe(dim);
  await dark.page.getByLabel("Light").selectOption("day");
  await dark.page.reload();
  expect(await ground(dark.page)).toBe(day);
  await Promise.all([light.context.close(), dark.context.close()]);
});

it("the ring of the focus is seen on everything that the keyboard comes to", { timeout: 300_000 }, async () => {
  const { context, page } = await here.open("/");
  const faults: string[] = [];
  for (const path of SORTS) {
    await goTo(page, here.web.url + path);
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    for (let i = 0; i < 60; i += 1) {
      await page.keyboard.press("Tab");
      const seen = await page.evaluate(() => {
        const el = document.activeElement;
        if (el === null || el === document.body) return "end";
        const s = getComputedStyle(el);
        const box = el.getBoundingClientRect();
        const ok =
          s.outlineStyle !== "none" &&
          Number.parseFloat(s.outlineWidth) >= 3 &&
          box.width > 0 &&
          box.bottom > 0 &&
          box.top < innerHeight;
        return ok
          ? ""
          : `${el.tagName} ${el.className} ${el.textContent?.slice(0, 30)} ${s.outlineStyle} ${s.outlineWidth} ${box.top}`;
      });
      if (seen === "end") break;
      if (seen !== "") faults.push(`${path}: ${seen}`);
    }
  }
  await context.close();
  expect(faults).toEqual([]);
});
