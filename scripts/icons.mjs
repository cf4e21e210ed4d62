/**
 * How do the icons of the installed page come from its mark? Drawn by the system's Chromium from web/public/mark.svg.
 * Usage: node scripts/icons.mjs; the pictures are kept in the repository, and this is run when the mark changes.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { ROOT } from "./setup.mjs";
import { findChromium } from "./system-packages.mjs";

const PUBLIC = join(ROOT, "web", "public");
/**
 * A maskable icon may be cut to a circle of 80 % of its side (W3C, Web Application Manifest, section 1.7.1.2: the safe
 * zone has a radius of 40 %). The mark's corners lie 12.7 from its middle, so its side of 30 becomes 40: 12.7 / 40 = 32 %.
 */
const ICONS = [
  { file: "icon-192.png", side: 192, box: "0 0 30 30" },
  { file: "icon-512.png", side: 512, box: "0 0 30 30" },
  { file: "icon-maskable-512.png", side: 512, box: "-5 -5 40 40" },
];

const mark = readFileSync(join(PUBLIC, "mark.svg"), "utf8");
const executablePath = findChromium();
if (executablePath === undefined) throw new Error("no Chromium found; node scripts/system-packages.mjs brings one in");
const browser = await chromium.launch({ executablePath, args: ["--headless", "--no-sandbox", "--disable-gpu"] });
try {
  const page = await browser.newPage();
  for (const { file, side, box } of ICONS) {
    const svg = mark.replace('viewBox="0 0 30 30"', `viewBox="${box}" width="${side}" height="${side}"`);
    if (!svg.includes(`viewBox="${box}"`)) throw new Error("the mark has another viewBox than 0 0 30 30");
    await page.setViewportSize({ width: side, height: side });
    await page.setContent(`<body style="margin:0;background:#ebefec">${svg}</body>`);
    await page.screenshot({ path: join(PUBLIC, file), clip: { x: 0, y: 0, width: side, height: side } });
    console.log(`${file}: ${side} px`);
  }
} finally {
  await browser.close();
}
