import type { Static } from 'typebox'
import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { RingsInput } from '#shared/bearing/resolve.ts'
import type { SourceId } from '#shared/data/sources.ts'
import type { StockedRings } from '#shared/making/blanks.ts'
import type { SettledStock, StockInput } from '#shared/making/input.ts'
import type { SplitRing as CoreSplitRing, ScrewFault } from '#shared/making/split-ring.ts'
import type { RingStock as CoreRingStock, Stock as CoreStock } from '#shared/making/stock.ts'
import { plateStockOf, stockOf } from '#shared/making/stock.ts'
import { FINISHES, type Mandrel } from '#shared/making/work-holding.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { type ShownLength, show } from '#src/api/length.ts'
import { present } from '#src/api/optional.ts'
import { toSource } from '#src/api/source.ts'
import type { StockRequest } from '#src/api/stock-input.ts'
import { toStockRequest } from '#src/api/stock-input.ts'
import type { Warning } from '#src/api/warning.ts'
import { nestingSentence, screwSentence } from '#src/words/stock.ts'
import { termsOf } from '#src/words/terms.ts'
import type { PlateStock, RingStock, SplitRing, Stock } from './stock-schema.ts'

const USED: readonly SourceId[] = [
  'trade',
  'ps-20',
  'nhla',
  'band-saw-manuals',
  'lathe-speed',
  'asme-b18.6.1',
  'asme-b18.6.1-memory',
  'wood-screw-holes',
]

/** What every answer has that can say where its bearing comes from. */
type WithInput = { readonly units: Units; readonly input: { stock?: Static<typeof StockRequest> } }

/** The answer with blanks, boards, screws and work holding, for the caller who asked for them. */
export function withStock<A extends WithInput & { stock?: Stock }>(
  answer: A,
  bearing: StockedRings,
  input: StockInput,
): A {
  const { units } = answer
  const stock = stockOf(bearing, input)
  return { ...withInput(answer, stock.settled), stock: toStock(stock, bearing.settled.input, units) }
}

/** The same of plates. */
export function withPlateStock<A extends WithInput & { stock?: PlateStock }>(
  answer: A,
  bearing: ThrustBearing,
  input: StockInput,
): A {
  const { units } = answer
  const { settled, plates, mandrel } = plateStockOf(bearing, input)
  const stock = present<PlateStock>({
    plates: toRingStock(plates, units),
    mandrel: mandrel && toMandrel(mandrel, units),
    finishes: finishesIn(units),
    sources: USED.map(toSource),
  })
  return { ...withInput(answer, settled), stock }
}

const withInput = <A extends WithInput>(answer: A, settled: SettledStock): A => ({
  ...answer,
  input: { ...answer.input, stock: toStockRequest(settled, answer.units) },
})

function toStock(stock: CoreStock, design: RingsInput, units: Units): Stock {
  const outside = design.outerRing?.outsideDiameter === undefined ? 'wall' : 'outsideDiameter'
  const { nesting, entryHole, split, mandrel, cheeks, cage } = stock
  const size = (length: Mm): ShownLength => show(length, units)
  return present<Stock>({
    outerRing: toRingStock(stock.outerRing, units),
    innerRing: toRingStock(stock.innerRing, units),
    cheeks: cheeks && toRingStock(cheeks, units),
    cage: cage && toRingStock(cage, units),
    nesting: present<Stock['nesting']>({
      nests: nesting.nests,
      coreDiameter: size(nesting.core),
      shortBy: size(nesting.shortBy),
      largestAllowance: nesting.largestAllowance === undefined ? undefined : size(nesting.largestAllowance),
      landGapNeeded: size(nesting.landGapNeeded),
      thicknessNeeded: size(nesting.thicknessNeeded),
      message: nestingSentence(nesting, units, termsOf(design)),
    }),
    entryHole: entryHole && {
      diameter: size(entryHole.diameter),
      fromCentre: size(entryHole.fromCentre),
      cutsInnerBlank: nesting.nests && entryHole.cutsInnerBlank,
    },
    split: split && toSplitRing(split, units),
    mandrel: mandrel && toMandrel(mandrel, units),
    finishes: finishesIn(units),
    warnings: split === undefined ? [] : split.faults.map((fault) => toWarning(fault, outside, units)),
    sources: USED.map(toSource),
  })
}

const toMandrel = ({ bolt, diameter, bush }: Mandrel, units: Units) => ({
  bolt,
  diameter: show(diameter, units),
  bush: show(bush, units),
})

const finishesIn = (units: Units) =>
  FINISHES.map(({ name, least, most }) => ({ name, least: show(least, units), most: show(most, units) }))

function toRingStock(
  { blank, boards, blades, turning, segments }: CoreRingStock,
  units: Units,
): Static<typeof RingStock> {
  const size = (length: Mm): ShownLength => show(length, units)
  return present<Static<typeof RingStock>>({
    finishCircle: size(blank.finishCircle),
    finishHole: size(blank.finishHole),
    roughCircle: size(blank.roughCircle),
    roughHole: blank.roughHole === undefined ? undefined : size(blank.roughHole),
    thickness: size(blank.thickness),
    pieces: blank.pieces,
    boards: boards.map((board) => ({
      ...board,
      dressedThickness: size(board.dressedThickness),
      planing: size(board.planing),
      dressedWidth: size(board.dressedWidth),
      length: size(board.length),
    })),
    bandSawBlades: [...blades],
    turning: { ...turning },
    segments: segments && {
      count: segments.count,
      miter: segments.miter,
      outerEdge: size(segments.outerEdge),
      innerEdge: size(segments.innerEdge),
      stripWidth: size(segments.stripWidth),
      stockLength: size(segments.stockLength),
    },
  })
}

function toSplitRing({ screws, dowels, ...split }: CoreSplitRing, units: Units): Static<typeof SplitRing> {
  const size = (length: Mm): ShownLength => show(length, units)
  return present<Static<typeof SplitRing>>({
    ring: split.ring,
    partingPlane: size(split.partingPlane),
    screwCircle: size(split.screwCircle),
    wall: size(split.wall),
    screws: screws && {
      gauge: screws.gauge,
      count: screws.count,
      length: size(screws.length),
      shankDiameter: size(screws.shankDiameter),
      headDiameter: size(screws.headDiameter),
      besideThread: size(screws.besideThread),
      besideHead: size(screws.besideHead),
      besideHeadTowardsGroove: size(screws.besideHeadTowardsGroove),
      clearanceHole: screws.clearanceHole,
      pilotHole: screws.pilotHole,
      pilotDepth: size(screws.pilotDepth),
      countersinkDepth: size(screws.countersinkDepth),
      spacing: size(screws.spacing),
    },
    dowels: dowels && {
      diameter: size(dowels.diameter),
      length: size(dowels.length),
      depthEachHalf: size(dowels.depthEachHalf),
      besideDowel: size(dowels.besideDowel),
    },
  })
}

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
