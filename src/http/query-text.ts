/**
 * An input as the query of an address: names joined by dots, lists separated by commas.
 *
 * @returns undefined where a query cannot carry it: it holds a list of objects, or a text with a comma in a list
 */
export function queryText(input: object): string | undefined {
  const query = new URLSearchParams()
  const add = (names: readonly string[], value: unknown): boolean => {
    if (Array.isArray(value)) {
      if (value.some((item) => typeof item === 'object' || String(item).includes(','))) return false
      query.append(names.join('.'), value.join(','))
      return true
    }
    if (typeof value === 'object' && value !== null)
      return Object.entries(value).every(([name, inner]) => add([...names, name], inner))
    query.append(names.join('.'), String(value))
    return true
  }
  return add([], input) ? query.toString() : undefined
}

/** The same as a fragment, where more signs may stand as they are: people can read it, and it is half as long. */
export const fragmentText = (input: object): string | undefined =>
  queryText(input)?.replaceAll(/%(2F|2C|3B|3A|7E)/g, (coded) => decodeURIComponent(coded))
