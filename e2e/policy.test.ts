/** Does the page work with the strict policy that the server sends, and does the browser hold to it? */
import { readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { openBrowser, TABLET } from "./browser.js";
import { buildPage, openWebWorkshop, type WebWorkshop } from "./web-workshop.js";

let site: string;
let browser: Browser;
let web: WebWorkshop;
beforeAll(async () => {
  [site, browser] = await Promise.all([buildPage(), openBrowser()]);
  web = await openWebWorkshop(site);
});
afterAll(async () => {
  await browser?.close();
  await web?.close();
  if (site !== undefined) rmSync(site, { recursive: true, force: true });
});

const PAGES = ["", "/q/7", "/measure", "/fit", "/do", "/history"].map((place) => `/b/quayside${place}`);

/** A page that keeps whatever the browser refused it, the directive first. */
async function watched(): Promise<{ page: Page; refused: () => Promise<readonly string[]> }> {
  const page = await (await browser.newContext({ viewport: TABLET })).newPage();
  await page.addInitScript(() => {
    const kept: string[] = [];
    Object.assign(window, { kept });
    addEventListener("securitypolicyviolation", (e) =>
      kept.push(`${e.effectiveDirective} ${e.blockedURI} ${e.sample} ${e.sourceFile}`),
    );
  });
  const refused = () => page.evaluate(() => (window as unknown as { kept: readonly string[] }).kept);
  return { page, refused };
}

it("no page of the workshop asks for anything that the policy refuses", { timeout: 400_000 }, async () => {
  const { page, refused } = await watched();
  const errors: string[] = [];
  page.on("pageerror", (error) => errors.push(error.message));
  for (const place of ["/", "/nowhere", ...PAGES]) {
    await page.goto(web.url + place);
    await page.waitForSelector("main h1");
    await page.evaluate(() => document.fonts.ready);
    expect(await refused(), place).toEqual([]);
  }
  // The drawings came through as well, and not as text.
  await page.goto(`${web.url}/b/quayside`);
  await page.waitForSelector("svg path", { state: "attached" });
  expect(await refused()).toEqual([]);
  expect(errors).toEqual([]);
  await page.context().close();
});

it("the browser refuses what a text would do that became markup", { timeout: 240_000 }, async () => {
  const { page, refused } = await watched();
  await page.goto(`${web.url}/b/quayside`);
  await page.waitForSelector("main h1");
  const done = await page.evaluate(async () => {
    const tried: string[] = [];
    const attempt = async (name: string, run: () => unknown) => {
      try {
        await run();
        tried.push(name);
      } catch {
        // Refused, as it should be.
      }
    };
    const body = document.body;
    await attempt("markup", () => {
      body.insertAdjacentHTML("beforeend", "<b>bold</b>");
    });
    // Later, in the page's own time: what a test evaluates itself is let through by the browser.
    await attempt("eval", async () => {
      await new Promise((resolve) => setTimeout(resolve, 10));
      new Function("return 1")();
    });
    await attempt("another policy", () =>
      (
        window as unknown as { trustedTypes: { createPolicy: (n: string, r: object) => unknown } }
      ).trustedTypes.createPolicy("other", {}),
    );
    await attempt("foreign fetch", () => fetch("http://workshop.example/"));
    const script = document.createElement("script");
    await attempt("inline script", () => {
      script.text = "window.ran = true";
      body.append(script);
    });
    const style = document.createElement("style");
    style.textContent = "body { color: red }";
    body.append(style);
    const frame = document.createElement("iframe");
    frame.src = "/";
    body.append(frame);
    await new Promise((resolve) => setTimeout(resolve, 300));
    return { tried, ran: (window as unknown as { ran?: boolean }).ran };
  });
  expect(done.tried).toEqual([]);
  expect(done.ran).toBeUndefined();
  const directives = (await refused()).map((line) => line.split(" ")[0]);
  for (const directive of ["require-trusted-types-for", "trusted-types", "connect-src", "style-src-elem", "frame-src"])
    expect(directives).toContain(directive);
  await page.context().close();
});

it("a page from elsewhere can neither read nor frame nor write the workshop", { timeout: 240_000 }, async () => {
  const context = await browser.newContext();
  // Another port of this machine: the same site for the browser, and foreign all the same.
  const foreign = await openWebWorkshop(site);
  const page = await context.newPage();
  await page.route(`${foreign.url}/elsewhere`, (route) =>
    route.fulfill({ contentType: "text/html", body: "<!doctype html><title>elsewhere</title>" }),
  );
  await page.goto(`${foreign.url}/elsewhere`);
  const before = await web.workshop.getDocument("donor", "q1");
  const got = await page.evaluate(async (url) => {
    const tell = async (run: Promise<Response>) => run.then((r) => `${r.type} ${r.status}`).catch(() => "refused");
    const edit = JSON.stringify({ path: ["title"], value: "taken", revision: 1 });
    const answers = [
      await tell(fetch(`${url}/api/documents`)),
      await tell(fetch(`${url}/api/documents`, { mode: "no-cors" })),
      await tell(fetch(`${url}/api/documents/donor/q1/edits`, { method: "POST", body: edit, mode: "no-cors" })),
      await tell(
        fetch(`${url}/api/documents/donor/q1/edits`, {
          method: "POST",
          body: edit,
          headers: { "content-type": "application/json" },
        }),
      ),
    ];
    const frame = document.createElement("iframe");
    frame.src = url;
    document.body.append(frame);
    await new Promise((resolve) => {
      frame.onload = resolve;
      setTimeout(resolve, 2_000);
    });
    return { answers, framed: frame.contentDocument !== null && frame.contentDocument.title === "Coldset" };
  }, web.url);
  for (const answer of got.answers) expect(answer).not.toContain("200");
  expect(got.framed).toBe(false);
  expect(await web.workshop.getDocument("donor", "q1")).toEqual(before);
  await context.close();
  await foreign.close();
});

it("the built page holds no script, no style and no handler of its own, and asks for nothing elsewhere", () => {
  const html = readFileSync(join(site, "index.html"), "utf8");
  const wrong = /<style|\sstyle\s*=|\son\w+\s*=|javascript:|<base|<iframe|<script(?![^>]*\ssrc="\/)[^>]*>/i;
  expect(html).not.toMatch(wrong);
  for (const [, address] of html.matchAll(/(?:src|href)="([^"]*)"/g)) expect(address).toMatch(/^\/(?!\/)/);
  // The reading can fail.
  for (const bad of ["<script>1</script>", '<p style="a">', '<body onload="x">', '<script src="http://x/y">'])
    expect(bad).toMatch(wrong);
});
