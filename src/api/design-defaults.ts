import { ARRANGEMENT_NAMES, ARRANGEMENTS, type ArrangementName, nameOf } from '#shared/bearing/arrangements.ts'
import type { Seasoned } from '#shared/bearing/making-input.ts'
import { SEASON_DEFAULT } from '#shared/making/defaults.ts'
import { type Defaults, defaultsOf } from './assumption.ts'
import { makingDefaults } from './making-input.ts'

const OF_DESIGNS = Object.fromEntries(
  ARRANGEMENT_NAMES.map((name) => [
    name,
    { ...defaultsOf(ARRANGEMENTS[name].fields.fields, '/design'), ...makingDefaults('/design/making') },
  ]),
) as Readonly<Record<ArrangementName, Defaults>>

/** The part of a design's input on which its defaults depend. */
type Seasonable = { readonly arrangement?: string | undefined; readonly seasoned?: Seasoned }

/**
 * The defaults of a design inside a request.
 *
 * @param input the design's own: what of it follows from the season has another reason
 */
export function designDefaults({ arrangement, seasoned }: Seasonable): Defaults {
  // What was designed is of an arrangement that there is.
  const usual = OF_DESIGNS[nameOf({ arrangement: arrangement as ArrangementName })]
  if (seasoned === undefined) return usual
  return { ...usual, ...Object.fromEntries(seasoned.paths.map((path) => [`/design${path}`, SEASON_DEFAULT])) }
}
