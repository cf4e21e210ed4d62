/**
 * Which change is taken back next, and which put back next? Found by going through all changes in order, so that it needs
 * no memory of its own and survives every restart. An undo takes a change off the first pile and lies on the second; a
 * redo goes the other way; anything new clears the second.
 */
import type { WhatChange } from "./history-types.js";

export interface ChangeLine {
  readonly change: number;
  readonly what: WhatChange;
  readonly takesBack: number | null;
  /** Did it replace a text? What only brought in new documents has nothing before it to go back to. */
  readonly replaces: boolean;
}

export interface Pile {
  /** The change as the person made it. */
  readonly of: number;
  /** The change whose rows are to be turned round: the first one, or the redo or undo that came after it. */
  readonly turn: number;
}

export interface UndoStacks {
  /** The newest last. */
  readonly undo: readonly Pile[];
  readonly redo: readonly Pile[];
  /** For each undo and redo: the change that it is about. */
  readonly origin: ReadonlyMap<number, number>;
}

/** @param lines all changes of one build, oldest first */
export function undoStacks(lines: readonly ChangeLine[]): UndoStacks {
  let undo: Pile[] = [];
  let redo: Pile[] = [];
  const origin = new Map<number, number>();
  for (const { change, what, takesBack, replaces } of lines) {
    if (what !== "undo" && what !== "redo") {
      redo = [];
      if (replaces) undo.push({ of: change, turn: change });
      continue;
    }
    const turned = takesBack ?? 0;
    const of = origin.get(turned) ?? turned;
    origin.set(change, of);
    const without = (pile: readonly Pile[]) => pile.filter((p) => p.turn !== turned);
    undo = without(undo);
    redo = without(redo);
    (what === "undo" ? redo : undo).push({ of, turn: change });
  }
  return { undo, redo, origin };
}
