/** Every order of a few values. */
export function ordersOf<T>(values: readonly T[]): readonly (readonly T[])[] {
  if (values.length < 2) return [values]
  return values.flatMap((first, place) => ordersOf(values.toSpliced(place, 1)).map((rest) => [first, ...rest]))
}

/** Every choice of so many of some values, each in the order of the values. */
export function choicesOf<T>(values: readonly T[], count: number): readonly (readonly T[])[] {
  const [first, ...rest] = values
  if (count === 0) return [[]]
  if (first === undefined || values.length < count) return []
  return [...choicesOf(rest, count - 1).map((choice) => [first, ...choice]), ...choicesOf(rest, count)]
}
