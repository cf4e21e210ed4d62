/** Where does the checkout lie, whether this runs from its own file or from a bundle of it? */
import fs from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

function upTo(folder: string): string {
  for (let here = folder; path.dirname(here) !== here; here = path.dirname(here))
    if (fs.existsSync(path.join(here, "demo", "quayside.yaml"))) return here;
  throw new Error(`no checkout around ${folder}`);
}

export const PLACE = upTo(path.dirname(fileURLToPath(import.meta.url)));
export const QUAYSIDE = fs.readFileSync(path.join(PLACE, "demo", "quayside.yaml"), "utf8");
