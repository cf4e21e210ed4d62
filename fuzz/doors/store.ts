/** What does the workshop keep of any text? All of it, letter by letter, through edits and undo; or nothing, with the reason. */
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { openWorkshop, type Workshop } from "@coldset/store";
import fc from "fast-check";
import { accepted, type Door, mustHold, refusedAs, type Went } from "../door.js";
import { HOSTILE_KEYS } from "../inputs/mangled-text.js";
import { ODD_NUMBERS, oddText } from "../inputs/odd-text.js";
import { describedRefusals } from "../inputs/refusal-faults.js";
import { type AnyText, anyText, asText, nothingLost } from "./documents.js";

interface StoreInput {
  readonly text: AnyText;
  readonly label: string;
  readonly edits: readonly {
    readonly path: readonly (string | number)[];
    readonly value: unknown;
    readonly revision: number;
  }[];
}

const path1 = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.constantFrom<readonly (string | number)[]>(
      ["id"],
      ["label"],
      ["title"],
      ["measured", "chainstay"],
      ["price"],
      ["kind"],
    ),
  },
  {
    weight: 1,
    arbitrary: fc.array(
      fc.oneof<fc.Arbitrary<string | number>[]>(fc.constantFrom(...HOSTILE_KEYS), fc.nat(9), oddText),
      { maxLength: 13 },
    ),
  },
);
const inputs: fc.Arbitrary<StoreInput> = fc.record({
  text: anyText,
  label: fc.oneof({ weight: 9, arbitrary: fc.constant("a.yaml") }, { weight: 1, arbitrary: oddText }),
  edits: fc.array(
    fc.record({
      path: path1,
      value: fc.oneof<fc.Arbitrary<unknown>[]>(fc.nat(900), fc.constantFrom(...ODD_NUMBERS), oddText),
      revision: fc.constantFrom(0, 0, 0, 1, -1, 99),
    }),
    { maxLength: 2 },
  ),
});

/** The records grow with every input; now and then they begin anew. */
const MOST = 300;
let folder: string | undefined;
let workshop: Workshop | undefined;
let puts = 0;

async function open(): Promise<void> {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-fuzz-"));
  const opened = await openWorkshop(folder);
  if (opened.kind === "refused") throw new Error(JSON.stringify(opened.refusals));
  workshop = opened.workshop;
  puts = 0;
}

async function shut(): Promise<void> {
  await workshop?.close();
  if (folder !== undefined) fs.rmSync(folder, { recursive: true, force: true });
  workshop = undefined;
}

const state = async (w: Workshop) => JSON.stringify(await w.allDocuments());

async function put({ text: recipe, label, edits }: StoreInput): Promise<Went> {
  if (workshop === undefined || puts >= MOST) {
    await shut();
    await open();
  }
  const w = workshop as Workshop | undefined;
  if (w === undefined) throw new Error("no workshop");
  puts += 1;
  const text = asText(recipe);
  const before = await state(w);
  const result = await w.putText(text, label);
  if (result.kind === "refused") {
    describedRefusals(result.refusals);
    mustHold((await state(w)) === before, () => "refused, and yet the records changed");
    return refusedAs(result.refusals[0]?.code ?? "");
  }
  const texts: string[] = [];
  for (const { kind, id } of result.documents) {
    const out = await w.exportText(kind, id);
    mustHold(out !== undefined, () => `${kind} ${id} was put in and is not there`);
    texts.push(out);
  }
  nothingLost(text, texts, true);
  for (const e of edits) {
    const [document] = result.documents;
    if (document === undefined) break;
    const { kind, id } = document;
    const stood = await w.getDocument(kind, id);
    const all = await state(w);
    const done = await w.edit(kind, id, e.path, e.value, e.revision === 0 ? undefined : e.revision);
    const now = await w.getDocument(kind, id);
    if (done.kind === "edited") {
      mustHold(now?.text === done.text && now.revision === done.revision, () => "the answer and the records differ");
      const last = (await w.history(kind, id)).at(-1);
      mustHold(last?.after === done.text, () => "the history ends in another text");
      mustHold(
        done.revision === stood?.revision || last.before === stood?.text,
        () => "the history forgot the old text",
      );
    } else {
      mustHold((await state(w)) === all, () => `${done.kind}, and yet the records changed`);
      if (done.kind === "refused") describedRefusals(done.refusals);
    }
  }
  return accepted(`${result.documents.length} documents`);
}

export const store: Door<StoreInput> = {
  name: "store",
  holds: "what was put in comes out letter by letter, and a refused text or edit changes nothing",
  inputs,
  open,
  shut,
  put,
};
