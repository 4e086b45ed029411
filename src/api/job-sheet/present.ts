import { type Design, isCaged, isOfPlates, nameOf } from '#shared/bearing/arrangements.ts'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import type { Units } from '#shared/units/length.ts'
import { shopFigure } from '#shared/units/shop-figure.ts'
import { tagOf } from '#src/api/answer.ts'
import { caution } from '#src/api/caution.ts'
import { show } from '#src/api/length.ts'
import { present } from '#src/api/optional.ts'
import type { Operation, Reading, Size } from '#src/job-sheet/operation.ts'
import { operationsFor } from '#src/job-sheet/operations.ts'
import { sheetTitle } from '#src/words/job-sheet/sheet.ts'
import { type Terms, termsOf } from '#src/words/terms.ts'
import type { JobSheet, Method, SheetOperation } from './schema.ts'

export const USUAL_METHOD: Method = 'saw-and-lathe'

/** The job sheet of a design, in the caller's units. */
export function toJobSheet(design: Design, method: Method): JobSheet {
  const { settled } = design.bearing
  const { units, balls, shopDenominator } = settled.input
  const { count, material = BALL_MATERIAL } = balls
  const [outside, bore] = isOfPlates(design)
    ? [design.bearing.plate.outsideDiameter, design.bearing.plate.boreDiameter]
    : [design.bearing.outerRing.outsideDiameter, design.bearing.innerRing.boreDiameter]
  const arrangement = nameOf(settled.input)
  const head = {
    units,
    title: sheetTitle(arrangement, { count, material, ballDiameter: settled.ballDiameter, outside, bore, units }),
    method,
    use: caution('light-use-only', termsOf(settled.input)).message,
  }
  const operations = operationsFor(design, method)
  const write: Write = (operation, index, part, readings) => ({
    ...toOperation(operation, index + 1, part, termsOf(settled.input), (size) => toSize(size, units, shopDenominator)),
    readings,
  })
  return { ...head, ...toOperations(design, operations, write) }
}

type Write = <Part, Blank>(
  operation: Operation,
  index: number,
  part: Part,
  readings: Blank[],
) => ReturnType<typeof toOperation<Part>> & { readings: Blank[] }

/** What tells the arrangements' operations from one another: the parts that there are, and what a reading is of. */
function toOperations(design: Design, operations: readonly Operation[], write: Write) {
  if (isOfPlates(design)) {
    const blanks = ({ readings }: Operation) => readings.map(({ name, kind, field }) => ({ name, kind, field }))
    return {
      arrangement: 'thrust' as const,
      operations: operations.map((operation, index) =>
        write(operation, index, operation.part === 'balls' ? ('balls' as const) : ('both' as const), blanks(operation)),
      ),
    }
  }
  const blanks = ({ readings }: Operation) => readings.map(toRingReading)
  if (isCaged(design)) {
    return {
      arrangement: 'caged' as const,
      operations: operations.map((operation, index) => write(operation, index, operation.part, blanks(operation))),
    }
  }
  return {
    arrangement: tagOf(design.bearing.settled.input, 'radial', 'roller'),
    operations: operations.map((operation, index) =>
      write(operation, index, partWithoutCage(operation), blanks(operation)),
    ),
  }
}

function partWithoutCage({ part }: Operation) {
  if (part === 'cage') throw new RangeError('part must be one of a full ring, got cage')
  return part
}

/** What the operations of every arrangement have in common. */
const toOperation = <Part>(
  { id, title, tool, how, sizes, check, mistake, cautions }: Operation,
  number: number,
  part: Part,
  terms: Terms,
  written: (size: Size) => SheetOperation['sizes'][number],
) => ({
  number,
  id,
  part,
  title,
  tool,
  how,
  sizes: sizes.map(written),
  check,
  mistake,
  cautions: cautions.map((code) => caution(code, terms)),
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
