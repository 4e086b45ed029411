import { choice, length } from '#shared/bearing/field.ts'
import { plain, trade } from '#shared/bearing/fields.ts'

/** The goals of a choice. */
export const SELECTION_GOALS = ['best-bearing', 'close-groove', 'least-groove-change', 'least-spread'] as const
export type SelectionGoal = (typeof SELECTION_GOALS)[number]
export const USUAL_GOAL: SelectionGoal = 'best-bearing'

export const GOAL_FIELD = choice(
  '`best-bearing`: gap, play and run-out together. `close-groove`: the ball gap nearest to `design.ballGap`. `least-groove-change`: the groove that leaves just that gap nearest to the groove as it is. `least-spread`: largest and smallest ball differ least. Whatever the goal, the order is the one with the least run-out that leaves enough play.',
  SELECTION_GOALS,
  trade(USUAL_GOAL, 'gap, play and run-out all matter to a bearing that runs'),
)

const asDesigned = (raceway: string) => plain("the design's own", `the ${raceway} is cut as designed`)

/** The size of the raceways as they are, under the names that the bearing has for them: one row each. */
export const GROOVE_FIELDS = {
  grooveBottomDiameter: length("Across the bottoms of the outer ring's groove, as it is.", asDesigned('groove')),
  trackDiameter: length("Across the outer ring's track, as it is.", asDesigned('track')),
  grooveCircleDiameter: length(
    'Across the circle in which the groove of a plate is deepest, as it is.',
    asDesigned('groove'),
  ),
  innerGrooveBottomDiameter: length("Across the bottoms of the inner ring's groove, as it is.", asDesigned('groove')),
  innerTrackDiameter: length("Across the inner ring's track, as it is.", asDesigned('track')),
}
export type GrooveField = keyof typeof GROOVE_FIELDS
export const GROOVE_FIELD_NAMES = Object.keys(GROOVE_FIELDS) as readonly GrooveField[]
