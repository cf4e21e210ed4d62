/** Does a change come back by keyboard, after a restart of server and page, and do named versions compare and restore? */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { reckonHere, startServer } from "@coldset/server";
import { openWorkshop, type Workshop } from "@coldset/store";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { openBrowser, PHONE, TABLET } from "./browser.js";
import { axeFindings } from "./everyone-pages.js";
import { shot } from "./shot.js";
import { buildPage, demoText } from "./web-workshop.js";

const TOP_TUBE = "measured.top_tube_cc";

let site: string;
let browser: Browser;
const folder = mkdtempSync(join(tmpdir(), "coldset-e2e-history-"));
let workshop: Workshop;
let stop: () => Promise<void>;
let url: string;

/** The machine may be busy with other tests. */
const until = <T>(look: () => T) => expect.poll(look, { timeout: 20_000 });

/** Server and records, as after switching the machine on: on the same port, so that the page's address stays. */
async function start(port: number): Promise<void> {
  const opened = await openWorkshop(folder, { who: "the page" });
  if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
  workshop = opened.workshop;
  if ((await workshop.listDocuments()).length === 0)
    expect((await workshop.putText(demoText(), "quayside.yaml")).kind).toBe("put");
  const started = await startServer({
    port,
    workshop,
    webRoot: site,
    sheets: new Map(),
    ...reckonHere(() => ({})),
    book: async () => ({ kind: "refused", refusals: [] }),
  });
  if (started.kind === "refused") throw new Error(JSON.stringify(started.refusals));
  url = started.url.replace(/\/$/, "");
  stop = async () => {
    await started.close();
    await opened.workshop.close();
  };
}

beforeAll(async () => {
  [site, browser] = await Promise.all([buildPage(), openBrowser()]);
  await start(0);
});
afterAll(async () => {
  await browser?.close();
  await stop?.();
  if (site !== undefined) rmSync(site, { recursive: true, force: true });
  rmSync(folder, { recursive: true, force: true });
});

const topTube = async () => /top_tube_cc: (\S+)/.exec((await workshop.exportText("donor", "q1")) ?? "")?.[1];
const historyOf = async () => {
  const told = await workshop.buildHistory("quayside");
  if (told.kind === "refused") throw new Error(JSON.stringify(told));
  return told.changes.map((c) => c.what);
};

async function opened(path: string, viewport: { readonly width: number; readonly height: number } = TABLET) {
  const context = await browser.newContext({ viewport, reducedMotion: "reduce" });
  const page = await context.newPage();
  await page.goto(url + path);
  await page.waitForSelector("main h1");
  await page.evaluate(() => document.fonts.ready);
  return { context, page };
}

/** Goes on with Tab until this is under the focus. */
async function tabTo(page: Page, name: string | RegExp): Promise<void> {
  const wanted = page.getByRole("button", { name }).or(page.getByLabel(name)).first();
  await wanted.waitFor();
  for (let n = 0; n < 80; n += 1) {
    if (await wanted.evaluate((el) => el === document.activeElement)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`the keyboard does not come to ${String(name)}`);
}

async function restart(): Promise<void> {
  const port = Number(new URL(url).port);
  await stop();
  await start(port);
}

it("takes back and puts back by key, after a restart of server and page", { timeout: 240_000 }, async () => {
  const first = await opened("/b/quayside/measure");
  const field = first.page.getByRole("textbox", { name: /^Top tube/ }).first();
  await field.focus();
  await first.page.keyboard.press("ControlOrMeta+a");
  await first.page.keyboard.type("551");
  await until(topTube).toBe("551");
  await first.context.close();
  await restart();

  const { context, page } = await opened("/b/quayside");
  const status = page.locator("p[role=status]");
  await page.keyboard.press("u");
  await until(topTube).toBe("537");
  await until(() => status.allTextContents()).toContainEqual(expect.stringContaining("551 → 537"));
  await page.keyboard.press("r");
  await until(topTube).toBe("551");
  await until(() => status.allTextContents()).toContainEqual(expect.stringContaining("Put back: donor q1"));
  await page.keyboard.press("u");
  await until(topTube).toBe("537");
  await page.keyboard.press("u");
  await until(() => status.allTextContents()).toContainEqual(expect.stringContaining("nothing to take back"));
  await restart();
  await page.reload();
  await page.waitForSelector("main h1");
  await page.keyboard.press("r");
  await until(topTube).toBe("551");
  await context.close();
});

it("keeps what is taken back on the page as an undo, and puts it back", { timeout: 120_000 }, async () => {
  const { context, page } = await opened("/b/quayside/measure");
  const before = (await historyOf()).length;
  const field = page.getByRole("textbox", { name: /^Wheelbase/ }).first();
  const wheelbase = async () => /wheelbase: (\S+)/.exec((await workshop.exportText("donor", "q1")) ?? "")?.[1];
  await field.focus();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("1055");
  await until(wheelbase).toBe("1055");
  await page.getByRole("button", { name: "Take it back" }).first().click();
  await until(wheelbase).toBe("1052");
  const done = (await historyOf()).slice(0, -before);
  expect(done).toContain("undo");
  expect(done.filter((what) => what === "edit").length).toBe(done.filter((what) => what === "undo").length);
  await page.getByRole("button", { name: "Put it back" }).first().click();
  await until(wheelbase).toBe("1055");
  await context.close();
});

it("says so where the server does not answer", { timeout: 120_000 }, async () => {
  const { context, page } = await opened("/b/quayside/history");
  await page.getByRole("heading", { name: "Changes, the newest first" }).waitFor();
  const port = Number(new URL(url).port);
  await stop();
  await page
    .getByText(/^Offline/)
    .first()
    .waitFor();
  await page.keyboard.press("u");
  await page
    .getByText(/Offline: only the server can take anything else back/)
    .first()
    .waitFor();
  await start(port);
  await context.close();
});

it("names, compares and restores a version by keyboard, and that is taken back", { timeout: 240_000 }, async () => {
  const { context, page } = await opened("/b/quayside/history");
  const was = await topTube();
  await tabTo(page, "Name for how it stands now");
  await page.keyboard.type("before welding");
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "before welding" }).waitFor();
  await page.keyboard.type("Before Welding");
  await page.keyboard.press("Enter");
  await page.getByText(/There is a version named/).waitFor();
  expect((await workshop.edit("donor", "q1", TOP_TUBE.split("."), 549)).kind).toBe("edited");
  await page.locator(".past:not(.versions) > li").first().getByText("549").waitFor();
  await tabTo(page, /^Compare with now.*before welding/);
  await page.keyboard.press("Enter");
  const outcome = page.locator("section.trouble");
  await outcome.getByText(TOP_TUBE).waitFor();
  expect((await outcome.textContent())?.replace(/\s+/g, " ")).toContain(`${was} → now 549`);
  await tabTo(page, /^Restore ….*before welding/);
  await page.keyboard.press("Enter");
  await outcome.getByText(/This will change what stands below/).waitFor();
  expect(await topTube()).toBe("549");
  await tabTo(page, "Restore it");
  await page.keyboard.press("Enter");
  await until(topTube).toBe(was);
  await page
    .getByText(/^Restored to before welding/)
    .first()
    .waitFor();
  await tabTo(page, "Take the last change back");
  await page.keyboard.press("Enter");
  await until(topTube).toBe("549");
  await context.close();
});

it.each([
  ["wide", TABLET, "day"],
  ["wide", TABLET, "dim"],
  ["phone", PHONE, "day"],
  ["phone", PHONE, "dim"],
] as const)("reads well: %s, %s, %s", { timeout: 120_000 }, async (name, viewport, light) => {
  const { context, page } = await opened("/b/quayside/history", viewport);
  await page.getByLabel("Light").selectOption(light);
  await page.getByRole("heading", { name: "Changes, the newest first" }).waitFor();
  await page.getByRole("button", { name: /^Compare with now.*before welding/ }).click();
  await page.locator("section.trouble").waitFor();
  expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
  expect(await axeFindings(page)).toEqual([]);
  const small = await page.evaluate(() =>
    [...document.querySelectorAll("main button, main input, main select, main a.btn")]
      .map((el) => ({ box: el.getBoundingClientRect(), text: el.textContent }))
      .filter(({ box }) => box.width > 0 && (box.height < 47.5 || box.width < 47.5))
      .map(({ box, text }) => `${text} ${box.width}x${box.height}`),
  );
  expect(small).toEqual([]);
  await shot(page, `history-${name}-${light}`, true);
  await context.close();
});
