/** What comes of any edit of a document? The one value is changed and all else stays as written, or nothing changes. */
import { isDeepStrictEqual } from "node:util";
import { editText, loadText, withValue } from "@coldset/core/workshop";
import fc from "fast-check";
import { accepted, type Door, mustHold, refusedAs, type Went } from "../door.js";
import { HOSTILE_KEYS, isWhole, LONG, type Mangled, mangled, mangledText, SHORT } from "../inputs/mangled-text.js";
import { ODD_NUMBERS, oddText } from "../inputs/odd-text.js";
import { firstDifference } from "../inputs/same-figures.js";

type Step = string | number;

interface Edit {
  /** Which value of the document, counted round; then `more` steps behind it, or instead of it. */
  readonly leaf: number;
  readonly up: number;
  readonly more: readonly Step[];
  /** null as a figure of speech: `out` takes the key out. */
  readonly value: unknown;
  readonly out: boolean;
}

interface EditInput {
  readonly text: Mangled;
  readonly edits: readonly Edit[];
}

const likely = fc.oneof(
  fc.integer({ min: 0, max: 900 }),
  fc.double({ min: 0, max: 500, noNaN: true }).map((v) => Number(v.toFixed(2))),
  fc.constantFrom<unknown>(
    true,
    false,
    "?",
    null,
    "442 mm",
    "1 1/8 in",
    "71.2°",
    "plain_steel",
    "622-40",
    "q51",
    "text",
  ),
);
const odd = fc.oneof(fc.constantFrom<unknown>(...ODD_NUMBERS), oddText, fc.jsonValue({ maxDepth: 3 }));
const edit: fc.Arbitrary<Edit> = fc.record({
  leaf: fc.nat(400),
  up: fc.oneof({ weight: 6, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: fc.nat(3) }),
  more: fc.oneof(
    { weight: 8, arbitrary: fc.constant<readonly Step[]>([]) },
    {
      weight: 1,
      arbitrary: fc.array(fc.oneof<fc.Arbitrary<Step>[]>(fc.constantFrom(...HOSTILE_KEYS), fc.nat(40), oddText), {
        minLength: 1,
        maxLength: 3,
      }),
    },
  ),
  value: fc.oneof({ weight: 3, arbitrary: likely }, { weight: 1, arbitrary: odd }),
  out: fc.nat(9).map((n) => n === 0),
});

/** Single documents; the long ones more seldom, since each edit of one is read three times. */
const single = fc.oneof(
  { weight: 1, arbitrary: fc.constantFrom(...LONG.filter((base) => !isWhole(base))) },
  { weight: 4, arbitrary: fc.constantFrom(...SHORT) },
);
const one = fc.tuple(mangled, single).map(
  ([m, base]): Mangled => ({
    ...m,
    base,
    steps: m.steps.filter((s) => ["nudge", "comment", "blank", "quote"].includes(s.does)),
  }),
);

const inputs: fc.Arbitrary<EditInput> = fc.record({
  text: one.filter((m) => m.dress !== "cr"),
  edits: fc.array(edit, { minLength: 1, maxLength: 3 }),
});

function leaves(value: unknown, path: readonly Step[] = []): (readonly Step[])[] {
  if (value === null || typeof value !== "object") return [path];
  const entries: [Step, unknown][] = Array.isArray(value) ? [...value.entries()] : Object.entries(value);
  return entries.flatMap(([key, inner]) => leaves(inner, [...path, key]));
}

/** What stands behind # at a line's end, or on a line of its own; a # inside quotes is none. */
const comments = (text: string) =>
  [...text.matchAll(/^(?:[^"'#\n]|"(?:[^"\\\n]|\\.)*"|'[^'\n]*')*?(?:^|\s)(#[^\n\r]*)/gm)].map((m) =>
    (m[1] ?? "").trimEnd(),
  );

function put({ text: recipe, edits }: EditInput): Went {
  let text = mangledText(recipe);
  const first = loadText(text, "a.yaml");
  if (first.kind === "refused" || first.docs.length !== 1) return refusedAs("no document to edit");
  let plain = first.docs[0]?.plain;
  let done = 0;
  let code = "";
  for (const e of edits) {
    const all = leaves(plain);
    const at = all[e.leaf % all.length] ?? [];
    const path = [...at.slice(0, Math.max(1, at.length - e.up)), ...e.more];
    const value = e.out ? undefined : e.value;
    let result: ReturnType<typeof editText>;
    try {
      result = editText(text, path, value);
    } catch (cause) {
      // Told by the store as "no such place": the text library throws where a path goes through a plain value.
      mustHold(cause instanceof Error && !/survive/.test(cause.message), () => String(cause));
      code = "no such place";
      continue;
    }
    if (result.kind === "refused") {
      mustHold(result.refusals.length > 0, () => "refused without a reason");
      for (const r of result.refusals) mustHold(r.message !== "" && r.allowed !== "", () => JSON.stringify(r));
      code = result.refusals[0]?.code ?? "";
      continue;
    }
    const wanted = withValue(plain, path, value);
    mustHold(
      isDeepStrictEqual(result.plain, wanted),
      () => `${path.join(".")}: ${JSON.stringify(result.plain).slice(0, 300)}`,
    );
    const again = loadText(result.text, "a.yaml");
    mustHold(again.kind === "loaded", () => `cannot be read after the edit: ${JSON.stringify(again).slice(0, 300)}`);
    const back = again.docs[0];
    mustHold(
      again.docs.length === 1 && isDeepStrictEqual(back?.plain, wanted),
      () => "reads differently after the edit",
    );
    mustHold(isDeepStrictEqual(back?.doc, result.doc), () => "the text and the document of the answer differ");
    const difference = firstDifference(wanted, result.doc);
    mustHold(difference === undefined, () => `${difference}`);
    if (value !== undefined && at.length === path.length && e.up === 0) commentsStay(text, result.text);
    text = result.text;
    plain = result.plain;
    done += 1;
  }
  return done > 0 ? accepted(`${done} of ${edits.length}`) : refusedAs(code);
}

function commentsStay(before: string, after: string): void {
  const left = comments(after);
  for (const comment of comments(before)) {
    const at = left.indexOf(comment);
    mustHold(at >= 0, () => `the comment ${JSON.stringify(comment)} is gone`);
    left.splice(at, 1);
  }
}

export const edits: Door<EditInput> = {
  name: "edits",
  holds: "an edit changes its one value and no other, keeps every comment, or is refused and changes nothing",
  inputs,
  put,
};
