import { BOARD_VARIATION, HYSTERESIS } from '#shared/data/wood-movement.ts'
import { stops, type Trouble } from '#shared/movement/fit.ts'
import { isBeyondKnown } from '#shared/movement/states.ts'
import { constructionsOf, type RingWood } from '#shared/movement/year.ts'
import { GOOD_ENOUGH, isFelt, type RequestChange } from '#shared/questions/season/advice.ts'
import type { Chances } from '#shared/questions/season/chances.ts'
import type { BandEnd, RunningBand } from '#shared/questions/season/running-band.ts'
import type { FitAtState, SeasonalFit } from '#shared/questions/season/seasonal-fit.ts'
import type { SegmentsOfYear } from '#shared/questions/season/segments.ts'
import { inUnits, type Mm, mm, type Units } from '#shared/units/length.ts'
import type { Scale } from '#shared/units/temperature.ts'
import { knownTemperature } from '#shared/wood/equilibrium-moisture.ts'
import { capitalised, figure } from './figure.ts'
import { inList } from './list.ts'
import { degrees, percentFigure } from './season-refusal.ts'
import { type Terms, WOODEN_PARTS } from './terms.ts'

/** Nobody measures a gap or a play finer than this. */
const FINEST: Readonly<Record<Units, number>> = { mm: 0.005, in: 0.0002 }
const size = (length: Mm, units: Units): string =>
  Math.abs(inUnits(length, units)) < FINEST[units] ? `0 ${units}` : figure(length, units)

function troubleWords(trouble: Trouble, { element }: Terms): string {
  const sentences: Readonly<Record<Trouble, string>> = {
    'balls-bind': `the ${element.many} bind because the circle they run on is too small`,
    'rings-bind': 'the inner ring binds',
    'lands-rub': 'the lands rub',
    'ends-bind': 'the cheeks pinch the rollers or the inner ring',
    'cage-rubs': 'the cage rubs on a land',
    'pockets-bind': 'the balls stick in the pockets of the cage',
    'balls-climb':
      'the balls ride on the edges of the grooves when the grain of one plate lies across that of the other',
    'balls-knock': `the ${element.many} knock because the circle they run on is too large`,
  }
  return sentences[trouble]
}

/** A trouble in a state. If even the best play is below 0, no rotation frees the ring. */
const inState = (trouble: Trouble, { fit }: FitAtState, terms: Terms): string =>
  trouble === 'rings-bind' && fit.play !== undefined
    ? `the inner ring is stiff ${fit.play.best < 0 ? 'all round' : 'twice a turn'}`
    : troubleWords(trouble, terms)

/** How many bearings of a hundred: chances are good to about one of them. */
function outOf100(chance: number): string {
  const count = Math.round(100 * chance)
  if (count === 0) return 'fewer than 1 of 100'
  return count === 100 ? 'more than 99 of 100' : `${count} of 100`
}

const RUN = 'such bearings can be put together and run'

/** How many such bearings run through the year. */
export const runAllYear = (chance: number): string => `${capitalised(outOf100(chance))} ${RUN} all year`

/** @param runs the chance that it goes together and runs at that time */
export function describeState(at: FitAtState, runs: number, units: Units, terms: Terms): string {
  const { fit, troubles, state } = at
  const figures = [
    ...(fit.ballGap === undefined ? [] : [`${terms.gap} ${size(fit.ballGap.least, units)}`]),
    ...(fit.play === undefined
      ? []
      : [`play ${fit.play.worst < 0 ? 'down to' : 'at least'} ${size(fit.play.worst, units)}`]),
  ].join(', ')
  const what = troubles.some(stops)
    ? `At a moisture content of ${percentFigure(state.moistureContent)} ${inList(troubles.map((trouble) => inState(trouble, at, terms)))} (${figures}).`
    : `With ${terms.element.many} of the mean size the bearing runs: ${figures}${troubles.length === 0 ? '' : `; ${inList(troubles.map((trouble) => inState(trouble, at, terms)))}`}.`
  return `${what} ${capitalised(outOf100(runs))} ${RUN} at this time.`
}

export function describeBand({ temperature, low, high }: RunningBand, scale: Scale, terms: Terms): string {
  const end = ({ relativeHumidity, stoppedBy }: BandEnd, side: string, never: string): string =>
    stoppedBy.length === 0
      ? never
      : `${side} ${percentFigure(relativeHumidity)} ${inList(stoppedBy.map((trouble) => troubleWords(trouble, terms)))}.`
  return [
    `At ${degrees(temperature, scale)}, with ${terms.element.many} of the mean size, the bearing runs from ${percentFigure(low.relativeHumidity)} to ${percentFigure(high.relativeHumidity)} relative humidity.`,
    end(low, 'Below', 'Dry air never stops it.'),
    end(high, 'Above', 'Damp air never stops it.'),
  ].join(' ')
}

type Advised = Pick<SeasonalFit, 'advice' | 'bearing' | 'chances'> & {
  readonly input: Pick<SeasonalFit['input'], 'woods'>
}

/** The advice for the year, in one sentence. */
export function describeAdvice(
  { advice, bearing, chances: asDesigned, input: { woods } }: Advised,
  terms: Terms,
): string {
  const { kind, changes, chances } = advice
  const { units } = bearing.resolved.input
  const before = outOf100(asDesigned.runsAllYear)
  switch (kind) {
    case 'leave':
      return `Leave it as designed: ${before} ${RUN} all year${besideRunning(asDesigned, bearing, playOf(bearing), terms)}.${tighter(bearing, woods)}`
    case 'no-remedy':
      return `Keep the bearing in steadier air: ${before} ${RUN} all year, and no other size, moisture or construction that was tried does clearly better.`
    default: {
      const steps = inOrder(changeWords(changes, units, terms))
      // What runs all year is changed only for its rattle.
      const quieter = asDesigned.runsAllYear >= GOOD_ENOUGH ? 'it rattles less, and ' : ''
      const better = `then ${quieter}${outOf100(chances.runsAllYear)} ${RUN} all year, instead of ${before}`
      const still = chances.runsAllYear < GOOD_ENOUGH ? '; for more, keep the bearing in steadier air' : ''
      const play = changes.find(({ path }) => path === PLAY)
      const changed = play?.kind === 'length' ? play.to : playOf(bearing)
      return `${capitalised(steps)}: ${better}${besideRunning(chances, bearing, changed, terms)}${still}.`
    }
  }
}

const PLAY = '/design/radialInternalClearance'
const playOf = ({ resolved: { input } }: Advised['bearing']): Mm =>
  'radialInternalClearance' in input ? (input.radialInternalClearance ?? mm(0)) : mm(0)

/** What a maker hears of a bearing that runs: its play, and its balls where the gap has grown too wide for them. */
function besideRunning({ knocks }: Chances, { resolved }: Advised['bearing'], play: Mm, { element }: Terms): string {
  const { ballDiameter, input } = resolved
  const heard = [
    ...(isFelt(play, ballDiameter) ? [`a play of ${size(play, input.units)} is felt as a rattle`] : []),
    ...(knocks > 1 - GOOD_ENOUGH ? [`in ${outOf100(knocks)} the ${element.many} knock in part of the year`] : []),
  ]
  return heard.length === 0 ? '' : `, but ${inList(heard)}`
}

/** What is left to do about a rattle that no size takes away. */
function tighter(bearing: Advised['bearing'], woods: Advised['input']['woods']): string {
  if (!isFelt(playOf(bearing), bearing.resolved.ballDiameter)) return ''
  const isAllPly = constructionsOf(woods).every((each) => each === 'cross-laminated-ply')
  return isAllPly
    ? ' For less play keep it in steadier air, and choose the sizes again.'
    : ` For less play ${MOVES_LESS}, take a wood that moves less, or keep it in steadier air, and choose the sizes again.`
}

/** What a maker builds of where the weather moves plain boards too much. */
export const MOVES_LESS = 'cut the wooden parts from plywood, or from quarter-sawn boards rather than flat-sawn ones'

/** Steps that are lists themselves, so that each is set off by a comma. */
const inOrder = (steps: readonly string[]): string =>
  [steps.slice(0, -1).join(', '), ...steps.slice(-1)].filter((part) => part !== '').join(', and ')

/** The steps of a maker for some changes, one each. */
function changeWords(changes: readonly RequestChange[], units: Units, terms: Terms): readonly string[] {
  const of = <Kind extends RequestChange['kind']>(kind: Kind) =>
    changes.filter((change): change is Extract<RequestChange, { kind: Kind }> => change.kind === kind)
  const woods = of('wood')
  const sizes = of('length').filter(({ path }) => path !== WIDEST_GAP)
  return [
    ...woods.slice(0, 1).map(({ to }) =>
      woodWords(
        to,
        woods.map(({ path }) => path),
      ),
    ),
    ...of('today').map(({ to }) =>
      to.kind === 'air'
        ? `let the wood rest in air of ${percentFigure(to.air.relativeHumidity)} relative humidity before you cut it`
        : `let the wood come to a moisture content of ${percentFigure(to.moistureContent)} before you cut it`,
    ),
    ...(sizes.length === 0 ? [] : [`make ${inList(sizes.map((change) => sizeWords(change, units, terms)))}`]),
    ...of('length')
      .filter(({ path }) => path === WIDEST_GAP)
      .map(({ to }) => `allow a ${terms.gap} of up to ${size(to, units)} (\`maxBallGap\`)`),
  ]
}

const WIDEST_GAP = '/design/maxBallGap'

const PART_WORDS: Readonly<Record<string, string>> = {
  '/woods/outerRing': 'the outer ring',
  '/woods/innerRing': 'the inner ring',
  '/woods/plates': 'both plates',
  '/woods/cage': 'the cage',
}

const woodWords = ({ construction }: RingWood, paths: readonly string[]): string => {
  const parts = inList(paths.map((path) => PART_WORDS[path] ?? path))
  const stock = construction === 'cross-laminated-ply' ? 'cross-laminated plywood' : `${construction} boards`
  return `cut ${parts.replace('the outer ring and the inner ring', 'both rings')} from ${stock}`
}

/** A size that is to be changed: `the play 0.5 mm instead of 0.3 mm`. */
function sizeWords({ path, from, to }: Extract<RequestChange, { kind: 'length' }>, units: Units, terms: Terms): string {
  const name: Readonly<Record<string, string>> = {
    '/design/ballGap': terms.gap,
    '/design/radialInternalClearance': 'play',
    '/design/balls/length': 'length of the rollers',
    '/design/cage/landClearance': 'space between the cage and each land',
    '/design/cage/pocketClearance': 'clearance of the balls in the pockets',
  }
  return `the ${name[path] ?? path} ${size(to, units)} instead of ${size(from, units)}`
}

/** @param isAdvised whether the advice is to change something */
export function warningOf(trouble: Trouble, states: readonly FitAtState[], isAdvised: boolean, terms: Terms): string {
  const names = states.filter(({ troubles }) => troubles.includes(trouble)).map(({ state }) => state.name)
  return `${names.join(', ')}: ${troubleWords(trouble, terms)}.${isAdvised ? ' See `buildIn`.' : ''}`
}

/** The effect of a year on segmented parts, and the number of pieces that is enough. */
export function describeSegments({ leastCount, worst }: SegmentsOfYear): string {
  const parts = worst.map(({ part, name, lobes }) => `${WOODEN_PARTS[part]}: ${stress(lobes.pull)} (${name})`)
  const enough =
    leastCount === undefined
      ? 'No usual number of pieces both runs all year and keeps its joints.'
      : `${leastCount} pieces in a layer are enough for this year.`
  return `${enough} The hardest pull across the grain: ${parts.join(', ')}.`
}

export const jointsOpen = ({ part, name, lobes }: SegmentsOfYear['worst'][number]): string =>
  `${name}: the wood of the ${WOODEN_PARTS[part]} is pulled across the grain by ${stress(lobes.pull)} and bears about ${stress(lobes.strength)}: joints will open, or pieces split. Use ${part === 'plates' ? '' : 'a thinner wall, '}wood of the year's middle moisture, or ply.`

const stress = (megapascals: number): string => `${Math.round(10 * megapascals) / 10} MPa`
const MADE = 'The calculation assumes that on the day of making every part is exactly round and of the size designed.'
const AT_REST =
  'The calculation assumes that the wood has come to the moisture of the air all the way through. A part takes weeks to do so, and a finish slows it.'
const BOARDS = [
  'The calculation assumes that a part from a board moves evenly: by one factor along the grain and another across it. It ignores how the grain curves at the end of the board.',
  'Cupping is not counted. A flat-sawn board 100 mm wide can cup by some 0.2 mm (common practice, no source).',
]
const SEGMENTED =
  'A segmented part is computed as an elastic ring of straight pieces with miter joints as strong as the wood, in one layer (with figures of stiffness that were not checked in print where none is printed). Wood gives way slowly, so the stress is the most that it comes to.'
const DIFFER = `Boards of one species differ: the chances let the movement of each board vary by ${100 * BOARD_VARIATION.relative} % (standard deviation; Wood Handbook, not checked in print).`
const DAMPER = `Wood that has dried holds more moisture in the same air than wood that took it up: the chances allow for ${HYSTERESIS.moisture} % of moisture either way, half of the ${HYSTERESIS.loop} % that a page on timber quotes.`
const SPLIT = 'Make both halves of a split ring with the grain in the same direction, or their shapes will differ.'

/** Assumptions and omissions of the calculation for this bearing: a short note each. */
export function notesOf(
  { input: { woods, today, climate }, bearing, states, ...rest }: SeasonalFit,
  scale: Scale,
  terms: Terms,
): string[] {
  const { element } = terms
  const constructions = constructionsOf(woods)
  const isSegmented = (construction: string): boolean => construction.startsWith('segmented')
  const { resolved } = bearing
  const cold = [rest.today, ...states].map(({ state }) => state).find(isBeyondKnown)
  const plays = rest.today.fit.play !== undefined
  const notes: readonly (readonly [boolean, ...string[]])[] = [
    [true, MADE, AT_REST],
    [constructions.some((one) => one !== 'cross-laminated-ply' && !isSegmented(one)), ...BOARDS],
    [constructions.some(isSegmented), SEGMENTED],
    [true, DIFFER],
    [today.kind === 'air' || climate.kind !== 'moisture', DAMPER],
    ['split' in resolved && resolved.split !== 'none', SPLIT],
    [
      plays,
      `Uneven ${element.many} cost play. In a ring that is out of round that cost is an estimate, good to about a fifth of the standard deviation of one ${element.one}.`,
    ],
    [
      woods.balls !== undefined,
      `A wooden ${element.one} counts with the mean of its diameters, because it turns; how far they differ counts as scatter.`,
    ],
    [
      'outerRing' in bearing &&
        'seat' in bearing.outerRing &&
        terms.raceway.one === 'groove' &&
        (bearing.outerRing.seat === 'edges' || bearing.innerRing.seat === 'edges'),
      'Balls that ride on the edges of a groove are computed as if they sat on a bottom in the same place.',
    ],
    [
      cold !== undefined,
      `The moisture of wood in air colder than ${degrees(knownTemperature(Number.NEGATIVE_INFINITY), scale)} is not known: it is taken as at that temperature.`,
    ],
  ]
  return notes.flatMap(([applies, ...sentences]) => (applies ? sentences : []))
}
