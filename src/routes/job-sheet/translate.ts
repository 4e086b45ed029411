import { type AnyDesign, isOfPlates } from '#shared/bearing/any-design.ts'
import type { Units } from '#shared/units/length.ts'
import { shopFigure } from '#shared/units/shop-figure.ts'
import { wordedFor } from '#src/wire/arrangement-words.ts'
import { caution } from '#src/wire/caution.ts'
import { figure } from '#src/wire/figure.ts'
import { show } from '#src/wire/length.ts'
import { present } from '#src/wire/optional.ts'
import type { Operation, Size } from './operation.ts'
import { operationsFor } from './operations.ts'
import type { JobOperation, JobSheetResponse, Method } from './schema.ts'

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
export function toJobSheet(design: AnyDesign, method: Method): JobSheetResponse {
  const { settled } = design.bearing
  const { units, balls, shopDenominator } = settled.input
  const { count, material = 'wood' } = balls
  const say = (length: typeof settled.ballDiameter): string => figure(length, units)
  const [outside, bore] = isOfPlates(design)
    ? [design.bearing.plate.outsideDiameter, design.bearing.plate.boreDiameter]
    : [design.bearing.outerRing.outsideDiameter, design.bearing.innerRing.boreDiameter]
  const sheet: JobSheetResponse = {
    units,
    title: `Bearing of ${count} ${material} balls of ${say(settled.ballDiameter)}: ${say(outside)} outside, ${say(bore)} bore`,
    method,
    use: caution('light-use-only').message,
    operations: operationsFor(design, method).map((operation, index) =>
      toOperation(operation, index + 1, units, shopDenominator),
    ),
  }
  return wordedFor(settled.input, sheet, SENTENCES)
}

function toOperation(
  { id, part, title, tool, how, sizes, check, mistake, cautions, readings }: Operation,
  number: number,
  units: Units,
  denominator: number | undefined,
): JobOperation {
  return {
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
    readings: [...readings],
  }
}

function toSize(
  { symbol, name, value, stopAt }: Size,
  units: Units,
  denominator: number | undefined,
): JobOperation['sizes'][number] {
  return present<JobOperation['sizes'][number]>({
    symbol,
    name,
    value: show(value, units),
    shop: shopFigure(value, units, denominator).text,
    stopAt: stopAt === undefined ? undefined : show(stopAt, units),
    stopAtShop: stopAt === undefined ? undefined : shopFigure(stopAt, units, denominator).text,
  })
}
