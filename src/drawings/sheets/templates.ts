import type { CagedDesign, FullRingDesign, ThrustDesign } from '#shared/bearing/arrangements.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import { cylinderKeys, DIMENSION_SYMBOLS, type DimensionKey } from '#shared/bearing/dimensions.ts'
import { cheekScrewsOf, entryHoleDiameter, sawAllowance, splitScrewsOf } from '#shared/making/cutting-allowances.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { at, polar, type Shape } from '#src/drawings/model.ts'
import { circle, cross, line, text } from '#src/drawings/shapes.ts'
import { BLANK_TITLES, GRAIN, TEMPLATE_LABELS, TEMPLATE_NOTES } from '#src/words/drawing.ts'
import { arrowHead, TEXT_HEIGHT } from './annotations.ts'
import { ballAngles, type Placed, screwHoles } from './face.ts'
import type { DrawnRings } from './half-section.ts'
import { type Figure, type Label, labelledItem } from './labelled-item.ts'
import type { Item } from './pages.ts'
import { sizeTextFor } from './size-text.ts'

const CENTRE = at(0, 0)
const PUNCH_REACH = 4
const PUNCH_RADIUS = 1
/** Where the labels' lines touch their circles, from right to left. */
const FIRST_TIP = -85
const TIPS_APART = 11

/** The size to turn to: what a finish leaves for the lathe. */
export function cutSize({ dimensions }: Pick<DesignOf<unknown>, 'dimensions'>, key: DimensionKey): Mm {
  const row = dimensions.find((dimension) => dimension.key === key)
  if (row === undefined) throw new RangeError(`key must be that of a dimension, got ${key}`)
  return row.cutTo ?? row.value
}

type Ring = { readonly role: 'finish' | 'saw' | 'hole' | 'centre'; readonly diameter: Mm; readonly words: string }

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

/** A circle of the design, as large as it is cut. */
function circleOf(
  design: DesignOf<Placed>,
  key: DimensionKey,
  label: (symbol: string, size: string) => string,
  role: Ring['role'] = 'finish',
): Ring {
  const diameter = cutSize(design, key)
  return { role, diameter, words: label(DIMENSION_SYMBOLS[key], sizeTextFor(design.bearing)(diameter)) }
}

/** Round what is turned, with the allowance for the lathe. */
function sawLine({ diameter: outside }: Ring, { bearing }: DesignOf<Pick<Placed, 'resolved'>>): Ring {
  const diameter = mm(outside + 2 * sawAllowance(bearing.resolved.input.units))
  return { role: 'saw', diameter, words: TEMPLATE_LABELS.saw(sizeTextFor(bearing)(diameter)) }
}

function outerBlank(design: RingsDesign): Item {
  const { units } = design.bearing.resolved.input
  const say = sizeTextFor(design.bearing)
  const outside = circleOf(design, 'outerRing.outsideDiameter', TEMPLATE_LABELS.turn)
  const hole = circleOf(design, cylinderKeys(design.bearing).outer, TEMPLATE_LABELS.open)
  const core = mm(hole.diameter - 2 * sawAllowance(units))
  const entry = entryHoleDiameter(units)
  // The blade enters inside of the core's line, a hand's breadth of nothing away from it, and clear of the centre.
  const hasCore = core > 2 * (entry + PUNCH_REACH)
  const entryCentre = polar(CENTRE, core / 2 - entry / 2 - 1, 35)
  const rings: readonly Ring[] = [
    sawLine(outside, design),
    outside,
    hole,
    ...(hasCore ? [{ role: 'saw', diameter: core, words: TEMPLATE_LABELS.core(say(core)) } as const] : []),
  ]
  const holes = hasCore ? [circle('hole', entryCentre, entry / 2)] : []
  const entryLabel = hasCore ? [{ words: TEMPLATE_LABELS.bladeHole(say(entry)) }] : []
  return blank(BLANK_TITLES.outer, rings, holes, [...entryLabel, thickness(design, 'outerRing.width')])
}

function innerBlank(design: RingsDesign): Item {
  const { bearing } = design
  const outside = circleOf(design, cylinderKeys(bearing).inner, TEMPLATE_LABELS.turn)
  const bore = circleOf(design, 'innerRing.boreDiameter', TEMPLATE_LABELS.bore)
  const screws = splitScrewsOf(bearing)
  const notes: readonly Label[] = [
    ...(screws === undefined ? [] : [{ words: TEMPLATE_NOTES.splitScrews(screws, sizeTextFor(bearing)) }]),
    ...(bearing.resolved.split === 'inner-ring' ? [{ words: TEMPLATE_NOTES.splitRing }] : []),
    thickness(design, 'innerRing.width'),
  ]
  return blank(BLANK_TITLES.inner, [sawLine(outside, design), outside, bore], screwHoles(screws), notes)
}

/** A pocket's line runs past the blank's edge, so that it can be carried over it with a square. */
const PAST_EDGE = 3

/** The cage from its side: the circles to turn to, and a line for the middle of each pocket. */
function cageBlank(design: CagedDesign): Item {
  const { bearing } = design
  const { resolved, cage } = bearing
  const outside = circleOf(design, 'cage.outsideDiameter', TEMPLATE_LABELS.turn)
  const bore = circleOf(design, 'cage.boreDiameter', TEMPLATE_LABELS.bore)
  const saw = sawLine(outside, design)
  const middles = ballAngles(bearing).map((angle) =>
    line('centre', polar(CENTRE, bore.diameter / 2 - PAST_EDGE, angle), polar(CENTRE, saw.diameter / 2, angle)),
  )
  const pocket = sizeTextFor(bearing)(cutSize(design, 'cage.pocketDiameter'))
  const { count } = resolved.input.balls
  const notes: readonly Label[] = [
    { words: TEMPLATE_LABELS.pockets(count, DIMENSION_SYMBOLS['cage.pocketDiameter'], pocket) },
    ...(cage.pieces === 2 ? [{ words: TEMPLATE_NOTES.splitCage }] : []),
    thickness(design, 'cage.width'),
  ]
  return blank(BLANK_TITLES.cage, [saw, outside, bore], middles, notes)
}

/** The two discs that keep rollers in. */
function cheekBlanks(design: FullRingDesign): readonly Item[] {
  const { bearing } = design
  if (bearing.cheeks === undefined) return []
  const outside = circleOf(design, 'cheeks.outsideDiameter', TEMPLATE_LABELS.turn)
  const hole = circleOf(design, 'cheeks.holeDiameter', TEMPLATE_LABELS.bore)
  const screws = cheekScrewsOf(bearing)
  const notes = [
    ...(screws === undefined ? [] : [{ words: TEMPLATE_NOTES.cheekScrews(screws, sizeTextFor(bearing)) }]),
    { words: TEMPLATE_NOTES.makeTwo },
    thickness(design, 'cheeks.thickness'),
  ]
  return [blank(BLANK_TITLES.cheek, [sawLine(outside, design), outside, hole], screwHoles(screws), notes)]
}

/** Of a turntable: the plate, of which two are made alike. */
export function plateItems(design: ThrustDesign): readonly Item[] {
  const outside = circleOf(design, 'plates.outsideDiameter', TEMPLATE_LABELS.turn)
  const rings = [
    sawLine(outside, design),
    outside,
    circleOf(design, 'pitchDiameter', TEMPLATE_LABELS.grooveCircle, 'centre'),
    circleOf(design, 'plates.boreDiameter', TEMPLATE_LABELS.bore),
  ]
  const notes = [{ words: TEMPLATE_NOTES.makeTwo }, thickness(design, 'plates.thickness')]
  return [blank(BLANK_TITLES.plate, rings, [], notes)]
}

const thickness = (design: DesignOf<Placed>, key: DimensionKey): Label => ({
  words: TEMPLATE_LABELS.thickness(
    sizeTextFor(design.bearing)(cutSize(design, key)),
    design.bearing.resolved.input.units,
  ),
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
const punch = (): readonly Shape[] => [circle('layout', CENTRE, PUNCH_RADIUS), ...cross('layout', CENTRE, PUNCH_REACH)]

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
