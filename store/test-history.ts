/** For tests: a workshop with the demo in a folder of its own, that can be closed and opened again. */
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { openWorkshop } from "./open-workshop.js";
import type { Workshop } from "./workshop.js";

export const QUAYSIDE = fs.readFileSync(new URL("../demo/quayside.yaml", import.meta.url), "utf8");

export async function historyWorkshop(text: string | undefined = QUAYSIDE) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-history-"));
  // A minute passes between any two changes.
  let clock = Date.UTC(2026, 2, 1, 12);
  const open = async (): Promise<Workshop> => {
    const now = () => {
      clock += 60_000;
      return new Date(clock);
    };
    const opened = await openWorkshop(folder, { now, who: "the page" });
    if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
    return opened.workshop;
  };
  let workshop = await open();
  if (text !== undefined) {
    const put = await workshop.putText(text, "quayside.yaml");
    if (put.kind === "refused") throw new Error(JSON.stringify(put.refusals));
  }
  return {
    folder,
    now: () => workshop,
    reopen: async () => {
      await workshop.close();
      workshop = await open();
    },
    end: async () => {
      await workshop.close();
      fs.rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** The texts of all documents, by kind and id. */
export async function textsOf(workshop: Workshop): Promise<Readonly<Record<string, string>>> {
  return Object.fromEntries((await workshop.allDocuments()).map((d) => [`${d.kind} ${d.id}`, d.text]));
}
