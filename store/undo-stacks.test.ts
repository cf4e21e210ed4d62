import { describe, expect, it } from "vitest";
import { type ChangeLine, undoStacks } from "./undo-stacks.js";

const line = (change: number, what: ChangeLine["what"], takesBack: number | null = null, replaces = true) => ({
  change,
  what,
  takesBack,
  replaces,
});
const piles = (...lines: readonly ChangeLine[]) => {
  const { undo, redo } = undoStacks(lines);
  return { undo: undo.map((p) => [p.of, p.turn]), redo: redo.map((p) => [p.of, p.turn]) };
};

describe("the two piles", () => {
  it("move a change from one to the other and back; the last turn of it is what is turned next", () => {
    const edits = [line(1, "put", null, false), line(2, "edit"), line(3, "edit")];
    expect(piles(...edits)).toEqual({
      undo: [
        [2, 2],
        [3, 3],
      ],
      redo: [],
    });
    const undone = [...edits, line(4, "undo", 3), line(5, "undo", 2)];
    expect(piles(...undone)).toEqual({
      undo: [],
      redo: [
        [3, 4],
        [2, 5],
      ],
    });
    const redone = [...undone, line(6, "redo", 5)];
    expect(piles(...redone)).toEqual({ undo: [[2, 6]], redo: [[3, 4]] });
    expect(piles(...redone, line(7, "undo", 6))).toEqual({
      undo: [],
      redo: [
        [3, 4],
        [2, 7],
      ],
    });
  });

  it("lose the second where something new comes, even where that cannot be taken back itself", () => {
    const undone = [line(1, "edit"), line(2, "edit"), line(3, "undo", 2)];
    expect(piles(...undone, line(4, "restore"))).toEqual({
      undo: [
        [1, 1],
        [4, 4],
      ],
      redo: [],
    });
    expect(piles(...undone, line(4, "put", null, false))).toEqual({ undo: [[1, 1]], redo: [] });
  });

  it("take one out of the middle", () => {
    expect(piles(line(1, "edit"), line(2, "edit"), line(3, "undo", 1))).toEqual({ undo: [[2, 2]], redo: [[1, 3]] });
  });
});
