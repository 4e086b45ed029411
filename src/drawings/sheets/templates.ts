import type { CagedDesign, FullRingDesign, ThrustDesign } from '#shared/bearing/arrangements.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import { cylinderKeys, DIMENSION_SYMBOLS, type DimensionKey } from '#shared/bearing/dimensions.ts'
import type { Allowances } from '#shared/bearing/making-input.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import type { WoodPart } from '#shared/bearing/wood-parts.ts'
import type { Blank } from '#shared/making/blanks.ts'
import type { GluedUp } from '#shared/making/boards.ts'
import { plateMountingOf } from '#shared/making/plate-mounting.ts'
import type { PlateStock, RingStock, Stock } from '#shared/making/stock.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { at, type CutSide, polar, type Shape } from '#src/drawings/model.ts'
import { circle, cross, line, text } from '#src/drawings/shapes.ts'
import { fittedHeight } from '#src/drawings/text-width.ts'
import { BLANK_TITLES, GRAIN, SEGMENT_TITLES, TEMPLATE_LABELS, TEMPLATE_NOTES } from '#src/words/drawing.ts'
import { TRADE_SIGN } from '#src/words/standing.ts'
import { arrowHead, TEXT_HEIGHT } from './annotations.ts'
import { holesRound, holesToDrill, type Placed } from './face.ts'
import type { DrawnRings } from './half-section.ts'
import { labelledItem } from './labelled-item.ts'
import type { Figure, Item, Label } from './pages.ts'
import { segmentItem } from './segment.ts'
import { sizeInWordsFor, tradeSign } from './size-text.ts'

const CENTRE = at(0, 0)
const PUNCH_REACH = 4
const PUNCH_RADIUS = 1
/** Where the code of a template is [degrees]. */
const TOP = 90
/** Where the labels' lines touch their circles, from right to left. */
const FIRST_TIP = -85
const TIPS_APART = 11

/** The size to turn to: what a finish leaves for the lathe. */
export function cutSize({ dimensions }: Pick<DesignOf<unknown>, 'dimensions'>, key: DimensionKey): Mm {
  const row = dimensions.find((dimension) => dimension.key === key)
  if (row === undefined) throw new RangeError(`key must be that of a dimension, got ${key}`)
  return row.cutTo ?? row.value
}

type Ring = {
  readonly role: 'finish' | 'saw' | 'centre'
  readonly diameter: Mm
  readonly words: string
  /** Of what is cut, and not only marked. */
  readonly cut?: CutSide
}

/**
 * The blanks, full size, to be glued or pricked onto the board: what to turn to in full lines, what to saw by in dashed
 * ones with the allowance between them, the centre to punch, the grain, and the holes to drill.
 */
export const templateItems = (design: FullRingDesign, stock: Stock, code: string): readonly Item[] => [
  outerBlank(design, stock, code),
  ...segmentOf(design, stock, 'outerRing', code),
  innerBlank(design, stock, code),
  ...segmentOf(design, stock, 'innerRing', code),
  ...cheekBlanks(design, stock, code),
]

/** The same with a cage. */
export const cagedTemplateItems = (design: CagedDesign, stock: Stock, code: string): readonly Item[] => [
  outerBlank(design, stock, code),
  ...segmentOf(design, stock, 'outerRing', code),
  innerBlank(design, stock, code),
  ...segmentOf(design, stock, 'innerRing', code),
  ...cageBlanks(design, stock, code),
  ...segmentOf(design, stock, 'cage', code),
]

/** One piece of a part that is glued up of segments. */
function segmentOf<Part extends WoodPart>(
  { bearing }: DesignOf<Placed>,
  stock: Partial<Record<Part, RingStock>>,
  part: Part,
  code: string,
): readonly Item[] {
  const segments = stock[part]?.segments
  return segments === undefined
    ? []
    : [segmentItem({ title: SEGMENT_TITLES[part], code }, segments, sizeInWordsFor(bearing))]
}

type RingsDesign = DesignOf<DrawnRings>

/** A circle of the design, as large as it is cut. */
function circleOf(
  design: DesignOf<Placed>,
  key: DimensionKey,
  label: (symbol: string, size: string) => string,
  cut?: CutSide,
): Ring {
  const diameter = cutSize(design, key)
  return {
    role: cut ? 'finish' : 'centre',
    diameter,
    ...(cut && { cut }),
    words: `${label(DIMENSION_SYMBOLS[key], sizeInWordsFor(design.bearing)(diameter))}${tradeSign(key, design.bearing)}`,
  }
}

/** An allowance is common practice where the maker does not say it. */
const allowanceSign = ({ resolved: { input } }: Pick<Placed, 'resolved'>, of: keyof Allowances = 'turning'): string =>
  input.making?.allowances?.[of] === undefined ? ` ${TRADE_SIGN}` : ''

/** Round what is turned, with the allowance for the lathe. */
function sawLine({ roughCircle: diameter }: Blank, { bearing }: DesignOf<Pick<Placed, 'resolved'>>): Ring {
  return {
    role: 'saw',
    cut: 'outside',
    diameter,
    words: `${TEMPLATE_LABELS.saw(sizeInWordsFor(bearing)(diameter))}${allowanceSign(bearing)}`,
  }
}

/** Where on the core the blade enters [degrees]. */
const ENTRY_ANGLE = 35

function outerBlank(design: RingsDesign, stock: Stock, code: string): Item {
  const { outerRing, entryHole, hasCore } = stock
  const say = sizeInWordsFor(design.bearing)
  const { roughHole } = outerRing.blank
  const rings: readonly Ring[] = [
    sawLine(outerRing.blank, design),
    circleOf(design, 'outerRing.outsideDiameter', TEMPLATE_LABELS.turn, 'outside'),
    circleOf(design, cylinderKeys(design.bearing).outer, TEMPLATE_LABELS.open, 'inside'),
    // A core without room for a blade's hole is opened at the lathe.
    ...(roughHole === undefined || !hasCore
      ? []
      : [
          {
            role: 'saw',
            cut: 'inside',
            diameter: roughHole,
            words: `${TEMPLATE_LABELS.core(say(roughHole))}${allowanceSign(design.bearing)}`,
          } as const,
        ]),
  ]
  const entry =
    entryHole && circle('hole', polar(CENTRE, entryHole.fromCentre, ENTRY_ANGLE), entryHole.diameter / 2, 'inside')
  const bladeSign = allowanceSign(design.bearing, 'entryHole')
  const entryLabel = entryHole ? [{ words: `${TEMPLATE_LABELS.bladeHole(say(entryHole.diameter))}${bladeSign}` }] : []
  const joint = jointOf('outerRing', design, stock)
  const notes = [...entryLabel, ...joint.notes, ...thickness(design, outerRing, 'outerRing.width')]
  const holes = [...(entry ? [entry] : []), ...joint.holes]
  const joints = outerRing.segments && { ...outerRing.segments, holes: joint.holeCount }
  return blank({ title: BLANK_TITLES.outer, code }, rings, holes, notes, joints)
}

function innerBlank(design: RingsDesign, stock: Stock, code: string): Item {
  const rings = [
    sawLine(stock.innerRing.blank, design),
    circleOf(design, cylinderKeys(design.bearing).inner, TEMPLATE_LABELS.turn, 'outside'),
    circleOf(design, 'innerRing.boreDiameter', TEMPLATE_LABELS.bore, 'inside'),
  ]
  const joint = jointOf('innerRing', design, stock)
  const notes = [...joint.notes, ...thickness(design, stock.innerRing, 'innerRing.width')]
  const joints = stock.innerRing.segments && { ...stock.innerRing.segments, holes: joint.holeCount }
  return blank({ title: BLANK_TITLES.inner, code }, rings, joint.holes, notes, joints)
}

/** What holds the halves of a ring together, where it comes apart. */
function jointOf(ring: RingName, { bearing }: RingsDesign, { split }: Stock) {
  if (split?.ring !== ring) return { holes: [], holeCount: undefined, notes: [] }
  const say = sizeInWordsFor(bearing)
  const { screws, dowels, screwCircle } = split
  const held = screws
    ? linesOf(TEMPLATE_NOTES.splitScrews(screws, screwCircle, say))
    : dowels
      ? linesOf(TEMPLATE_NOTES.splitDowels(dowels, screwCircle, say))
      : []
  const found = holesToDrill(split)
  return {
    holes: holesRound(found, 'hole'),
    holeCount: found?.count,
    notes: [...held, { words: TEMPLATE_NOTES.splitRing }],
  }
}

/** A pocket's line runs past the blank's edge, so that it can be carried over it with a square. */
const PAST_EDGE = 3

/** The cage from its side: the circles to turn to, and a line for the middle of each pocket. */
function cageBlanks(design: CagedDesign, { cage: stock }: Stock, code: string): readonly Item[] {
  if (stock === undefined) return []
  const { bearing } = design
  const { resolved, cage } = bearing
  const outside = circleOf(design, 'cage.outsideDiameter', TEMPLATE_LABELS.turn, 'outside')
  const bore = circleOf(design, 'cage.boreDiameter', TEMPLATE_LABELS.open, 'inside')
  const saw = sawLine(stock.blank, design)
  const { count } = resolved.input.balls
  const middles = Array.from({ length: count }, (_, i) => {
    const angle = TOP + ((i + 0.5) * 360) / count
    return line('centre', polar(CENTRE, bore.diameter / 2 - PAST_EDGE, angle), polar(CENTRE, saw.diameter / 2, angle))
  })
  const pocketKey = 'cage.pocketDiameter'
  const pocket = `${sizeInWordsFor(bearing)(cutSize(design, pocketKey))}${tradeSign(pocketKey, bearing)}`
  const notes: readonly Label[] = [
    { words: TEMPLATE_LABELS.pockets(count, DIMENSION_SYMBOLS[pocketKey], pocket) },
    ...(cage.pieces === 2 ? linesOf(TEMPLATE_NOTES.splitCage(stock.segments !== undefined)) : []),
    ...thickness(design, stock, 'cage.width'),
  ]
  const joints = stock.segments && { ...stock.segments, holes: count }
  return [blank({ title: BLANK_TITLES.cage, code }, [saw, outside, bore], middles, notes, joints)]
}

/** The two discs that keep rollers in. */
function cheekBlanks(design: FullRingDesign, { cheeks, cheekScrews }: Stock, code: string): readonly Item[] {
  const { bearing } = design
  if (cheeks === undefined) return []
  const outside = circleOf(design, 'cheeks.outsideDiameter', TEMPLATE_LABELS.turn, 'outside')
  const hole = circleOf(design, 'cheeks.holeDiameter', TEMPLATE_LABELS.open, 'inside')
  const rings = [sawLine(cheeks.blank, design), outside, hole]
  const thick = thickness(design, cheeks, 'cheeks.thickness')
  if (cheekScrews === undefined)
    return [blank({ title: BLANK_TITLES.cheek, code }, rings, [], [{ words: TEMPLATE_NOTES.makeTwo }, ...thick])]
  const held = linesOf(TEMPLATE_NOTES.cheekScrews(cheekScrews, sizeInWordsFor(bearing)))
  const holes = holesToDrill(undefined, cheekScrews)
  // Both lie with the grain of the ring, so one template cannot give the screws of each a place between those of the other.
  const between = holes && { ...holes, first: TOP }
  const second = [...held, { words: TEMPLATE_NOTES.cheekHoles }, ...thick]
  return [
    blank({ title: BLANK_TITLES.firstCheek, code }, rings, holesRound(holes, 'hole'), [...held, ...thick]),
    blank(
      { title: BLANK_TITLES.secondCheek, code, turned: 180 / cheekScrews.count },
      rings,
      holesRound(between, 'hole'),
      second,
    ),
  ]
}

/** Of a turntable: the plate, of which two are made alike. */
export function plateItems(design: ThrustDesign, { plates }: PlateStock, code: string): readonly Item[] {
  const rings = [
    sawLine(plates.blank, design),
    circleOf(design, 'plates.outsideDiameter', TEMPLATE_LABELS.turn, 'outside'),
    circleOf(design, 'pitchDiameter', TEMPLATE_LABELS.grooveCircle),
    circleOf(design, 'plates.boreDiameter', TEMPLATE_LABELS.bore, 'inside'),
  ]
  const mounting = design.bearing.resolved.input.making && plateMountingOf(design.bearing)
  const say = sizeInWordsFor(design.bearing)
  const notes = [
    { words: TEMPLATE_NOTES.makeTwo },
    ...(mounting ? [{ words: TEMPLATE_NOTES.upperHole(say(mounting.pin.upperHole)) }] : []),
    ...(mounting?.screws ? linesOf(TEMPLATE_NOTES.plateScrews(mounting.screws, say)) : []),
    ...thickness(design, plates, 'plates.thickness'),
  ]
  const holes = holesToDrill(undefined, mounting?.screws)
  const joints = plates.segments && { ...plates.segments, holes: holes?.count }
  return [
    blank({ title: BLANK_TITLES.plate, code }, rings, holesRound(holes, 'hole'), notes, joints),
    ...segmentOf(design, { plates }, 'plates', code),
  ]
}

const linesOf = (lines: readonly string[]): readonly Label[] => lines.map((words) => ({ words }))

/** What the blank is cut from, and how thick what is made of it becomes. */
function thickness(design: DesignOf<Placed>, { blank, segments }: RingStock, key: DimensionKey): readonly Label[] {
  // Cheeks and plates are two, but each of them has a size of its own.
  const of = blank.pieces === 2 && key.endsWith('.width') ? 'thicknessOfBoth' : 'thickness'
  const say = sizeInWordsFor(design.bearing)
  const glued = segments && TEMPLATE_NOTES.segments(segments, say)
  const areHalves = of === 'thicknessOfBoth'
  const [rough, faced] = [say(blank.thickness), say(cutSize(design, key))]
  const sign = tradeSign(key, design.bearing)
  const alike = areHalves ? TEMPLATE_LABELS.thicknessOfHalves(rough, faced) : TEMPLATE_LABELS.thicknessAsIs(faced)
  const apart = [TEMPLATE_LABELS.blankThickness(blank.pieces, rough), `${TEMPLATE_LABELS[of](faced)}${sign}`]
  const isLeftAsItIs = say(mm(blank.thickness * (areHalves ? 2 : 1))) === faced
  return [
    ...(glued === undefined ? [] : [{ words: glued }, { words: TEMPLATE_NOTES.joints }]),
    ...(isLeftAsItIs ? [`${alike}${sign}`] : apart).map((words) => ({ words })),
  ]
}

/** The code stands at the top, or turned from there by so many degrees, clear of holes. */
type Named = { readonly title: string; readonly code: string; readonly turned?: number }

function blank(
  { title, code, turned = 0 }: Named,
  rings: readonly Ring[],
  holes: readonly Shape[],
  notes: readonly Label[],
  glued?: Joints,
): Item {
  const radius = Math.max(...rings.map(({ diameter }) => diameter)) / 2
  const wide = glued === undefined ? Math.max(radius, GRAIN_REACH) : radius
  const labels = rings.map(({ words, diameter }, index) => ({
    words,
    tip: polar(CENTRE, diameter / 2, FIRST_TIP - index * TIPS_APART),
  }))
  const figure: Figure = {
    shapes: [
      ...rings.map(({ role, diameter, cut }) => circle(role, CENTRE, diameter / 2, cut)),
      ...holes,
      ...(glued === undefined ? grain(radius) : joints(glued, radius)),
      ...codeAndCentre(code, [...rings, ...roundCentre(holes)], {
        count: Math.max(glued?.count ?? 0, holes.filter(({ kind }) => kind === 'line').length),
        turned: glued === undefined ? turned : clearOfHoles(glued),
      }),
    ],
    left: -wide,
    right: wide,
    bottom: -radius,
    top: radius + 6,
  }
  return labelledItem(title, figure, [...labels, ...notes])
}

/** Spokes evenly round a blank, from half a step beside the top on: joints, or the middles of pockets. */
type Spokes = { readonly count: number; readonly turned: number }

/**
 * The code on the wood that stays, where it is widest between the circles: there it is still read when the paper is cut away. And
 * the centre, to prick through and to punch, clear of it.
 */
function codeAndCentre(
  code: string,
  rings: readonly Pick<Ring, 'role' | 'diameter'>[],
  { count, turned }: Spokes,
): readonly Shape[] {
  const radii = rings.flatMap(({ role, diameter }) => (role === 'saw' ? [] : [diameter / 2])).toSorted((a, b) => a - b)
  const walls = radii.slice(1).map((outside, index) => [itemAt(radii, index), outside] as const)
  const [inside, outside] = itemAt(
    walls.toSorted(([a, b], [c, d]) => d - c - (b - a)),
    0,
  )
  const most = Math.min(TEXT_HEIGHT, (outside - inside) / 3)
  const middle = (inside + outside) / 2
  const base = middle - most / 2
  const beside = count > 2 ? 2 * base * Math.tan(Math.PI / count) - most : Number.POSITIVE_INFINITY
  const room = Math.min(Math.sqrt(outside * outside - middle * middle), Math.max(beside, most))
  const reach = Math.min(PUNCH_REACH, 0.9 * base)
  return [
    circle('layout', CENTRE, Math.min(PUNCH_RADIUS, reach / 2)),
    ...cross('layout', CENTRE, reach),
    text(code, polar(CENTRE, base, TOP + turned), fittedHeight(code, most, room), 'middle', {
      role: 'mark',
      ...(turned !== 0 && { turned }),
    }),
  ]
}

/** The circle that holes stand on. */
const roundCentre = (holes: readonly Shape[]) =>
  holes.flatMap((shape) =>
    shape.kind === 'circle' && shape.role === 'centre' ? [{ role: shape.role, diameter: mm(2 * shape.radius) }] : [],
  )

/** Half of an arrow along the grain. */
const GRAIN_REACH = 14

/** Above the blank, along the board. */
function grain(radius: number): readonly Shape[] {
  const [y, reach] = [radius + 3, GRAIN_REACH]
  return [
    line('dimension', at(-reach, y), at(reach, y)),
    arrowHead(at(-reach, y), 180),
    arrowHead(at(reach, y), 0),
    text(GRAIN, at(reach + 2, y - TEXT_HEIGHT / 2), TEXT_HEIGHT, 'start'),
  ]
}

/** A ring of segments, and how many holes or pockets stand evenly round it, where there are any. */
type Joints = GluedUp & { readonly holes: number | undefined }

/**
 * Holes begin half a step from the top, and so do joints: a hole lies on a joint where both go into their least common multiple
 * an odd number of times. Turned by half a step of that, joints are as far from holes as they can be [degrees].
 */
function clearOfHoles({ count, holes }: Joints): number {
  if (holes === undefined) return 0
  const all = leastCommonMultiple(count, holes)
  return (all / count) % 2 === 1 && (all / holes) % 2 === 1 ? 180 / all : 0
}

function leastCommonMultiple(a: number, b: number): number {
  let all = a
  while (all % b !== 0) all += a
  return all
}

/** Where segments meet, to be laid over the joints of the wood: half a segment from the code, and clear of holes. */
function joints(glued: Joints, radius: number): readonly Shape[] {
  const { count, innerEdge } = glued
  const corner = innerEdge / 2 / Math.sin(Math.PI / count)
  return Array.from({ length: count }, (_, i) => {
    const angle = TOP + clearOfHoles(glued) + ((i + 0.5) * 360) / count
    return line('layout', polar(CENTRE, corner, angle), polar(CENTRE, radius, angle))
  })
}
