/** Do requests that arrive together each get a turn of the event loop of their own, in order, and none twice or never? */
import { setImmediate as nextTurn } from "node:timers/promises";
import { Hono } from "hono";
import { expect, it } from "vitest";
import { takeTurns } from "./take-turns.js";

it("lets one begin in each turn of the loop, in the order they came", async () => {
  const app = new Hono();
  const begun: number[] = [];
  let turn = 0;
  const turns: number[] = [];
  app.use(takeTurns());
  app.get("/:n", (c) => {
    begun.push(Number(c.req.param("n")));
    turns.push(turn);
    return c.text("done");
  });
  const answers = Promise.all(Array.from({ length: 20 }, (_, n) => app.request(`/${n}`)));
  for (; turn < 40; turn += 1) await nextTurn();
  expect((await answers).map((a) => a.status)).toEqual(Array(20).fill(200));
  expect(begun).toEqual(Array.from({ length: 20 }, (_, n) => n));
  expect(new Set(turns).size).toBe(20);
  // And again after it was idle.
  expect((await app.request("/20")).status).toBe(200);
});
