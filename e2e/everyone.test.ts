/** What does a screen reader get on every page? Asked of the accessibility tree that the browser reckons, not of the markup. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import {
  all,
  BUILDS,
  type ForEveryone,
  goTo,
  openForEveryone,
  PAGES,
  type Spoken,
  spokenTree,
  turnTo,
  wordsOf,
} from "./everyone-pages.js";

const CONTROLS = new Set([
  "button",
  "link",
  "textbox",
  "combobox",
  "radio",
  "checkbox",
  "searchbox",
  "spinbutton",
  "slider",
  "DisclosureTriangle",
]);
/** The words of core/quantity/verdict.ts, as the specification lists them. */
const VERDICTS =
  /\b(fits|within|no problem found|fits with work|measure first|will not fit|over|refuse|gate|flag|not checked yet)\b/;

let here: ForEveryone;
let page: Page;
beforeAll(async () => {
  here = await openForEveryone();
  ({ page } = await here.open("/"));
}, 240_000);
afterAll(() => here?.close());

/** What is wrong with this page for somebody who hears it. */
async function faultsOf(path: string): Promise<string[]> {
  await turnTo(page, here.web.url + path);
  const tree = await spokenTree(page);
  const things = all(tree);
  const faults: string[] = [];
  const fault = (words: string) => faults.push(`${path}: ${words}`);
  const title = await page.title();

  const first = things.filter((s) => s.role === "heading" && s.level === 1);
  if (first.length !== 1) fault(`${first.length} headings of the first level`);
  const question = /^\d+ (.*) · Coldset$/.exec(title)?.[1];
  if (question !== undefined && !first[0]?.name.includes(question)) fault(`its heading does not ask "${question}"`);
  if (first[0]?.name === "") fault("its heading is empty");
  let before = 1;
  for (const h of things.filter((s) => s.role === "heading")) {
    const level = h.level ?? 0;
    if (level - before > 1) fault(`"${h.name}" of level ${level} after level ${before}`);
    if (h.name === "") fault(`a heading of level ${level} without words`);
    before = level;
  }

  for (const role of ["banner", "main", "contentinfo"])
    if (things.filter((s) => s.role === role).length !== 1)
      fault(`${things.filter((s) => s.role === role).length} of ${role}`);
  const navs = things.filter((s) => s.role === "navigation");
  if (navs.length === 0) fault("no navigation");
  if (new Set(navs.map((n) => n.name)).size !== navs.length || navs.some((n) => n.name === ""))
    fault(`navigations not told apart: ${navs.map((n) => n.name).join(", ")}`);

  for (const s of things) {
    if (CONTROLS.has(s.role) && s.name === "") fault(`${s.role} without a name`);
    if (s.role === "DisclosureTriangle" && s.state.expanded === undefined)
      fault(`"${s.name}" does not say if it is open`);
    if ((s.role === "image" || s.role === "img") && !/\w[^.]{8,}[.:]|photo/i.test(s.name))
      fault(`a drawing that answers nothing: "${s.name}"`);
    if (
      s.role === "group" &&
      s.state.focusable !== true &&
      s.name === "" &&
      all(s.inside).some((i) => i.role === "radio")
    )
      fault("choices without a question");
    if (s.role === "table") tableFaults(s, fault);
    if (s.state.live === "assertive" && wordsOf(s) !== "") fault(`calls out unasked: "${wordsOf(s)}"`);
  }
  const live = things.filter((s) => s.state.live === "polite" && s.state.root === undefined);
  const talk = live.map(wordsOf).filter((w) => w !== "");
  if (talk.length > 1) fault(`${talk.length} live lines speak at once: ${talk.join(" | ")}`);
  const positive = await page.$$eval("[tabindex]", (found) => found.filter((el) => el.tabIndex > 0).length);
  if (positive > 0) fault(`${positive} places jump the order of tabs`);
  return faults;
}

function tableFaults(table: Spoken, fault: (words: string) => void): void {
  const heads = all(table.inside).filter((s) => s.role === "columnheader");
  if (heads.length === 0) fault(`table "${table.name}" has no headers`);
  if (heads.some((h) => h.name === "")) fault(`table "${table.name}" has a header without words`);
  if (table.name === "") fault(`a table without a caption: ${heads.map((h) => h.name).join(", ")}`);
}

describe.each(["", ...BUILDS])("pages of %s", (build) => {
  it("one question as heading, landmarks, names and states, tables, drawings, quiet", {
    timeout: 300_000,
  }, async () => {
    const faults: string[] = [];
    for (const path of PAGES.filter((p) => (build === "" ? !p.startsWith("/b/") : p.startsWith(`/b/${build}`))))
      faults.push(...(await faultsOf(path)));
    expect(faults).toEqual([]);
  });
});

it("every step of a new build is asked by its heading, and its field is described", { timeout: 240_000 }, async () => {
  await goTo(page, `${here.web.url}/new`);
  const faults: string[] = [];
  for (let step = 0; step < 40; step += 1) {
    const things = all(await spokenTree(page));
    const heading = things.find((s) => s.role === "heading" && s.level === 1)?.name ?? "";
    const fields = things.filter((s) => ["textbox", "radio", "combobox"].includes(s.role) && s.name !== "Light");
    if (heading === "" || fields.some((f) => f.name === "")) faults.push(`step ${step}: ${heading}`);
    for (const s of things)
      if (s.role === "image" && s.name === "") faults.push(`step ${step}: a drawing without a name`);
    if (step === 0) await page.getByRole("textbox", { name: "In your words" }).fill("For everyone");
    const next = page.getByRole("button", { name: /^(Next|Skip)/ });
    if ((await next.count()) === 0) break;
    await next.click();
    await page.waitForFunction((h) => document.querySelector("main h1")?.textContent !== h, heading);
  }
  expect(faults).toEqual([]);
});

describe("verdicts and errors", () => {
  it("each row of the board says its verdict in words", { timeout: 120_000 }, async () => {
    for (const build of BUILDS) {
      await goTo(page, `${here.web.url}/b/${build}`);
      const main = all(await spokenTree(page)).find((s) => s.role === "main");
      const rows = all(main?.inside ?? []).filter(
        (s) => (s.role === "article" || s.role === "listitem") && /^\s*Question\s+\d+/.test(wordsOf(s)),
      );
      expect(rows).toHaveLength(20);
      for (const row of rows) expect(wordsOf(row)).toMatch(VERDICTS);
    }
  });

  it("a text that cannot be read is marked at its field, and what is wrong is its description", async () => {
    await goTo(page, `${here.web.url}/b/quayside/measure`);
    const field = () => page.locator('[id="f-donor.measured.chainstay"]');
    await field().fill("27 lbs");
    await expect
      .poll(async () => {
        const said = all(await spokenTree(page)).find((s) => s.role === "textbox" && s.state.invalid === "true");
        return said?.description;
      })
      .toMatch(/Write it as .*, or .*, or /);
    await field().fill("442");
    await expect
      .poll(
        async () =>
          all(await spokenTree(page)).filter((s) => s.role === "textbox" && s.state.invalid === "true").length,
      )
      .toBe(0);
  });

  it("a gate that waits says for what, at the button and aloud, and marks the fields", async () => {
    await goTo(page, `${here.web.url}/b/quayside/do`);
    const button = page.getByRole("button", { name: /^Waits/ }).first();
    await button.press("Enter");
    const things = all(await spokenTree(page));
    const said = things.find((s) => s.role === "button" && s.name.startsWith("Waits"));
    expect(said?.description).toContain("It waits for a name, a day and what was seen");
    expect(things.filter((s) => s.state.invalid === "true").map((s) => s.name)).toEqual([
      "By",
      "On (year-month-day)",
      "What was seen",
    ]);
    await expect
      .poll(async () =>
        all(await spokenTree(page))
          .filter((s) => s.role === "status" || s.role === "alert")
          .map(wordsOf)
          .join(" "),
      )
      .toContain("The gate waits for a name");
  });

  it("a new build without a name is told so at the field, as an alert", async () => {
    await goTo(page, `${here.web.url}/new`);
    await page
      .getByRole("button", { name: "Forget these entries and begin anew" })
      .click({ timeout: 2000 })
      .catch(() => undefined);
    await page.getByRole("textbox", { name: "In your words" }).fill("");
    await page.getByRole("button", { name: "Next" }).click();
    const things = all(await spokenTree(page));
    const field = things.find((s) => s.role === "textbox" && s.state.invalid === "true");
    expect(field?.description).toContain("Give it a name first");
    expect(
      things
        .filter((s) => s.role === "alert")
        .map(wordsOf)
        .join(" "),
    ).toContain("Give it a name first");
  });

  it("a photo that was not chosen is said at the field", async () => {
    await goTo(page, `${here.web.url}/b/quayside/measure`);
    await page.getByRole("button", { name: "Keep the photo" }).click();
    const field = all(await spokenTree(page)).find((s) => s.state.invalid === "true");
    expect(field?.description).toContain("Choose a photo first");
  });
});

it("writing a figure does not make the page talk at every key", async () => {
  await goTo(page, `${here.web.url}/b/quayside/measure`);
  await page.evaluate(() => {
    const heard: string[] = [];
    Object.assign(globalThis, { heard });
    for (const el of document.querySelectorAll("[role=status], [role=alert], [aria-live]"))
      new MutationObserver(() => {
        const text = el.textContent ?? "";
        if (text.trim() !== "" && heard.at(-1) !== text) heard.push(text);
      }).observe(el, { childList: true, characterData: true, subtree: true });
  });
  await page.locator('[id="f-donor.measured.top_tube_cc"]').focus();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("55,1 cm", { delay: 60 });
  await page.waitForTimeout(1500);
  const heard = await page.evaluate(() => Reflect.get(globalThis, "heard") as string[]);
  // Seven keys; what moved, that it is being saved, that it is saved.
  expect(heard.length, heard.join(" | ")).toBeLessThanOrEqual(5);
});
