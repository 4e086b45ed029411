import { type Design, type DesignInput, isCaged, isOfPlates, nameOf } from '#shared/bearing/arrangements.ts'
import { ALL_SOURCES } from '#shared/data/sources.ts'
import { resolveMaking } from '#shared/making/defaults.ts'
import type { Mm } from '#shared/units/length.ts'
import { shopFigure } from '#shared/units/shop-figure.ts'
import { answer, tagOf } from '#src/api/answer.ts'
import { assumptionsIn } from '#src/api/assumption.ts'
import { caution } from '#src/api/caution.ts'
import { makingAnswerOf } from '#src/api/design/making.ts'
import { toEchoed, toNotes } from '#src/api/design/present.ts'
import { showNumber } from '#src/api/number.ts'
import { shownBy } from '#src/api/schema.ts'
import { PAPER_DEFAULT, paperFor } from '#src/api/sheet-options.ts'
import { sheetMark } from '#src/drawings/sheet-mark.ts'
import type { Operation, Reading, Size } from '#src/job-sheet/operation.ts'
import { operationsFor } from '#src/job-sheet/operations.ts'
import { bearingFacts } from '#src/words/bearing-facts.ts'
import { sheetTitle } from '#src/words/job-sheet/sheet.ts'
import { toolsOf } from '#src/words/job-sheet/tools.ts'
import { jobSheetSummary } from '#src/words/summary.ts'
import { termsOf } from '#src/words/terms.ts'
import { type JobSheet, type JobSheetRequest, JobSize, type SheetOperation } from './schema.ts'

/** The options of a request besides the design. */
type SheetOptions = Pick<JobSheetRequest, 'units' | 'format' | 'form' | 'paper'>

/** The job sheet of a design, in the caller's units. */
export function toJobSheet(design: Design, request: SheetOptions): JobSheet {
  const { input } = design.bearing.resolved
  const { method } = resolveMaking(input.making ?? {}, input.units)
  const operations = operationsFor(design)
  const chosen = makingAnswerOf(design)
  const foot = toNotes(design, chosen)
  const summary = jobSheetSummary(operations.length, method, foot.warnings)
  const head = { ...toHead(design, request, chosen), summary }
  // What tells the arrangements' sheets from one another: the parts that there are, and what a reading is of.
  const body = <Part, Blank>(partOf: (operation: Operation) => Part, toBlank: (reading: Reading) => Blank) => ({
    title: sheetTitle(nameOf(input), bearingFacts(design)),
    ...signedBy(design),
    tools: toolsOf(operations),
    operations: operations.map((operation, index) => ({
      ...toOperation(operation, index + 1, partOf(operation), input),
      readings: operation.readings.map((reading, place) => ({
        ...toBlank(reading),
        number: blanksBefore(operations, index) + place + 1,
      })),
    })),
  })
  if (isOfPlates(design)) return answer({ ...head, arrangement: 'thrust' }, body(partOfPlates, toPlateReading), foot)
  if (isCaged(design))
    return answer(
      { ...head, arrangement: 'caged' },
      body(({ part }) => part, toRingReading),
      foot,
    )
  const arrangement = tagOf(design.bearing.resolved.input, 'radial', 'roller')
  return answer({ ...head, arrangement }, body(partWithoutCage, toRingReading), foot)
}

/** Whose sheet it is. */
function signedBy(design: Design) {
  const { code, name } = sheetMark(design)
  return { code, ...(name !== undefined && { name }) }
}

/** The request with the paper filled in. */
function toHead({ bearing: { resolved } }: Design, request: SheetOptions, making: ReturnType<typeof makingAnswerOf>) {
  const echoed = toEchoed(nameOf(resolved.input), resolved, making)
  const { format, form } = request
  const options = {
    ...(format === undefined ? {} : { format }),
    ...(form === undefined ? {} : { form }),
    paper: paperFor(request),
  }
  return {
    units: echoed.units,
    input: { ...echoed.input, ...options },
    assumed: [...echoed.assumed, ...assumptionsIn(request, options, { '/paper': PAPER_DEFAULT })],
  }
}

/** The blanks of a sheet are counted through. */
const blanksBefore = (operations: readonly Operation[], index: number): number =>
  operations.slice(0, index).reduce((sum, { readings }) => sum + readings.length, 0)

/** Both plates are made alike. */
const partOfPlates = ({ part }: Operation) => (part === 'balls' ? 'balls' : 'both')

function partWithoutCage({ part }: Operation) {
  if (part === 'cage') throw new RangeError('part must be one of a full ring, got cage')
  return part
}

/** The part of an operation that every arrangement shares. */
const toOperation = <Part>(
  { id, title, tool, counted, how, sizes, check, mistake, cautions, speed }: Operation,
  number: number,
  part: Part,
  input: DesignInput,
) => ({
  number,
  id,
  part,
  title,
  tool,
  ...(counted !== undefined && { counted }),
  how,
  sizes: sizes.map((size) => toSize(size, input)),
  check,
  mistake,
  cautions: cautions.map((code) => caution(code, termsOf(input))),
  ...(speed && { speed: { min: showNumber(speed.min), max: showNumber(speed.max) } }),
})

const toPlateReading = ({ name, kind, field }: Reading) => ({ name, kind, field })

function toRingReading({ name, at, kind, field }: Reading) {
  if (at === 'plates') throw new RangeError('at must be a ring where there are rings, got plates')
  return { name, ring: at, kind, field }
}

function toSize(size: Size, { units, shopDenominator }: DesignInput): SheetOperation['sizes'][number] {
  const shop = (length: Mm) => shopFigure(length, units, shopDenominator)
  const { source, ...figures } = size
  const { value, stopAt } = size
  const { text, error } = shop(value)
  const standing = source && ALL_SOURCES[source].standing
  const marks = {
    ...(standing === 'common practice, no source' && { isTrade: true }),
    ...(standing === 'from memory' && { isFromMemory: true }),
  }
  return shownBy(
    JobSize,
    { ...figures, ...marks, shop: text, shopError: error, stopAtShop: stopAt && shop(stopAt).text },
    units,
  )
}
