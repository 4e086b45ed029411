import { ARRANGEMENTS, type RadialBearing } from '#shared/bearing/arrangements.ts'
import { type DesignOf, designOf } from '#shared/bearing/design.ts'
import type { DimensionKey } from '#shared/bearing/dimensions.ts'
import type { Units } from '#shared/units/length.ts'
import { roundedIn } from '#shared/units/rounded.ts'
import { dimensionName } from '#src/words/dimension-names.ts'
import { STANDING } from '#src/words/kiosk.ts'
import { refusalSentence } from '#src/words/refusal.ts'
import { TERMS } from '#src/words/terms.ts'
import { warningSentence } from '#src/words/warning.ts'
import type { Choices } from './choices.ts'
import { element, fillList, made } from './elements.ts'
import { showPicture } from './picture.ts'
import { ask, type Json, listOf, messagesOf, numberOf, part, textOf } from './service.ts'

/** What is cut, in the order in which it is: all that a screen has room for. */
const SHOWN: readonly DimensionKey[] = [
  'outerRing.outsideDiameter',
  'outerRing.landDiameter',
  'outerRing.grooveBottomDiameter',
  'outerRing.grooveDepth',
  'outerRing.grooveRadius',
  'innerRing.boreDiameter',
  'innerRing.landDiameter',
  'innerRing.grooveBottomDiameter',
  'innerRing.grooveDepth',
  'outerRing.width',
  'gauge.goDiameter',
  'gauge.noGoDiameter',
  'ballGap',
  'radialInternalClearance',
]

/** A line of the table: a size by its name, as the rule shows it, and as a number. */
interface Line {
  readonly name: string
  readonly shop: string
  readonly value: number
}

/** Decimals of an exact figure: what a caliper reads, and one more. */
const DECIMALS: Readonly<Record<Units, number>> = { in: 4, mm: 2 }

/** The two answers are the same numbers, written and read once more. */
const SAME_WITHIN = 1e-9

/** What the page itself works out, at once. */
export function showHere({ input }: Choices): readonly Line[] {
  const { units } = input
  const result = designOf(ARRANGEMENTS.radial, input)
  if (!result.ok) {
    fillList(
      element('refusals', HTMLUListElement),
      result.error.map((refusal) => refusalSentence(refusal, units, TERMS.radial)),
    )
    for (const id of ['warnings', 'cautions']) fillList(element(id, HTMLUListElement), [])
    showPicture(undefined)
    fillTable([], units)
    return []
  }
  const { warnings } = result.value
  fillList(element('refusals', HTMLUListElement), [])
  fillList(
    element('warnings', HTMLUListElement),
    warnings.map(({ facts }) => warningSentence(facts, units, TERMS.radial)),
  )
  showPicture(result.value)
  const lines = linesOf(result.value)
  fillTable(lines, units)
  return lines
}

/** What the service works out of the same: its answer counts. */
export async function showService(
  { input, request }: Choices,
  here: readonly Line[],
  signal: AbortSignal,
): Promise<void> {
  const reply = await ask('/v1/design', request, signal)
  if (reply.kind === 'unreached') {
    stand(STANDING.unreached)
  } else if (reply.kind === 'problem') {
    fillList(element('refusals', HTMLUListElement), reply.messages)
    stand(here.length === 0 ? '' : STANDING.refused)
  } else {
    const there = linesFrom(reply.body)
    fillTable(there, input.units)
    fillList(element('warnings', HTMLUListElement), messagesOf(reply.body['warnings']))
    fillList(element('cautions', HTMLUListElement), messagesOf(reply.body['cautions']))
    stand(areSame(here, there) ? '' : STANDING.different)
  }
}

/** Whether the service is still to answer: its figures may yet replace those of the page. */
export function setBusy(isBusy: boolean): void {
  element('result', HTMLDivElement).setAttribute('aria-busy', String(isBusy))
}

export function stand(sentence: string): void {
  element('standing', HTMLParagraphElement).textContent = sentence
}

function linesOf({ bearing, dimensions }: DesignOf<RadialBearing>): readonly Line[] {
  const { units } = bearing.resolved.input
  return SHOWN.flatMap((key) =>
    dimensions
      .filter((row) => row.key === key)
      .map((row) => ({
        name: dimensionName(key, TERMS.radial),
        shop: (row.cutToShop ?? row.shop).text,
        value: roundedIn(row.cutTo ?? row.value, units),
      })),
  )
}

function linesFrom(answer: Json): readonly Line[] {
  const rows = listOf(answer['dimensions']).map(part)
  return SHOWN.flatMap((key) =>
    rows
      .filter((row) => row['key'] === key)
      .map((row) => ({
        name: dimensionName(key, TERMS.radial),
        shop: textOf(row['cutToShop'] ?? row['shop']),
        value: numberOf(row['cutTo'] ?? row['value']),
      })),
  )
}

const areSame = (one: readonly Line[], other: readonly Line[]): boolean =>
  one.length === other.length &&
  one.every(({ name, value }, index) => {
    const there = other[index]
    return there?.name === name && Math.abs(there.value - value) <= SAME_WITHIN * Math.abs(value)
  })

function fillTable(lines: readonly Line[], units: Units): void {
  const table = element('sizes-to-cut', HTMLTableElement)
  table.hidden = lines.length === 0
  table.tBodies[0]?.replaceChildren(
    ...lines.map(({ name, shop, value }) => {
      const row = made('tr')
      const heading = made('th', name)
      heading.scope = 'row'
      row.append(heading, made('td', shop), made('td', `${value.toFixed(DECIMALS[units])} ${units}`))
      return row
    }),
  )
}
