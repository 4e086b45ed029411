import { mm } from '#shared/units/length.ts'
import { at, type Drawing, type Shape } from '#src/drawings/model.ts'
import { box, line, text } from '#src/drawings/shapes.ts'
import { MOST_CHECKS, missedMarks, type Tally } from '#tests/support/fit-workshop.ts'

/* The simulated workshop as a picture: a row a habit, with how its rings came out on the left and how many checks they took on the right. */

const WIDTH = 190
const ROW = 6.4
const BAR = 3.6
const NAME = { x: 6, height: 2.3 }
const OUTCOMES = { left: 58, right: 118 }
const FIGURES = { x: 121, height: 2.2 }
const CHECKS = { left: 140, right: 184 }
const HEAD = 26
const FOOT = 18
/** Bars of outcomes that are rare still show. */
const HAIR = 0.4
const HATCH = 1

export function workshopPicture(tallies: readonly Tally[], title: string): Drawing {
  const height = HEAD + tallies.length * ROW + FOOT
  const top = height - HEAD
  const atChecks = (checks: number): number => CHECKS.left + (checks / MOST_CHECKS) * (CHECKS.right - CHECKS.left)
  const bottom = top - tallies.length * ROW
  return {
    title,
    description: tallies.map(sentence).join(' '),
    width: mm(WIDTH),
    height: mm(height),
    scale: 1,
    shapes: [
      text(title, at(NAME.x, height - 8), 3.2, 'start'),
      ...legend(height - 15),
      text('checks: median and most', at(CHECKS.left, height - 15), 2.2, 'start'),
      ...[0, 3, 6, 9, 12].flatMap((checks): readonly Shape[] => [
        line('dimension', at(atChecks(checks), bottom), at(atChecks(checks), top)),
        text(String(checks), at(atChecks(checks), bottom - 4), 2, 'middle'),
      ]),
      ...[0, 50, 100].flatMap((share): readonly Shape[] => {
        const x = OUTCOMES.left + (share / 100) * (OUTCOMES.right - OUTCOMES.left)
        return [line('dimension', at(x, bottom), at(x, top)), text(`${share} %`, at(x, bottom - 4), 2, 'middle')]
      }),
      ...tallies.flatMap((tally, index) => row(tally, top - (index + 0.5) * ROW, atChecks)),
      text(
        'Simulated rings of invented makers who follow the advice of fit correction. * a mark is missed',
        at(NAME.x, 5),
        2.2,
        'start',
      ),
    ],
  }
}

const KINDS = ['good', 'not finished', 'too deep'] as const

/** Shares of the rings, from the left. */
const sharesOf = ({ good, tooDeep }: Tally): readonly number[] => [good, Math.max(0, 1 - good - tooDeep), tooDeep]

/** Told apart without colour: empty, hatched, filled. */
function bar(kind: number, left: number, middle: number, right: number): readonly Shape[] {
  const corners = [
    at(left, middle - BAR / 2),
    at(right, middle - BAR / 2),
    at(right, middle + BAR / 2),
    at(left, middle + BAR / 2),
  ]
  const outline: Shape = { role: 'outline', kind: 'polyline', points: corners, closed: true, filled: kind === 2 }
  return kind === 1 ? [...hatchedBar(left, middle, right), outline] : [outline]
}

function hatchedBar(left: number, middle: number, right: number): readonly Shape[] {
  const lines: Shape[] = []
  for (let x = left; x < right; x += HATCH)
    lines.push(
      line(
        'hatch',
        at(x, middle - BAR / 2),
        at(Math.min(right, x + BAR), Math.min(middle + BAR / 2, middle - BAR / 2 + right - x)),
      ),
    )
  return lines
}

const legend = (y: number): readonly Shape[] =>
  KINDS.flatMap((name, index) => {
    const left = OUTCOMES.left + index * 26
    return [...bar(index, left, y + 0.9, left + 4), text(name, at(left + 5.2, y), 2.2, 'start')]
  })

const sentence = ({ habit, good, tooDeep, medianChecks, mostChecks }: Tally): string =>
  `${habit.name}: ${(100 * good).toFixed(1)} % good, ${(100 * tooDeep).toFixed(1)} % too deep, ${medianChecks} checks in the median and ${mostChecks} at most.`

function row(tally: Tally, middle: number, atChecks: (checks: number) => number): readonly Shape[] {
  let from = OUTCOMES.left
  const bars = sharesOf(tally).flatMap((share, index): readonly Shape[] => {
    if (share === 0) return []
    const to = Math.min(OUTCOMES.right, from + Math.max(HAIR, share * (OUTCOMES.right - OUTCOMES.left)))
    const shapes = bar(index, from, middle, to)
    from = to
    return shapes
  })
  const isMet = missedMarks(tally).length === 0
  return [
    text(tally.habit.name, at(NAME.x, middle - 0.9), NAME.height, 'start'),
    ...bars,
    text(
      `${(100 * tally.good).toFixed(1)} %${isMet ? '' : ' *'}`,
      at(FIGURES.x, middle - 0.9),
      FIGURES.height,
      'start',
    ),
    line('outline', at(atChecks(0), middle), at(atChecks(tally.medianChecks), middle)),
    line('hidden', at(atChecks(tally.medianChecks), middle), at(atChecks(tally.mostChecks), middle)),
    box(
      'outline',
      atChecks(tally.medianChecks) - 0.6,
      middle - BAR / 2,
      atChecks(tally.medianChecks) + 0.6,
      middle + BAR / 2,
    ),
    line('outline', at(atChecks(tally.mostChecks), middle - BAR / 3), at(atChecks(tally.mostChecks), middle + BAR / 3)),
  ]
}
