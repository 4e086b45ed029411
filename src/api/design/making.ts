import type { Static } from 'typebox'
import type { Design, DesignInput, ThrustBearing } from '#shared/bearing/arrangements.ts'
import { namesIn, valueAt } from '#shared/bearing/field.ts'
import type { MakingInput, Seasoned } from '#shared/bearing/making-input.ts'
import type { SourceId } from '#shared/data/sources.ts'
import { PLATE_DEFAULTS, SEASON_DEFAULT } from '#shared/making/defaults.ts'
import { gaugeKitOf, plateGaugeKitOf } from '#shared/making/gauge-kit.ts'
import { mountingFaults, mountingOf } from '#shared/making/mounting.ts'
import { plateMountingFaults, plateMountingOf, wholePlatePlan } from '#shared/making/plate-mounting.ts'
import type { Screws as CoreScrews, SplitRing as CoreSplitRing, ScrewFault } from '#shared/making/split-ring.ts'
import type { RingStock as CoreRingStock, Stock as CoreStock, StockedRings } from '#shared/making/stock.ts'
import { plateStockOf, stockOf } from '#shared/making/stock.ts'
import { requestedSize, wholePlan } from '#shared/making/whole-plan.ts'
import { FINISHES } from '#shared/making/work-holding.ts'
import { GOOD_ENOUGH } from '#shared/questions/season/advice.ts'
import { seasonSources } from '#shared/questions/season/season-sources.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { type Assumption, assumptionsIn } from '#src/api/assumption.ts'
import { woodNotes } from '#src/api/climate.ts'
import { show } from '#src/api/length.ts'
import { type MakingRequest, makingDefaults, toMakingRequest, yearIn } from '#src/api/making-input.ts'
import { showNumber } from '#src/api/number.ts'
import { present } from '#src/api/optional.ts'
import { shownBy } from '#src/api/schema.ts'
import type { Warning } from '#src/api/warning.ts'
import { nestingSentence, screwSentence, seasonSentence } from '#src/words/making.ts'
import { type Terms, termsOf } from '#src/words/terms.ts'
import { toGaugeKit, toPlateGaugeKit } from './gauge-kit.ts'
import {
  CheekScrews,
  EntryHole,
  type Making,
  MandrelBolt,
  Nesting,
  type PlateMaking,
  RingStock,
  SplitRing,
} from './making-schema.ts'
import { moistureIn, toMounting, toMountingWarning, toPlateMounting } from './mounting.ts'

const usedOf = ({ lumber, boards }: CoreStock['resolved'], units: Units): readonly SourceId[] => [
  'trade',
  ...(boards === undefined ? ([units === 'mm' ? 'en-1313' : lumber === 'softwood' ? 'ps-20' : 'nhla'] as const) : []),
  'band-saw-manuals',
  'lathe-speed',
]
const screwSources = ({ size }: Pick<CoreScrews, 'size'>): readonly SourceId[] =>
  'gauge' in size ? ['asme-b18.6.1', 'screw-head-angle', 'wood-screw-holes'] : ['gbt-922', 'din-97', 'wood-screw-holes']

/** The making part of a design's answer, and what it adds to the head and the foot. */
export interface MakingAnswer<M> {
  readonly making: M
  /** With every default filled in. */
  readonly request: MakingRequest
  readonly assumed: Assumption[]
  readonly warnings: Static<typeof Warning>[]
  readonly sources: readonly SourceId[]
}

/** The making part of a design's answer and of its job sheet; undefined if it was not requested. */
export const makingAnswerOf = ({ bearing }: Design): MakingAnswer<Making | PlateMaking> | undefined =>
  'plate' in bearing ? plateMakingAnswer(bearing) : makingAnswer(bearing)

/** Blanks, boards, screws and work holding of two rings. */
export function makingAnswer(bearing: StockedRings): MakingAnswer<Making> | undefined {
  const { units, making, seasoned, outerRing } = bearing.resolved.input
  if (making === undefined) return undefined
  const { resolved, ...stock } = stockOf(bearing)
  const screws = stock.split?.screws ?? stock.cheekScrews
  const { faults } = stock.split ?? stock.cheekScrews ?? { faults: [] }
  const mounting = mountingOf(bearing, moistureIn(bearing))
  // What was found is filled in, so that the same is found again.
  const whole = wholePlan(bearing, mounting, stock)
  const outside = outerRing?.outsideDiameter === undefined ? 'wall' : 'outsideDiameter'
  const season = toSeason(bearing.resolved.input as DesignInput)
  return {
    making: present<Making>({
      ...toMaking(stock, units, termsOf(bearing.resolved.input)),
      gauges: toGaugeKit(gaugeKitOf(bearing), units, termsOf(bearing.resolved.input)),
      mounting: toMounting(mounting, units, termsOf(bearing.resolved.input)),
      season: seasonIn(seasoned),
    }),
    ...filledIn(making, whole, bearing.resolved.input as DesignInput),
    warnings: [
      ...season.warnings,
      ...faults.map((fault) => toWarning(fault, outside, units)),
      ...mountingFaults(mounting, bearing).map((fault) => toMountingWarning(fault, units)),
    ],
    sources: [...usedOf(resolved, units), ...(screws === undefined ? [] : screwSources(screws)), ...season.sources],
  }
}

/** The size of screws and their holes, as an answer names them. */
const holesOf = ({ size, name, clearance, pilot }: Pick<CoreScrews, 'size' | 'name' | 'clearance' | 'pilot'>) => ({
  ...requestedSize({ size }),
  size: name,
  clearanceHole: clearance.name,
  pilotHole: pilot.name,
  clearanceDiameter: clearance.diameter,
  pilotDiameter: pilot.diameter,
})

/** The same of plates. */
export function plateMakingAnswer(bearing: ThrustBearing): MakingAnswer<PlateMaking> | undefined {
  const { units, making, seasoned } = bearing.resolved.input
  if (making === undefined) return undefined
  const { resolved, plates, mandrel } = plateStockOf(bearing)
  const mounting = plateMountingOf(bearing, moistureIn(bearing))
  const { screws } = mounting
  const season = toSeason(bearing.resolved.input)
  const answer = present<PlateMaking>({
    plates: toRingStock(plates, units),
    gauges: toPlateGaugeKit(plateGaugeKitOf(bearing), units),
    mounting: toPlateMounting(
      mounting,
      screws && shownBy(CheekScrews, { ...screws, ...holesOf(screws) }, units),
      units,
    ),
    mandrel: mandrel && shownBy(MandrelBolt, mandrel, units),
    finishes: finishesIn(units),
    season: seasonIn(seasoned),
  })
  return {
    making: answer,
    ...filledIn(making, wholePlatePlan(bearing, mounting), bearing.resolved.input, PLATE_DEFAULTS),
    warnings: [
      ...season.warnings,
      ...(screws?.faults ?? []).map((fault) => toWarning(fault, 'wall', units)),
      ...plateMountingFaults(mounting, bearing).map((fault) => toMountingWarning(fault, units)),
    ],
    sources: [...usedOf(resolved, units), ...(screws ? screwSources(screws) : []), ...season.sources],
  }
}

function filledIn(
  stated: MakingInput,
  whole: MakingInput,
  input: SeasonedInput & { readonly units: Units },
  more?: typeof PLATE_DEFAULTS,
) {
  const { units, seasoned } = input
  const request = toMakingRequest(whole, units, input)
  const assumed = assumptionsIn(stated, request, makingDefaults('/making', more), '/making')
  const chosen = (seasoned?.paths ?? []).filter((path) => path.startsWith('/making'))
  return { request, assumed: [...assumed, ...chosen.map((path) => ofTheSeason(path, { making: request }))] }
}

/** A construction that follows from the season. */
function ofTheSeason(path: string, whole: object): Assumption {
  const { reason, standing } = SEASON_DEFAULT
  return { path, value: String(valueAt(whole, namesIn(path))), reason, standing }
}

/** The season's part of the answer, if the plan states a climate. */
const seasonIn = (seasoned: Seasoned | undefined) =>
  seasoned && {
    runsAllYear: seasoned.runsAllYear >= GOOD_ENOUGH,
    probability: {
      goesTogether: showNumber(seasoned.goesTogether),
      runsAllYear: showNumber(seasoned.runsAllYear),
      knocks: showNumber(seasoned.knocks),
    },
    message: seasonSentence(seasoned),
  }

type SeasonedInput = Pick<Design['bearing']['resolved']['input'], 'arrangement' | 'balls' | 'making' | 'seasoned'>

/** The warnings of a season, and what else an answer rests on that a season shaped. */
function toSeason({ arrangement, balls, making, seasoned }: SeasonedInput): {
  readonly warnings: readonly Static<typeof Warning>[]
  readonly sources: readonly SourceId[]
} {
  if (seasoned === undefined) return { warnings: [], sources: [] }
  const advice =
    seasoned.advice === undefined
      ? []
      : [
          {
            code: 'season-asks-for-more',
            severity: seasoned.runsAllYear >= GOOD_ENOUGH ? ('note' as const) : ('risk' as const),
            message: seasoned.advice,
            path: '/making/woods',
          },
        ]
  const warnings = [
    ...advice,
    ...seasoned.openJoints.map(({ part, message }) => ({
      code: 'joints-open',
      severity: 'risk' as const,
      message,
      path: `/making/woods/${part}`,
    })),
  ]
  const year = yearIn(making, { ...(arrangement && { arrangement }), balls })
  if (year === undefined) return { warnings, sources: [] }
  return {
    warnings: [...warnings, ...woodNotes(year.woods, (path) => `/making${path}`)],
    sources: ['derived', ...seasonSources(year.woods, balls.material)],
  }
}

/** Without what follows from the mounting and the season. */
type Bare = Omit<Making, 'gauges' | 'mounting' | 'season'>

function toMaking(stock: Omit<CoreStock, 'resolved'>, units: Units, terms: Terms): Bare {
  const { nesting, entryHole, split, cheekScrews, mandrel, cheeks, cage } = stock
  return present<Bare>({
    outerRing: toRingStock(stock.outerRing, units),
    innerRing: toRingStock(stock.innerRing, units),
    cheeks: cheeks && toRingStock(cheeks, units),
    cage: cage && toRingStock(cage, units),
    nesting:
      nesting &&
      shownBy(
        Nesting,
        { ...nesting, coreDiameter: nesting.core, message: nestingSentence(nesting, units, terms) },
        units,
      ),
    entryHole:
      entryHole &&
      shownBy(EntryHole, { ...entryHole, cutsInnerBlank: nesting?.nests === true && entryHole.cutsInnerBlank }, units),
    split: split && toSplitRing(split, units),
    cheekScrews: cheekScrews && shownBy(CheekScrews, { ...cheekScrews, ...holesOf(cheekScrews) }, units),
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
      boards,
      bandSawBlades: blades,
      turning,
      segments,
    },
    units,
  )

const toSplitRing = ({ screws, dowels, ...split }: CoreSplitRing, units: Units): Static<typeof SplitRing> =>
  shownBy(
    SplitRing,
    {
      ...split,
      screws: screws && { ...screws, ...holesOf(screws) },
      dowels,
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
        path: '/making/screws/count',
        ...(fault.most >= 2 ? { suggestion: { path: '/making/screws/count', value: fault.most } } : {}),
      }
    default:
      return fault satisfies never
  }
}
