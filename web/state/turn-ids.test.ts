import { expect, it } from "vitest";
import { turnIds } from "./turn-ids.js";

const undo = { build: "b", what: "undo", change: undefined, newest: 7 } as const;

function counted() {
  let n = 0;
  return turnIds(() => `id-${++n}`);
}

it("a press without an answer, pressed again, is the same wish", () => {
  const ids = counted();
  expect([ids.idFor(undo), ids.idFor(undo)]).toEqual(["id-1", "id-1"]);
});

it("after an answer, or once the window has seen how the build stands, it is a new one", () => {
  const ids = counted();
  ids.idFor(undo);
  ids.answered();
  expect(ids.idFor(undo)).toBe("id-2");
  expect(ids.idFor({ ...undo, newest: 8 })).toBe("id-3");
});

it("another button, another change and another build are other wishes", () => {
  const ids = counted();
  const wishes = [undo, { ...undo, what: "redo" as const }, { ...undo, change: 3 }, { ...undo, build: "c" }];
  expect(wishes.map(ids.idFor)).toEqual(["id-1", "id-2", "id-3", "id-4"]);
});
