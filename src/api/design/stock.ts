import type { Static } from 'typebox'
import type { Design, ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { SourceId } from '#shared/data/sources.ts'
import { type ResolvedStock, STOCK_DEFAULTS, type StockInput } from '#shared/making/input.ts'
import type { SplitRing as CoreSplitRing, ScrewFault } from '#shared/making/split-ring.ts'
import type { RingStock as CoreRingStock, Stock as CoreStock, StockedRings } from '#shared/making/stock.ts'
import { plateStockOf, stockOf } from '#shared/making/stock.ts'
import { FINISHES } from '#shared/making/work-holding.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { type Assumption, assumptionsIn } from '#src/api/assumption.ts'
import { show } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { present } from '#src/api/optional.ts'
import { shownBy } from '#src/api/schema.ts'
import type { StockRequest } from '#src/api/stock-input.ts'
import { toStockRequest } from '#src/api/stock-input.ts'
import type { Warning } from '#src/api/warning.ts'
import { nestingSentence, screwSentence } from '#src/words/stock.ts'
import { type Terms, termsOf } from '#src/words/terms.ts'
import {
  BoardOption,
  CheekScrews,
  EntryHole,
  MandrelBolt,
  Nesting,
  type PlateStock,
  RingStock,
  SegmentCut,
  SplitDowels,
  SplitRing,
  SplitScrews,
  type Stock,
} from './stock-schema.ts'

const USED: readonly SourceId[] = ['trade', 'ps-20', 'nhla', 'band-saw-manuals', 'lathe-speed']
const OF_SCREWS: readonly SourceId[] = ['asme-b18.6.1', 'asme-b18.6.1-memory', 'wood-screw-holes']

/** What a design's answer says of its stock, and what that adds to its head and foot. */
export interface StockAnswer<S> {
  readonly stock: S
  /** With every default filled in. */
  readonly request: StockRequest
  readonly assumed: Assumption[]
  readonly warnings: Static<typeof Warning>[]
  readonly sources: readonly SourceId[]
}

/** What a design's answer and its job sheet say of the stock that the caller chose; undefined where nothing was asked of it. */
export const stockAnswerOf = ({ bearing }: Design, input: StockInput | undefined) =>
  input && ('plate' in bearing ? plateStockAnswer(bearing, input) : stockAnswer(bearing, input))

/** Blanks, boards, screws and work holding of two rings. */
export function stockAnswer(bearing: StockedRings, input: StockInput): StockAnswer<Stock> {
  const { units } = bearing.resolved.input
  const { resolved, ...stock } = stockOf(bearing, input)
  const screws = stock.split?.screws ?? stock.cheekScrews
  const { faults } = stock.split ?? stock.cheekScrews ?? { faults: [] }
  // The screws that were found are filled in, so that the same are found again.
  const whole = screws === undefined ? resolved : { ...resolved, screws: { count: screws.count, gauge: screws.gauge } }
  const outside = bearing.resolved.input.outerRing?.outsideDiameter === undefined ? 'wall' : 'outsideDiameter'
  return {
    stock: toStock(stock, units, termsOf(bearing.resolved.input)),
    ...filledIn(input, whole, units),
    warnings: faults.map((fault) => toWarning(fault, outside, units)),
    sources: stock.split === undefined ? USED : [...USED, ...OF_SCREWS],
  }
}

/** The same of plates. */
export function plateStockAnswer(bearing: ThrustBearing, input: StockInput): StockAnswer<PlateStock> {
  const { units } = bearing.resolved.input
  const { resolved, plates, mandrel } = plateStockOf(bearing, input)
  const stock = present<PlateStock>({
    plates: toRingStock(plates, units),
    mandrel: mandrel && shownBy(MandrelBolt, mandrel, units),
    finishes: finishesIn(units),
  })
  return { stock, ...filledIn(input, resolved, units), warnings: [], sources: USED }
}

function filledIn(input: StockInput, whole: ResolvedStock, units: Units) {
  const request = toStockRequest(whole, units)
  const defaults = Object.fromEntries(Object.entries(STOCK_DEFAULTS).map(([path, row]) => [`/stock${path}`, row]))
  return { request, assumed: assumptionsIn(input, request, defaults, '/stock') }
}

function toStock(stock: Omit<CoreStock, 'resolved'>, units: Units, terms: Terms): Stock {
  const { nesting, entryHole, split, cheekScrews, mandrel, cheeks, cage } = stock
  return present<Stock>({
    outerRing: toRingStock(stock.outerRing, units),
    innerRing: toRingStock(stock.innerRing, units),
    cheeks: cheeks && toRingStock(cheeks, units),
    cage: cage && toRingStock(cage, units),
    nesting: shownBy(
      Nesting,
      { ...nesting, coreDiameter: nesting.core, message: nestingSentence(nesting, units, terms) },
      units,
    ),
    entryHole:
      entryHole &&
      shownBy(EntryHole, { ...entryHole, cutsInnerBlank: nesting.nests && entryHole.cutsInnerBlank }, units),
    split: split && toSplitRing(split, units),
    cheekScrews: cheekScrews && shownBy(CheekScrews, cheekScrews, units),
    mandrel: mandrel && shownBy(MandrelBolt, mandrel, units),
    finishes: finishesIn(units),
  })
}

const finishesIn = (units: Units) =>
  FINISHES.map(({ name, thickness: { min, max } }) => ({
    name,
    thickness: { min: show(min, units), max: show(max, units) },
  }))

const toRingStock = (
  { blank, boards, blades, turning, segments }: CoreRingStock,
  units: Units,
): Static<typeof RingStock> =>
  shownBy(
    RingStock,
    {
      ...blank,
      boards: boards.map((board) => shownBy(BoardOption, board, units)),
      bandSawBlades: [...blades],
      turning: {
        ...turning,
        speed: { min: showNumber(turning.speed.min), max: showNumber(turning.speed.max) },
        rimSpeed: showNumber(turning.rimSpeed),
      },
      segments: segments && shownBy(SegmentCut, segments, units),
    },
    units,
  )

const toSplitRing = ({ screws, dowels, ...split }: CoreSplitRing, units: Units): Static<typeof SplitRing> =>
  shownBy(
    SplitRing,
    {
      ...split,
      screws: screws && shownBy(SplitScrews, screws, units),
      dowels: dowels && shownBy(SplitDowels, dowels, units),
    },
    units,
  )

/** @param outside how the caller said how large the outer ring is */
function toWarning(fault: ScrewFault, outside: 'wall' | 'outsideDiameter', units: Units): Static<typeof Warning> {
  const message = screwSentence(fault, units)
  const suggest = (path: string, value: Mm | undefined) =>
    value === undefined ? {} : { suggestion: { path, value: show(value, units) } }
  switch (fault.code) {
    case 'wall-too-thin':
      return {
        code: 'wall-too-thin-for-screws',
        severity: 'risk',
        message,
        ...(fault.outside === undefined
          ? { path: '/bore', ...suggest('/bore', fault.bore) }
          : {
              path: `/outerRing/${outside}`,
              ...suggest(`/outerRing/${outside}`, outside === 'wall' ? fault.least : fault.outside),
            }),
      }
    case 'no-screw-length':
      return {
        code: 'no-screw-length',
        severity: 'risk',
        message,
        path: '/width',
        ...suggest('/width', fault.clearing),
      }
    case 'screws-crowd':
      return {
        code: 'screws-crowd',
        severity: 'risk',
        message,
        path: '/stock/screws/count',
        ...(fault.most >= 2 ? { suggestion: { path: '/stock/screws/count', value: fault.most } } : {}),
      }
    default:
      return fault satisfies never
  }
}
