import type { CagedDesign, FullRingDesign, ThrustDesign } from '#shared/bearing/arrangements.ts'
import type { BallRing } from '#shared/bearing/ball-ring.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import { cylinderKeys, DIMENSION_SYMBOLS, type DimensionKey } from '#shared/bearing/dimensions.ts'
import { type Groove, grooveHalfWidth } from '#shared/geometry/groove.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { at, type Shape, type Vertex } from '#src/drawings/model.ts'
import { circle, line, loop } from '#src/drawings/shapes.ts'
import { GAUGE_LABELS, GAUGE_TITLES } from '#src/words/drawing.ts'
import { TERMS, type Terms } from '#src/words/terms.ts'
import type { DrawnRings } from './half-section.ts'
import { type Figure, type Label, labelledItem } from './labelled-item.ts'
import type { Item } from './pages.ts'
import { type SizeText, sizeTextFor } from './size-text.ts'
import { cutSize } from './templates.ts'

const CENTRE = at(0, 0)
const PUNCH_REACH = 3
/** Of the arc that a plate is held against: so much of its diameter, and no more than a hand holds, in millimetres. */
const CHORD = 0.7
const MOST_CHORD = 80
const PLATE_HEIGHT = 14

/**
 * What checks the turning, full size: the two plugs, a profile for each groove whose shoulders meet the land when it is
 * deep enough, and an edge for each cylinder.
 */
export const gaugeItems = (design: FullRingDesign): readonly Item[] => [
  ...plugs(design.bearing, design.bearing.settled.traits.raceway === 'track' ? TERMS.roller : TERMS.radial),
  ...ringGauges(design),
]

/** The same with a cage: the balls stand apart, and one plug tells the groove's depth. */
export function cagedGaugeItems(design: CagedDesign): readonly Item[] {
  const { settled, plugDiameter } = design.bearing
  const say = sizeTextFor(design.bearing)
  const { units } = settled.input
  const size = `${DIMENSION_SYMBOLS['gauge.nominalDiameter']} Ø${say(plugDiameter)} ${units}`
  const outside = cutSize(design, 'cage.outsideDiameter')
  return [
    plug(GAUGE_TITLES.plug, plugDiameter, [{ words: GAUGE_LABELS.plug(size) }]),
    ...ringGauges(design),
    edge(GAUGE_TITLES.cageOutside, outside, -1, `${DIMENSION_SYMBOLS['cage.outsideDiameter']} Ø${say(outside)}`),
  ]
}

/** A profile for each groove, and an edge for each cylinder. */
function ringGauges(design: DesignOf<DrawnRings>): readonly Item[] {
  const { bearing } = design
  const say = sizeTextFor(bearing)
  const size = (key: DimensionKey) => cutSize(design, key)
  const { outer, inner } = cylinderKeys(bearing)
  return [
    ...profiles(design, say),
    edge(
      GAUGE_TITLES.outerOutside,
      size('outerRing.outsideDiameter'),
      -1,
      `D Ø${say(size('outerRing.outsideDiameter'))}`,
    ),
    edge(GAUGE_TITLES.outerHole, size(outer), 1, `${DIMENSION_SYMBOLS[outer]} Ø${say(size(outer))}`),
    edge(GAUGE_TITLES.innerOutside, size(inner), -1, `${DIMENSION_SYMBOLS[inner]} Ø${say(size(inner))}`),
  ]
}

/** The same of plates. */
export function plateGaugeItems(design: ThrustDesign): readonly Item[] {
  const { bearing } = design
  const say = sizeTextFor(bearing)
  const size = (key: DimensionKey) => cutSize(design, key)
  const groove = { radius: size('plates.grooveRadius'), depth: size('plates.grooveDepth') }
  const outside = size('plates.outsideDiameter')
  return [
    ...plugs(bearing, TERMS.thrust),
    profile(GAUGE_TITLES.plateGroove, groove, bearing.settled.ballDiameter, ['r', 'h'], say, 'face'),
    edge(GAUGE_TITLES.plateOutside, outside, -1, `D Ø${say(outside)}`),
  ]
}

function plugs({ gauge, settled }: BallRing, terms: Terms): readonly Item[] {
  const say = sizeTextFor({ settled })
  const size = (key: 'gauge.goDiameter' | 'gauge.noGoDiameter', diameter: Mm): string =>
    `${DIMENSION_SYMBOLS[key]} Ø${say(diameter)} ${settled.input.units}`
  const go = GAUGE_LABELS.goPlug(size('gauge.goDiameter', gauge.goDiameter), terms)
  const noGo = GAUGE_LABELS.noGoPlug(size('gauge.noGoDiameter', gauge.noGoDiameter))
  return [
    plug(GAUGE_TITLES.goPlug, gauge.goDiameter, [{ words: go }]),
    plug(GAUGE_TITLES.noGoPlug, gauge.noGoDiameter, [{ words: noGo }]),
  ]
}

/** Of both grooves, where there are any. */
function profiles(design: DesignOf<DrawnRings>, say: SizeText): readonly Item[] {
  const { settled } = design.bearing
  if (settled.traits.raceway === 'track') return []
  const size = (key: DimensionKey) => cutSize(design, key)
  return [
    profile(
      GAUGE_TITLES.outerGroove,
      { radius: size('outerRing.grooveRadius'), depth: size('outerRing.grooveDepth') },
      settled.ballDiameter,
      ['re', 'he'],
      say,
    ),
    profile(
      GAUGE_TITLES.innerGroove,
      { radius: size('innerRing.grooveRadius'), depth: size('innerRing.grooveDepth') },
      settled.ballDiameter,
      ['ri', 'hi'],
      say,
    ),
  ]
}

function plug(title: string, diameter: number, labels: readonly Label[]): Item {
  const radius = diameter / 2
  const cross = Math.min(PUNCH_REACH, radius / 2)
  return labelledItem(
    title,
    {
      shapes: [
        circle('finish', CENTRE, radius),
        line('mark', at(-cross, 0), at(cross, 0)),
        line('mark', at(0, -cross), at(0, cross)),
      ],
      left: -radius,
      right: radius,
      bottom: -radius,
      top: radius,
    },
    labels,
  )
}

/** A tongue with the groove's own arc for its nose, as long as the groove is deep, between two shoulders. */
function profile(
  title: string,
  groove: Groove,
  ballDiameter: number,
  [radius, depth]: readonly [string, string],
  say: SizeText,
  meets: 'land' | 'face' = 'land',
): Item {
  const wide = grooveHalfWidth({ radius: groove.radius, depth: mm(Math.min(groove.depth, groove.radius)) })
  const half = wide + 0.4 * ballDiameter
  const body = ballDiameter
  const quarter = groove.depth / wide // tan(θ/4) of an arc: its height over half its chord
  const points: Vertex[] = [
    at(-half, -body),
    at(half, -body),
    at(half, 0),
    { ...at(wide, 0), bulge: quarter },
    at(-wide, 0),
    at(-half, 0),
  ]
  const figure: Figure = {
    shapes: [loop('finish', points)],
    left: -half,
    right: half,
    bottom: -body,
    top: groove.depth,
  }
  return labelledItem(title, figure, [
    { words: `${radius} R${say(groove.radius)}, ${depth} ${say(groove.depth)}` },
    { words: GAUGE_LABELS.profile(meets) },
  ])
}

/** A plate whose edge is a piece of the cylinder: hollow (−1) for an outside, round (1) for a hole. */
function edge(title: string, diameter: number, round: 1 | -1, size: string): Item {
  const radius = diameter / 2
  const half = Math.min(CHORD * diameter, MOST_CHORD) / 2
  const rise = radius - Math.sqrt((radius - half) * (radius + half))
  const height = PLATE_HEIGHT + (round === -1 ? rise : 0)
  const points: Vertex[] = [
    at(-half, -height),
    at(half, -height),
    { ...at(half, 0), bulge: (round * rise) / half },
    at(-half, 0),
  ]
  const figure: Figure = {
    shapes: [loop('finish', points), ...centreTick(round * rise)],
    left: -half,
    right: half,
    bottom: -height,
    top: Math.max(0, round * rise),
  }
  return labelledItem(title, figure, [{ words: GAUGE_LABELS.edge(size) }])
}

/** The middle of the edge. */
const centreTick = (y: number): readonly Shape[] => [line('mark', at(0, y - 1), at(0, y - 4))]
