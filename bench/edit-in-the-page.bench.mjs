/**
 * How long does a keystroke take until the whole page is answered anew, in a real browser: reading the text, resolving,
 * reckoning all twenty questions, and React's writing of the measuring page? Without the browser's own layout and paint.
 * The yardstick is copying the same documents once through JSON, in the same page, in the same run.
 */
import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { reckonHere, startServer } from "@coldset/server";
import { openWorkshop } from "@coldset/store";
import { chromium } from "playwright-core";
import { ROOT } from "../scripts/setup.mjs";
import { findChromium } from "../scripts/system-packages.mjs";

export const question =
  "How much longer than a JSON copy of the documents does an edit take until the page is answered?";

const FIELD = "f-donor.measured.top_tube_cc";
/** Edits in one call from outside, so that the call itself does not count. */
const TOGETHER = 10;
const QUIET_MS = 2_000;

/** @param {{ field: string, rounds: number, json: string, copy: boolean }} work */
async function inThePage({ field, rounds, json, copy }) {
  const input = /** @type {HTMLInputElement} */ (document.getElementById(field));
  const put = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set;
  const plain = JSON.parse(json);
  const times = [];
  for (let i = 0; i < rounds; i += 1) {
    const from = performance.now();
    if (copy) JSON.parse(JSON.stringify(plain));
    else {
      put?.call(input, String(540 + ((Math.round(from) + i) % 17)));
      input.dispatchEvent(new Event("input", { bubbles: true }));
      // React writes the page at the end of the event.
      await Promise.resolve();
    }
    times.push({
      page: performance.now() - from,
      board: performance.getEntriesByName("answered").at(-1)?.duration ?? Number.NaN,
    });
  }
  return times;
}

export async function cases() {
  const opened = await openWorkshop(mkdtempSync(join(tmpdir(), "coldset-bench-")));
  if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
  await opened.workshop.putText(readFileSync(join(ROOT, "demo", "quayside.yaml"), "utf8"), "quayside.yaml");
  const server = await startServer({
    port: 0,
    workshop: opened.workshop,
    webRoot: join(ROOT, "web", "dist", "site"),
    sheets: new Map(),
    ...reckonHere(() => ({})),
    book: async () => ({ kind: "refused", refusals: [] }),
  });
  if (server.kind === "refused") throw new Error(JSON.stringify(server.refusals));
  const executablePath = findChromium();
  if (executablePath === undefined)
    throw new Error("no Chromium found; node scripts/system-packages.mjs brings one in");
  const browser = await chromium.launch({ executablePath, args: ["--headless", "--no-sandbox"] });
  const page = await browser.newPage({ viewport: { width: 1024, height: 768 } });
  await page.goto(`${server.url}b/quayside/measure`);
  await page.waitForSelector(".resid");
  await page.focus(`[id="${FIELD}"]`);
  const json = await (await fetch(`${server.url}api/workshop/quayside`)).text();
  const run = (/** @type {boolean} */ copy, /** @type {number} */ rounds) =>
    page.evaluate(inThePage, { field: FIELD, rounds, json, copy });

  await run(false, 30);
  const times = await run(false, 100);
  // The last edit wrote 540 to 556, and the page says so: what is timed is the real way of an edit.
  const shown = await page.textContent(`[id="${FIELD}-as"]`);
  if (!/read 5[45]\d mm/.test(shown ?? "")) throw new Error(`the page did not answer: ${shown}`);
  const told = (/** @type {string} */ what, /** @type {number[]} */ list) => {
    const sorted = list.sort((a, b) => a - b);
    process.stdout.write(
      `In the page, 100 edits, ${what}: median ${sorted[50]?.toFixed(1)} ms, 95th of 100 ${sorted[95]?.toFixed(1)} ms.\n`,
    );
  };
  told(
    "board answered",
    times.map((t) => t.board),
  );
  told(
    "page written too",
    times.map((t) => t.page),
  );
  // The runner has no end of its own for us: two quiet seconds after the last run everything is closed.
  const close = async () => {
    await browser.close();
    await server.close();
    await opened.workshop.close();
  };
  let quiet = setTimeout(close, QUIET_MS);
  const timed = async (/** @type {boolean} */ copy) => {
    clearTimeout(quiet);
    await run(copy, TOGETHER);
    clearTimeout(quiet);
    quiet = setTimeout(close, QUIET_MS);
  };
  return [
    { name: `${TOGETHER} copies through JSON`, run: () => timed(true) },
    { name: `${TOGETHER} edits, answered and written`, run: () => timed(false) },
  ];
}
