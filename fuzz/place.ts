/** Where does the checkout lie, whether this runs from its own file or from a bundle of it? And what stands in its demos? */
import fs from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

function upTo(folder: string): string {
  for (let here = folder; path.dirname(here) !== here; here = path.dirname(here))
    if (fs.existsSync(path.join(here, "demo", "quayside.yaml"))) return here;
  throw new Error(`no checkout around ${folder}`);
}

export const PLACE = upTo(path.dirname(fileURLToPath(import.meta.url)));

export interface Demo {
  readonly id: string;
  readonly text: string;
}

const NAMES = ["quayside", "moorside", "canalside"] as const;
/** The builds that most inputs start from. */
export const DEMOS: readonly Demo[] = NAMES.map((id) => ({
  id,
  text: fs.readFileSync(path.join(PLACE, "demo", `${id}.yaml`), "utf8"),
}));
