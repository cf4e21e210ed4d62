import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { historyWorkshop } from "./test-history.js";

const BUILD = "quayside";
const AT = ["measured", "chainstay"] as const;
let w: Awaited<ReturnType<typeof historyWorkshop>>;
beforeEach(async () => {
  w = await historyWorkshop();
  for (const mm of [441, 440, 439]) await w.now().edit("donor", "q1", AT, mm);
});
afterEach(() => w.end());
const chainstay = async () => /chainstay: (\S+)/.exec((await w.now().exportText("donor", "q1")) ?? "")?.[1];

describe("a wish to take back, or put back, with an id", () => {
  it("is fulfilled once, however often it arrives, also after closing; without one each is a wish of its own", async () => {
    const first = await w.now().undo(BUILD, { turnId: "turn-0001" });
    expect(await chainstay()).toBe("440");
    expect(await w.now().undo(BUILD, { turnId: "turn-0001" })).toEqual({ ...first, repeated: true });
    await w.reopen();
    expect(await w.now().undo(BUILD, { turnId: "turn-0001" })).toEqual({ ...first, repeated: true });
    expect(await chainstay()).toBe("440");
    await w.now().undo(BUILD);
    expect(await chainstay()).toBe("441");
    const back = await w.now().redo(BUILD, { turnId: "turn-0002" });
    expect(await chainstay()).toBe("440");
    expect(await w.now().redo(BUILD, { turnId: "turn-0002" })).toEqual({ ...back, repeated: true });
    expect(await chainstay()).toBe("440");
  });

  it("that was refused was not fulfilled, and may come again", async () => {
    const refused = await w.now().redo(BUILD, { turnId: "turn-0003" });
    expect(refused.kind).toBe("refused");
    await w.now().undo(BUILD);
    expect(await w.now().redo(BUILD, { turnId: "turn-0003" })).toMatchObject({ kind: "turned", what: "redo" });
    expect(await chainstay()).toBe("439");
  });

  it("cannot have the id of another wish", async () => {
    await w.now().undo(BUILD, { turnId: "turn-0004" });
    const other = await w.now().redo(BUILD, { turnId: "turn-0004" });
    expect(other.kind === "refused" && other.refusals.map((r) => r.code)).toEqual(["turn-id-taken"]);
    expect(await chainstay()).toBe("440");
  });
});

it("a workshop keeps its name over closing, and no other one has it", async () => {
  const { name } = w.now();
  expect(name).toMatch(/^[0-9a-f]{32}$/);
  await w.reopen();
  expect(w.now().name).toBe(name);
  const other = await historyWorkshop();
  expect(other.now().name).not.toBe(name);
  await other.end();
});
