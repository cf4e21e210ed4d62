/** COLDSET_SHOTS=1 keeps a picture of what a test came by in e2e/shots, for somebody to look at; else nothing is drawn. */
import { mkdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";

const FOLDER = fileURLToPath(new URL("./shots/", import.meta.url));

export const SHOTS_WANTED = process.env.COLDSET_SHOTS === "1";

export async function shot(page: Page, name: string, fullPage = false): Promise<void> {
  if (!SHOTS_WANTED) return;
  mkdirSync(FOLDER, { recursive: true });
  await page.screenshot({ path: `${FOLDER}${name}.png`, fullPage });
}
