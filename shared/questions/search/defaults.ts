import { ARRANGEMENTS } from '#shared/bearing/arrangements.ts'
import type { Default } from '#shared/bearing/field.ts'
import { plain, trade } from '#shared/bearing/fields.ts'
import { WOOD_FIELDS } from '#shared/questions/load/fields.ts'

const { fields } = ARRANGEMENTS.radial.fields
const AS_ELSEWHERE = {
  '/minBallGap': fields.minBallGap.byDefault,
  '/finishAllowance': fields.finishAllowance.byDefault,
  '/split': fields.split.byDefault,
  '/shopDenominator': fields.shopDenominator.byDefault,
  '/outerEngagements/*': fields.outerRing.fields.engagement.byDefault,
  '/innerEngagements/*': fields.innerRing.fields.engagement.byDefault,
  '/balls/*/material': fields.balls.fields.material.byDefault,
  '/balls/*/standardDeviation': fields.balls.fields.standardDeviation.byDefault,
  '/load/wood': WOOD_FIELDS.wood.byDefault,
  '/load/dentFraction': WOOD_FIELDS.dentFraction.byDefault,
}

/** What a search takes where the caller leaves a field out, by its JSON pointer; `*` stands for any place in a list. */
export const SEARCH_DEFAULTS = {
  ...present(AS_ELSEWHERE),
  '/bore/step': trade('1/8 in or 2 mm', 'the steps in which drills and shafts are sold'),
  '/counts/min': trade('6', 'fewer balls run rough'),
  '/counts/max': trade('40', 'more balls are seldom turned for'),
  '/partingWidth': trade('1/4 in or 6 mm', 'the cut of the saw, and what is turned off'),
  '/onlyOnRule': plain('false', 'designs count whatever figure the rule shows'),
  '/weights/closure': trade('3', 'a gap that comes out right matters most'),
  '/weights/wall': trade('2', 'wood behind the grooves keeps the rings whole'),
  '/weights/nesting': trade('1', 'one board for both rings saves wood'),
  '/weights/seat': trade('2', 'balls on the bottom of their groove run best'),
  '/weights/sensitivity': trade('2', 'balls that vary should not close the gap'),
  '/weights/material': trade('1', 'little wood should go to waste'),
  '/show': plain('best-of-each-ring', 'one design for each ball and count'),
  '/offset': plain('0', 'from the best on'),
  '/limit': plain('10', 'as many as one can look through'),
} as const satisfies Readonly<Record<string, Default>>

/** What is not one value for all designs, or no limit at all: named by its rule. */
export const SEARCH_RULES = {
  ...present({
    '/ballGap': fields.ballGap.byDefault,
    '/maxBallGap': fields.maxBallGap.byDefault,
    '/radialInternalClearance': fields.radialInternalClearance.byDefault,
    '/width': fields.width.byDefault,
  }),
  '/cutterDiameters': trade('a groove radius of 0.53 balls, by whatever cutter', 'a little rounder than the ball'),
  '/boardWidths': plain('any', 'boards of any width can be had'),
  '/quantity': plain('as many as are wanted', 'more balls can be bought'),
}

/** Rows without those that have no default. */
function present<Path extends string>(
  rows: Readonly<Record<Path, Default | undefined>>,
): Readonly<Record<Path, Default>> {
  for (const [path, row] of Object.entries(rows)) {
    if (row === undefined) throw new RangeError(`path must be that of a default, got ${path}`)
  }
  return rows as Readonly<Record<Path, Default>>
}
