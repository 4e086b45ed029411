import { queryText } from '#src/http/query-text.ts'

/** A bearing of the page as the query of an address: it has no list that a query could not carry. */
export function queryOf(request: object): string {
  const query = queryText(request)
  if (query === undefined) throw new RangeError('request must fit into a query')
  return query
}
