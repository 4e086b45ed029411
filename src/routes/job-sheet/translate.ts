import { type AnyDesign, isOfPlates } from '#shared/bearing/any-design.ts'
import type { Units } from '#shared/units/length.ts'
import { shopFigure } from '#shared/units/shop-figure.ts'
import { wordedFor } from '#src/wire/arrangement-words.ts'
import { caution } from '#src/wire/caution.ts'
import { figure } from '#src/wire/figure.ts'
import { show } from '#src/wire/length.ts'
import { present } from '#src/wire/optional.ts'
import type { Operation, Reading, Size } from './operation.ts'
import { operationsFor } from './operations.ts'
import type { JobSheet, Method, SheetOperation } from './schema.ts'

export const USUAL_METHOD: Method = 'saw-and-lathe'

/** Where an operation has its sentences. */
const SENTENCES: ReadonlySet<string> = new Set([
  'title',
  'tool',
  'how',
  'check',
  'looksLike',
  'costs',
  'name',
  'message',
])

/** The job sheet of a design, in the caller's units. */
export function toJobSheet(design: AnyDesign, method: Method): JobSheet {
  const { settled } = design.bearing
  const { units, balls, shopDenominator } = settled.input
  const { count, material = 'wood' } = balls
  const say = (length: typeof settled.ballDiameter): string => figure(length, units)
  const [outside, bore] = isOfPlates(design)
    ? [design.bearing.plate.outsideDiameter, design.bearing.plate.boreDiameter]
    : [design.bearing.outerRing.outsideDiameter, design.bearing.innerRing.boreDiameter]
  const head = {
    units,
    title: `Bearing of ${count} ${material} balls of ${say(settled.ballDiameter)}: ${say(outside)} outside, ${say(bore)} bore`,
    method,
    use: caution('light-use-only').message,
  }
  const operations = operationsFor(design, method)
  const written = (operation: Operation, index: number) => toOperation(operation, index + 1, units, shopDenominator)
  const sheet: JobSheet = isOfPlates(design)
    ? {
        ...head,
        arrangement: 'thrust',
        operations: operations.map((operation, index) => ({
          ...written(operation, index),
          part: operation.part === 'balls' ? 'balls' : 'both',
          readings: operation.readings.map(({ name, kind, field }) => ({ name, kind, field })),
        })),
      }
    : {
        ...head,
        operations: operations.map((operation, index) => ({
          ...written(operation, index),
          readings: operation.readings.map(toRingReading),
        })),
      }
  return wordedFor(settled.input, sheet, SENTENCES)
}

/** What the operations of every arrangement have in common. */
const toOperation = (
  { id, part, title, tool, how, sizes, check, mistake, cautions }: Operation,
  number: number,
  units: Units,
  denominator: number | undefined,
) => ({
  number,
  id,
  part,
  title,
  tool,
  how,
  sizes: sizes.map((size) => toSize(size, units, denominator)),
  check,
  mistake,
  cautions: cautions.map(caution),
})

function toRingReading({ name, at, kind, field }: Reading) {
  if (at === 'plates') throw new RangeError('at must be a ring where there are rings, got plates')
  return { name, ring: at, kind, field }
}

function toSize(
  { symbol, name, value, stopAt }: Size,
  units: Units,
  denominator: number | undefined,
): SheetOperation['sizes'][number] {
  return present<SheetOperation['sizes'][number]>({
    symbol,
    name,
    value: show(value, units),
    shop: shopFigure(value, units, denominator).text,
    stopAt: stopAt === undefined ? undefined : show(stopAt, units),
    stopAtShop: stopAt === undefined ? undefined : shopFigure(stopAt, units, denominator).text,
  })
}
