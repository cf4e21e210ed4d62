/** Which number stands at this place of a typed array? The caller keeps the place inside the array. */
export function element(values: ArrayLike<number>, place: number): number {
  return values[place] as number;
}
