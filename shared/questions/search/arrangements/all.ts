import type { AnyBearing } from '#shared/bearing/arrangement.ts'
import type { ArrangementName, BearingByArrangement, InputByArrangement } from '#shared/bearing/arrangements.ts'
import { CAGED_SEARCH } from '#shared/questions/search/arrangements/caged.ts'
import { RADIAL_SEARCH } from '#shared/questions/search/arrangements/radial.ts'
import { ROLLER_SEARCH } from '#shared/questions/search/arrangements/roller.ts'
import { THRUST_SEARCH } from '#shared/questions/search/arrangements/thrust.ts'
import type { SearchModule } from '#shared/questions/search/module.ts'

type AnyModule = SearchModule<object, AnyBearing, object>

/** How each arrangement is searched. A new one: its file, and its line here. */
export const SEARCHED: Readonly<Record<ArrangementName, AnyModule>> = {
  radial: RADIAL_SEARCH,
  roller: ROLLER_SEARCH,
  thrust: THRUST_SEARCH,
  caged: CAGED_SEARCH,
} satisfies {
  readonly [Name in ArrangementName]: SearchModule<InputByArrangement[Name], BearingByArrangement[Name], never>
}
