/**
 * Quayside through the command. Expected values: those of the invented demo (worked by other hands beforehand, marked
 * beside each check); 95 % bands of the program must hold them where the survey's spread is in them.
 */
import { fileURLToPath } from "node:url";
import { sourceById } from "@coldset/core/data";
import { STANDING_TEXT } from "@coldset/core/safety";
import { beforeAll, describe, expect, test } from "vitest";
import { main } from "./main.js";
import { testIo } from "./test-io.js";

const QUAYSIDE = fileURLToPath(new URL("../demo/quayside.yaml", import.meta.url));
const close = (text: string) => text.replace(/\s+/g, " ");

interface Row {
  readonly n: number;
  readonly answer: string;
  readonly verdict: string;
  readonly figure?: { readonly value: number; readonly band?: { readonly low: number; readonly high: number } };
  readonly next?: { readonly at?: string; readonly accuracy?: string };
  readonly working: {
    readonly words: readonly string[];
    readonly tables: readonly { readonly title: string; readonly rows: readonly string[][] }[];
  };
}
interface Joint {
  readonly id: string;
  readonly verdict: string;
  readonly numbers: readonly { readonly name: string; readonly value: number }[];
  readonly rules: readonly { readonly rule: string; readonly level: string }[];
}
interface Toe {
  readonly mm: number;
  readonly bareMm: number;
}
interface Checked {
  readonly kind: string;
  readonly value: {
    readonly board: readonly Row[];
    readonly geometry: {
      readonly before: Record<string, number>;
      readonly after: Record<string, number>;
      readonly reading_set_aside: { readonly name: string };
    };
    readonly joints: readonly Joint[];
    readonly forks: readonly {
      readonly id: string;
      readonly figures: Record<string, number>;
      readonly toe: Toe;
      readonly joints: readonly Joint[];
    }[];
    readonly others: readonly { readonly place: string; readonly part: string; readonly joints: readonly Joint[] }[];
    readonly rules: readonly {
      readonly rule: string;
      readonly level: string;
      readonly about: string;
      readonly onChosen: boolean;
    }[];
    readonly ledger: {
      readonly money: { readonly value: { readonly total: number; readonly overBy: number } };
      readonly alternatives: readonly { readonly total: number; readonly toSpare: number }[];
    };
    readonly next: readonly { readonly at: string }[];
    readonly cockpit: {
      readonly chosen: { readonly stemId: string; readonly spacersMm: number; readonly errorMm: number };
    };
    readonly standing_text: string;
  };
  readonly bands: Record<string, { readonly low: number; readonly high: number }>;
  readonly sources: readonly string[];
}

let text = "";
let checked: Checked;
let codes: readonly number[] = [];

beforeAll(async () => {
  const page = testIo();
  const json = testIo();
  codes = [await main(["check", QUAYSIDE], page), await main(["check", QUAYSIDE, "--json"], json)];
  text = page.out();
  checked = JSON.parse(json.out()) as Checked;
});

const row = (n: number): Row => {
  const found = checked.value.board.find((r) => r.n === n);
  if (found === undefined) throw new Error(`no question ${n}`);
  return found;
};
const within = (value: number | undefined, expected: number, by: number) => {
  expect(value).toBeDefined();
  expect(Math.abs((value ?? Number.NaN) - expected)).toBeLessThanOrEqual(by);
};

describe("coldset check demo/quayside.yaml", () => {
  test("is answered: 0, and nothing on the board promises anything", () => {
    expect(codes).toEqual([0, 0]);
    expect(checked.kind).toBe("answered");
    expect(text.replace(STANDING_TEXT, "")).not.toMatch(/\bsafe\b/i);
    expect(checked.value.board).toHaveLength(20);
  });

  // expect.blunder: top_tube_cc read 537, true about 551, "taken to tube edge not centre"
  test("names the reading that is wrong, by how much, and the likely cause", () => {
    expect(checked.value.geometry.reading_set_aside.name).toBe("top_tube_actual_mm");
    expect(row(13).answer).toBe("The top tube disagrees with everything else by 14 mm.");
    expect(row(13).working.words.join(" ")).toMatch(/edge, not its centre/);
    expect(row(13).next?.at).toBe("donor.measured.top_tube_cc");
    expect(close(text)).toContain("The top tube disagrees with everything else by 14 mm. measure first");
  });

  // expect.geometry_now
  test.each([
    ["head_angle_deg", 71.0],
    ["seat_angle_deg", 73.0],
    ["stack_mm", 560.0],
    ["reach_mm", 392.8],
    ["wheelbase_mm", 1051.4],
    ["trail_mm", 71.5],
    ["bb_height_mm", 288.0],
  ])("today: %s %f lies in the band", (key, expected) => {
    const band = checked.bands[`geometry.before.${key}`];
    expect(band?.low).toBeLessThanOrEqual(expected);
    expect(band?.high).toBeGreaterThanOrEqual(expected);
  });

  // expect.fork_FA_with_584-47, fork_FB_with_584-47, fork_FC
  test("weighs the three forks", () => {
    const fork = (id: string) => {
      const found = checked.value.forks.find((f) => f.id === id);
      if (found === undefined) throw new Error(id);
      return found;
    };
    const fa = fork("FA");
    within(fa.figures.rotation_nose_up_deg, 0.2, 0.15);
    within(fa.figures.head_angle_deg, 70.8, 0.3);
    within(fa.figures.trail_mm, 70.1, 2.1);
    within(fa.figures.bb_height_mm, 282.2, 2.8);
    within(fa.toe.bareMm, 143, 2);
    within(fa.toe.mm, 127, 2);
    const fb = fork("FB");
    within(fb.figures.rotation_nose_up_deg, 2.4, 0.1);
    within(fb.figures.head_angle_deg, 68.6, 0.3);
    within(fb.figures.bb_height_mm, 299.8, 2.8);
    within(fb.figures.trail_mm, 84.8, 2.5);
    within(fb.toe.bareMm, 154, 2);
    within(fb.toe.mm, 139, 2);
    expect(fb.joints.find((j) => j.id === "J4")?.verdict).toBe("will not fit");
    expect(fork("FC").joints.find((j) => j.id === "J4")?.verdict).toBe("will not fit");
    expect(checked.value.rules).toContainEqual(
      expect.objectContaining({ rule: "S4", level: "flag", about: "FB", onChosen: false }),
    );
    expect(checked.value.rules).toContainEqual(
      expect.objectContaining({ rule: "S5", level: "refuse", about: "FC", onChosen: false }),
    );
    expect(text).toMatch(/FA \* +0\.\d° +7\d\.\d°/);
  });

  // expect.side_gap and radial_gap_brake_bridge
  test("gives the gaps of the three tyres", () => {
    const gap = (joints: readonly Joint[], name: string) =>
      joints.find((j) => j.id === "J15")?.numbers.find((n) => n.name === name)?.value;
    const other = (part: string) =>
      checked.value.others.find((o) => o.place === "tyre_rear" && o.part === part)?.joints ?? [];
    within(gap(checked.value.joints, "side gap at the chainstays"), 6.5, 0.05);
    within(gap(checked.value.joints, "radial gap at the brake bridge"), 27, 0.5);
    within(gap(other("q08"), "side gap at the chainstays"), 6.0, 0.05);
    within(gap(other("q07"), "side gap at the chainstays"), 9.0, 0.05);
    expect(text).toContain("side gap at the chainstays");
  });

  // expect.brake_family: q17 with q18; never q19 with q17
  test("keeps the fluids apart: q19 is refused with q17", () => {
    expect(checked.value.rules).toContainEqual(
      expect.objectContaining({ rule: "S9", level: "refuse", about: "q19", onChosen: false }),
    );
    expect(close(text)).toMatch(/S9 refuse on q19, caliper: .*never mixed/);
  });

  // expect.chain_first_answer: measure first, chainstay 442.3 sd 1.2, needed to 0.3, chance 0.26
  test("says measure first for the chain of the hub gear", () => {
    expect(row(12).verdict).toBe("measure first");
    within(row(12).figure?.value, 442.3, 0.3);
    const band = row(12).figure?.band;
    within(((band?.high ?? 0) - (band?.low ?? 0)) / 2 / 1.96, 1.2, 0.1);
    expect(row(12).next?.accuracy).toBe("± 0.3 mm");
    expect(row(12).answer).toContain("26 %");
    expect(checked.value.next.map((n) => n.at)).toContain("donor.measured.chainstay");
  });

  // expect.cost: 587 of 560, over by 27; cable discs with cables 552, 8 to spare; without 540
  test("adds up the money and the cheapest way back", () => {
    expect(checked.value.ledger.money.value).toMatchObject({ total: 587, overBy: 27 });
    expect(checked.value.ledger.alternatives.map((a) => [a.total, a.toSpare])).toEqual([
      [552, 8],
      [540, 20],
    ]);
    expect(text).toMatch(/money +587 of 560 +over +by 27/);
  });

  // expect.schedule: 44.1 in one piece, 37 cut at closing time, deadline 35 missed
  test("misses the deadline and says by what", () => {
    expect(row(15).verdict).toBe("over");
    expect(row(15).answer).toBe("44 days, 37 if work may be cut at closing time. You have 35.");
  });

  // expect.fit and cockpit.best: q13, +17°, 20 of spacers, error 6.5
  test("picks the stem and spacers", () => {
    expect(checked.value.cockpit.chosen).toMatchObject({ stemId: "q13", spacersMm: 20 });
    within(checked.value.cockpit.chosen.errorMm, 6.5, 1);
    expect(row(4).answer).toContain("20 mm of spacers");
  });

  test("prints verdicts in words, numbers with bands, the standing text once", () => {
    expect(text).toMatch(/trail +70\.8 mm ± 4\.\d/);
    expect(text).toContain("fits with work");
    expect(close(text).split(close(STANDING_TEXT)).length - 1).toBe(1);
    expect(close(text).trimEnd().endsWith(close(STANDING_TEXT))).toBe(true);
    expect(checked.value.standing_text).toBe(STANDING_TEXT);
    expect(text).toContain("not checked yet");
  });

  test("is worded for the bench: no double stops, no figure finer than a workshop reads, no joint code without its name", () => {
    expect(text).not.toMatch(/\.;|;\.|\.\.|no band|hard limit|_mm\b|_deg\b/);
    for (const line of text.split("\n")) {
      // A chainstay window and a bore are read to a hundredth; nothing is finer.
      expect(line).not.toMatch(/\d\.\d{3}/);
      expect(line).not.toMatch(/(^|\s)(chainstay|pass the stays with|inserted|long,) \d+\.\d{2}/);
    }
    for (const j of checked.value.joints.filter((x) => x.verdict === "fits"))
      expect(text).toMatch(new RegExp(`^ {2}${j.id} \\S`, "m"));
    expect(text).toMatch(/on J23, tab – frame rear/);
    expect(close(text)).toContain("58 joints: measure first 2, fits with work 2, fits 26, 28 not checked yet.");
  });

  test("--working has the numbers of the joints that fit, which the short page leaves out", async () => {
    const io = testIo();
    await main(["check", QUAYSIDE, "--working"], io);
    expect(text).not.toContain("cup over bore where the bore");
    expect(io.out()).toContain("cup over bore where the bore");
  });

  test.each([40, 80, 100, 120])("at %i columns no line is wider", async (columns) => {
    for (const command of ["check", "plan"]) {
      const io = testIo({ columns });
      expect(await main([command, QUAYSIDE], io)).toBe(0);
      for (const line of io.out().split("\n")) expect(line.length).toBeLessThanOrEqual(columns);
    }
  });

  test("colour says nothing that the words do not", async () => {
    const io = testIo({ colour: true });
    await main(["check", QUAYSIDE], io);
    const sign = String.fromCharCode(27);
    expect(io.out()).toContain(sign);
    expect(io.out().replaceAll(new RegExp(`${sign}\\[\\d+m`, "g"), "")).toBe(text);
  });

  test("every source it cites is in the table", () => {
    expect(checked.sources.length).toBeGreaterThan(10);
    expect(checked.sources.filter((id) => sourceById(id) === undefined)).toEqual([]);
  });

  test("--working shows the tables behind the answers", async () => {
    const io = testIo({ columns: 100 });
    expect(await main(["check", QUAYSIDE, "--working"], io)).toBe(0);
    for (const title of ["Readings, worst first", "Stems tried, best first", "Buy list"])
      expect(io.out()).toContain(title);
  });
});

describe("coldset plan", () => {
  test("orders the work, shuts the gates, finds the way back", async () => {
    const io = testIo();
    expect(await main(["plan", QUAYSIDE], io)).toBe(0);
    const out = close(io.out());
    expect(out).toMatch(/each task in one piece 44\.1 days 20 sessions/); // expect.schedule
    expect(out).toMatch(/tasks cut at closing time 37\.0 days/);
    expect(out).toMatch(/round the clock, the floor 15\.4 days/);
    expect(out).toMatch(/hands-on work 35\.7 h/); // expect.plan
    expect(out).toMatch(/waiting 14 days/);
    expect(out).toMatch(/sessions of 4 h and clear left for later 28\.2 days meets it/); // expect.schedule_finding
    expect(out).toMatch(/t08 dry fit everything bare locks t09/);
    expect(out).toContain(close(STANDING_TEXT));
  });

  // expect.schedule.days_of
  test("--json has the days", async () => {
    const io = testIo();
    expect(await main(["plan", QUAYSIDE, "--json"], io)).toBe(0);
    const answer = JSON.parse(io.out()) as {
      value: { operations: { id: string; day: number }[]; meetsDeadline: boolean };
    };
    const day = (id: string) => answer.value.operations.find((o) => o.id === id)?.day;
    expect(["t05", "t08", "t10", "t14", "t15", "t16", "t19"].map(day)).toEqual([7, 14, 18, 25, 28, 37, 44]);
    expect(answer.value.meetsDeadline).toBe(false);
  });
});
