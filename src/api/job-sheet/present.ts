import { type Design, isCaged, isOfPlates, nameOf } from '#shared/bearing/arrangements.ts'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import type { Method } from '#shared/making/method.ts'
import type { Units } from '#shared/units/length.ts'
import { shopFigure } from '#shared/units/shop-figure.ts'
import { answer, tagOf } from '#src/api/answer.ts'
import { assumptionsIn } from '#src/api/assumption.ts'
import { caution } from '#src/api/caution.ts'
import { toAsked, toNotes } from '#src/api/design/present.ts'
import { show } from '#src/api/length.ts'
import { present } from '#src/api/optional.ts'
import { PAPER_DEFAULT, paperFor } from '#src/api/sheet-options.ts'
import type { Operation, Reading, Size } from '#src/job-sheet/operation.ts'
import { operationsFor } from '#src/job-sheet/operations.ts'
import { sheetTitle } from '#src/words/job-sheet/sheet.ts'
import { jobSheetSummary } from '#src/words/summary.ts'
import { type Terms, termsOf } from '#src/words/terms.ts'
import { type JobSheet, type JobSheetRequest, METHOD_DEFAULT, type SheetOperation, USUAL_METHOD } from './schema.ts'

/** What a request says beside the design. */
type SheetOptions = Pick<JobSheetRequest, 'units' | 'method' | 'format' | 'paper'>

/** The job sheet of a design, in the caller's units. */
export function toJobSheet(design: Design, request: SheetOptions): JobSheet {
  const { settled } = design.bearing
  const { units, shopDenominator } = settled.input
  const method = request.method ?? USUAL_METHOD
  const operations = operationsFor(design, method)
  const write: Write = (operation, index, part, readings) => ({
    ...toOperation(operation, index + 1, part, termsOf(settled.input), (size) => toSize(size, units, shopDenominator)),
    readings,
  })
  const head = { ...toHead(design, request, method), summary: jobSheetSummary(operations.length, method) }
  return toSheet(design, operations, write, head)
}

/** What was asked, with the machines and the paper filled in. */
function toHead({ bearing: { settled } }: Design, request: SheetOptions, method: Method) {
  const asked = toAsked(nameOf(settled.input), settled)
  const { format } = request
  const options = { method, ...(format === undefined ? {} : { format }), paper: paperFor(request) }
  return {
    units: asked.units,
    input: { ...asked.input, ...options },
    assumed: [
      ...asked.assumed,
      ...assumptionsIn(request, options, { '/method': METHOD_DEFAULT, '/paper': PAPER_DEFAULT }),
    ],
  }
}

function titleOf(design: Design): string {
  const { settled } = design.bearing
  const { units, balls } = settled.input
  const { count, material = BALL_MATERIAL } = balls
  const [outside, bore] = isOfPlates(design)
    ? [design.bearing.plate.outsideDiameter, design.bearing.plate.boreDiameter]
    : [design.bearing.outerRing.outsideDiameter, design.bearing.innerRing.boreDiameter]
  const { ballDiameter } = settled
  return sheetTitle(nameOf(settled.input), { count, material, ballDiameter, outside, bore, units })
}

type Write = <Part, Blank>(
  operation: Operation,
  index: number,
  part: Part,
  readings: Blank[],
) => ReturnType<typeof toOperation<Part>> & { readings: Blank[] }

/** What tells the arrangements' sheets from one another: the parts that there are, and what a reading is of. */
function toSheet(
  design: Design,
  operations: readonly Operation[],
  write: Write,
  head: ReturnType<typeof toHead> & { readonly summary: string },
): JobSheet {
  const title = titleOf(design)
  const foot = toNotes(design)
  if (isOfPlates(design)) {
    const blanks = ({ readings }: Operation) => readings.map(({ name, kind, field }) => ({ name, kind, field }))
    const written = operations.map((operation, index) =>
      write(operation, index, operation.part === 'balls' ? ('balls' as const) : ('both' as const), blanks(operation)),
    )
    return answer({ ...head, arrangement: 'thrust' }, { title, operations: written }, foot)
  }
  const blanks = ({ readings }: Operation) => readings.map(toRingReading)
  if (isCaged(design)) {
    const written = operations.map((operation, index) => write(operation, index, operation.part, blanks(operation)))
    return answer({ ...head, arrangement: 'caged' }, { title, operations: written }, foot)
  }
  const arrangement = tagOf(design.bearing.settled.input, 'radial', 'roller')
  const written = operations.map((operation, index) =>
    write(operation, index, partWithoutCage(operation), blanks(operation)),
  )
  return answer({ ...head, arrangement }, { title, operations: written }, foot)
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
