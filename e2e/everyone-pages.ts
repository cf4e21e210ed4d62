/** Which pages must hold for everyone, and how does a test look at one as a screen reader does? */
import { readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";
import { ROOT } from "../scripts/setup.mjs";
import { openBrowser } from "./browser.js";
import { buildPage, demoText, openWebWorkshop, type WebWorkshop } from "./web-workshop.js";

export const BUILDS = ["quayside", "moorside", "canalside"] as const;

const TWENTY = Array.from({ length: 20 }, (_, i) => i + 1);
/** Where the other two builds show what the first does not: rim brakes, two rings, a child seat, a plan by evenings. */
const OTHERWISE = process.env.COLDSET_EVERY_PAGE === "1" ? TWENTY : [1, 11, 19];

/**
 * Start page, the new build, and of a demo build the board, the twenty questions and the stations; of the other two what
 * looks otherwise there. COLDSET_EVERY_PAGE=1 looks at every page of all three, which takes minutes.
 */
export const PAGES: readonly string[] = [
  "/",
  "/new",
  ...BUILDS.flatMap((build) => [
    `/b/${build}`,
    ...["measure", "fit", "do", "history"].flatMap((station) =>
      build === BUILDS[0] ? [`/b/${build}/${station}`] : [],
    ),
    ...(build === BUILDS[0] ? TWENTY : OTHERWISE).map((n) => `/b/${build}/q/${n}`),
  ]),
];

/** Each sort of page once, where looking at all of them would say nothing more. */
export const SORTS: readonly string[] = [
  "/",
  "/new",
  "/b/quayside",
  "/b/quayside/measure",
  "/b/quayside/fit",
  "/b/quayside/do",
  "/b/quayside/history",
  "/b/quayside/q/13",
  "/b/moorside/q/14",
  "/b/canalside/q/19",
];

export interface ForEveryone {
  readonly browser: Browser;
  readonly web: WebWorkshop;
  readonly open: (path: string, options?: BrowserContextOptions) => Promise<{ context: BrowserContext; page: Page }>;
  readonly close: () => Promise<void>;
}

/**
 * The page, a browser, and a workshop with all three demo builds in it.
 * @param more flags of the browser, such as larger letters
 */
export async function openForEveryone(more: readonly string[] = []): Promise<ForEveryone> {
  const [site, browser] = await Promise.all([buildPage(), openBrowser(more)]);
  const web = await openWebWorkshop(site, demoText());
  for (const build of BUILDS.slice(1)) {
    const put = await web.workshop.putText(readFileSync(join(ROOT, "demo", `${build}.yaml`), "utf8"), `${build}.yaml`);
    if (put.kind === "refused") throw new Error(JSON.stringify(put.refusals));
  }
  return {
    browser,
    web,
    open: async (path, options = {}) => {
      const context = await browser.newContext({ viewport: { width: 1024, height: 768 }, ...options });
      const page = await context.newPage();
      await goTo(page, web.url + path);
      return { context, page };
    },
    close: async () => {
      await browser.close();
      await web.close();
      rmSync(site, { recursive: true, force: true });
    },
  };
}

/** Goes there and waits until what the server is asked for stands on the page too. */
export async function goTo(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await page.waitForSelector("main h1");
  if (url.endsWith("/history")) await page.waitForSelector("main .past, main .trouble");
  if (/:\d+\/$/.test(url)) await page.waitForSelector("main .list, main .trouble");
  await page.evaluate(() => document.fonts.ready);
}

/** The same without loading the page anew, as a link inside it does: many pages are looked at in one go. */
export async function turnTo(page: Page, url: string): Promise<void> {
  const path = new URL(url).pathname;
  await page.evaluate((to) => {
    history.pushState(null, "", to);
    dispatchEvent(new PopStateEvent("popstate"));
    return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  }, path);
  await page.waitForSelector("main h1");
  if (path.endsWith("/history")) await page.waitForSelector("main .past, main .trouble");
  if (path === "/") await page.waitForSelector("main .list, main .trouble");
  // What follows the words, such as a large drawing, follows in the next frames.
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 30))));
}

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What axe-core finds, of any impact; best practices are asked of the page as well as the rules of WCAG. */
export async function axeFindings(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const found = (await page.evaluate("axe.run(document).then((r) => r.violations)")) as {
    readonly id: string;
    readonly impact: string;
    readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
  }[];
  return found.map(
    (v) =>
      `${v.id} (${v.impact}): ${v.nodes.map((n) => `${n.html.slice(0, 120)} ${n.failureSummary ?? ""}`).join(" | ")}`,
  );
}

/** One thing as the browser hands it to a screen reader. */
export interface Spoken {
  readonly role: string;
  readonly name: string;
  readonly level: number | undefined;
  readonly state: Readonly<Record<string, unknown>>;
  readonly description: string;
  readonly inside: readonly Spoken[];
}

interface AxNode {
  readonly nodeId: string;
  readonly ignored: boolean;
  readonly role?: { readonly value: string };
  readonly name?: { readonly value: string };
  readonly description?: { readonly value: string };
  readonly properties?: readonly { readonly name: string; readonly value: { readonly value: unknown } }[];
  readonly childIds?: readonly string[];
}

/** The accessibility tree that the browser itself reckons; what it leaves out is left out, its children kept. */
export async function spokenTree(page: Page): Promise<readonly Spoken[]> {
  const session = await page.context().newCDPSession(page);
  const { nodes } = (await session.send("Accessibility.getFullAXTree")) as { nodes: readonly AxNode[] };
  await session.detach();
  const byId = new Map(nodes.map((n) => [n.nodeId, n]));
  const made = (node: AxNode): readonly Spoken[] => {
    const inside = (node.childIds ?? []).flatMap((id) => {
      const child = byId.get(id);
      return child === undefined ? [] : made(child);
    });
    const role = node.role?.value ?? "none";
    if (node.ignored || role === "InlineTextBox") return role === "InlineTextBox" ? [] : inside;
    const state = Object.fromEntries((node.properties ?? []).map((p) => [p.name, p.value.value]));
    return [
      {
        role,
        name: (node.name?.value ?? "").trim(),
        level: typeof state.level === "number" ? state.level : undefined,
        state,
        description: node.description?.value ?? "",
        inside,
      },
    ];
  };
  const root = nodes[0];
  return root === undefined ? [] : made(root);
}

/** Everything in the tree, in reading order. */
export function all(tree: readonly Spoken[]): readonly Spoken[] {
  return tree.flatMap((s) => [s, ...all(s.inside)]);
}

/** What is read out of a part of the tree, as one text. */
export function wordsOf(spoken: Spoken): string {
  return all([spoken])
    .filter((s) => s.role === "StaticText")
    .map((s) => s.name)
    .join(" ");
}
