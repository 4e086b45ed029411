import type { CagedDesign, FullRingDesign, ThrustDesign } from '#shared/bearing/arrangements.ts'
import type { BallRing } from '#shared/bearing/ball-ring.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import { cylinderKeys, DIMENSION_SYMBOLS, type DimensionKey } from '#shared/bearing/dimensions.ts'
import { type GapSpread, plugReading } from '#shared/bearing/plug-reading.ts'
import type { PartName } from '#shared/bearing/refusal.ts'
import { grooveHalfWidth } from '#shared/geometry/groove.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { at, type Point, type Shape, type Vertex } from '#src/drawings/model.ts'
import { circle, cross, line, loop, text } from '#src/drawings/shapes.ts'
import { fittedHeight } from '#src/drawings/text-width.ts'
import { GAUGE_LABELS, GAUGE_TITLES } from '#src/words/drawing.ts'
import { termsOf } from '#src/words/terms.ts'
import { TEXT_HEIGHT } from './annotations.ts'
import type { Placed } from './face.ts'
import type { DrawnRings } from './half-section.ts'
import { type Figure, type Label, labelledItem } from './labelled-item.ts'
import type { Item } from './pages.ts'
import { sizeTextFor, tradeSign } from './size-text.ts'
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
export const gaugeItems = (design: FullRingDesign, code: string): readonly Item[] => [
  ...plugs(design.bearing, code),
  ...ringGauges(design, code),
]

/** The same with a cage: the balls stand apart, and one plug tells the groove's depth. */
export function cagedGaugeItems(design: CagedDesign, code: string): readonly Item[] {
  const { resolved, plugDiameter } = design.bearing
  const say = sizeTextFor(design.bearing)
  const { units } = resolved.input
  const size = `${DIMENSION_SYMBOLS.plugDiameter} Ø${say(plugDiameter)} ${units}`
  return [
    plug({ title: GAUGE_TITLES.plug, code }, plugDiameter, [{ words: GAUGE_LABELS.plug(size) }]),
    ...ringGauges(design, code),
    edge({ title: GAUGE_TITLES.cageOutside, code }, design, 'cage.outsideDiameter', -1),
  ]
}

/** A profile for each groove, and an edge for each cylinder. */
function ringGauges(design: DesignOf<DrawnRings>, code: string): readonly Item[] {
  const { outer, inner } = cylinderKeys(design.bearing)
  return [
    ...profiles(design, code),
    edge({ title: GAUGE_TITLES.outerOutside, code }, design, 'outerRing.outsideDiameter', -1),
    edge({ title: GAUGE_TITLES.outerHole, code }, design, outer, 1),
    edge({ title: GAUGE_TITLES.innerOutside, code }, design, inner, -1),
  ]
}

/** The same of plates. */
export const plateGaugeItems = (design: ThrustDesign, code: string): readonly Item[] => [
  ...plugs(design.bearing, code),
  profile({ title: GAUGE_TITLES.plateGroove, code }, design, 'plates', 'face'),
  edge({ title: GAUGE_TITLES.plateOutside, code }, design, 'plates.outsideDiameter', -1),
]

function plugs(bearing: BallRing, code: string): readonly Item[] {
  const { gauge, resolved } = bearing
  const { decides, whenGoEnters, whenNoGoRefuses } = plugReading(bearing)
  const { units } = resolved.input
  const say = sizeTextFor({ resolved })
  const size = (key: 'gauge.goDiameter' | 'gauge.noGoDiameter', diameter: Mm): string =>
    `${DIMENSION_SYMBOLS[key]} Ø${say(diameter)} ${units}${tradeSign(key, bearing)}`
  const go = size('gauge.goDiameter', gauge.goDiameter)
  const noGo = size('gauge.noGoDiameter', gauge.noGoDiameter)
  const labels = (measured: string, verdict: string, gap: GapSpread): readonly Label[] =>
    decides
      ? [{ words: verdict }]
      : [{ words: GAUGE_LABELS.entersAt(measured, gap, units) }, { words: GAUGE_LABELS.decidesNothing }]
  return [
    plug(
      { title: GAUGE_TITLES.goPlug, code },
      gauge.goDiameter,
      labels(go, GAUGE_LABELS.goPlug(go, termsOf(resolved.input)), whenGoEnters),
    ),
    plug(
      { title: GAUGE_TITLES.noGoPlug, code },
      gauge.noGoDiameter,
      labels(noGo, GAUGE_LABELS.noGoPlug(noGo), whenNoGoRefuses),
    ),
  ]
}

/** Of both grooves, where there are any. */
function profiles(design: DesignOf<DrawnRings>, code: string): readonly Item[] {
  if (design.bearing.resolved.traits.raceway === 'track') return []
  return [
    profile({ title: GAUGE_TITLES.outerGroove, code }, design, 'outerRing', 'land'),
    profile({ title: GAUGE_TITLES.innerGroove, code }, design, 'innerRing', 'land'),
  ]
}

/** A gauge, and the code that it carries when it is cut out. */
type Named = { readonly title: string; readonly code: string }

function plug({ title, code }: Named, diameter: number, labels: readonly Label[]): Item {
  const radius = diameter / 2
  const reach = Math.min(PUNCH_REACH, radius / 2)
  return labelledItem(
    title,
    {
      shapes: [
        circle('finish', CENTRE, radius),
        ...cross('mark', CENTRE, reach),
        carried(code, at(0, -0.6 * radius), radius, 0.25 * radius),
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
function profile({ title, code }: Named, design: DesignOf<Placed>, part: PartName, meets: 'land' | 'face'): Item {
  const [radiusKey, depthKey] = [`${part}.grooveRadius`, `${part}.grooveDepth`] as const
  const [radius, depth] = [cutSize(design, radiusKey), cutSize(design, depthKey)]
  const { ballDiameter } = design.bearing.resolved
  const say = sizeTextFor(design.bearing)
  const wide = grooveHalfWidth({ radius, depth: mm(Math.min(depth, radius)) })
  const half = wide + 0.4 * ballDiameter
  const body = ballDiameter
  const quarter = depth / wide // tan(θ/4) of an arc: its height over half its chord
  const points: Vertex[] = [
    at(-half, -body),
    at(half, -body),
    at(half, 0),
    { ...at(wide, 0), bulge: quarter },
    at(-wide, 0),
    at(-half, 0),
  ]
  const figure: Figure = {
    shapes: [loop('finish', points), carried(code, at(0, -0.6 * body), 1.6 * half, 0.3 * body)],
    left: -half,
    right: half,
    bottom: -body,
    top: depth,
  }
  return labelledItem(title, figure, [
    {
      words: `${DIMENSION_SYMBOLS[radiusKey]} R${say(radius)}${tradeSign(radiusKey, design.bearing)}, ${DIMENSION_SYMBOLS[depthKey]} ${say(depth)}${tradeSign(depthKey, design.bearing)}`,
    },
    { words: GAUGE_LABELS.profile(meets) },
  ])
}

/** A plate whose edge is a piece of the cylinder: hollow (−1) for an outside, round (1) for a hole. */
function edge({ title, code }: Named, design: DesignOf<Placed>, key: DimensionKey, round: 1 | -1): Item {
  const diameter = cutSize(design, key)
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
    shapes: [
      loop('finish', points),
      ...centreTick(round * rise),
      carried(code, at(0, 3 - height), 1.6 * half, PLATE_HEIGHT / 4),
    ],
    left: -half,
    right: half,
    bottom: -height,
    top: Math.max(0, round * rise),
  }
  const size = `${DIMENSION_SYMBOLS[key]} Ø${sizeTextFor(design.bearing)(diameter)}${tradeSign(key, design.bearing)}`
  return labelledItem(title, figure, [{ words: GAUGE_LABELS.edge(size) }])
}

/** The code on the gauge itself, its middle here, no wider and no higher than there is room. */
const carried = (code: string, { x, y }: Point, room: number, high: number): Shape =>
  text(code, at(x, y), fittedHeight(code, Math.min(TEXT_HEIGHT, high), room), 'middle', { role: 'mark' })

/** The middle of the edge. */
const centreTick = (y: number): readonly Shape[] => [line('mark', at(0, y - 1), at(0, y - 4))]
