/**
 * Moorside through the command, read as its builder would: rim brakes, derailleurs, two rings, wheels still to be built.
 * Expected values: worked by hand for this invented demo, named beside each check; core/questions/moorside.test.ts has them all.
 */
import { fileURLToPath } from "node:url";
import { STANDING_TEXT } from "@coldset/core/safety";
import { beforeAll, describe, expect, test } from "vitest";
import { main } from "./main.js";
import { testIo } from "./test-io.js";

const MOORSIDE = fileURLToPath(new URL("../demo/moorside.yaml", import.meta.url));
const close = (text: string) => text.replace(/\s+/g, " ");

let lines = "";
let text = "";
let plan = "";
let codes: readonly number[] = [];

beforeAll(async () => {
  const check = testIo();
  const order = testIo();
  codes = [await main(["check", MOORSIDE], check), await main(["plan", MOORSIDE], order)];
  lines = check.out();
  text = close(lines);
  plan = close(order.out());
});

describe("coldset check demo/moorside.yaml", () => {
  test("is answered, no refusal stands on what was chosen, and nothing promises anything", () => {
    expect(codes).toEqual([0, 0]);
    expect(text.replace(close(STANDING_TEXT), "")).not.toMatch(/\bsafe\b/i);
    expect(text.trimEnd().endsWith(close(STANDING_TEXT))).toBe(true);
  });

  // expect.blunder: wheelbase 1032, true about 1012
  test("names the wheelbase as misread by 20", () => {
    expect(text).toContain("The wheelbase disagrees with everything else by 20 mm. measure first");
    expect(text).toContain("you read 1032 mm, as entered (likely 1012)");
  });

  // expect.cockpit.best: m35 raised by 40
  test("sets the quill stem, and speaks of its raise, not of spacers", () => {
    expect(text).toContain("Yes: stem 80 by −17°, raised by 40 mm.");
    expect(text).not.toMatch(/mm of spacers/);
  });

  // expect.side_gap_584-42: 5.75, target 6; with_584-47: 2.9, no
  test("says that the wanted tyre is tight and the wider one is out", () => {
    expect(text).toContain("Clears, but tight: side gap at the chainstays 5.8 mm, 6 are wanted.");
    expect(text).toMatch(/584-47: only 2\.9 mm at the chainstays, 4 is the least\. \(refuse S14\)/);
  });

  // expect.pad_reach_at_584: front 69, rear 71
  test("tells how far the pads must reach and that nobody has judged it yet", () => {
    expect(text).toMatch(/front pads must reach 69 mm .*rear pads must reach 71 mm .*J25 is not judged yet/);
    expect(text).toMatch(/J25 rim brake – reach/);
  });

  // expect.capacity, chain
  test("asks the derailleur's questions of the drive, not the hub gear's", () => {
    expect(text).toContain("42/26 with 11 to 34: 39 teeth to take up, the cage takes 35.");
    expect(text).toContain("never to use 26/11 and 26/13");
    expect(text).not.toMatch(/tensioner|as the hub gear asks/);
  });

  test("needs no disc, no tab and no through axle, and says so in place of an empty answer", () => {
    expect(text).toContain(
      "Not by the brake: rim pads do not push the axle out of the fork. no problem found (rim brake)",
    );
    expect(text).toContain("Nowhere: the rear brake stays on the rim, and no tab is needed.");
    expect(text).toContain("No through axle here.");
  });

  // expect.refuse
  test("keeps the tempting fork and the worn rims out, with the reason", () => {
    expect(text).toContain("28.6 steerer, but the headset is made for 25.4.");
    expect(text).toMatch(/S11 refuse on m05, wheel pair: Front rim wall 0\.9: worn, under 1\.0\./);
  });

  test("is worded for the bench", () => {
    expect(text).not.toMatch(/\.;|;\.|\.\.|no band|hard limit|_mm\b|_deg\b|undefined|NaN/);
    for (const line of lines.split("\n")) expect(line).not.toMatch(/\d\.\d{3}/);
  });

  test.each([40, 80, 100])("at %i columns no line is wider", async (columns) => {
    const io = testIo({ columns });
    expect(await main(["check", MOORSIDE], io)).toBe(0);
    for (const line of io.out().split("\n")) expect(line.length).toBeLessThanOrEqual(columns);
  });
});

describe("coldset plan demo/moorside.yaml", () => {
  // expect.schedule: t13 (7 h) fits no Saturday, 4 + 3, then 63.3 days, 10 sessions, 70 given
  test("cuts the task that fits no Saturday and meets the deadline", () => {
    expect(plan).toMatch(/each task in one piece 63\.3 days 10 sessions/);
    expect(plan).toMatch(/t13 .*cut into 4 \+ 3/);
    expect(plan).toMatch(/hands-on work 42\.5 h/);
    expect(plan).toMatch(/waiting 17 days/);
  });
});
