import { ARRANGEMENT_NAMES, ARRANGEMENTS, type ArrangementName } from '#shared/bearing/arrangements.ts'
import { type Defaults, defaultsOf } from './assumption.ts'
import { makingDefaults } from './making-input.ts'

const OF_DESIGNS = Object.fromEntries(
  ARRANGEMENT_NAMES.map((name) => [
    name,
    { ...defaultsOf(ARRANGEMENTS[name].fields.fields, '/design'), ...makingDefaults('/design/making') },
  ]),
) as Readonly<Record<ArrangementName, Defaults>>

/** The defaults of a design inside a request. */
export const designDefaults = (arrangement: ArrangementName): Defaults => OF_DESIGNS[arrangement]
