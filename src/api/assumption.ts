import { type Static, Type } from 'typebox'
import { ARRANGEMENTS, type ArrangementName } from '#shared/bearing/arrangements.ts'
import { type Default, type Fields, type Group, leavesOf, valueAt } from '#shared/bearing/field.ts'
import { leafAt } from '#shared/bearing/suggestion.ts'
import { SEASON_DEFAULT } from '#shared/making/defaults.ts'
import { named, text } from '#src/api/schema.ts'

type Leaf = number | string | boolean | null

export const Assumption = named('Assumption', 'A default that was used, because the request did not give the value.', {
  path: text('A JSON pointer into `input`.'),
  value: Type.Unsafe<Leaf>({
    type: ['number', 'string', 'boolean', 'null'],
    description:
      'The value, as in `input`. Where each row or design has a value of its own, this is the rule for it, and `input` omits the field.',
  }),
  reason: text('Why this value.'),
  standing: text('Whether this is common practice or only the plain case.'),
})
export type Assumption = Static<typeof Assumption>

/**
 * The values that a request left open, each with its reason, taken from the echoed input.
 *
 * @param seasoned pointers of those that follow from the season
 */
export const toAssumptions = (
  assumed: readonly string[],
  arrangement: ArrangementName,
  echoed: object,
  seasoned: readonly string[] = [],
): Assumption[] =>
  assumptionsBy(ARRANGEMENTS[arrangement].fields, assumed, echoed).map((row) =>
    seasoned.includes(row.path) ? { ...row, ...OF_THE_SEASON } : row,
  )

const OF_THE_SEASON = { reason: SEASON_DEFAULT.reason, standing: SEASON_DEFAULT.standing }

/** The same by the rows of whichever arrangement. */
export const assumptionsBy = (fields: Group, assumed: readonly string[], echoed: object): Assumption[] =>
  assumed.map((path) => {
    const { field, names } = leafAt(fields, path)
    if (field.byDefault === undefined) throw new RangeError(`path must be that of a default, got ${path}`)
    const { reason, standing } = field.byDefault
    return { path, value: leafOf(valueAt(echoed, names)), reason, standing }
  })

const leafOf = (value: unknown): Leaf =>
  typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean' ? value : null

/** The default of every field of a request, by its JSON pointer; `*` stands for any place in a list. */
export type Defaults = Readonly<Record<string, Default>>

/** The defaults that the rows of some fields state, at a place of a request. */
export const defaultsOf = (fields: Fields, at = ''): Defaults =>
  Object.fromEntries(
    leavesOf(fields).flatMap(({ path, field }) =>
      field.byDefault === undefined ? [] : [[at + path, field.byDefault]],
    ),
  )

/**
 * Every value of a whole request that the caller's own does not have, with the reason for it.
 *
 * @throws RangeError for a value without a row: each default has its reason
 */
export function assumptionsIn(request: unknown, whole: unknown, defaults: Defaults, at = ''): Assumption[] {
  if (typeof whole !== 'object' || whole === null) {
    return request === undefined && whole !== undefined ? [assumption(at, leafOf(whole), defaults)] : []
  }
  return Object.entries(whole).flatMap(([name, value]) =>
    assumptionsIn(valueAt(request, [name]), value, defaults, `${at}/${name}`),
  )
}

/** A default whose value differs from row to row, or that no single value states: its rule, in words. */
export const ruleAssumed = (path: string, { stated, reason, standing }: Default): Assumption => ({
  path,
  value: stated,
  reason,
  standing,
})

function assumption(path: string, value: Leaf, defaults: Defaults): Assumption {
  const row = defaults[path] ?? defaults[path.replace(/\/\d+(?=\/|$)/g, '/*')]
  if (row === undefined) throw new RangeError(`path must be that of a default, got ${path}`)
  return { path, value, reason: row.reason, standing: row.standing }
}
