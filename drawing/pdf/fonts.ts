import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { coveredSigns } from "./font-coverage.js";

const FILES = ["ColdsetLetter-Medium.ttf", "ColdsetLetter-Bold.ttf", "ColdsetRead-Regular.ttf", "ColdsetRead-Bold.ttf"];

/** Where do the fonts lie? Beside this folder in the source, one level higher from the compiled files. */
export function fontFolder(): string {
  for (const way of ["../fonts/", "../../fonts/"]) {
    const folder = fileURLToPath(new URL(way, import.meta.url));
    if (existsSync(folder)) return folder;
  }
  throw new Error("The folder drawing/fonts is missing, so nothing can be printed. Put the package back as it was.");
}

let loaded: { readonly blobs: readonly Buffer[]; readonly signs: ReadonlySet<number> } | undefined;

/** The font files, and the signs that every one of them can print. Read once. */
export function printFonts(): { readonly blobs: readonly Buffer[]; readonly signs: ReadonlySet<number> } {
  if (loaded === undefined) {
    const folder = fontFolder();
    const blobs = FILES.map((file) => readFileSync(`${folder}${file}`));
    const [first = new Set<number>(), ...others] = blobs.map((blob) => coveredSigns(blob));
    const signs = new Set([...first].filter((sign) => others.every((other) => other.has(sign))));
    loaded = { blobs, signs };
  }
  return loaded;
}
