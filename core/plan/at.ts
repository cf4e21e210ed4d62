/**
 * Which entry stands at this place? Reads an array and throws where there is none: that would be our own mistake,
 * never the builder's.
 */
export function at<T>(list: ArrayLike<T>, index: number): T {
  const entry = list[index];
  if (entry === undefined) throw new RangeError(`no entry ${index} in a list of ${list.length}`);
  return entry;
}
