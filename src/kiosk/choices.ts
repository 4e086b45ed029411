import type { RadialInput } from '#shared/bearing/arrangements.ts'
import { LENGTH } from '#shared/bearing/field.ts'
import { BALL_MATERIALS, ENGAGEMENT, MOST_BALLS } from '#shared/bearing/fields.ts'
import { FEWEST_BALLS } from '#shared/geometry/ring-of-balls.ts'
import { inUnits, type Mm, type Units } from '#shared/units/length.ts'
import { parseLength } from '#shared/units/parse-length.ts'
import { shopFigure } from '#shared/units/shop-figure.ts'
import { FAULTS } from '#src/words/kiosk.ts'
import { chosen, field } from './elements.ts'

/** What a maker chose, as the core takes it and as the service does. */
export interface Choices {
  readonly input: RadialInput
  readonly request: object
}

/** What cannot be read, by the name of its field. */
export type Faults = ReadonlyMap<string, string>

/** Balls that shops have. Common practice, no source. */
export const BALL_SIZES: Readonly<Record<Units, readonly string[]>> = {
  in: ['3/8', '1/2', '5/8', '3/4', '1'],
  mm: ['10', '12', '14', '16', '20'],
}

export const unitsOf = (form: HTMLFormElement): Units => (chosen(form, 'units') === 'in' ? 'in' : 'mm')

/** A length as it is typed, or what is wrong with it. */
export function readLength(text: string, units: Units): Mm | string {
  const read = parseLength(text, units)
  if (!read.ok) return FAULTS.length
  const converted = inUnits(read.value, units)
  return converted >= LENGTH.min && converted <= LENGTH.max
    ? read.value
    : FAULTS.lengthBounds(LENGTH.min, LENGTH.max, units)
}

/** Reads the form; where something cannot be read there are no choices, and all faults at once. */
export function choicesOf(form: HTMLFormElement): { readonly choices?: Choices; readonly faults: Faults } {
  const units = unitsOf(form)
  const faults = new Map<string, string>()
  const length = (name: string): Mm | undefined => {
    const read = readLength(field(form, name).value, units)
    if (typeof read === 'number') return read
    faults.set(name, read)
    return undefined
  }
  const diameter = length('diameter')
  const bore = length('bore')
  const count = Number(field(form, 'count').value)
  if (!(Number.isInteger(count) && count >= FEWEST_BALLS && count <= MOST_BALLS)) {
    faults.set('count', FAULTS.countBounds(FEWEST_BALLS, MOST_BALLS))
  }
  if (diameter === undefined || bore === undefined || faults.size > 0) return { faults }
  const material = BALL_MATERIALS.find((name) => name === chosen(form, 'material')) ?? 'wood'
  const outer = { engagement: engagementOf(form, 'outer') }
  const inner = { engagement: engagementOf(form, 'inner') }
  return {
    choices: {
      input: { units, balls: { count, diameter, material }, bore, outerRing: outer, innerRing: inner },
      request: {
        units,
        balls: { count, diameter: inUnits(diameter, units), material },
        bore: inUnits(bore, units),
        outerRing: outer,
        innerRing: inner,
      },
    },
    faults,
  }
}

/** The sliders go in hundredths of a ball. */
const engagementOf = (form: HTMLFormElement, name: string): number =>
  Math.min(Math.max(Number(field(form, name).value) / 100, ENGAGEMENT.min), ENGAGEMENT.max)

/** The same sizes in the other units, as near as a rule shows them. */
export function changeUnits(form: HTMLFormElement, from: Units, to: Units): void {
  for (const name of ['diameter', 'bore']) {
    const input = field(form, name)
    const read = readLength(input.value, from)
    if (typeof read === 'number') input.value = shopFigure(read, to).text.replace(` ${to}`, '')
  }
}
