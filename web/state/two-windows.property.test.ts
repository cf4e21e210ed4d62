/**
 * Does anything that was entered ever get lost, with two windows of one browser, another device, and a server that comes
 * and goes? The same run as in e2e/two-windows.test.ts, without a screen and with many more steps.
 */
import { readPlain } from "@coldset/core/workshop";
import { expect, it } from "vitest";
import { chance } from "../../scripts/chance.mjs";
import type { StoredPlain } from "./api.js";
import { PretendedDevice, type PretendedPage, PretendedTime, PretendedWire } from "./test-pages.js";
import { PretendedServer } from "./test-windows.js";

const FIELDS = ["head_tube", "wheelbase", "chainstay", "front_centre"] as const;
type Field = (typeof FIELDS)[number];
const START: Readonly<Record<Field, number>> = { head_tube: 145, wheelbase: 1052, chainstay: 442, front_centre: 615 };
const MERGE_MS = 400;
const SEEDS = 12;
const STEPS = 60;

/** As little as can be read, so that many steps are quick. */
function documents(): readonly StoredPlain[] {
  const groups = {
    tube: { class: "unknown" },
    wheels_now: {},
    interfaces: {},
    gaps_rear: {},
    stays: {},
    condition: { cracks: "not_looked" },
  };
  const donor = { kind: "donor", version: 1, id: "q1", label: "a frame", measured: START, ...groups };
  const read = readPlain(donor);
  if (read.kind === "refused") throw new Error(JSON.stringify(read.refusals));
  return [{ kind: "donor", id: "q1", revision: 1, plain: donor }];
}

interface Wrote {
  readonly device: number;
  readonly page: PretendedPage;
  readonly name: Field;
  readonly value: number;
  readonly at: number;
}

async function run(seed: number, steps: number): Promise<{ readonly choices: number; readonly repeats: number }> {
  const random = chance(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const time = new PretendedTime(random);
  const server = new PretendedServer(documents());
  const wire = new PretendedWire(time, server, "one");
  const devices = [new PretendedDevice(wire, "quayside"), new PretendedDevice(wire, "quayside")] as const;
  const pages: { device: number; page: PretendedPage }[] = [];
  for (const device of [0, 0, 1]) pages.push({ device, page: await devices[device as 0 | 1].page() });
  const wrote: Wrote[] = [];
  /** Values that stood in a choice when a person decided it. */
  const shown = new Set<number>();
  let choices = 0;

  const settle = (page: PretendedPage): boolean => {
    const [choice] = page.choices;
    if (choice === undefined) return false;
    for (const v of [choice.mine, choice.theirs]) if (typeof v === "number") shown.add(v);
    choices += 1;
    page.store.getState().settle(choice, random() < 0.5 ? "mine" : "theirs");
    return true;
  };
  const write = async ({ device, page }: (typeof pages)[number], name: Field, value: number) => {
    const path = ["measured", name];
    const edit = { kind: "donor", id: "q1", path, words: name };
    const seen = { value: page.shows("donor", "q1", path) };
    const { edit: enter } = page.store.getState();
    let more = false;
    // Sometimes figure by figure, with or without a rest between; what stood there when it began is what was seen.
    if (random() < 0.3) {
      more = enter({ ...edit, value: Math.floor(value / 10) }, false, seen);
      await time.pass(random() < 0.5 ? 100 : 900);
    }
    if (!enter({ ...edit, value }, more, seen)) return;
    wrote.push({ device, page, name, value, at: time.now });
  };

  for (let step = 0; step < steps; step += 1) {
    if (random() < 0.2) wire.turn(!wire.up);
    if (random() < 0.04) {
      const at = Math.floor(random() * pages.length);
      const { device = 0, page } = pages[at] ?? {};
      if (page !== undefined) devices[device as 0 | 1].close(page);
      pages[at] = { device, page: await devices[device as 0 | 1].page() };
    }
    const at = pick(pages);
    const name = pick(FIELDS);
    // Each value once, near what is there, so that it can be told in the records who wrote it.
    if (at.page.store.getState().status === "ready") await write(at, name, START[name] + (step + 1) / 1000);
    if (random() < 0.15) settle(pick(pages).page);
    await time.pass(pick([0, 200, 450 + random() * 300, 450 + random() * 300, 3000]));
  }
  wire.turn(true);
  for (let round = 0; round < 400; round += 1) {
    await time.pass(1000);
    if (pages.some(({ page }) => settle(page))) continue;
    if (devices.every((d) => d.keep.names("entry.").length === 0)) break;
  }
  await time.pass(10_000);

  const where = `seed ${seed}, ${steps} steps`;
  for (const device of devices) expect(device.keep.names("entry."), where).toEqual([]);
  for (const w of wrote) {
    const after = wrote.slice(wrote.indexOf(w) + 1).filter((l) => l.name === w.name);
    // What this device wrote there later was written knowing it, and a choice shows the last of a place.
    const later = after.some((l) => l.device === w.device && shown.has(l.value));
    // Figures of one typing.
    const typedOn = after.some((l) => l.page === w.page && l.at - w.at < MERGE_MS);
    const stood = server.everStood("donor/q1", ["measured", w.name], w.value);
    expect(stood || shown.has(w.value) || later || typedOn, `${where}: ${w.name} ${w.value} is lost`).toBe(true);
  }
  // Each once, and nothing over what nobody saw.
  const made = server.applied.map((a) => a.editId);
  expect(new Set(made).size, where).toBe(made.length);
  for (const a of server.applied) expect(a.over ?? null, `${where}: ${a.key}`).toEqual(a.before ?? null);
  for (const name of FIELDS)
    for (const { page } of pages)
      expect(page.shows("donor", "q1", ["measured", name]), `${where}: all windows show the same ${name}`).toBe(
        server.at("donor/q1", ["measured", name]),
      );
  return { choices, repeats: server.came.length - new Set(server.came).size };
}

it.each([3, 8])("seed %i, 24 steps as in the browser", async (seed) => {
  await run(seed, 24);
});

it("many seeds: nothing is lost without having been shown, nothing is made twice, all windows end alike", async () => {
  let choices = 0;
  let repeats = 0;
  for (let seed = 1; seed <= SEEDS; seed += 1) {
    const result = await run(seed, STEPS);
    choices += result.choices;
    repeats += result.repeats;
  }
  // The runs do meet what they are about: choices, and edits whose answer was lost and which came again.
  expect(choices).toBeGreaterThan(SEEDS * 3);
  expect(repeats).toBeGreaterThan(SEEDS / 2);
}, 240_000);
