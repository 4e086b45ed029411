/**
 * The item of a list at an index that is known to be in it. A wrong index is a bug and must not become a plausible size.
 *
 * Loops over typed arrays that run for every ball of every trial read `list[index] ?? Number.NaN` instead, which costs
 * nothing: a number that is not there spoils whatever is made of it, and `requireWithin` and its like let no NaN pass.
 *
 * @throws RangeError for an index below 0, at or beyond the length, or not whole
 */
export function itemAt<T>(list: ArrayLike<T>, index: number): T {
  const item = list[index]
  if (item === undefined) throw new RangeError(`index must be whole and from 0 to ${list.length - 1}, got ${index}`)
  return item
}

/**
 * The last item of a list that is known to have one.
 *
 * @throws RangeError for an empty list
 */
export const lastOf = <T>(list: ArrayLike<T>): T => itemAt(list, list.length - 1)
