/** Every number of a nested value, with where it stands: `/outerRing/wall`. */
export function numberLeaves(value: unknown, at = ''): readonly (readonly [path: string, number: number])[] {
  if (typeof value === 'number') return [[at, value]]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([name, inner]: [string, unknown]) => numberLeaves(inner, `${at}/${name}`))
}
