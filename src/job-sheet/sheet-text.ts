import { lengthOf, type Units } from '#shared/units/length.ts'
import type { JobSheet, SheetOperation } from '#src/api/job-sheet/schema.ts'
import { BY_MEASURING } from '#src/words/by-caliper.ts'
import { cautionName } from '#src/words/caution.ts'
import { caliperFigure, capitalised, errorFigure } from '#src/words/figure.ts'
import { cautionAgain, cautionFirst, onTheRule, SHEET, shortSpeed } from '#src/words/job-sheet/sheet.ts'
import { isMeasuredInPlace } from '#src/words/job-sheet/sizes.ts'
import { MEMORY_SIGN, TRADE_SIGN } from '#src/words/standing.ts'

/* The words of an operation that are the same on paper and on a screen. */

type SheetSize = SheetOperation['sizes'][number]

/** The cautions of one operation: whole where they come for the first time, and by their names after that. */
export function cautionsAt({ operations }: Pick<JobSheet, 'operations'>, index: number): readonly string[] {
  const before = new Set(operations.slice(0, index).flatMap(({ cautions }) => cautions.map(({ code }) => code)))
  const here = operations[index]?.cautions ?? []
  const again = here.filter(({ code }) => before.has(code)).map(({ code }) => cautionName(code))
  return [
    ...here
      .filter(({ code }) => !before.has(code))
      .map(({ code, message }) => cautionFirst(cautionName(code), message)),
    ...(again.length === 0 ? [] : [cautionAgain(again)]),
  ]
}

/** What the design warns of that may cost the bearing. */
export const gravely = ({ warnings }: Pick<JobSheet, 'warnings'>): readonly string[] => [
  ...new Set(warnings.filter(({ severity }) => severity !== 'note').map(({ message }) => capitalised(message))),
]

/** All of them, once each, but for the use, which stands over every sheet. */
export function allCautions({ operations }: Pick<JobSheet, 'operations'>): readonly string[] {
  const all = new Map(
    operations.flatMap(({ cautions }) => cautions.map(({ code, message }) => [code, message] as const)),
  )
  all.delete('light-use-only')
  return Array.from(all, ([code, message]) => cautionFirst(cautionName(code), message))
}

const caliper = (value: number, units: Units): string => caliperFigure(lengthOf(value, units), units)

/** The size to set a caliper to, how far off it may be, and the sign of what the trade makes so. */
function exact({ value, tolerance, isTrade, isFromMemory }: SheetSize, units: Units): string {
  const size = caliper(value, units)
  const within = tolerance === undefined ? size : `${size.replace(` ${units}`, '')} ± ${caliper(tolerance, units)}`
  const sign = isTrade === true ? ` ${TRADE_SIGN}` : isFromMemory === true ? ` ${MEMORY_SIGN}` : ''
  return `${within}${sign}`
}

/** Symbol, name, the size to set a caliper to, the figure of the rule with its error where a rule will do, and where to stop. */
export function sizeCells(size: SheetSize, units: Units): readonly string[] {
  const { symbol = '', name, shop, shopError = 0, byCaliper, stopAt } = size
  const rule =
    byCaliper === true
      ? isMeasuredInPlace(name)
        ? BY_MEASURING
        : SHEET.byCaliper
      : onTheRule(shop, errorFigure(lengthOf(shopError, units), units))
  return [symbol, name, exact(size, units), rule, stopAt === undefined ? '' : caliper(stopAt, units)]
}

/** What the short sheet says of an operation: its sizes, and the speed where it is another than before; of one without sizes, how it goes. */
export function shortFacts(
  { operations, units }: Pick<JobSheet, 'operations' | 'units'>,
  { sizes, speed, how }: SheetOperation,
  index: number,
): readonly string[] {
  if (sizes.length === 0) return [how.replace(/\.$/, '')]
  const before = operations.slice(0, index).findLast((operation) => operation.speed !== undefined)?.speed
  const isNew = speed !== undefined && (speed.min !== before?.min || speed.max !== before.max)
  return [...sizes.map((size) => sizeWords(size, units)), ...(isNew ? [shortSpeed(speed)] : [])]
}

/** A size in a line of text. */
function sizeWords(size: SheetSize, units: Units): string {
  const { symbol, name, stopAt } = size
  const called = symbol === undefined ? name : `${name} ${symbol}`
  const stop = stopAt === undefined ? '' : `, ${SHEET.stopAt} ${caliper(stopAt, units)}`
  return `${called} ${exact(size, units)}${stop}`
}
