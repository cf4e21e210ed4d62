/** Another data folder is served on the same port: does what waits stay out of it, and is the person told? */
import { expect, it } from "vitest";
import { PHONE } from "./browser.js";
import { demo, devices, entries, field, kept, LONG, offline, show } from "./device.js";
import { shot } from "./shot.js";

const all = devices();
const { serving, device } = all;
/** Both workshops have every place of the other. */
const SAME = demo("quayside");

it("entries wait for the workshop that they were made for", { timeout: 360_000 }, async () => {
  const first = await serving(SAME);
  const page = await device(PHONE).page();
  await show(page, `${first.url}/b/quayside/measure`);
  await kept(page);
  await first.kill();
  await page.fill(field("chainstay"), "441");
  await expect.poll(() => offline(page)).toContain("1 entry waits");

  const second = await serving(SAME, Number(new URL(first.url).port));
  const line = page.locator(".apart");
  await line.waitFor(LONG);
  expect(await line.textContent()).toContain("1 entry waits in this browser for the one before");
  await line.locator("summary").click();
  expect(await line.textContent()).toContain("441");
  await shot(page, "other-workshop-phone");
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  await expect.poll(() => page.inputValue(field("chainstay")), LONG).toBe("442");
  // What is entered now is the second one's.
  await page.fill(field("head_tube"), "147");
  await expect.poll(() => entries(page), LONG).toHaveLength(1);
  await second.kill();
  const inSecond = await second.records((w) => w.exportText("donor", "q1"));
  expect(inSecond).toContain("chainstay: 442");
  expect(inSecond).toContain("head_tube: 147");

  await first.start(all.site());
  await expect.poll(() => entries(page), LONG).toEqual([]);
  await expect.poll(() => line.count(), LONG).toBe(0);
  await first.kill();
  const inFirst = await first.records((w) => w.exportText("donor", "q1"));
  expect(inFirst).toContain("chainstay: 441");
  expect(inFirst).toContain("head_tube: 145");
});
