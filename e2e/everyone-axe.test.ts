/** What does a general checker find? Nothing of any impact, on any page, in day and dim light, at 390 and 1024 px. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { PHONE, TABLET } from "./browser.js";
import { axeFindings, BUILDS, type ForEveryone, openForEveryone, PAGES, turnTo } from "./everyone-pages.js";

const LOOKS = [
  [TABLET, "dim"],
  [PHONE, "day"],
  [PHONE, "dim"],
  [TABLET, "day"],
] as const;

/** The same question of another build is made of the same parts: there each is looked at once, in one of the four ways. */
function looksAt(path: string): readonly (typeof LOOKS)[number][] {
  const n = Number(/\/(?:moorside|canalside)\/q\/(\d+)$/.exec(path)?.[1] ?? 0);
  return n === 0 ? LOOKS : LOOKS.slice(n % 4, (n % 4) + 1);
}

let here: ForEveryone;
beforeAll(async () => {
  here = await openForEveryone();
}, 240_000);
afterAll(() => here?.close());

describe.each(["", ...BUILDS])("pages of %s", (build) => {
  it("no finding of any impact", { timeout: 550_000 }, async () => {
    const { context, page } = await here.open("/", { reducedMotion: "reduce" });
    const found: string[] = [];
    for (const path of PAGES.filter((p) => (build === "" ? !p.startsWith("/b/") : p.startsWith(`/b/${build}`)))) {
      await turnTo(page, here.web.url + path);
      for (const [size, light] of looksAt(path)) {
        await page.setViewportSize(size);
        await page.getByLabel("Light").selectOption(light);
        found.push(...(await axeFindings(page)).map((f) => `${path} ${size.width} ${light}: ${f}`));
      }
    }
    await context.close();
    expect(found).toEqual([]);
  });
});
