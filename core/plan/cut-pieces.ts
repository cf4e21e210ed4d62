/**
 * How is a task that fits no session cut into pieces? Into as few as can be, near equal, in whole hours where that
 * fits, the longer first: 7 h in sessions of 6 h make 4 + 3.
 * Inputs: hours of the task, hours of a session, both over 0. Answer: hours of the pieces, first to last.
 * Why not 6 + 1: a full session leaves no time to look at what was done, and the second still needs its own day.
 */
export function cutPieces(handsOnH: number, sessionH: number): readonly number[] {
  const pieces: number[] = [];
  let left = handsOnH;
  for (let count = Math.max(Math.ceil(handsOnH / sessionH - 1e-9), 1); count > 0; count--) {
    const whole = Math.ceil(left / count - 1e-9);
    const piece = count === 1 || whole > sessionH ? left / count : whole;
    pieces.push(piece);
    left -= piece;
  }
  return pieces;
}
