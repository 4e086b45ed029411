import type { Bearing } from '#shared/bearing/arrangements.ts'
import { valueAt, withValue } from '#shared/bearing/field.ts'
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
  /** The bearing without them. */
  readonly bearing: Bearing
  /** What would serve better, from those values on; absent where they serve. */
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
  const defaults = own.chances.runsAllYear >= GOOD_ENOUGH ? defaultsIn(own.changes, lengths, through.value) : []
  // As whoever states these values is answered: other defaults may follow from them.
  const stated = defaults.length === 0 ? through : throughYear(withDefaults(input, defaults))
  const isOurs = stated.ok && stated.value.chances.runsAllYear >= GOOD_ENOUGH && defaults.length > 0
  const { chances } = isOurs ? stated.value : through.value
  const serves = chances.runsAllYear >= GOOD_ENOUGH && !(isOurs && own.isLoose)
  const better = serves ? undefined : adviceFor(through.value, throughYear, sketchedYear)
  return ok({
    defaults: isOurs ? defaults : [],
    chances,
    bearing: through.value.moving.bearing,
    ...(better === undefined || isSame(better, own) ? {} : { better: isOurs ? from(own, better) : better }),
  })
}

/** The request with the defaults stated. */
const withDefaults = (input: SeasonalFitInput, defaults: readonly SeasonDefault[]): SeasonalFitInput =>
  defaults.reduce(
    (whole, { kind, path, to }) => withValue(whole, kind === 'wood' ? namesIn(path) : ['design', ...namesIn(path)], to),
    input,
  )

/** The same advice to someone who has already followed another: what that has changed is changed on, or back. */
function from({ changes: followed }: Advice, advice: Advice): Advice {
  const after = (change: RequestChange): readonly RequestChange[] => {
    const done = followed.find(({ kind, path }) => kind === change.kind && path === change.path)
    if (done?.kind !== 'length' || change.kind !== 'length') return [change]
    return done.to === change.to ? [] : [{ ...change, from: done.to }]
  }
  const undone = followed.flatMap((done): readonly RequestChange[] => {
    const isKept = advice.changes.some(({ path }) => path === done.path)
    return done.kind !== 'length' || isKept ? [] : [{ ...done, from: done.to, to: done.from }]
  })
  return { ...advice, changes: [...advice.changes.flatMap(after), ...undone] }
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
