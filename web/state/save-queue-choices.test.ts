import { describe, expect, it } from "vitest";
import { at, BUILD, bench, DONOR, settleFirst, values } from "./test-bench.js";

describe("somebody else wrote meanwhile", () => {
  it("into another place: no quarrel", async () => {
    const { server, browser, window } = await bench();
    server.write(DONOR, at("wheelbase"), 1051);
    window.edit(DONOR, at("chainstay"), 441);
    await browser.pass(3000);
    expect(values(server)).toEqual([["chainstay", 441]]);
    expect(server.at(DONOR, at("wheelbase"))).toBe(1051);
  });

  it("the same into the same place: no quarrel", async () => {
    const { server, browser, window } = await bench();
    server.write(DONOR, at("chainstay"), 441);
    window.edit(DONOR, at("chainstay"), 441);
    await browser.pass(3000);
    expect(server.applied).toEqual([]);
    expect(window.queue.now).toMatchObject({ waiting: [], conflicts: [] });
  });

  it("another row of the same list: both rows hold", async () => {
    const { server, browser, window } = await bench();
    server.write(
      BUILD,
      ["evidence"],
      [
        { gate: "G1", by: "A" },
        { gate: "G2", by: "B" },
      ],
    );
    window.edit(
      BUILD,
      ["evidence"],
      [
        { gate: "G1", by: "A" },
        { gate: "G3", by: "C" },
      ],
    );
    await browser.pass(3000);
    expect(server.at(BUILD, ["evidence"])).toEqual([
      { gate: "G1", by: "A" },
      { gate: "G2", by: "B" },
      { gate: "G3", by: "C" },
    ]);
  });

  it("another value: a choice, and only that document waits for it", async () => {
    for (const choice of ["mine", "theirs", { value: "442 ± 1" }] as const) {
      const { server, browser, window } = await bench();
      server.write(DONOR, at("chainstay"), 443);
      window.edit(DONOR, at("chainstay"), 441);
      window.edit(DONOR, at("wheelbase"), 1051);
      window.edit(BUILD, ["title"], "x");
      await browser.pass(3000);
      const [conflict] = window.queue.now.conflicts;
      expect(conflict).toMatchObject({ mine: 441, theirs: 443, gone: false });
      expect(values(server)).toEqual([["title", "x"]]);
      await browser.pass(60_000);
      expect(server.at(DONOR, at("chainstay"))).toBe(443);
      await settleFirst(window, choice);
      await browser.pass(3000);
      expect(server.at(DONOR, at("chainstay"))).toBe(
        choice === "mine" ? 441 : choice === "theirs" ? 443 : choice.value,
      );
      expect(server.at(DONOR, at("wheelbase"))).toBe(1051);
      expect(window.queue.now.waiting).toEqual([]);
    }
  });

  it("several places: one choice after the other; the last word of the place counts", async () => {
    const { server, browser, window } = await bench();
    server.line = "gone";
    window.edit(DONOR, at("chainstay"), 441);
    await browser.pass(1000);
    window.edit(DONOR, at("wheelbase"), 1051);
    await browser.pass(1000);
    window.edit(DONOR, at("chainstay"), 440);
    await browser.pass(1000);
    server.write(DONOR, at("chainstay"), 443);
    server.write(DONOR, at("wheelbase"), 1052);
    server.line = "well";
    await browser.pass(10_000);
    expect(window.queue.now.conflicts.map((c) => [c.mine, c.theirs])).toEqual([[440, 443]]);
    await settleFirst(window, "mine");
    await browser.pass(3000);
    expect(window.queue.now.conflicts.map((c) => [c.mine, c.theirs])).toEqual([[1051, 1052]]);
    await settleFirst(window, "theirs");
    await browser.pass(3000);
    expect(values(server)).toEqual([["chainstay", 440]]);
    expect(window.queue.now.waiting).toEqual([]);
  });

  it("what is written into the place while its choice stands is part of the choice", async () => {
    for (const choice of ["mine", "theirs"] as const) {
      const { server, browser, window } = await bench();
      server.write(DONOR, at("chainstay"), 443);
      window.edit(DONOR, at("chainstay"), 441);
      await browser.pass(3000);
      const [early] = window.queue.now.conflicts;
      window.edit(DONOR, at("chainstay"), 440);
      await browser.pass(3000);
      expect(window.queue.now.conflicts[0]).toMatchObject({ mine: 440, theirs: 443 });
      // A press on the choice as it was shown before decides nothing.
      if (early !== undefined) await window.queue.settle(early, choice);
      await browser.pass(3000);
      expect(window.queue.now.conflicts[0]).toMatchObject({ mine: 440, theirs: 443 });
      await settleFirst(window, choice);
      await browser.pass(3000);
      expect(server.at(DONOR, at("chainstay"))).toBe(choice === "mine" ? 440 : 443);
      expect(window.queue.now.waiting).toEqual([]);
    }
  });

  it("changed one row and moved it: what waits for its neighbour at that number is not taken for the same", async () => {
    const { server, browser, window } = await bench();
    server.line = "gone";
    server.write(BUILD, ["evidence", 1], { gate: "G2", by: "B" });
    window.look();
    window.edit(BUILD, ["evidence", 1, "by"], "X");
    await browser.pass(1000);
    window.edit(BUILD, ["evidence", 0, "by"], "Y");
    await browser.pass(1000);
    server.write(
      BUILD,
      ["evidence"],
      [
        { gate: "G2", by: "Z" },
        { gate: "G1", by: "A" },
      ],
    );
    server.line = "well";
    await browser.pass(10_000);
    expect(window.queue.now.conflicts[0]).toMatchObject({ mine: "X", theirs: "Z" });
    await settleFirst(window, "theirs");
    await browser.pass(3000);
    expect(server.at(BUILD, ["evidence"])).toEqual([
      { gate: "G2", by: "Z" },
      { gate: "G1", by: "Y" },
    ]);
  });

  it("a third value while the choice stood: the choice is put anew", async () => {
    const { server, browser, window } = await bench();
    server.write(DONOR, at("chainstay"), 443);
    window.edit(DONOR, at("chainstay"), 441);
    await browser.pass(3000);
    server.write(DONOR, at("chainstay"), 444);
    await settleFirst(window, "mine");
    await browser.pass(3000);
    expect(window.queue.now.conflicts[0]).toMatchObject({ theirs: 444 });
    server.write(DONOR, at("chainstay"), 445);
    window.look();
    await browser.pass(3000);
    expect(window.queue.now.conflicts[0]).toMatchObject({ theirs: 445 });
  });

  it("took the row out: said so, and nothing is written into its neighbour", async () => {
    const { server, browser, window } = await bench();
    server.write(BUILD, ["parts", 1], undefined);
    window.edit(BUILD, ["parts", 1], "Q");
    await browser.pass(3000);
    expect(window.queue.now.conflicts[0]).toMatchObject({ gone: true, mine: "Q" });
    expect(server.at(BUILD, ["parts"])).toEqual(["p", "r"]);
    await settleFirst(window, "theirs");
    expect(window.queue.now.waiting).toEqual([]);
  });

  it("took a row out before it: the edit follows its row", async () => {
    const { server, browser, window } = await bench();
    server.write(BUILD, ["parts", 0], undefined);
    window.edit(BUILD, ["parts", 1], "Q");
    await browser.pass(3000);
    expect(server.at(BUILD, ["parts"])).toEqual(["Q", "r"]);
  });
});
