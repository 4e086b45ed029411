import type { Bearing } from '#shared/bearing/arrangements.ts'
import { namesIn, valueAt } from '#shared/bearing/field.ts'
import type { Refused } from '#shared/bearing/refusal.ts'
import type { WoodPart } from '#shared/bearing/wood-parts.ts'
import type { SeasonRefusal } from '#shared/movement/refusal.ts'
import { ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { type Advice, adviceFor, GOOD_ENOUGH, type RequestChange, SEASON_LENGTHS, withChanges } from './advice.ts'
import type { Chances } from './chances.ts'
import type { SeasonalFitInput } from './input.ts'
import { sketchedYear, throughYear, type YearOf } from './seasonal-fit.ts'
import { openJoints, type SegmentsOfYear } from './segments.ts'

/** A bearing, its woods and its year, and the parts of which nobody stated how they are cut. */
export interface LeftOpen extends SeasonalFitInput {
  readonly openParts: readonly WoodPart[]
}

/** A default that follows from the season. */
export type SeasonDefault =
  | { readonly kind: 'length'; readonly path: string; readonly to: Mm }
  | Extract<RequestChange, { kind: 'wood' }>

/** The values that the season asks of a bearing, as far as they could be met. */
export interface SeasonDefaults {
  /** Values for what was left open, by their JSON pointers in the design, or under `making`. */
  readonly defaults: readonly SeasonDefault[]
  /** With those values. */
  readonly chances: Chances
  /** The same bearing. */
  readonly bearing: Bearing
  /** The advice of a seasonal fit for it; absent if it is left as it is. */
  readonly better?: Advice
  readonly openJoints: SegmentsOfYear['worst']
}

/**
 * The play, the gap, the other room and the construction that a design left open, as a seasonal fit would have them built in;
 * values that were stated stay.
 *
 * @returns the defaults, none where the bearing runs all year as it is; or every fault of the input
 */
export function seasonDefaults({ openParts, ...input }: LeftOpen): Result<SeasonDefaults, Refused<SeasonRefusal>> {
  const through = throughYear(input)
  if (!through.ok) return through
  const { design } = input
  const isOpen = (path: string): boolean => valueAt(design, namesIn(path)) === undefined
  const lengths = SEASON_LENGTHS.filter(isOpen)
  const own = adviceFor(through.value, throughYear, sketchedYear, {
    lengths,
    // A part of a stated wood is never turned into plywood.
    mayRebuild: (part, construction) => construction === 'quarter-sawn' && openParts.includes(part),
    mayRest: false,
  })
  const changes = own.chances.runsAllYear >= GOOD_ENOUGH ? withWidest(own.changes, lengths, through.value) : []
  // As whoever states these values is answered: other defaults may follow from them.
  const stated = changes.length === 0 ? through : throughYear(withChanges(input, changes))
  const isOurs = stated.ok && stated.value.chances.runsAllYear >= GOOD_ENOUGH && changes.length > 0
  const answered = isOurs ? stated.value : through.value
  const better = adviceFor(answered, throughYear, sketchedYear)
  return ok({
    defaults: isOurs ? changes.map(defaultOf) : [],
    chances: answered.chances,
    bearing: answered.moving.bearing,
    ...(better.kind === 'leave' ? {} : { better }),
    openJoints: openJoints(answered.year),
  })
}

/** The changes of the advice, with the widest gap: it would follow another aim, so it is kept at the value that the chances were calculated with. */
function withWidest(
  changes: readonly RequestChange[],
  lengths: readonly string[],
  { moving }: YearOf,
): readonly RequestChange[] {
  const isChanged = (length: string): boolean => changes.some(({ path }) => path === `/design${length}`)
  const widest = valueAt(moving.bearing.resolved.input, namesIn(WIDEST))
  return isChanged('/ballGap') && !isChanged(WIDEST) && lengths.includes(WIDEST) && typeof widest === 'number'
    ? [...changes, { kind: 'length', path: `/design${WIDEST}`, from: mm(widest), to: mm(widest) }]
    : changes
}
const WIDEST = '/maxBallGap'

function defaultOf(change: RequestChange): SeasonDefault {
  if (change.kind === 'today') throw new RangeError('change must be one of the design or of its woods, got today')
  return change.kind === 'wood' ? change : { kind: 'length', path: change.path.replace(/^\/design/, ''), to: change.to }
}
