/** What does the command say to what should not have come in? Each problem by its place, none with a trace of the program. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { startInput } from "@coldset/core/sheet";
import { ALL_SHEETS } from "@coldset/core/sheets";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { main } from "./main.js";
import packageJson from "./package.json" with { type: "json" };
import { type TestIoOptions, testIo } from "./test-io.js";
import { VERSION } from "./version.js";

const QUAYSIDE_FILE = fileURLToPath(new URL("../demo/quayside.yaml", import.meta.url));
const QUAYSIDE = readFileSync(QUAYSIDE_FILE, "utf8");

interface RefusedObject {
  readonly kind: string;
  readonly refusals: readonly {
    readonly code: string;
    readonly at: string;
    readonly given: unknown;
    readonly allowed: string;
    readonly message: string;
  }[];
}

const lineOf = (words: string): number => QUAYSIDE.slice(0, QUAYSIDE.indexOf(words)).split("\n").length;
/** Signs that could do something to a terminal. */
const acting = (text: string) => [...text].filter((sign) => sign !== "\n" && /[\p{Cc}\u202a-\u202e]/u.test(sign));

async function run(argv: readonly string[], options: TestIoOptions = {}) {
  const io = testIo(options);
  const code = await main([...argv], io);
  return { code, out: io.out(), err: io.err(), written: io.written };
}

function changed(from: string | RegExp, to: string): TestIoOptions {
  const text = QUAYSIDE.replace(from, to);
  if (text === QUAYSIDE) throw new Error(`nothing to change: ${from}`);
  return { files: { "b.yaml": text } };
}

async function refusedBuild(options: TestIoOptions, argv: readonly string[] = ["check", "b.yaml"]) {
  const plain = await run(argv, options);
  const json = await run([...argv, "--json"], options);
  expect([plain.code, json.code]).toEqual([2, 2]);
  expect(plain.out).toBe("");
  expect(plain.err).not.toMatch(/\n\s+at /);
  const object = JSON.parse(json.out) as RefusedObject;
  expect(Object.keys(object)).toEqual(["kind", "refusals"]);
  for (const r of object.refusals) expect(Object.keys(r)).toEqual(["code", "at", "given", "allowed", "message"]);
  return { err: plain.err.replace(/\s+/g, " "), refusals: object.refusals };
}

describe("a build's document", () => {
  test.each<[string, TestIoOptions, RegExp, RegExp]>([
    ["empty", { files: { "b.yaml": "" } }, /empty-file/, /holds no document/],
    ["blank", { files: { "b.yaml": "\n  \n" } }, /empty-file/, /holds no document/],
    ["broken YAML", { files: { "b.yaml": "kind: build\nchosen: {fork: FA\nx: [1\n" } }, /yaml/, /b\.yaml:\d+:\d+/],
    ["a tab as indent", { files: { "b.yaml": "kind: build\nchosen:\n\tfork: FA\n" } }, /yaml/, /b\.yaml:3:1/],
    ["unknown kind", changed("kind: donor", "kind: donnor"), /unknown-kind/, /did you mean "donor"/],
    ["unknown version", changed("version: 1", "version: 9"), /unknown-version/, /Version 9/],
    ["unknown key", changed("  chainstay: 442", "  chainstya: 442"), /unknown-key/, /b\.yaml:\d+:\d+/],
    [
      "wrong unit",
      changed("  chainstay: 442", "  chainstay: 442 kg"),
      /./,
      new RegExp(`b\\.yaml:${lineOf("  chainstay: 442")}:14 measured\\.chainstay`),
    ],
    ["negative", changed("  chainstay: 442", "  chainstay: -442"), /./, /measured\.chainstay/],
    ["NaN", changed("  chainstay: 442", "  chainstay: .nan"), /./, /measured\.chainstay/],
    ["infinite", changed("  chainstay: 442", "  chainstay: .inf"), /./, /measured\.chainstay/],
    ["huge", changed("  chainstay: 442", "  chainstay: 44200000"), /./, /measured\.chainstay/],
    ["a part that is not there", changed("stem: q13", "stem: q131"), /not-found/, /q131/],
    ["a part in the wrong place", changed("stem: q13", "stem: q15"), /wrong-kind/, /q15 is a bar/],
    ["a part used twice", changed("tyre_front: q06", "tyre_front: q06\n  tyre_rear: q06"), /./, /./],
    ["NUL bytes", { files: { "b.yaml": new Uint8Array([107, 0, 1, 2]) } }, /not-text/, /not text/],
    ["no UTF-8", { files: { "b.yaml": new Uint8Array([0xc3, 0x28, 0xff]) } }, /not-utf-8/, /UTF-8/],
    ["UTF-16", { files: { "b.yaml": new Uint8Array([0xff, 0xfe, 107, 0]) } }, /not-utf-8/, /UTF-16/],
    ["50 MB", { files: { "b.yaml": new Uint8Array(50_000_000).fill(35) } }, /file-too-large/, /50\.0 MB/],
    ["3 MB of text", { files: { "b.yaml": "# x\n".repeat(750_000) } }, /file-too-large/, /MB/],
    ["another build asked for", { files: { "b.yaml": QUAYSIDE } }, /no-build/, /quayside/],
  ])("%s", async (name, options, code, words) => {
    const argv = name === "another build asked for" ? ["check", "b.yaml", "--build", "moor"] : ["check", "b.yaml"];
    const { err, refusals } = await refusedBuild(options, argv);
    expect(refusals.map((r) => r.code).join(" ")).toMatch(code);
    expect(err).toMatch(words);
  });

  test("one slip of the pen is told once, with its place and what to look at; --json keeps all that the reader said", async () => {
    const { err, refusals } = await refusedBuild({ files: { "b.yaml": "kind: build\n  id: [a\n" } });
    expect(refusals.length).toBeGreaterThan(1);
    expect(err).toMatch(/^One thing has to be put right first/);
    expect(err).toMatch(/b\.yaml:1:7: this is not YAML or JSON from here on/);
    expect(err).toContain("Look at the indents, brackets and quotes there");
  });

  test("a refusal begins with a capital and does not repeat what was given", async () => {
    const { err } = await refusedBuild(changed("  chainstay: 442", "  chainstya: 442"));
    expect(err).toContain('Unknown key "chainstya"; did you mean "chainstay"?');
    expect(err).not.toContain("Given:");
    const other = await refusedBuild({ files: { "b.yaml": QUAYSIDE } }, ["check", "b.yaml", "--build", "moor"]);
    expect(other.err).toContain("No build moor here; there is quayside.");
  });

  test("all problems come at once, each with line and column", async () => {
    const { refusals } = await refusedBuild({
      files: {
        "b.yaml": QUAYSIDE.replace("  wheelbase: 1052", "  wheelbase: banana")
          .replace("inseam: 820", "inseam: 82000")
          .replace("session_h: 3", "session_h: three"),
      },
    });
    expect(refusals.length).toBeGreaterThanOrEqual(3);
    for (const r of refusals) expect(r.at).toMatch(/^b\.yaml:\d+:\d+ /);
  });

  test("a ring of operations is refused by the plan, told by the check", async () => {
    const options = changed("h: 2.5, after: [] }", "h: 2.5, after: [t19] }");
    expect((await run(["check", "b.yaml"], options)).code).toBe(0);
    const { err } = await refusedBuild(options, ["plan", "b.yaml"]);
    expect(err).toMatch(/ring/);
  });

  test("hostile text is shown, and does nothing to the terminal", async () => {
    const bad = "\\e[2J\\e]0;owned\\a\\u202egnp\\x9b31m";
    const { out, code } = await run(["check", "b.yaml"], changed(/^title: .*$/m, `title: "Bike ${bad} end"`));
    expect(code).toBe(0);
    expect(out).toContain("[U+001B][2J");
    expect(acting(out)).toEqual([]);
    const json = await run(["check", "b.yaml", "--json"], changed(/^title: .*$/m, `title: "Bike ${bad} end"`));
    expect((JSON.parse(json.out) as { value: { build: { title: string } } }).value.build.title).toContain("\u001b[2J");
    expect(acting(json.out)).toEqual([]);
  });

  test("from standard input, as JSON as well", async () => {
    expect((await run(["check", "-"], { stdin: QUAYSIDE })).code).toBe(0);
    const empty = await run(["check", "-"], { stdin: "" });
    expect(empty.code).toBe(2);
    expect(empty.err).toContain("standard input holds no document");
  });

  test("too little measured: answered with measure first, the drawing left out with a word", async () => {
    const options = changed(
      /^ {2}(front_centre|wheelbase|rear_axle_to_head_top|front_axle_to_head_top|bb_to_head_top|bb_height|fork_ac|head_angle|seat_angle|down_tube_cc|seat_cluster_to_rear_axle|chainstay|fork_rake): .*\n/gm,
      "",
    );
    const { code, out } = await run(["check", "b.yaml"], options);
    expect(code).toBe(0);
    expect(out).toMatch(/measure first/);
    expect(out).not.toMatch(/NaN|undefined/);
    const book = await run(["book", "b.yaml", "-o", "x.pdf"], options);
    expect(book.code).toBe(0);
  });
});

describe("files that a build names", () => {
  const at = QUAYSIDE.indexOf("---\nkind: donor");
  const [build, rest] = [QUAYSIDE.slice(0, at), QUAYSIDE.slice(at)];
  const folder = mkdtempSync(path.join(tmpdir(), "coldset-door-"));
  const file = (name: string, text: string) => {
    const full = path.join(folder, name);
    writeFileSync(full, text);
    return full;
  };
  afterAll(() => rmSync(folder, { recursive: true }));

  test("are read too, relative to it", async () => {
    file("rest.yaml", rest);
    const { code, out } = await run(["check", file("build.yaml", `${build}files: [rest.yaml]\n`)]);
    expect(code).toBe(0);
    expect(out).toContain("The top tube disagrees with everything else by 14 mm.");
  });

  test("one that is not there, a folder, and a path that cannot be handed on are told at once", async () => {
    const { code, err } = await run(["check", file("bad.yaml", `${build}files: [nowhere.yaml, ., /etc/passwd]\n`)]);
    expect(code).toBe(2);
    const words = err.replace(/\s+/g, " ");
    expect(words).toContain("nowhere.yaml");
    expect(words).toMatch(/is a folder/);
    expect(words).toMatch(/not named relative/);
    expect(words).not.toContain("root:");
  });

  test("a document in two of them is told with both places", async () => {
    file("rest.yaml", rest);
    file("again.yaml", rest.slice(rest.indexOf("kind: rider")).split("---")[0] ?? "");
    const { code, err } = await run(["check", file("two.yaml", `${build}files: [rest.yaml, again.yaml]\n`)]);
    expect(code).toBe(2);
    expect(err.replace(/\s+/g, " ")).toMatch(/rider r1 stands in .*rest\.yaml and in .*again\.yaml/);
  });

  test("a missing file gets the nearest name; a folder is said", async () => {
    file("quayside.yaml", QUAYSIDE);
    const missing = await run(["check", path.join(folder, "quaysid.yaml")]);
    expect(missing.code).toBe(2);
    expect(missing.err.replace(/\s+/g, "")).toContain("Didyoumean");
    expect((await run(["check", folder])).err).toContain("is a folder");
  });
});

describe("a safety refusal on something chosen ends with 3", () => {
  test.each<[string, TestIoOptions, string]>([
    ["fork FC with discs", changed("fork: FA", "fork: FC"), "S5"],
    ["an aluminium donor with cold setting", changed("class: plain_chromoly", "class: aluminium"), "S1"],
    ["a crack", changed("cracks: none_seen", "cracks: found"), "S7"],
  ])("%s", async (_name, options, rule) => {
    const check = await run(["check", "b.yaml"], options);
    expect(check.code).toBe(3);
    expect(check.out).toMatch(new RegExp(`${rule} refuse`));
    const plan = await run(["plan", "b.yaml"], options);
    expect([plan.code, plan.out]).toEqual([3, ""]);
    expect(plan.err).toContain("No plan is made while a refusal stands.");
    const json = await run(["plan", "b.yaml", "--json"], options);
    expect((JSON.parse(json.out) as RefusedObject).refusals.map((r) => r.code)).toContain(
      `safety-${rule.toLowerCase()}`,
    );
    expect((await run(["check", "b.yaml", "--json"], options)).code).toBe(3);
  });
});

describe("coldset sheet", () => {
  test("lists all, for people and for programs", async () => {
    const { code, out } = await run(["sheet"]);
    expect(code).toBe(0);
    for (const { id } of ALL_SHEETS) expect(out).toContain(id);
    const json = JSON.parse((await run(["sheet", "--json"])).out) as { sheets: { id: string }[] };
    expect(json.sheets.map((s) => s.id)).toEqual(ALL_SHEETS.map((s) => s.id));
  });

  test.each(ALL_SHEETS.map((s) => [s.id, s] as const))(
    "%s: describe, then answer its own example",
    async (id, sheet) => {
      const described = JSON.parse((await run(["sheet", id, "--describe", "--json"])).out) as {
        id: string;
        example: unknown;
        schema: { type: string; $schema: string; required: string[]; properties: Record<string, unknown> };
      };
      expect(described.id).toBe(id);
      expect(described.schema).toMatchObject({
        type: "object",
        $schema: "https://json-schema.org/draft/2020-12/schema",
      });
      for (const key of described.schema.required) expect(described.schema.properties).toHaveProperty([key]);
      expect(described.example).toEqual(startInput(sheet));
      const { code, out, err } = await run(["sheet", id, "--in", "-", "--json"], {
        stdin: JSON.stringify(described.example),
      });
      expect([code, err]).toEqual([0, ""]);
      const answer = JSON.parse(out) as Record<string, unknown>;
      expect(Object.keys(answer)).toEqual(["kind", "value", "bands", "sources", "cautions"]);
      expect(out).not.toMatch(/NaN|Infinity/);
      const text = await run(["sheet", id, "--describe"]);
      expect(text.out).toContain('"$schema"');
      for (const columns of [60, 80]) {
        const table = await run(["sheet", id, "--in", "-"], { stdin: JSON.stringify(described.example), columns });
        expect(table.code).toBe(0);
        for (const line of table.out.split("\n")) expect(line.length).toBeLessThanOrEqual(columns);
      }
    },
  );

  // Steerer arithmetic (docs/methods/steerer.md), by hand: 12 + 145 + 10 + 20 + 40 − 3 = 224.
  test("YAML with written units answers as well", async () => {
    const yaml =
      "head_tube_mm: 14,5 cm\nfaced_off_mm: 0\nlower_stack_mm: 12\nupper_stack_mm: 10 mm\nspacers_below_mm: 20\nstem_clamp_mm: 40\nspacers_above_mm: 0\ngap_mm: 3\nsteerer_available_mm: 240\nlimit_spacers_mm: 40\n";
    const { out } = await run(["sheet", "steerer", "--in", "-", "--json"], { stdin: yaml });
    expect((JSON.parse(out) as { value: { steerer_needed_mm: number } }).value.steerer_needed_mm).toBeCloseTo(224, 9);
  });

  test.each<[string, readonly string[], TestIoOptions, string]>([
    ["unknown id", ["sheet", "frok-swap"], {}, "unknown-sheet"],
    ["a key of objects", ["sheet", "__proto__"], {}, "unknown-sheet"],
    ["no input", ["sheet", "steerer"], {}, "no-input"],
    ["empty", ["sheet", "steerer", "--in", "-"], { stdin: "" }, "empty-file"],
    ["broken JSON", ["sheet", "steerer", "--in", "-"], { stdin: '{"a": 1' }, "yaml"],
    ["a list", ["sheet", "steerer", "--in", "-"], { stdin: "[]" }, "not-an-object"],
    [
      "a number too large for a number",
      ["sheet", "steerer", "--in", "-"],
      { stdin: '{"head_tube_mm": 1e999}' },
      "not-finite",
    ],
    ["a file that is missing", ["sheet", "steerer", "--in", "no-such.json"], {}, "no-such-file"],
    ["50 MB", ["sheet", "steerer", "--in", "-"], { stdin: " ".repeat(50_000_000) }, "file-too-large"],
  ])("%s: one object, exit 2", async (_name, argv, options, code) => {
    const { refusals } = await refusedBuild(options, argv);
    expect(refusals.map((r) => r.code)).toContain(code);
  });

  test("the nearest id is named", async () => {
    expect((await run(["sheet", "frok-swap"])).err).toContain("Did you mean fork-swap?");
  });

  test("a bad value is told with file, line and column", async () => {
    const { err } = await run(["sheet", "steerer", "--in", "in.yaml"], {
      files: { "in.yaml": "head_tube_mm: 145\nlower_stack_mm: -3\n" },
    });
    expect(err).toContain("in.yaml:2:17:");
    expect(err).toMatch(/−3 mm is\s+below\s+0\s+mm/);
  });

  // Measurements that contradict each other are answered with a caution or refused, never silently.
  test("contradicting measures carry a caution that names one", async () => {
    const sheet = ALL_SHEETS.find((s) => s.id === "side-view");
    if (sheet === undefined) throw new Error("no side-view");
    const input = { ...startInput(sheet), wheelbase_mm: 1091 };
    const { out, code } = await run(["sheet", "side-view", "--in", "-", "--json"], { stdin: JSON.stringify(input) });
    const answer = JSON.parse(out) as { kind: string; cautions?: { message: string }[] };
    if (answer.kind === "answered") expect(answer.cautions?.map((c) => c.message).join(" ")).toMatch(/wheelbase/);
    else expect(code).toBe(2);
  });
});

describe("usage", () => {
  test.each<[readonly string[], RegExp]>([
    [["chek", "x"], /Did you mean check/],
    [["check"], /missing required argument 'file'/],
    [["check", "x", "--jsn"], /Did you mean --json/],
    [["check", "x", "y"], /too many arguments/],
    [["serve", "--port", "99999"], /is no port/],
    [["serve", "--port", "-1"], /is no port/],
    [["book", QUAYSIDE_FILE], /-o book\.pdf/],
  ])("%j: 2", async (argv, words) => {
    const { code, out, err } = await run(argv);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toMatch(words);
    expect(err).not.toMatch(/\n\s+at /);
  });

  test("--json has the object for a usage error too", async () => {
    const { code, out } = await run(["check", "--json"]);
    expect(code).toBe(2);
    expect((JSON.parse(out) as RefusedObject).refusals).toHaveLength(1);
  });

  test.each([
    [[]],
    [["--help"]],
    [["check", "--help"]],
    [["sheet", "--help"]],
    [["plan", "--help"]],
    [["book", "-h"]],
    [["serve", "--help"]],
  ])("help %j is plain, with an example, on standard output", async (argv) => {
    const { code, out, err } = await run(argv, { colour: true });
    expect([code, err]).toEqual([0, ""]);
    expect(out).toContain("Example:");
    expect(out).not.toContain("\u001b");
  });

  test("the version is that of the package", async () => {
    expect(VERSION).toBe(packageJson.version);
    expect((await run(["--version"])).out).toBe(`${VERSION}\n`);
  });

  test("our own fault: 1, one line, the trace only when asked for", async () => {
    const broken = { ...testIo(), readStdin: () => Promise.reject(new Error("lamp fell over")) };
    expect(await main(["check", "-"], broken)).toBe(1);
    expect(broken.err()).toContain("lamp fell over");
    expect(broken.err()).not.toMatch(/\n\s+at /);
    const asked = { ...testIo({ env: { COLDSET_DEBUG: "1" } }), readStdin: () => Promise.reject(new Error("x")) };
    expect(await main(["check", "-"], asked)).toBe(1);
    expect(asked.err()).toMatch(/\n\s+at /);
  });
});

describe("coldset book", () => {
  let pdf: Uint8Array | undefined;
  let said = "";
  beforeAll(async () => {
    const { code, out, written } = await run(["book", QUAYSIDE_FILE, "-o", "book.pdf"]);
    expect(code).toBe(0);
    said = out;
    pdf = written.get("book.pdf");
  });

  test("is a PDF of at least four sheets, and is not written over the build", async () => {
    expect(new TextDecoder("latin1").decode(pdf?.subarray(0, 5))).toBe("%PDF-");
    expect(Number(/(\d+) sheets/.exec(said)?.[1])).toBeGreaterThanOrEqual(4);
    const own = await run(["book", QUAYSIDE_FILE, "-o", QUAYSIDE_FILE]);
    expect([own.code, own.written.size]).toEqual([2, 0]);
  });

  test("while a refusal stands it is printed with it, without plan and buy list: 3", async () => {
    const { code, out, written } = await run(["book", "b.yaml", "-o", "x.pdf"], changed("fork: FA", "fork: FC"));
    expect(code).toBe(3);
    expect(out).toMatch(/carries a refusal \(S5\)/);
    expect(written.has("x.pdf")).toBe(true);
  });

  test("a folder that is not there is refused", async () => {
    const io = { ...testIo(), replaceFile: () => Promise.reject(Object.assign(new Error("x"), { code: "ENOENT" })) };
    expect(await main(["book", QUAYSIDE_FILE, "-o", "nowhere/b.pdf"], io)).toBe(2);
    expect(io.err()).toContain("there is no such folder");
  });
});
