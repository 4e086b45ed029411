import type { BuildIn } from '#shared/questions/season/build-in.ts'
import type { Trouble } from '#shared/questions/season/fit.ts'
import type { RingWood } from '#shared/questions/season/input.ts'
import type { BandEnd, RunningBand } from '#shared/questions/season/running-band.ts'
import type { FitAtState, SeasonalFit } from '#shared/questions/season/seasonal-fit.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import type { Scale } from '#shared/units/temperature.ts'
import { figure } from './figure.ts'
import { degrees, percentFigure } from './season-refusal.ts'

const WORDS: Readonly<Record<Trouble, string>> = {
  'balls-bind': 'the balls bind because the ring is too tight for them',
  'rings-bind': 'the inner ring binds',
  'lands-rub': 'the lands rub',
  'balls-knock': 'the balls knock because the ring is too wide for them',
}

const listed = (words: readonly string[]): string => words.join(', and ')

/** Where even the best play is below 0, no turn frees the ring. */
const inState = (trouble: Trouble, { fit }: FitAtState): string =>
  trouble === 'rings-bind'
    ? `the inner ring is stiff ${fit.play.best < 0 ? 'all round' : 'twice a turn'}`
    : WORDS[trouble]

export function describeState(at: FitAtState, units: Units): string {
  const { fit, troubles, state } = at
  const figures = `ball gap ${figure(fit.ballGap.least, units)}, play ${figure(fit.play.worst, units)} at its worst`
  return troubles.length === 0
    ? `The bearing runs: ${figures}.`
    : `At a moisture content of ${percentFigure(state.moistureContent)} ${listed(troubles.map((trouble) => inState(trouble, at)))} (${figures}).`
}

export function describeBand({ temperature, low, high }: RunningBand, scale: Scale): string {
  const end = ({ relativeHumidity, stoppedBy }: BandEnd, side: string, never: string): string =>
    stoppedBy.length === 0
      ? never
      : `${side} ${percentFigure(relativeHumidity)} ${listed(stoppedBy.map((trouble) => WORDS[trouble]))}.`
  return [
    `At ${degrees(temperature, scale)} the bearing runs from ${percentFigure(low.relativeHumidity)} to ${percentFigure(high.relativeHumidity)} relative humidity.`,
    end(low, 'Below', 'Dry air never stops it.'),
    end(high, 'Above', 'Damp air never stops it.'),
  ].join(' ')
}

export function describeBuildIn(advice: BuildIn, { bearing }: SeasonalFit): string {
  const { units } = bearing.resolved.input
  const size = (length: Mm): string => figure(length, units)
  if (advice.ballGap === undefined || advice.leastBallGap === undefined)
    return 'No gap smaller than a ball leaves room for the balls all year. Use a construction that moves less (segmented, cross-laminated), or keep the bearing in steadier air.'
  const gap =
    advice.ballGap === bearing.ballGap
      ? `The ball gap of ${size(bearing.ballGap)} suits the year. `
      : `Make the ball gap ${size(advice.ballGap)} instead of ${size(bearing.ballGap)}. `
  const wide =
    advice.mostBallGap !== undefined && advice.mostBallGap < advice.leastBallGap
      ? 'The ring moves more over the year than the gap limits allow: when it is widest, the balls will knock. '
      : ''
  return `${gap}${wide}${playAdvice(advice, bearing.radialInternalClearance, units)}`
}

function playAdvice({ leastPlay, play }: BuildIn, asked: Mm, units: Units): string {
  if (leastPlay === undefined || play === undefined)
    return 'The play that the year needs would cut into the bore: use a construction that moves less.'
  return play === asked
    ? `The play of ${figure(asked, units)} suits the year; with ${figure(leastPlay, units)} or more the rings never bind.`
    : `Make the play ${figure(play, units)} instead of ${figure(asked, units)}.`
}

export function warningOf(trouble: Trouble, states: readonly FitAtState[]): string {
  const names = states.filter(({ troubles }) => troubles.includes(trouble)).map(({ state }) => state.name)
  return `${names.join(', ')}: ${WORDS[trouble]}. See \`buildIn\`.`
}

const MADE = 'The calculation assumes that on the day of making every part is exactly round and of the size designed.'
const AT_REST =
  'The calculation assumes that the wood has settled to the moisture of the air all the way through. A ring takes weeks to do so, and a finish slows it.'
const BOARD =
  'The calculation assumes that a ring from a board moves evenly: by one factor along the grain and another across it. It ignores growth rings that curve through the board.'
const SEGMENTED =
  'A segmented ring is computed as an elastic ring that is stiffer round the circle than across it (typical stiffness of hardwoods or softwoods, from memory). Its glue joints must bear that stress.'
const BALLS = 'A wooden ball counts with the mean of its three diameters, because it turns every way.'
const EDGES = 'Balls that ride on the edges of a groove are computed as if they sat on a bottom in the same place.'

/** The assumptions of the calculation, as far as they concern this bearing. */
export function notesOf({ input, bearing }: SeasonalFit): string[] {
  const { woods } = input
  const rings: readonly RingWood[] = [woods.outerRing, woods.innerRing]
  const isSegmented = ({ construction }: RingWood): boolean => construction.startsWith('segmented')
  const isBoard = (wood: RingWood): boolean => wood.construction !== 'cross-laminated-ply' && !isSegmented(wood)
  return [
    MADE,
    AT_REST,
    ...(rings.some(isBoard) ? [BOARD] : []),
    ...(rings.some(isSegmented) ? [SEGMENTED] : []),
    ...(woods.balls === undefined ? [] : [BALLS]),
    ...(bearing.outerRing.seat === 'edges' || bearing.innerRing.seat === 'edges' ? [EDGES] : []),
  ]
}
