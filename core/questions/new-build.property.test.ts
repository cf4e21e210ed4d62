/**
 * Does a build made from any few entries give an honest board? Twenty rows, each with an answer and a verdict; where it
 * says "measure first", the measurement and its tool; no figure that is no number. The readings are those of one possible
 * frame, worked out by hand from its angles and lengths (frameReadings), or any nonsense inside the fields' ranges.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { JOINT_VERDICTS, LIMIT_VERDICTS, SAFETY_LEVELS } from "../quantity/index.js";
import { loadText, NEW_BUILD_ENTRIES, NEW_BUILD_KEYS, newBuild, resolveBuild } from "../workshop/index.js";
import { type Reckoning, reckon } from "./index.js";

const SEED = 20240721;
const VERDICTS: readonly string[] = [...JOINT_VERDICTS, ...LIMIT_VERDICTS, ...SAFETY_LEVELS, "no problem found"];

/** What a tape would read on a frame with these figures; plain trigonometry in the side view, mm and degrees. */
function frameReadings() {
  const rad = Math.PI / 180;
  const wheel = 340;
  const bbHeight = 285;
  const stays = 440;
  const seat = { angle: 73 * rad, long: 520 };
  const head = { angle: 72 * rad, tube: 140, joint: 32, stack: 13, rake: 48 };
  const bb = { x: 0, y: bbHeight };
  const rear = { x: -Math.sqrt(stays ** 2 - (wheel - bbHeight) ** 2), y: wheel };
  const cluster = { x: bb.x - seat.long * Math.cos(seat.angle), y: bb.y + seat.long * Math.sin(seat.angle) };
  const top = { x: 380, y: bbHeight + 560 };
  const axis = { x: Math.cos(head.angle), y: -Math.sin(head.angle) };
  // Down the steering axis, then square to it by the rake, until the axle stands at the wheel's radius.
  const down = (top.y - wheel + head.rake * axis.x) / -axis.y;
  const front = { x: top.x + down * axis.x - head.rake * axis.y, y: wheel };
  const apart = (a: { x: number; y: number }, b: { x: number; y: number }) =>
    Math.hypot(a.x - b.x, a.y - b.y).toFixed(1);
  const joint = { x: top.x + head.joint * axis.x, y: top.y + head.joint * axis.y };
  return {
    radius: String(wheel),
    bb_height: String(bbHeight),
    chainstay: String(stays),
    wheelbase: (front.x - rear.x).toFixed(1),
    head_tube: String(head.tube),
    bb_to_head_top: apart(bb, top),
    front_axle_to_head_top: apart(front, top),
    fork_rake: String(head.rake),
    lower_stack: String(head.stack),
    seat_tube_cc: String(seat.long),
    seat_cluster_to_rear_axle: apart(cluster, rear),
    top_tube_joint_below_head_top: String(head.joint),
    rear_axle_to_head_top: apart(rear, top),
    top_tube_cc: apart(cluster, joint),
  };
}

const PLAIN: Readonly<Record<string, string>> = {
  name: "Old blue",
  becomes: "two bags and a hill",
  cracks: "none_seen",
  ...frameReadings(),
  inseam: "82 cm",
  budget: "300",
  price: "30",
  hours_max: "30",
  open_days: "tue, thu",
  session_h: "3 h",
  tyre_now: "37-622",
  tyre_wanted: "47-584",
  gap_chainstays: "60",
  gap_seatstays: "66",
  saddle_xy: "-220; 692",
  hand_xy: "345; 672",
  rear_spacing: "130",
};

function boardOf(entries: Readonly<Record<string, string>>): Reckoning {
  const made = newBuild({ entries });
  if (made.kind === "refused") throw new Error(JSON.stringify(made.refusals));
  const loaded = loadText(made.text, "new.yaml");
  if (loaded.kind === "refused") throw new Error(JSON.stringify(loaded.refusals));
  const resolved = resolveBuild(loaded.docs.map((d) => d.doc));
  if (resolved.kind === "refused") throw new Error(JSON.stringify(resolved.refusals));
  return reckon(resolved.resolved);
}

function faultsOf(r: Reckoning): string[] {
  const faults: string[] = [];
  if (r.board.length !== 20) faults.push(`${r.board.length} rows`);
  for (const row of r.board) {
    if (!/[.!?]$/.test(row.answer) || row.answer.length < 10) faults.push(`${row.n}: no sentence: ${row.answer}`);
    if (!VERDICTS.includes(row.verdict)) faults.push(`${row.n}: ${row.verdict}`);
    if (row.verdict === "measure first" && (row.next?.kind !== "measure" || (row.next.tool ?? "") === ""))
      faults.push(`${row.n}: measure first without a measurement and its tool: ${JSON.stringify(row.next)}`);
    const said = JSON.stringify([row.answer, row.about, row.next, row.working, row.figure]);
    const odd = /NaN|undefined|Infinity|\[object/.exec(said);
    if (odd !== null) faults.push(`${row.n}: says ${said.slice(Math.max(0, odd.index - 60), odd.index + 40)}`);
    // A number that is none becomes null in JSON.
    for (const f of [row.figure, ...row.working.figures])
      if (f !== undefined && ![f.value, f.band?.low ?? 0, f.band?.high ?? 0].every(Number.isFinite))
        faults.push(`${row.n}: ${f.name} is ${f.value}`);
  }
  return faults;
}

const pick = (keys: readonly string[]) => Object.fromEntries(keys.map((k) => [k, PLAIN[k] ?? ""]));

describe("a build made from nothing", () => {
  it("has a plain value here for every entry that is asked", () => {
    expect(Object.keys(PLAIN).sort()).toEqual([...NEW_BUILD_KEYS].sort());
  });

  it("gives an honest board after each entry, in the order in which they are asked", () => {
    for (let n = 1; n <= NEW_BUILD_KEYS.length; n++)
      expect(faultsOf(boardOf(pick(NEW_BUILD_KEYS.slice(0, n)))), `after ${n} entries`).toEqual([]);
  });

  it("gives an honest board for any of the entries", () => {
    fc.assert(
      fc.property(fc.subarray(NEW_BUILD_KEYS.filter((k) => k !== "name" && !k.startsWith("gap_"))), (keys) => {
        expect(faultsOf(boardOf(pick(["name", ...keys])))).toEqual([]);
      }),
      { seed: SEED, numRuns: 150 },
    );
  }, 240_000);

  it("stays honest for readings that no frame has", () => {
    const lengths = NEW_BUILD_ENTRIES.filter((e) => e.sort.as === "length" && !e.key.startsWith("gap_"));
    const any = fc.record(
      Object.fromEntries(lengths.map((e) => [e.key, fc.double({ min: 0.88, max: 1.14, noNaN: true })])),
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(any, (factors) => {
        const entries: Record<string, string> = { name: "Old blue" };
        for (const [key, factor] of Object.entries(factors)) {
          const value = Number.parseFloat(PLAIN[key] ?? "") * (factor ?? 1);
          entries[key] = `${value.toFixed(1)}${key === "inseam" ? " cm" : ""}`;
        }
        const made = newBuild({ entries });
        // Outside a field's range it is refused where it is typed; nothing else may refuse it.
        if (made.kind === "refused") {
          expect(made.refusals.every((x) => /outside/.test(x.message))).toBe(true);
          return;
        }
        expect(faultsOf(boardOf(entries))).toEqual([]);
      }),
      { seed: SEED, numRuns: 120 },
    );
  }, 240_000);

  it("settles the side view with the twelfth reading, with bands that cover the frame they came from", () => {
    const keys = NEW_BUILD_KEYS.slice(0, NEW_BUILD_KEYS.indexOf("top_tube_joint_below_head_top") + 1);
    expect(keys.length).toBe(15);
    expect(boardOf(pick(keys.slice(0, -1))).geometry.frame.kind).toBe("refused");
    const r = boardOf(pick(keys));
    const figures = r.geometry.before?.figures;
    if (figures === undefined) throw new Error("not settled");
    // The frame above: reach 380, stack 560, head angle 72°, seat angle 73°.
    for (const [key, value] of [
      ["reach_mm", 380],
      ["stack_mm", 560],
      ["head_angle_deg", 72],
      ["seat_angle_deg", 73],
    ] as const) {
      const band = figures.bands[key];
      expect(band?.low, key).toBeLessThan(value);
      expect(band?.high, key).toBeGreaterThan(value);
      // Readings rounded to 0.1 mm: the middle lies well inside the band.
      expect(Math.abs(figures.value[key] - value), key).toBeLessThan(((band?.high ?? 0) - (band?.low ?? 0)) / 8);
    }
  });

  it("grows surer with each reading to spare", () => {
    const half = (keys: readonly string[]) => {
      const band = boardOf(pick(keys)).geometry.before?.figures.bands.reach_mm;
      return band === undefined ? Number.NaN : (band.high - band.low) / 2;
    };
    const twelve = NEW_BUILD_KEYS.slice(0, 15);
    const thirteen = [...twelve, "rear_axle_to_head_top"];
    expect(half(thirteen)).toBeLessThan(half(twelve));
    expect(half([...thirteen, "top_tube_cc"])).toBeLessThan(half(thirteen));
  });

  it("names a slip of 12 mm in the reading that is checked", () => {
    const slip = { ...pick(NEW_BUILD_KEYS), chainstay: "452" };
    const row = boardOf(slip).board.find((b) => b.n === 13);
    expect(row?.verdict).toBe("measure first");
  });
});
