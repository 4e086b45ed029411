import type { CagedDesign, FullRingDesign, ThrustDesign } from '#shared/bearing/arrangements.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import { cylinderKeys, DIMENSION_SYMBOLS, type DimensionKey } from '#shared/bearing/dimensions.ts'
import { cheekScrewsOf, entryHoleDiameter, sawAllowance, splitScrewsOf } from '#shared/making/cutting-allowances.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { at, polar, type Shape } from '#src/drawings/model.ts'
import { circle, line, text } from '#src/drawings/shapes.ts'
import { BLANK_TITLES, GRAIN, TEMPLATE_LABELS, TEMPLATE_NOTES } from '#src/words/drawing.ts'
import { arrowHead, TEXT_HEIGHT } from './annotations.ts'
import { ballAngles, type Placed, screwHoles } from './face.ts'
import type { DrawnRings } from './half-section.ts'
import { type Figure, type Label, labelledItem } from './labelled-item.ts'
import type { Item } from './pages.ts'
import { type SizeText, sizeTextFor } from './size-text.ts'

const CENTRE = at(0, 0)
const PUNCH_REACH = 4
const PUNCH_RADIUS = 1
/** Where the labels' lines touch their circles, from right to left. */
const FIRST_TIP = -85
const TIPS_APART = 11

/** The size to turn to: what a finish leaves for the lathe. */
export function cutSize({ dimensions }: Pick<FullRingDesign, 'dimensions'>, key: DimensionKey): Mm {
  const row = dimensions.find((dimension) => dimension.key === key)
  if (row === undefined) throw new RangeError(`key must be that of a dimension, got ${key}`)
  return row.cutTo ?? row.value
}

type Ring = { readonly role: 'finish' | 'saw' | 'hole' | 'centre'; readonly diameter: number; readonly words: string }

/**
 * The blanks, full size, to be glued or pricked onto the board: what to turn to in full lines, what to saw by in dashed
 * ones with the allowance between them, the centre to punch, the grain, and the holes to drill.
 */
export const templateItems = (design: FullRingDesign): readonly Item[] => [
  outerBlank(design),
  innerBlank(design),
  ...cheekBlanks(design),
]

/** The same with a cage. */
export const cagedTemplateItems = (design: CagedDesign): readonly Item[] => [
  outerBlank(design),
  innerBlank(design),
  cageBlank(design),
]

type RingsDesign = DesignOf<DrawnRings>

/** Round what is turned, with the allowance for the lathe. */
function sawLine(outside: Mm, { bearing }: DesignOf<Pick<Placed, 'settled'>>): Ring {
  const diameter = mm(outside + 2 * sawAllowance(bearing.settled.input.units))
  return { role: 'saw', diameter, words: TEMPLATE_LABELS.saw(sizeTextFor(bearing)(diameter)) }
}

function outerBlank(design: RingsDesign): Item {
  const { units } = design.bearing.settled.input
  const say = sizeTextFor(design.bearing)
  const allowance = sawAllowance(units)
  const outside = cutSize(design, 'outerRing.outsideDiameter')
  const key = cylinderKeys(design.bearing).outer
  const hole = cutSize(design, key)
  const core = hole - 2 * allowance
  const entry = entryHoleDiameter(units)
  // The blade enters inside of the core's line, a hand's breadth of nothing away from it, and clear of the centre.
  const hasCore = core > 2 * (entry + PUNCH_REACH)
  const entryCentre = polar(CENTRE, core / 2 - entry / 2 - 1, 35)
  const rings: readonly Ring[] = [
    sawLine(outside, design),
    {
      role: 'finish',
      diameter: outside,
      words: TEMPLATE_LABELS.turn(DIMENSION_SYMBOLS['outerRing.outsideDiameter'], say(outside)),
    },
    { role: 'finish', diameter: hole, words: TEMPLATE_LABELS.open(DIMENSION_SYMBOLS[key], say(hole)) },
    ...(hasCore ? [{ role: 'saw', diameter: core, words: TEMPLATE_LABELS.core(say(mm(core))) } as const] : []),
  ]
  const holes = hasCore ? [circle('hole', entryCentre, entry / 2)] : []
  const entryLabel = hasCore ? [{ words: TEMPLATE_LABELS.bladeHole(say(entry)) }] : []
  return blank(BLANK_TITLES.outer, rings, holes, [...entryLabel, thickness(design, say, 'outerRing.width')])
}

function innerBlank(design: RingsDesign): Item {
  const { bearing } = design
  const say = sizeTextFor(bearing)
  const key = cylinderKeys(bearing).inner
  const outside = cutSize(design, key)
  const bore = cutSize(design, 'innerRing.boreDiameter')
  const screws = splitScrewsOf(bearing)
  const rings: readonly Ring[] = [
    sawLine(outside, design),
    { role: 'finish', diameter: outside, words: TEMPLATE_LABELS.turn(DIMENSION_SYMBOLS[key], say(outside)) },
    {
      role: 'finish',
      diameter: bore,
      words: TEMPLATE_LABELS.bore(DIMENSION_SYMBOLS['innerRing.boreDiameter'], say(bore)),
    },
  ]
  const notes: readonly Label[] = [
    ...(screws === undefined ? [] : [{ words: TEMPLATE_NOTES.splitScrews(screws, say) }]),
    ...(bearing.settled.split === 'inner-ring' ? [{ words: TEMPLATE_NOTES.splitRing }] : []),
    thickness(design, say, 'innerRing.width'),
  ]
  return blank(BLANK_TITLES.inner, rings, screwHoles(screws), notes)
}

/** A pocket's line runs past the blank's edge, so that it can be carried over it with a square. */
const PAST_EDGE = 3

/** The cage from its side: the circles to turn to, and a line for the middle of each pocket. */
function cageBlank(design: CagedDesign): Item {
  const { bearing } = design
  const { settled, cage } = bearing
  const say = sizeTextFor(bearing)
  const [outside, bore] = [cutSize(design, 'cage.outsideDiameter'), cutSize(design, 'cage.boreDiameter')]
  const saw = sawLine(outside, design)
  const rings: readonly Ring[] = [
    saw,
    {
      role: 'finish',
      diameter: outside,
      words: TEMPLATE_LABELS.turn(DIMENSION_SYMBOLS['cage.outsideDiameter'], say(outside)),
    },
    { role: 'finish', diameter: bore, words: TEMPLATE_LABELS.bore(DIMENSION_SYMBOLS['cage.boreDiameter'], say(bore)) },
  ]
  const middles = ballAngles(bearing).map((angle) =>
    line('centre', polar(CENTRE, bore / 2 - PAST_EDGE, angle), polar(CENTRE, saw.diameter / 2, angle)),
  )
  const pocket = cutSize(design, 'cage.pocketDiameter')
  const { count } = settled.input.balls
  const notes: readonly Label[] = [
    { words: TEMPLATE_LABELS.pockets(count, DIMENSION_SYMBOLS['cage.pocketDiameter'], say(pocket)) },
    ...(cage.pieces === 2 ? [{ words: TEMPLATE_NOTES.splitCage }] : []),
    thickness(design, say, 'cage.width'),
  ]
  return blank(BLANK_TITLES.cage, rings, middles, notes)
}

/** The two discs that keep rollers in. */
function cheekBlanks(design: FullRingDesign): readonly Item[] {
  const { cheeks } = design.bearing
  if (cheeks === undefined) return []
  const say = sizeTextFor(design.bearing)
  const outside = cutSize(design, 'cheeks.outsideDiameter')
  const hole = cutSize(design, 'cheeks.holeDiameter')
  const rings: readonly Ring[] = [
    sawLine(outside, design),
    {
      role: 'finish',
      diameter: outside,
      words: TEMPLATE_LABELS.turn(DIMENSION_SYMBOLS['cheeks.outsideDiameter'], say(outside)),
    },
    {
      role: 'finish',
      diameter: hole,
      words: TEMPLATE_LABELS.bore(DIMENSION_SYMBOLS['cheeks.holeDiameter'], say(hole)),
    },
  ]
  const screws = cheekScrewsOf(design.bearing)
  const notes = [
    ...(screws === undefined ? [] : [{ words: TEMPLATE_NOTES.cheekScrews(screws, say) }]),
    { words: TEMPLATE_NOTES.makeTwo },
    thickness(design, say, 'cheeks.thickness'),
  ]
  return [blank(BLANK_TITLES.cheek, rings, screwHoles(screws), notes)]
}

/** Of a turntable: the plate, of which two are made alike. */
export function plateItems(design: ThrustDesign): readonly Item[] {
  const say = sizeTextFor(design.bearing)
  const [outside, bore] = [cutSize(design, 'plates.outsideDiameter'), cutSize(design, 'plates.boreDiameter')]
  const circle = cutSize(design, 'pitchDiameter')
  const rings: readonly Ring[] = [
    sawLine(outside, design),
    {
      role: 'finish',
      diameter: outside,
      words: TEMPLATE_LABELS.turn(DIMENSION_SYMBOLS['outerRing.outsideDiameter'], say(outside)),
    },
    {
      role: 'centre',
      diameter: circle,
      words: TEMPLATE_LABELS.grooveCircle(DIMENSION_SYMBOLS.pitchDiameter, say(circle)),
    },
    {
      role: 'finish',
      diameter: bore,
      words: TEMPLATE_LABELS.bore(DIMENSION_SYMBOLS['innerRing.boreDiameter'], say(bore)),
    },
  ]
  return [
    blank(
      BLANK_TITLES.plate,
      rings,
      [],
      [{ words: TEMPLATE_NOTES.makeTwo }, thickness(design, say, 'plates.thickness')],
    ),
  ]
}

const thickness = (design: DesignOf<Placed>, say: SizeText, key: DimensionKey): Label => ({
  words: TEMPLATE_LABELS.thickness(say(cutSize(design, key)), design.bearing.settled.input.units),
})

function blank(title: string, rings: readonly Ring[], holes: readonly Shape[], notes: readonly Label[]): Item {
  const radius = Math.max(...rings.map(({ diameter }) => diameter)) / 2
  const labels = rings.map(({ words, diameter }, index) => ({
    words,
    tip: polar(CENTRE, diameter / 2, FIRST_TIP - index * TIPS_APART),
  }))
  const figure: Figure = {
    shapes: [
      ...rings.map(({ role, diameter }) => circle(role, CENTRE, diameter / 2)),
      ...holes,
      ...punch(),
      ...grain(radius),
    ],
    left: -radius,
    right: radius,
    bottom: -radius,
    top: radius + 6,
  }
  return labelledItem(title, figure, [...labels, ...notes])
}

/** A cross to prick through, and the mark of a centre punch. */
const punch = (): readonly Shape[] => [
  circle('layout', CENTRE, PUNCH_RADIUS),
  line('layout', at(-PUNCH_REACH, 0), at(PUNCH_REACH, 0)),
  line('layout', at(0, -PUNCH_REACH), at(0, PUNCH_REACH)),
]

/** Above the blank, along the board. */
function grain(radius: number): readonly Shape[] {
  const [y, reach] = [radius + 3, 14]
  return [
    line('dimension', at(-reach, y), at(reach, y)),
    arrowHead(at(-reach, y), 180),
    arrowHead(at(reach, y), 0),
    text(GRAIN, at(reach + 2, y - TEXT_HEIGHT / 2), TEXT_HEIGHT, 'start'),
  ]
}
