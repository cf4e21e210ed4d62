/** Does the page do its whole work with the server gone, and does every entry arrive once, in order, when it is back? */
import { describe, expect, it } from "vitest";
import { PHONE } from "./browser.js";
import { demo, devices, entries, field, kept, LONG, offline, show } from "./device.js";
import { shot } from "./shot.js";

const all = devices();
const { serving, device } = all;
const meant = (text: string | undefined, line: string) => text?.split("\n").some((l) => l.includes(line)) === true;

describe("with the server gone", () => {
  it("opens, reckons and takes entries in every build that was opened here, also started cold, and hands them over in order", {
    timeout: 480_000,
  }, async () => {
    const server = await serving();
    const tablet = device();
    let page = await tablet.page();
    await show(page, `${server.url}/b/canalside`);
    await show(page, `${server.url}/b/quayside/measure`);
    await kept(page);
    await show(page, `${server.url}/`);
    await page.waitForSelector("a[href='/b/quayside']");
    await server.kill();

    await show(page, `${server.url}/b/quayside/measure`);
    expect(await offline(page)).toContain("Offline: nothing waits. All sheets still reckon.");
    const before = await page.textContent(".bar-top");
    await page.fill(field("top_tube_cc"), "551");
    await expect.poll(() => page.textContent(".bar-top")).not.toBe(before);
    expect(await page.textContent(".bar-top")).toContain("Since your last edit");
    await expect
      .poll(() => offline(page))
      .toContain("Offline: 1 entry waits. All sheets still reckon. It goes out by itself");
    await shot(page, "offline-measure-tablet");

    await tablet.close();
    page = await tablet.page();
    await show(page, `${server.url}/`);
    expect(await offline(page)).toContain("1 entry waits");
    await page.click("a[href='/b/canalside']");
    await show(page, `${server.url}/b/canalside/measure`);
    await page.fill(field("head_tube"), "147");
    await show(page, `${server.url}/b/quayside/fit`);
    await page.locator("#choose button[aria-pressed='false']:not([aria-disabled='true'])").first().click();
    await show(page, `${server.url}/b/quayside/measure`);
    expect(await page.inputValue(field("top_tube_cc"))).toBe("551");
    await page.fill(field("wheelbase"), "1051");
    await expect.poll(() => offline(page)).toContain("4 entries wait");
    for (const [place, words] of [
      ["/b/quayside", "twenty"],
      ["/b/quayside/q/13", ""],
      ["/b/quayside/do", ""],
      ["/b/canalside/q/1", ""],
    ] as const) {
      await show(page, server.url + place);
      expect((await page.textContent("main"))?.length, place).toBeGreaterThan(300);
      expect(await page.locator("main svg").count(), place).toBeGreaterThan(0);
      expect(await page.textContent("main"), place).toContain(words === "twenty" ? "open" : "");
    }
    await tablet.close();

    await server.start(all.site());
    page = await tablet.page();
    await show(page, `${server.url}/`);
    await expect.poll(() => entries(page), LONG).toEqual([]);
    await tablet.close();
    await server.kill();

    await server.records(async (workshop) => {
      const made = [];
      for (const [kind, id] of [
        ["donor", "q1"],
        ["donor", donorOf("canalside")],
        ["build", "quayside"],
      ] as const)
        for (const h of await workshop.history(kind, id)) if (h.path !== null) made.push({ ...h, kind, id });
      made.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.revision - b.revision));
      expect(
        made.map((h) => [
          h.id,
          h.path
            ?.slice(0, 2)
            .join(".")
            .replace(/^chosen\..*/, "chosen"),
        ]),
      ).toEqual([
        ["q1", "measured.top_tube_cc"],
        [donorOf("canalside"), "measured.head_tube"],
        ["quayside", "chosen"],
        ["q1", "measured.wheelbase"],
      ]);
      expect(meant(await workshop.exportText("donor", "q1"), "top_tube_cc: 551")).toBe(true);
      expect(meant(await workshop.exportText("donor", donorOf("canalside")), "head_tube: 147")).toBe(true);
    });
  });

  it("says that a build which was not opened here cannot be shown, and what was", { timeout: 300_000 }, async () => {
    const server = await serving();
    const phone = device(PHONE);
    const page = await phone.page();
    await show(page, `${server.url}/b/quayside`);
    await kept(page);
    await server.kill();
    await show(page, `${server.url}/b/canalside`);
    expect(await page.textContent("main")).toContain("server does not answer");
    await show(page, `${server.url}/b/quayside`);
    expect(await page.textContent("main h1")).not.toContain("server");
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    await shot(page, "offline-ask-phone");
  });

  it("makes an edit once where the server was killed after it was on the disk and before it answered", {
    timeout: 300_000,
  }, async () => {
    const server = await serving();
    await server.kill();
    await server.start(all.site(), 1);
    const page = await device().page();
    await show(page, `${server.url}/b/quayside/measure`);
    await page.fill(field("head_tube"), "146");
    await expect.poll(server.alive, LONG).toBe(false);
    expect(await offline(page)).toContain("1 entry waits");
    // A field that is being written in is not written over.
    await page.press(field("head_tube"), "Tab");
    // Somebody else writes over it, having seen it.
    await server.records((w) => w.edit("donor", "q1", ["measured", "head_tube"], 148));
    await server.start(all.site());
    await expect.poll(() => page.inputValue(field("head_tube")), LONG).toBe("148");
    expect(await page.locator(".trouble").count()).toBe(0);
    await server.kill();
    const values = await server.records((w) => w.history("donor", "q1"));
    expect(values.filter((h) => h.path !== null)).toHaveLength(2);
  });

  it("shows both values where somebody else wrote meanwhile, one choice after the other; both as readings is one of them", {
    timeout: 360_000,
  }, async () => {
    const server = await serving();
    const page = await device().page();
    await show(page, `${server.url}/b/quayside/measure`);
    await kept(page);
    await server.kill();
    await page.fill(field("top_tube_cc"), "549");
    await page.fill(field("chainstay"), "441");
    await page.fill(field("wheelbase"), "1051");
    await expect.poll(() => offline(page)).toContain("3 entries wait");
    await server.records(async (w) => {
      await w.edit("donor", "q1", ["measured", "top_tube_cc"], 551);
      await w.edit("donor", "q1", ["measured", "chainstay"], 443);
      // The same, and another place: neither is a quarrel.
      await w.edit("donor", "q1", ["measured", "wheelbase"], 1051);
      await w.edit("donor", "q1", ["measured", "head_tube"], 147);
    });
    await server.start(all.site());
    const box = page.locator(".trouble");
    await box.waitFor(LONG);
    const words = await box.textContent();
    expect(words).toContain("You wrote 549. Meanwhile somebody else wrote 551.");
    expect(words).toContain("550 ± 1 mm: the average, with a spread that covers both");
    await shot(page, "offline-conflict-tablet");
    await box.locator("button:has-text('Use both as readings')").click();
    await expect.poll(() => box.textContent(), LONG).toContain("You wrote 441. Meanwhile somebody else wrote 443.");
    await box.locator("button:has-text('Take the other: 443')").click();
    await expect.poll(() => box.count(), LONG).toBe(0);
    await expect.poll(() => page.inputValue(field("top_tube_cc"))).toBe("550 ± 1 mm");
    await expect.poll(() => page.inputValue(field("chainstay"))).toBe("443");
    await expect.poll(() => page.inputValue(field("head_tube"))).toBe("147");
    await expect.poll(() => entries(page), LONG).toEqual([]);
    await server.kill();
    const text = await server.records((w) => w.exportText("donor", "q1"));
    expect(meant(text, "top_tube_cc: 550 ± 1 mm")).toBe(true);
    expect(meant(text, "chainstay: 443")).toBe(true);
    expect(meant(text, "wheelbase: 1051")).toBe(true);
  });
});

function donorOf(build: string): string {
  const id = demo(build).match(/^donor: (\S+)/m)?.[1];
  if (id === undefined) throw new Error(`${build} names no donor`);
  return id;
}
