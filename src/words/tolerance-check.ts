import type { Year } from '#shared/questions/season/input.ts'
import type { AimPoint } from '#shared/questions/tolerance/aim.ts'
import { isOfPlates, type PlateCheck } from '#shared/questions/tolerance/checked.ts'
import type { CauseName } from '#shared/questions/tolerance/input.ts'
import type { Sensitivity } from '#shared/questions/tolerance/linear-law.ts'
import type { WhyTrials } from '#shared/questions/tolerance/nearly-linear.ts'
import { riseOnLargest } from '#shared/questions/tolerance/plate-ways.ts'
import type { ToleranceRefusal } from '#shared/questions/tolerance/refusal.ts'
import type { ToleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { guessedWoods } from '#src/api/season-sources.ts'
import { figure, percent } from './figure.ts'
import { memorySentence } from './season-refusal.ts'

const NAMES: Readonly<Record<CauseName, string>> = {
  ballDiameter: 'single balls',
  ballLotMean: 'the mean of the ball lot',
  outerGrooveBottomRadius: 'the depth of the outer groove',
  innerGrooveBottomRadius: 'the depth of the inner groove',
  outOfRound: 'grooves out of round',
  finishFilm: 'the finish',
  grooveCircleRadius: "the circle of a plate's groove",
  grooveDepth: "the depth of a plate's groove",
  climate: 'the weather',
}

const BROKEN: Readonly<Record<Extract<ToleranceRefusal, { code: 'contributor-too-wide' }>['because'], string>> = {
  balls: 'balls would differ by more than a half, and the ring be none',
  'outer-groove': 'the outer groove would have no depth, or more than a half circle',
  'inner-groove': 'the inner groove would have no depth, or more than a half circle',
  'plate-groove': 'the groove of a plate would have no depth, or the balls would sink in to their middle',
  closes: 'the balls would not even find room beside one another',
  lobes: 'the groove would be no circle any more',
}

export function explainToleranceRefusal(refusal: ToleranceRefusal, units: Units): string {
  switch (refusal.code) {
    case 'limits-reversed':
      return `the smallest that is good, ${figure(refusal.min, units)}, is above the largest, ${figure(refusal.max, units)}`
    case 'contributor-too-wide':
      return `${NAMES[refusal.name]} may be off by as much as ${figure(refusal.reach, units)}, with the farthest that is drawn of a normal distribution: ${BROKEN[refusal.because]}. ${MEANS[refusal.name]}`
    default:
      return refusal satisfies never
  }
}

const DIFFERENCE = 'Say how far off the design it is, not its size.'
const MEANS: Readonly<Record<CauseName, string>> = {
  ballDiameter: DIFFERENCE,
  ballLotMean: DIFFERENCE,
  outerGrooveBottomRadius: DIFFERENCE,
  innerGrooveBottomRadius: DIFFERENCE,
  outOfRound: 'Give half of the largest radius less the smallest.',
  finishFilm: 'Give the thickness of one coat of film.',
  grooveCircleRadius: DIFFERENCE,
  grooveDepth: DIFFERENCE,
  climate: 'Take a construction that moves less, or a narrower year.',
}

/** What to do about the contributor that decides. */
const REMEDIES: Readonly<Record<CauseName, string>> = {
  ballDiameter: 'sort the balls, or take rounder ones: your lathe does not decide',
  ballLotMean: 'lay the balls in a row, measure their mean and design for that: the ball lot decides, not your lathe',
  outerGrooveBottomRadius: 'creep up on the outer groove and read the gap as you go: your cut decides, not the balls',
  innerGrooveBottomRadius: 'fit the inner groove to the outer ring and its balls, and feel the play as you go',
  outOfRound: 'turn both grooves at the last in one setting, on dry wood',
  grooveCircleRadius:
    'cut both grooves at one setting of the jig, and read the gap before you move it: your cut decides, not the balls',
  grooveDepth: 'set the depth of the cutter by a gauge block, and cut both grooves at one setting',
  finishFilm: 'put the finish on thin and even, or leave the grooves bare',
  climate:
    'glue the rings up of segments or cut them from ply, keep the bearing in steadier air, and let /v1/seasonal-fit say what to build in: the weather decides, not your lathe',
}

/** The contributor with the largest part in the scatter of a figure, or none where nothing scatters. */
function deciding(
  check: ToleranceCheck,
  of: keyof ToleranceCheck['figures'],
): readonly [CauseName, Sensitivity] | undefined {
  const [first] = [...check.figures[of].rss.sensitivities].toSorted(([, one], [, other]) => other.share - one.share)
  return first !== undefined && first[1].share > 0 ? first : undefined
}

/** What it comes to, and what decides it. */
export function advice(check: ToleranceCheck): string {
  const { ballGap, play } = check.figures
  const ofGap = `Of 100 such bearings ${hundredths(ballGap.outcomes.fits.value)} have a ball gap that fits, ${hundredths(ballGap.outcomes.tooTight.value)} are too tight and ${hundredths(ballGap.outcomes.tooLoose.value)} too loose.`
  const ofBoth = `With the play as well, ${hundredths(check.jointFits.value)} fit (the play alone: ${hundredths(play.outcomes.fits.value)}).`
  const sentences = [ofGap, ofBoth]
  const gapDecides = deciding(check, 'ballGap')
  if (gapDecides !== undefined) sentences.push(decision('ball gap', ...gapDecides))
  const playDecides = deciding(check, 'play')
  if (playDecides !== undefined && playDecides[0] !== gapDecides?.[0]) sentences.push(decision('play', ...playDecides))
  return sentences.join(' ')
}

const decision = (what: string, name: CauseName, { share }: Sensitivity): string =>
  `${capital(NAMES[name])} ${plural(name) ? 'make' : 'makes'} ${percent(share)} of the scatter of the ${what}: ${REMEDIES[name]}.`

const plural = (name: CauseName): boolean => name === 'ballDiameter' || name === 'outOfRound'

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** A share as a number of a hundred: `97`, `fewer than 1`, `more than 99`. */
function hundredths(share: number): string {
  const rounded = Math.round(100 * share)
  if (rounded === 0 && share > 0) return 'fewer than 1'
  if (rounded === 100 && share < 1) return 'more than 99'
  return String(rounded)
}

export function explainEffect(name: CauseName, gap: Sensitivity, play: Sensitivity, units: Units): string {
  const moved = (slope: number): string => (name === 'climate' ? figure(mm(slope), units) : rounded(slope))
  return `${GROWS[name]} moves the ball gap by ${moved(gap.slope)} and the play by ${moved(play.slope)}; it makes ${percent(gap.share)} of the scatter of the gap, ${percent(play.share)} of that of the play.`
}

const GROWS: Readonly<Record<CauseName, string>> = {
  ballDiameter: 'One ball larger by 1',
  ballLotMean: 'All balls larger by 1',
  outerGrooveBottomRadius: 'An outer groove deeper by 1',
  innerGrooveBottomRadius: 'An inner groove shallower by 1',
  outOfRound: 'An amplitude of 1',
  finishFilm: 'A film thicker by 1',
  grooveCircleRadius: 'A circle of one plate larger by 1',
  grooveDepth: 'A groove of one plate deeper by 1',
  climate: '1 % more moisture in the wood',
}

const rounded = (slope: number): string => String(Number(slope.toFixed(2)))

/** How the figures were found, and why so. */
export function explainMethod({ method, trials }: ToleranceCheck): string {
  if (method.kind === 'trials') return WHY_TRIALS[method.why]
  const { ballGap, play } = method.left
  return `Gap and play are nearly straight lines in what differs, so their spread is reckoned and not made by chance; ${trials} bearings closed exactly show how the lines bend. What neither tells is ${percent(ballGap)} of the variance of the gap and ${percent(play)} of that of the play. Ask for trials to have bearings made.`
}

const MADE = 'Bearings were made by chance and each closed exactly'
const WHY_TRIALS: Readonly<Record<WhyTrials, string>> = {
  asked: `${MADE}, as asked for.`,
  climate: `${MADE}: in each state of the weather they differ about another mean.`,
  'measured-balls': `${MADE}: balls of a list, none taken twice, hang together.`,
  folded: `${MADE}: of lobes as likely none as some there is no formula.`,
  'not-linear': `${MADE}: a figure does not move, or not nearly in straight lines, with what differs.`,
  corners: `${MADE}: hardly anything differs but one thing that has sharp ends.`,
}

/** Where to stop. */
export function explainAim({ aim, check, figures }: ToleranceCheck): string {
  const { units } = check.input.design
  const what = isOfPlates(check) ? 'the circle of the groove' : 'the outer groove'
  const best = `Most rings fit (${percent(aim.bestYield.outcomes.fits.value)}, ${percent(figures.ballGap.outcomes.fits.value)} as designed) with ${what} ${placeOf(aim.bestYield, check)}, ${offDesign(aim.bestYield, units)}.`
  const risk = percent(check.input.overshootRisk)
  if (aim.limitedRisk === undefined) {
    return `${best} No depth keeps the chance of too deep a groove down to ${risk}: change what scatters most first.`
  }
  const { tooTight, tooLoose } = aim.limitedRisk.outcomes
  return `${best} To stay within a chance of ${risk} of too deep, stop ${placeOf(aim.limitedRisk, check)}, ${offDesign(aim.limitedRisk, units)}: then ${percent(tooLoose.value)} end too deep, and ${percent(tooTight.value)} are still too tight, which a further cut mends.`
}

/** A groove of a ring is told by its depth; a plain track, and the circle of a plate's groove, by its diameter. */
export function placeOf({ grooveDepth, grooveBottomDiameter }: AimPoint, check: ToleranceCheck['check']): string {
  const { units } = check.input.design
  return grooveDepth > 0 && !isOfPlates(check)
    ? `${figure(grooveDepth, units)} deep`
    : `${figure(grooveBottomDiameter, units)} across`
}

function offDesign({ deeper }: AimPoint, units: Units): string {
  const off = figure(mm(Math.abs(deeper)), units)
  return deeper === 0 ? 'as designed' : `${off} ${deeper > 0 ? 'deeper' : 'shallower'} than designed`
}

function weatherNotes(year: Year | undefined): readonly string[] {
  if (year === undefined) return ['The wood was taken to stay as on the day of making: climate was not given.']
  const alike = year.climate.kind === 'months' ? 'months' : 'moistures between the driest and the dampest'
  return [
    ...guessedWoods(year.woods).map(([species]) => `${capital(memorySentence(species))}.`),
    `The weather: all ${alike} were taken as equally likely, the wood at rest with the air, the first ball anywhere round the grain; a ring moves as a whole, and with it its groove.`,
  ]
}

/** What was left out of the reckoning, as far as that could surprise someone. */
export function notes({ check }: ToleranceCheck): string[] {
  const { contributors, design } = check.input
  const { units, balls } = design
  const missing: string[] = []
  if (contributors.ballDiameter === undefined) {
    const scatter =
      balls.standardDeviation === undefined
        ? ''
        : ` (balls like these scatter by about ${figure(balls.standardDeviation as Mm, units)})`
    missing.push(`All balls were taken as alike: ballDiameter was not given${scatter}.`)
  }
  if (contributors.ballLotMean === undefined && contributors.ballDiameter?.kind !== 'measured') {
    missing.push(
      'The mean of the balls was taken as designed: ballLotMean was not given, and nothing moves the gap more.',
    )
  }
  return [...missing, ...(isOfPlates(check) ? plateNotes(check) : ringNotes(check.input))]
}

const ringNotes = ({ contributors, year }: ToleranceCheck['check']['input']): readonly string[] => [
  ...(contributors.outerGrooveBottomRadius === undefined
    ? ['The outer groove was taken as cut to the last hair: outerGrooveBottomRadius was not given.']
    : []),
  ...weatherNotes(year),
  'The play is that of balls of the mean size: single large balls opposite one another take some of it.',
]

const plateNotes = (check: PlateCheck): readonly string[] => [
  ...(check.input.contributors.grooveCircleRadius === undefined
    ? ['The circles of both grooves were taken as cut to the last hair: grooveCircleRadius was not given.']
    : []),
  'The wood was taken to stay as on the day of making.',
  'The balls were taken to run midway between the circles of both grooves, as plates that carry something hold them; while only the lower one is there, its circle counts alone, and twice as much.',
  ...restNote(riseOnLargest(check), check.input.design.units),
]

const restNote = (rise: Mm, units: Units): readonly string[] =>
  rise > 0
    ? [
        `The space between the plates is that of balls of the mean size: until the wood gives, the upper plate rests on three of the largest, and stands about ${figure(rise, units)} higher.`,
      ]
    : []
