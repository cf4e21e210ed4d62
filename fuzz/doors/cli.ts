/** What does the command say to any arguments and files? An answer or a refusal with its reasons; never "our fault". */
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import fc from "fast-check";
import { main } from "../../cli/main.js";
import { testIo } from "../../cli/test-io.js";
import { accepted, type Door, mustHold, refusedAs, type Went } from "../door.js";
import { isWhole, type Mangled, mangled, mangledText, WHOLES } from "../inputs/mangled-text.js";
import { oddNumber, oddText } from "../inputs/odd-text.js";

interface Call {
  readonly args: readonly string[];
  /** What stands in a.yaml and on standard input: text, or bytes in hexadecimal. */
  readonly file: Mangled | { readonly hex: string };
  readonly columns: number;
}

const word = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom("a.yaml", "-", "quayside", "canalside", "dish", "chainline", "fork-swap") },
  { weight: 1, arbitrary: oddText },
  { weight: 1, arbitrary: oddNumber },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      "--json",
      "--build",
      "--in",
      "--describe",
      "--help",
      "-V",
      "--",
      "--no-json",
      "--jso",
      "-o",
      "-x",
      "--json=1",
      "/",
      ".",
      "./no/such",
      "a.yaml/b",
      "\0",
    ),
  },
);
const sheet = fc.constantFrom(
  "dish",
  "chainline",
  "steerer",
  "tyre-gap",
  "cockpit",
  "survey",
  "schedule",
  "no-such",
  "dsh",
);
const good = fc.oneof(
  fc
    .tuple(
      sheet,
      fc.constantFrom<readonly string[]>(
        ["--describe"],
        ["--describe", "--json"],
        ["--in", "a.yaml"],
        ["--in", "-", "--json"],
      ),
    )
    .map(([id, more]) => ["sheet", id, ...more]),
  fc.constantFrom<readonly string[]>(
    ["sheet"],
    ["sheet", "--json"],
    ["--help"],
    ["help", "check"],
    ["--version"],
    ["check", "--help"],
    [],
  ),
  fc.constantFrom<readonly string[]>(
    ["check", "a.yaml"],
    ["check", "a.yaml", "--json"],
    ["plan", "-", "--json"],
    ["plan", "a.yaml"],
    ["check", "a.yaml", "--working"],
  ),
);
const args = fc.oneof(
  { weight: 5, arbitrary: good },
  {
    weight: 2,
    arbitrary: fc
      .tuple(good, fc.array(word, { minLength: 1, maxLength: 2 }), fc.nat(4))
      .map(([list, more, i]) => [...list.slice(0, i), ...more, ...list.slice(i)]),
  },
  {
    weight: 1,
    arbitrary: fc
      .tuple(
        fc.constantFrom("check", "sheet", "plan", "book", "chek", "help", "serve --port"),
        fc.array(word, { maxLength: 4 }),
      )
      .map(([c, list]) => [...c.split(" "), ...list]),
  },
  { weight: 1, arbitrary: fc.array(word, { maxLength: 5 }) },
);
const inputs: fc.Arbitrary<Call> = fc.record({
  args: args.map((list) => list.map((w) => w.slice(0, 300))),
  file: fc.oneof(
    // A whole build is reckoned at every check, which takes its time: seldom.
    { weight: 12, arbitrary: mangled.filter((m) => !isWhole(m.base)) },
    { weight: 1, arbitrary: fc.tuple(mangled, fc.constantFrom(...WHOLES)).map(([m, base]) => ({ ...m, base })) },
    { weight: 2, arbitrary: fc.uint8Array({ maxLength: 80 }).map((b) => ({ hex: Buffer.from(b).toString("hex") })) },
    {
      weight: 2,
      arbitrary: fc
        .constantFrom("{}", "[1, 2]", '{"x_mm": 3}', "a: 1", "left_mm: 30\nright_mm: 20")
        .map((t) => ({ hex: Buffer.from(t).toString("hex") })),
    },
  ),
  columns: fc.constantFrom(80, 80, 40, 20, 1, 200),
});

/** Control signs and the marks that turn the direction of writing. */
const UPSETTING = /[\p{Cc}\u202a-\u202e\u2066-\u2069]/u;

let folder = "";

async function put({ args: list, file, columns }: Call): Promise<Went> {
  const bytes = "hex" in file ? Buffer.from(file.hex, "hex") : Buffer.from(mangledText(file), "utf8");
  const io = testIo({
    files: { "a.yaml": bytes, [path.resolve("a.yaml")]: bytes },
    stdin: bytes.toString("utf8"),
    columns,
    // Where a command gets as far as opening a workshop, it opens this one and is asked to stop at once.
    env: { COLDSET_DATA: path.join(folder, "records") },
    stop: Promise.resolve(),
  });
  const code = await main([...list], io);
  mustHold(code === 0 || code === 2 || code === 3, () => `ended with ${code}: ${io.err().slice(0, 400)}`);
  mustHold(code !== 2 || io.err() !== "" || io.out() !== "", () => "refused without a word");
  const shown = io.out() + io.err();
  mustHold(
    !UPSETTING.test(shown.replace(/[\n\t\r]/g, "")),
    () => `signs that upset a terminal: ${JSON.stringify(shown.slice(0, 200))}`,
  );
  // The version is a line of its own, whatever else is asked.
  const asksVersion = list.some((word) => word === "-V" || word === "--version");
  if (list.includes("--json") && !asksVersion && !/Usage:/.test(io.out()) && io.out() !== "") {
    const lines: unknown = JSON.parse(io.out());
    mustHold(lines !== null && typeof lines === "object", () => "not an object");
  }
  return code === 2 ? refusedAs(list[0]?.slice(0, 8) ?? "") : accepted(`${list[0]?.slice(0, 8) ?? ""} ${code}`);
}

export const cli: Door<Call> = {
  name: "cli",
  holds: "any arguments and files are answered or refused with reasons, in letters that a terminal can show",
  inputs,
  open: async () => {
    folder = fs.mkdtempSync(path.join(os.tmpdir(), "coldset-fuzz-"));
  },
  shut: async () => fs.rmSync(folder, { recursive: true, force: true }),
  put,
};
