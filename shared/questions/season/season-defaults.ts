import type { Bearing } from '#shared/bearing/arrangements.ts'
import { valueAt } from '#shared/bearing/field.ts'
import type { Refused } from '#shared/bearing/refusal.ts'
import type { WoodPart } from '#shared/bearing/wood-parts.ts'
import type { SeasonRefusal } from '#shared/movement/refusal.ts'
import { ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { type Advice, adviceFor, GOOD_ENOUGH, type RequestChange, SEASON_LENGTHS } from './advice.ts'
import type { Chances } from './chances.ts'
import type { SeasonalFitInput } from './input.ts'
import { sketchedYear, throughYear, type YearOf } from './seasonal-fit.ts'

/** A bearing, its woods and its year, and the parts of which nobody stated how they are cut. */
export interface LeftOpen extends SeasonalFitInput {
  readonly openParts: readonly WoodPart[]
}

/** A default that follows from the season. */
export type SeasonDefault =
  | { readonly kind: 'length'; readonly path: string; readonly to: Mm }
  | Extract<RequestChange, { kind: 'wood' }>

/** What the season asks of a bearing, and what of it could be given. */
export interface SeasonDefaults {
  /** Values for what was left open, by their JSON pointers in the design, or under `making`. */
  readonly defaults: readonly SeasonDefault[]
  /** With those values. */
  readonly chances: Chances
  /** The bearing without them, and its chances. */
  readonly bearing: Bearing
  readonly asDesigned: Chances
  /** What would serve better than values for what was left open; absent where they serve. */
  readonly better?: Advice
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
  const runs = own.chances.runsAllYear >= GOOD_ENOUGH
  const isOurs = runs && own.changes.length > 0
  const better = runs && !(isOurs && own.isLoose) ? undefined : adviceFor(through.value, throughYear, sketchedYear)
  return ok({
    defaults: isOurs ? defaultsIn(own.changes, lengths, through.value) : [],
    chances: runs ? own.chances : through.value.chances,
    bearing: through.value.moving.bearing,
    asDesigned: through.value.chances,
    ...(better === undefined || isSame(better, own) ? {} : { better }),
  })
}

/** What advice changed, and the widest gap: that would follow another aim, and stays what the chances were worked out with. */
function defaultsIn(
  changes: readonly RequestChange[],
  lengths: readonly string[],
  { moving }: YearOf,
): readonly SeasonDefault[] {
  const defaults = changes.map(defaultOf)
  const widest = valueAt(moving.bearing.resolved.input, namesIn(WIDEST))
  const follows = defaults.some(({ path }) => path === '/ballGap') && !defaults.some(({ path }) => path === WIDEST)
  return follows && lengths.includes(WIDEST) && typeof widest === 'number'
    ? [...defaults, { kind: 'length', path: WIDEST, to: mm(widest) }]
    : defaults
}
const WIDEST = '/maxBallGap'

function defaultOf(change: RequestChange): SeasonDefault {
  if (change.kind === 'today') throw new RangeError('change must be one of the design or of its woods, got today')
  return change.kind === 'wood' ? change : { kind: 'length', path: change.path.replace(/^\/design/, ''), to: change.to }
}

const isSame = (one: Pick<Advice, 'changes'>, other: Pick<Advice, 'changes'>): boolean =>
  JSON.stringify(one.changes) === JSON.stringify(other.changes)

const namesIn = (path: string): string[] => path.split('/').slice(1)
