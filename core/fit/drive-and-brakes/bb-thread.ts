/**
 * Which bottom bracket thread is written here? The three that are told apart by diameter, pitch and the hand of the right
 * side: 1.37 x 24 (right side left-hand), 36 x 24 (both right-hand), 35 x 1 (right side either hand: written LH or RH).
 * Source: fit-bb-threads.
 */
export interface BbThread {
  /** "1.37x24", or the text with spaces taken out where it is another. */
  readonly size: string;
  /** Hand of the right side; undefined where it must be looked at. */
  readonly rightSide: "left-hand" | "right-hand" | undefined;
}

export function bbThread(written: string): BbThread {
  const plain = written
    .toLowerCase()
    .replaceAll(",", ".")
    .replaceAll("×", "x")
    .replace(/["\s]|mm|tpi|in(?=x|$)/g, "");
  const hand = /(lh|left|rh|right)/.exec(plain)?.[1];
  const told = hand === undefined ? undefined : hand.startsWith("l") ? ("left-hand" as const) : ("right-hand" as const);
  const size = plain
    .replace(/(lh|left|rh|right).*$/, "")
    .replace(/^m(?=\d)/, "")
    .replace(/(\.\d*?)0+(?=x|$)/g, "$1")
    .replace(/\.(?=x|$)/g, "");
  if (size === "1.37x24" || size === "34.8x24") return { size: "1.37x24", rightSide: "left-hand" };
  if (size === "36x24") return { size, rightSide: "right-hand" };
  return { size, rightSide: told };
}
