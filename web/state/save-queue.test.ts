import { describe, expect, it } from "vitest";
import { at, BUILD, bench, DONOR, values } from "./test-bench.js";

describe("save queue", () => {
  it("hands over in order, across documents", async () => {
    const { server, browser, window } = await bench();
    window.edit(DONOR, at("chainstay"), 441);
    window.edit(BUILD, ["title"], "x");
    window.edit(DONOR, at("wheelbase"), 1051);
    await browser.pass(3000);
    expect(values(server)).toEqual([
      ["chainstay", 441],
      ["title", "x"],
      ["wheelbase", 1051],
    ]);
    expect(window.queue.now.waiting).toEqual([]);
    expect(browser.keep.all.size).toBe(0);
  });

  it("sends one figure once, however many keystrokes it took, and not before it is written out", async () => {
    const { server, browser, window } = await bench();
    for (const value of [4, 44, 441]) {
      window.edit(DONOR, at("chainstay"), value);
      await browser.pass(300);
      expect(server.applied).toEqual([]);
    }
    await browser.pass(1000);
    expect(values(server)).toEqual([["chainstay", 441]]);
  });

  it("keeps what waits while the server is gone, and hands it over by itself, from whichever window is open then", async () => {
    const { server, browser, window } = await bench();
    server.line = "gone";
    window.edit(DONOR, at("chainstay"), 441);
    await browser.pass(500);
    window.edit(BUILD, ["title"], "x");
    await browser.pass(20_000);
    expect(window.queue.now.trouble?.kind).toBe("unreachable");
    window.closed = true;
    const next = browser.window();
    expect(next.queue.now.waiting.map((e) => e.words)).toEqual(["measured.chainstay", "title"]);
    server.line = "well";
    next.queue.start();
    await browser.pass(10_000);
    expect(values(server)).toEqual([
      ["chainstay", 441],
      ["title", "x"],
    ]);
    expect(next.queue.now.trouble).toBeUndefined();
  });

  it("makes an edit once where its answer was lost, even where somebody has written over it since", async () => {
    const { server, browser, window } = await bench();
    server.line = "loses answers";
    window.edit(DONOR, at("chainstay"), 441);
    await browser.pass(2000);
    expect(server.applied).toHaveLength(1);
    server.write(DONOR, at("chainstay"), 440);
    window.look();
    server.line = "well";
    await browser.pass(10_000);
    expect(server.applied).toHaveLength(1);
    expect(server.at(DONOR, at("chainstay"))).toBe(440);
    expect(window.queue.now).toMatchObject({ waiting: [], conflicts: [] });
  });

  it("sends an edit whose answer was lost again under the same id, also from another window", async () => {
    const { server, browser, window } = await bench();
    server.line = "loses answers";
    window.edit(DONOR, at("chainstay"), 441);
    await browser.pass(9000);
    window.closed = true;
    const next = browser.window();
    next.look();
    next.queue.start();
    server.line = "well";
    await browser.pass(10_000);
    expect(server.came.length).toBeGreaterThan(2);
    expect(new Set(server.came).size).toBe(1);
    expect(server.applied).toHaveLength(1);
    expect(next.queue.now).toMatchObject({ waiting: [], conflicts: [] });
  });

  it("sends from two windows without sending twice", async () => {
    const { server, browser, window } = await bench();
    const other = browser.window();
    other.look();
    window.edit(DONOR, at("chainstay"), 441);
    await browser.pass(10);
    other.queue.reread();
    other.edit(DONOR, at("wheelbase"), 1051);
    other.queue.start();
    await browser.pass(10_000);
    expect(values(server)).toEqual([
      ["chainstay", 441],
      ["wheelbase", 1051],
    ]);
    expect(server.taken.size).toBe(2);
  });

  it("keeps the text of an entry that the records refuse, over closing the window, and goes on with the next", async () => {
    const { server, browser, window } = await bench();
    server.refuses = (e) => (e.value === 441 ? ["no"] : undefined);
    window.edit(DONOR, at("chainstay"), 441);
    window.edit(DONOR, at("wheelbase"), 1051);
    await browser.pass(3000);
    expect(values(server)).toEqual([["wheelbase", 1051]]);
    window.closed = true;
    const next = browser.window();
    expect(next.queue.now.notSaved.map((e) => [e.value, e.refused])).toEqual([[441, ["no"]]]);
    next.queue.forget(next.queue.now.notSaved[0]?.key ?? "");
    expect(browser.keep.all.size).toBe(0);
  });

  it("tells where the browser has no room, and hands over all the same", async () => {
    const { server, browser, window } = await bench();
    server.line = "gone";
    browser.keep.room = 1;
    window.edit(DONOR, at("chainstay"), 441);
    window.edit(DONOR, at("wheelbase"), 1051);
    expect(window.queue.now.unkept).toBe(1);
    server.line = "well";
    await browser.pass(10_000);
    expect(values(server)).toEqual([
      ["chainstay", 441],
      ["wheelbase", 1051],
    ]);
    expect(window.queue.now.unkept).toBe(0);
  });
});
