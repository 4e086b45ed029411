import type { BuildIn } from '#shared/questions/season/build-in.ts'
import type { Trouble } from '#shared/questions/season/fit.ts'
import type { RingWood } from '#shared/questions/season/input.ts'
import type { BandEnd, RunningBand } from '#shared/questions/season/running-band.ts'
import type { FitAtState, SeasonalFit } from '#shared/questions/season/seasonal-fit.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import type { Scale } from '#src/api/climate.ts'
import { figure } from './figure.ts'
import { degrees, percentFigure } from './season-refusal.ts'

const WORDS: Readonly<Record<Trouble, string>> = {
  'balls-bind': 'the balls bind: their ring is too tight',
  'rings-bind': 'the inner ring binds',
  'lands-rub': 'the lands rub',
  'balls-knock': 'the balls knock: their ring is too wide',
}

const listed = (troubles: readonly Trouble[]): string => troubles.map((trouble) => WORDS[trouble]).join(', and ')

/** Where the play is below 0 at its best too, no turn frees the ring. */
function stateWords({ fit, troubles }: FitAtState): string {
  const where = fit.play.best < 0 ? 'all round' : 'twice a turn'
  return listed(troubles).replace(WORDS['rings-bind'], `the inner ring is stiff ${where}`)
}

export function describeState(at: FitAtState, units: Units): string {
  const { ballGap, play } = at.fit
  const gaps = `ball gap ${figure(ballGap.least, units)}, play ${figure(play.worst, units)} at its worst`
  return at.troubles.length === 0
    ? `Runs: ${gaps}.`
    : `At ${percentFigure(at.state.moistureContent)} of moisture ${stateWords(at)} (${gaps}).`
}

export function describeBand({ temperature, low, high }: RunningBand, scale: Scale): string {
  const end = ({ relativeHumidity, stoppedBy }: BandEnd, side: string, open: string): string =>
    stoppedBy.length === 0 ? open : `${side} ${percentFigure(relativeHumidity)} ${listed(stoppedBy)}`
  return [
    `At ${degrees(temperature, scale)} it runs from ${percentFigure(low.relativeHumidity)} to ${percentFigure(high.relativeHumidity)} of humidity: `,
    end(low, 'below', 'however dry it gets'),
    '; ',
    end(high, 'above', 'however damp it gets'),
    '.',
  ].join('')
}

export function describeBuildIn(advice: BuildIn, { bearing }: SeasonalFit): string {
  const { units } = bearing.settled.input
  const size = (length: Mm): string => figure(length, units)
  if (advice.ballGap === undefined || advice.leastBallGap === undefined)
    return 'No gap below a whole ball closes all year: take a construction that moves less (segmented, cross-laminated), or keep the bearing in steadier air.'
  const gap =
    advice.ballGap === bearing.ballGap
      ? `The ball gap of ${size(bearing.ballGap)} will do. `
      : `Build in a ball gap of ${size(advice.ballGap)} instead of ${size(bearing.ballGap)}. `
  const wide =
    advice.mostBallGap !== undefined && advice.mostBallGap < advice.leastBallGap
      ? 'The year is too wide for the band: when the ring is widest the balls will knock. '
      : ''
  return `${gap}${wide}${playAdvice(advice, bearing.radialInternalClearance, units)}`
}

function playAdvice({ leastPlay, play }: BuildIn, asked: Mm, units: Units): string {
  if (leastPlay === undefined || play === undefined)
    return 'The play that it would take cuts into the bore: take a construction that moves less.'
  return play === asked
    ? `The play of ${figure(asked, units)} will do; the rings never bind from ${figure(leastPlay, units)} up.`
    : `Build in a play of ${figure(play, units)} instead of ${figure(asked, units)}.`
}

export function warningOf(trouble: Trouble, states: readonly FitAtState[]): string {
  const names = states.filter(({ troubles }) => troubles.includes(trouble)).map(({ state }) => state.name)
  return `${names.join(', ')}: ${WORDS[trouble]}; see buildIn`
}

const AT_REST =
  'The wood is taken to be at rest with the air and equally moist all through: a ring takes weeks for that, and a finish slows it.'
const BOARD =
  'A ring from a board is stretched alike everywhere, once along the grain and once across; growth rings that curve through the board are left out.'
const SEGMENTED =
  'A segmented ring is reckoned as an elastic ring, stiffer round the circle than across it (typical stiffness of hard- or softwoods, from memory); its glue joints must hold that.'
const BALLS = 'A wooden ball counts with the mean of its three diameters; it lies now this way, now that.'
const EDGES = 'Balls that ride on the edges of a groove are reckoned as if on a bottom at the same place.'
const MADE = 'Everything is as round and as large as designed on the day of making.'

/** What was taken for granted, as far as it bears on this bearing. */
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
