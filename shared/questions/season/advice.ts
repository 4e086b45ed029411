import type { DesignInput } from '#shared/bearing/arrangements.ts'
import { namesIn, valueAt, withValue } from '#shared/bearing/field.ts'
import { LARGEST_GAP } from '#shared/bearing/resolve.ts'
import { PART_NAMES, type WoodPart } from '#shared/bearing/wood-parts.ts'
import { ROOM_ROWS } from '#shared/movement/arrangements/parts.ts'
import type { WoodState } from '#shared/movement/states.ts'
import type { RingWood, Today } from '#shared/movement/year.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import type { Result } from '#shared/result.ts'
import { lengthOf, type Mm, mm, type Units } from '#shared/units/length.ts'
import { rounded } from '#shared/units/rounded.ts'
import { stepDown, stepUp } from '#shared/units/step.ts'
import type { Construction } from '#shared/wood/construction.ts'
import { knownTemperature, relativeHumidityFor } from '#shared/wood/equilibrium-moisture.ts'
import { FIBRE_SATURATION } from '#shared/wood/moisture-movement.ts'
import type { Chances, NeedName, Needs } from './chances.ts'
import type { SeasonalFitInput } from './input.ts'

/** The kind of advice: nothing, other sizes, wood of another moisture on the day of making, or another construction. */
export type AdviceKind = 'leave' | 'change-sizes' | 'rest-wood' | 'change-construction' | 'no-remedy'

/** A change of the request, with the value that it replaces. */
export type RequestChange =
  | { readonly kind: 'length'; readonly path: string; readonly from: Mm; readonly to: Mm }
  | { readonly kind: 'today'; readonly path: '/climate/today'; readonly to: Today }
  | { readonly kind: 'wood'; readonly path: `/woods/${WoodPart}`; readonly to: RingWood }

export interface Advice {
  readonly kind: AdviceKind
  /** The changes to the request; sent again with them, it is answered with these chances. */
  readonly changes: readonly RequestChange[]
  readonly chances: Chances
  /** Whether the play or the widest gap that it leaves is felt as a rattle or seen as a missing ball. */
  readonly isLoose: boolean
}

/** The changes that advice may make. */
export interface Freedom {
  /** Lengths of the design, by their JSON pointers in it. */
  readonly lengths: readonly string[]
  /** Whether a part may be cut in that construction. */
  readonly mayRebuild: (part: WoodPart, construction: Steadier) => boolean
  /** Whether the wood may rest in other air before it is cut. */
  readonly mayRest: boolean
}

/** A bearing and its year, from which advice is made. */
interface Tried {
  readonly moving: {
    readonly input: SeasonalFitInput
    readonly bearing: { readonly resolved: { readonly input: DesignInput; readonly ballDiameter: Mm } }
    readonly season: { readonly today: WoodState; readonly states: readonly WoodState[] }
  }
  readonly chances: Chances
  readonly needs: Needs
}
type Try = (input: SeasonalFitInput) => Result<Tried, unknown>

/** The chance of running all year from which a bearing counts as one that does. Common practice, no source. */
export const GOOD_ENOUGH = 0.9
/** A size is chosen so that it does by itself for so many bearings; of two or three sizes enough are left. */
const SERVED_BY_EACH_SIZE = 0.96
/** No advice for less of a gain, unless what comes of it is good enough. */
const LEAST_GAIN = 0.05
/** Sizes are advised in such steps, which a rule or a feeler gauge can show, in each unit. */
const STEPS: Readonly<Record<Units, number>> = { mm: 0.05, in: 0.002 }
/** Air in which wood can be left to rest [%]: what a room, a box with a drier or a damp cellar gives. */
const RESTING_AIR = { driest: 20, dampest: 85 }
/** Wood that rests is advised where the year's middle is farther off than this [% of moisture]. */
const WORTH_A_REST = 0.5

/** More play than this, in balls, is felt as a rattle; a gap wider than this looks as if a ball were missing. No source. */
const MOST_PLAY = 1 / 15
const WIDEST = 1 / 3

/** Whether so much play between balls of that diameter is felt as a rattle. */
export const isFelt = (play: number, ballDiameter: Mm): boolean => play > MOST_PLAY * ballDiameter

/**
 * Advice for the year, the smallest change first: nothing; other sizes; wood that has rested in the middle of the year's air;
 * another construction. The first that is good enough and not too loose is advised, else the best, if it gains anything. What
 * runs all year is changed only for its rattle, and only where something runs without.
 *
 * @param tried answers a request as the caller is answered, so that the chances of the advice are those that the changed
 *   request is answered with
 * @param sketched the same, faster and less exactly, to choose by
 * @param freedom what may be changed; everything where nothing is said
 */
export function adviceFor(asDesigned: Tried, tried: Try, sketched: Try, freedom: Freedom = ANYTHING): Advice {
  const asItIs = { changes: [], chances: asDesigned.chances, isLoose: isLoose(asDesigned) }
  const closer = withoutRattle(asDesigned, freedom)
  if (isGood(asDesigned) && closer.length === 0) return { kind: 'leave', ...asItIs }
  const outcomes: (Outcome & Pick<Option, 'kind'>)[] = []
  for (const { kind, changes } of optionsFor(asDesigned, freedom)) {
    const found = [
      ...(closer.length === 0 ? [] : outcomesOf(asDesigned, [changes, closer], sketched, freedom).filter(isSound)),
      ...(isGood(asDesigned) ? [] : outcomesOf(asDesigned, [changes, []], sketched, freedom)),
    ]
    outcomes.push(...found.map((outcome) => ({ kind, ...outcome })))
    if (outcomes.some(isSound)) break
  }
  const whole = wholeOf(asDesigned)
  for (const { kind, changes } of ranked(outcomes, asDesigned)) {
    const result = tried(withChanges(whole, changes))
    if (!result.ok || !(isGood(asDesigned) ? isSoundYear : gains)(result.value, asDesigned)) continue
    const found = { kind, changes, chances: result.value.chances, isLoose: isLoose(result.value) }
    return isSound(found) || !isGood(found) ? found : andThen(found, adviceFor(result.value, tried, sketched, freedom))
  }
  return { kind: isGood(asDesigned) ? 'leave' : 'no-remedy', ...asItIs }
}

/** Advice on what other advice comes to, as one: what is good but rattles may from there be found without. */
function andThen(first: Advice, then: Advice): Advice {
  if (then.kind === 'leave') return first
  const begun = new Map(first.changes.map((change) => [change.path, change]))
  const changed = then.changes.map((change): RequestChange => {
    const before = begun.get(change.path)
    return change.kind === 'length' && before?.kind === 'length' ? { ...change, from: before.from } : change
  })
  const kept = first.changes.filter(({ path }) => then.changes.every((change) => change.path !== path))
  return {
    ...then,
    kind: then.kind === 'change-sizes' ? first.kind : then.kind,
    changes: [...kept, ...changed].filter((change) => change.kind !== 'length' || change.from !== change.to),
  }
}

/** The play of a bearing that rattles brought down to what is not felt; nothing where it is not more. */
function withoutRattle(tried: Tried, { lengths }: Freedom): readonly LengthChange[] {
  const { design } = wholeOf(tried)
  const play = valueAt(design, namesIn(PLAY))
  const step = lengthOf(STEPS[design.units], design.units)
  const most = rounded(mm(stepDown(MOST_PLAY * tried.moving.bearing.resolved.ballDiameter, step)), design.units)
  if (typeof play !== 'number' || !(play > most) || !(most > 0) || !lengths.includes(PLAY)) return []
  return [{ kind: 'length', path: `/design${PLAY}`, from: mm(play), to: most }]
}

interface Outcome {
  readonly changes: readonly RequestChange[]
  readonly chances: Chances
  readonly isLoose: boolean
}

type Judged = Pick<Tried, 'chances'>
const isGood = ({ chances }: Judged): boolean => chances.runsAllYear >= GOOD_ENOUGH
const isSound = (outcome: Outcome): boolean => !outcome.isLoose && isGood(outcome)
const isSoundYear = (year: Tried): boolean => !isLoose(year) && isGood(year)
/** Whether it is worth changing what is not good enough. */
const gains = (one: Judged, other: Judged): boolean =>
  isGood(one) || one.chances.runsAllYear >= other.chances.runsAllYear + LEAST_GAIN

/** The outcomes that are worth it, the one to advise first: good ones before the best of others, tight ones before loose. */
function ranked<O extends Outcome>(outcomes: readonly O[], asDesigned: Tried): readonly O[] {
  const rank = (outcome: O): number => (isSound(outcome) ? 0 : isGood(outcome) ? 1 : 3 - outcome.chances.runsAllYear)
  return outcomes
    .filter((outcome) => outcome.changes.length > 0 && gains(outcome, asDesigned))
    .toSorted((one, other) => rank(one) - rank(other))
}

/** Sizes act on one another, so they are chosen twice. */
const ROUNDS = 2

/** The outcomes of some changes, with lengths to begin with, by themselves and with other sizes as well. */
function outcomesOf(
  asDesigned: Tried,
  [changes, closer]: readonly [readonly RequestChange[], readonly LengthChange[]],
  sketched: Try,
  freedom: Freedom,
): readonly Outcome[] {
  const whole = wholeOf(asDesigned)
  const answered = (lengths: readonly LengthChange[]): Tried | undefined => {
    const result = sketched(withChanges(whole, [...changes, ...lengths]))
    return result.ok ? result.value : undefined
  }
  const outcomes: Outcome[] = []
  let lengths = closer
  let at = changes.length + lengths.length === 0 ? asDesigned : answered(lengths)
  for (let round = 0; at !== undefined; round++) {
    outcomes.push({ changes: [...changes, ...lengths], chances: at.chances, isLoose: isLoose(at) })
    const wanted = sizesFor(at, freedom)
    if (round === ROUNDS || wanted.length === 0) break
    lengths = lengthsBetween(whole.design, withChanges(wholeOf(at), wanted).design)
    at = answered(lengths)
  }
  return outcomes
}

function isLoose(tried: Tried): boolean {
  const { ballDiameter } = tried.moving.bearing.resolved
  const { design } = wholeOf(tried)
  const [play, widest] = [PLAY, WIDEST_GAP].map((path) => valueAt(design, namesIn(path)))
  return (
    (typeof play === 'number' && isFelt(play, ballDiameter)) ||
    (typeof widest === 'number' && widest > WIDEST * ballDiameter)
  )
}

/** The request with every default of the design filled in: what an answer echoes. */
const wholeOf = ({ moving: { input, bearing } }: Tried): SeasonalFitInput => ({
  ...input,
  design: bearing.resolved.input,
})

type LengthChange = Extract<RequestChange, { kind: 'length' }>

/** A request with its changes made. */
export const withChanges = (input: SeasonalFitInput, changes: readonly RequestChange[]): SeasonalFitInput =>
  changes.reduce(
    (changed, { kind, path, to }) => withValue(changed, kind === 'today' ? ['today'] : namesIn(path), to),
    input,
  )

/** The lengths by which two designs differ, of those that advice may change. */
const lengthsBetween = (from: DesignInput, to: DesignInput): readonly LengthChange[] =>
  SEASON_LENGTHS.flatMap((path): LengthChange[] => {
    const [before, after] = [from, to].map((design) => valueAt(design, namesIn(path)))
    return typeof before === 'number' && typeof after === 'number' && before !== after
      ? [{ kind: 'length', path: `/design${path}`, from: mm(before), to: mm(after) }]
      : []
  })

const GAP = '/ballGap'
const WIDEST_GAP = '/maxBallGap'
const PLAY = '/radialInternalClearance'
const CURES = ROOM_ROWS.flatMap(([name, { path, cure }]) => (cure === undefined ? [] : [{ name, path, cure }]))
/** The lengths that advice may change, by their JSON pointers in a design. */
export const SEASON_LENGTHS = [GAP, WIDEST_GAP, PLAY, ...CURES.map(({ path }) => path)]

const ANYTHING: Freedom = { lengths: SEASON_LENGTHS, mayRebuild: () => true, mayRest: true }

/** The sizes with which enough bearings have what they need: only ever more gap, play and room than there is. */
function sizesFor(tried: Tried, { lengths }: Freedom): readonly LengthChange[] {
  const { needs, moving } = tried
  const { ballDiameter } = moving.bearing.resolved
  const { design } = wholeOf(tried)
  const { units } = design
  const step = lengthOf(STEPS[units], units)
  // What enough bearings need, no more.
  const needed = (name: NeedName): number => {
    const sorted = needs.get(name)
    return sorted === undefined ? 0 : itemAt(sorted, Math.floor(SERVED_BY_EACH_SIZE * sorted.length))
  }
  const changed = (path: string, by: number, direction = 1): readonly LengthChange[] => {
    const from = valueAt(design, namesIn(path))
    if (typeof from !== 'number' || !(by > 0) || !lengths.includes(path)) return []
    const to = direction > 0 ? stepUp(from + by, step) : stepDown(from - by, step)
    return [{ kind: 'length', path: `/design${path}`, from: mm(from), to: rounded(to, units) }]
  }
  const gap = changed(GAP, needed('gap'))
  const wider = gap.reduce((sum, { from, to }) => sum + to - from, 0)
  // Wider than this a ring takes another ball, and no design may allow it.
  const limit = mm(stepDown(LARGEST_GAP * ballDiameter, step) - step)
  const widest = gap.length === 0 ? [] : changed(WIDEST_GAP, needed('excess') + wider)
  return [
    ...gap,
    ...widest.map((change) => ({
      ...change,
      to: mm(Math.max(change.from, Math.min(change.to, rounded(limit, units)))),
    })),
    ...changed(PLAY, needed('play')),
    ...CURES.flatMap(({ name, path, cure }) => changed(path, needed(name), cure)),
  ].filter(({ from, to }) => from !== to)
}

interface Option {
  readonly kind: AdviceKind
  readonly changes: readonly RequestChange[]
}

/** Changes besides sizes, the easiest for a maker first: each construction with the wood as it is, then rested. */
function optionsFor({ moving }: Tried, { mayRebuild, mayRest }: Freedom): readonly Option[] {
  const { input, season } = moving
  const rested = mayRest ? restIn(input, season) : undefined
  const constructions = (['quarter-sawn', 'cross-laminated-ply'] as const)
    .map((construction) =>
      PART_NAMES.flatMap((part) =>
        mayRebuild(part, construction) ? rebuilt(input.woods[part], part, construction) : [],
      ),
    )
    .filter((changes) => changes.length > 0)
  return [[], ...constructions].flatMap((changes): Option[] => {
    const isRebuilt = changes.length > 0
    const asItIs: Option = { kind: isRebuilt ? 'change-construction' : 'change-sizes', changes }
    if (rested === undefined) return [asItIs]
    return [asItIs, { kind: isRebuilt ? 'change-construction' : 'rest-wood', changes: [...changes, rested] }]
  })
}

/** Wood in the middle of the year's moisture on the day of making; absent where it is near that already. */
function restIn({ today }: SeasonalFitInput, season: Tried['moving']['season']): RequestChange | undefined {
  const moistures = season.states.map(({ moistureContent }) => Math.min(moistureContent, FIBRE_SATURATION))
  const middle = (Math.min(...moistures) + Math.max(...moistures)) / 2
  if (!(Math.abs(middle - season.today.moistureContent) > WORTH_A_REST)) return undefined
  const path = '/climate/today'
  if (today.kind === 'moisture')
    return { kind: 'today', path, to: { ...today, moistureContent: Math.round(10 * middle) / 10 } }
  const { temperature } = today.air
  const humidity = relativeHumidityFor(middle, knownTemperature(temperature))
  return humidity === undefined || humidity < RESTING_AIR.driest || humidity > RESTING_AIR.dampest
    ? undefined
    : { kind: 'today', path, to: { kind: 'air', air: { temperature, relativeHumidity: Math.round(humidity) } } }
}

/** A part in a construction that moves less; nothing where that is no change for the better. */
function rebuilt(wood: RingWood | undefined, part: WoodPart, construction: Steadier): readonly RequestChange[] {
  if (wood === undefined || wood.construction === 'cross-laminated-ply') return []
  const path = `/woods/${part}` as const
  if (construction === 'cross-laminated-ply') return [{ kind: 'wood', path, to: { construction } }]
  return wood.construction === 'flat-sawn' ? [{ kind: 'wood', path, to: { ...wood, construction } }] : []
}
type Steadier = Extract<Construction, 'quarter-sawn' | 'cross-laminated-ply'>
