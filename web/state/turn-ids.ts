/**
 * Under which id is a wish to take back, or to put back, sent? Each press has one of its own. Where no answer came, nobody
 * knows whether it was done: the next press of the same button is the same wish once more, as long as this window has not
 * seen how the build stands since.
 */

export interface Wish {
  readonly build: string;
  readonly what: "undo" | "redo";
  readonly change: number | undefined;
  /** The newest change that this window had heard of. */
  readonly newest: number;
}

export interface TurnIds {
  readonly idFor: (wish: Wish) => string;
  /** An answer came: the next press is a new wish. */
  readonly answered: () => void;
}

export function turnIds(freshId: () => string): TurnIds {
  let open: { readonly wish: Wish; readonly id: string } | undefined;
  const isSame = (a: Wish, b: Wish) =>
    a.build === b.build && a.what === b.what && a.change === b.change && a.newest === b.newest;
  return {
    idFor: (wish) => {
      if (open === undefined || !isSame(open.wish, wish)) open = { wish, id: freshId() };
      return open.id;
    },
    answered: () => {
      open = undefined;
    },
  };
}
