/**
 * Canalside through the command, read as its builder would. Expected values: those of the invented demo
 * (worked by other hands beforehand, named beside each check); bands hold them where the survey's spread is in a figure.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { sourceById } from "@coldset/core/data";
import { STANDING_TEXT } from "@coldset/core/safety";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { main } from "./main.js";
import { testIo } from "./test-io.js";

const CANALSIDE = fileURLToPath(new URL("../demo/canalside.yaml", import.meta.url));
const close = (text: string) => text.replace(/\s+/g, " ");

let text = "";
let working = "";
let json: { value: { board: { n: number; verdict: string; answer: string }[] }; sources: string[] };
let codes: readonly number[] = [];
const folder = mkdtempSync(join(tmpdir(), "coldset-canalside-"));

beforeAll(async () => {
  const page = testIo();
  const more = testIo({ columns: 100 });
  const object = testIo();
  codes = [
    await main(["check", CANALSIDE], page),
    await main(["check", CANALSIDE, "--working"], more),
    await main(["check", CANALSIDE, "--json"], object),
  ];
  text = page.out();
  working = more.out();
  json = JSON.parse(object.out()) as typeof json;
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The same build with something changed, through the command. */
async function changed(from: string, to: string): Promise<{ code: number; out: string }> {
  const file = join(folder, "changed.yaml");
  const before = readFileSync(CANALSIDE, "utf8");
  if (!before.includes(from)) throw new Error(`nothing to change: ${from}`);
  writeFileSync(file, before.replace(from, to));
  const io = testIo();
  const code = await main(["check", file], io);
  return { code, out: close(io.out()) };
}

describe("coldset check demo/canalside.yaml", () => {
  test("is answered: 0, twenty questions, and nothing promises anything", () => {
    expect(codes).toEqual([0, 0, 0]);
    expect(json.value.board).toHaveLength(20);
    expect(text.replace(STANDING_TEXT, "")).not.toMatch(/\bsafe\b/i);
    expect(close(text).trimEnd().endsWith(close(STANDING_TEXT))).toBe(true);
  });

  // expect.blunder: seat_tube_cc read 430, true about 400; 28.6 mm seat tube, read to its top
  test("names the seat tube, and why", () => {
    expect(close(text)).toMatch(/The seat tube disagrees with everything else by (29|30) mm\. measure first/);
    expect(close(working)).toMatch(/You read 430\.0 mm\. Likely .*top/);
  });

  // expect.cockpit.best, with_c35; expect.saddle
  test("raises the quill, keeps the swept bar, and shows what the flat bar would do", () => {
    expect(text).toContain("Yes: stem 60 by +25°, raised by 35 mm.");
    expect(text).not.toMatch(/35 mm of spacers/);
    expect(working).toMatch(/c35 +c33 +60 +8[78]\.\d mm/);
    expect(close(text)).toContain("26.4 post, 178.2 inserted, 52.8 needed");
  });

  // expect.lever_mismatch, rack_load
  test("refuses the short-pull levers and the overloaded rack, on the parts they stand on", () => {
    expect(close(text)).toMatch(/S10 refuse on c10, lever pair: Lever pull 7 on a caliper for 14\./);
    expect(close(text)).toMatch(/S13 refuse on c15, child seat: .*its class is 27 kg: 5\.4 kg over/);
    expect(close(text)).toMatch(/c15 as the child seat refuse S13/);
    expect(close(text)).toMatch(/S13 flag on c14, child seat: .*Not judged here:/);
  });

  // expect.arm_gap, ring_gap, chainline, with_559-50, chain_bb, post
  test("gives the gaps and rejects what does not go in", () => {
    expect(close(text)).toContain("The arms pass the stays with 11.5 mm to spare, nearest 126 from the BB axis.");
    expect(close(text)).toContain("The 32 ring passes the stay with 5 mm to spare.");
    expect(close(text)).toContain("Ring at 47.5, sprockets at 46.8: 0.7 outside.");
    expect(close(text)).toContain("Rear 8.5 mm each side, front 8 mm each side.");
    expect(close(text)).toContain("Made for a 73 shell, this one is 68.");
    expect(close(text)).toContain("27.2 post in a tube for 26.4.");
  });

  // expect.cost, plan, schedule_finding
  test("adds up money and evenings", () => {
    expect(text).toMatch(/money +442 of 460 +within +18 to spare/);
    expect(text).toMatch(/hours +14\.5 h of 15 +within/);
    expect(close(text)).toContain("8 evenings, and there are 6");
    expect(close(text)).toContain("over (6 evenings)");
  });

  test("speaks of what this bicycle has: no tab, no spreading, no brake hose", () => {
    expect(close(text)).toContain("Nowhere: the rear brake stays on the rim, and no tab is needed.");
    expect(working).not.toMatch(/Creep up/);
    expect(close(text)).toContain("The donor's own fork stays in its own headset: nothing is cut.");
    expect(text).not.toMatch(/bleed|piston|fluid/i);
  });

  test("what is not judged yet says so: child seat, rack, stand, indexing, cables", () => {
    for (const title of [
      "J50 child seat – frame",
      "J46 rack – frame",
      "J51 stand – load",
      "J39 shifter – derailleur – cassette",
    ])
      expect(close(text)).toContain(title);
    expect(close(text)).toMatch(/Not checked yet: look at these yourself at the dry fit\./);
    expect(close(text)).toMatch(/no cable is chosen/);
    for (const n of [3, 16, 17, 18]) expect(json.value.board.find((b) => b.n === n)?.verdict).toBe("not checked yet");
  });

  test("is worded for the bench", () => {
    expect(text).not.toMatch(/\.;|;\.|\.\.|no band|hard limit|_mm\b|_deg\b|undefined|NaN/);
    for (const line of text.split("\n")) expect(line).not.toMatch(/\d\.\d{3}/);
  });

  test("every source it cites is in the table", () => {
    expect(json.sources.length).toBeGreaterThan(10);
    expect(json.sources.filter((id) => sourceById(id) === undefined)).toEqual([]);
  });

  test.each([40, 80, 100])("at %i columns no line is wider", async (columns) => {
    for (const command of ["check", "plan"]) {
      const io = testIo({ columns });
      expect(await main([command, CANALSIDE], io)).toBe(0);
      for (const line of io.out().split("\n")) expect(line.length).toBeLessThanOrEqual(columns);
    }
  });
});

describe("a refusal on what is chosen ends with 3 and stands before everything else", () => {
  test("short-pull levers on the linear-pull brakes", async () => {
    const { code, out } = await changed("lever: c09", "lever: c10");
    expect(code).toBe(3);
    expect(out).toMatch(/S10 refuse on c07/);
    expect(out).toMatch(/Settle the refusal first \(S10\)/);
  });
  test("the rack seat with the panniers", async () => {
    const { code, out } = await changed("child_seat: c14", "child_seat: c15");
    expect(code).toBe(3);
    expect(out).toMatch(/No plan while a refusal stands \(S13\)/);
  });
});

describe("coldset plan demo/canalside.yaml", () => {
  test("evening 6 is too full, the paint holds evening 4, and the ways into six evenings", async () => {
    const io = testIo();
    expect(await main(["plan", CANALSIDE], io)).toBe(0);
    const out = close(io.out());
    expect(out).toContain("6 evenings of 2.5 h, on days 0, 7, 14, 21, 28, 35");
    expect(out).toMatch(/each task in one piece 49\.1 days 8 evenings/);
    expect(out).toContain("Evening 6 holds 3.0 h of tasks (t07, t08) in 2.5 h.");
    expect(out).toMatch(/t05 .* is meant for evening 4, but what t04 leaves is ready only 2\.0 h into it/);
    expect(out).toMatch(/waits counted in days of the calendar 7 evenings over by 1/);
    expect(out).toMatch(/waits in days of the calendar, and work cut at closing( time)? 6 evenings fits/);
    expect(out).toMatch(/t03 dry fit seat rack stand brakes locks t04/);
    expect(out).toMatch(/hands-on work 14\.5 h/);
    expect(out).toMatch(/waiting 7 days/);
  });
});
