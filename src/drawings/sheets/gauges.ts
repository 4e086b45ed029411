import type { CagedDesign, FullRingDesign, ThrustDesign } from '#shared/bearing/arrangements.ts'
import type { BallRing } from '#shared/bearing/ball-ring.ts'
import { gapBeforeFinish } from '#shared/bearing/before-finish.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import { cylinderKeys, DIMENSION_SYMBOLS, type DimensionKey } from '#shared/bearing/dimensions.ts'
import { type GapSpread, plugReading } from '#shared/bearing/plug-reading.ts'
import type { PartName, RingName } from '#shared/bearing/refusal.ts'
import { grooveHalfWidth } from '#shared/geometry/groove.ts'
import {
  type GaugeKit,
  gaugeKitOf,
  type PlateGaugeKit,
  type PlugToTurn,
  plateGaugeKitOf,
  type SetBlock,
} from '#shared/making/gauge-kit.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { at, type Point, type Shape, type Vertex } from '#src/drawings/model.ts'
import { box, circle, cross, line, loop, placed, text } from '#src/drawings/shapes.ts'
import { fittedHeight, textWidth } from '#src/drawings/text-width.ts'
import { EDGES, GAUGE_LABELS, GAUGE_TITLES } from '#src/words/drawing.ts'
import { TRADE_SIGN } from '#src/words/standing.ts'
import { termsOf } from '#src/words/terms.ts'
import { arrowHead, SMALL_TEXT_HEIGHT, TEXT_HEIGHT } from './annotations.ts'
import type { Placed } from './face.ts'
import type { DrawnRings } from './half-section.ts'
import { labelledItem } from './labelled-item.ts'
import type { Figure, Item, Label } from './pages.ts'
import { type SizeText, sizeInWordsFor, tradeSign } from './size-text.ts'
import { cutSize } from './templates.ts'

const CENTRE = at(0, 0)
const PUNCH_REACH = 3
/** Of the arc that a plate is held against: so much of its diameter, and no more than a hand holds, in millimetres. */
const CHORD = 0.7
const MOST_CHORD = 80
const PLATE_HEIGHT = 14
/** Words at an edge stand so far from it, and take so much room with it. */
const EDGE_WORDS = 0.9
const EDGE_ROOM = EDGE_WORDS + SMALL_TEXT_HEIGHT + 0.6
const EDGE_WIDTH = textWidth(EDGES.touches, SMALL_TEXT_HEIGHT)

/**
 * What checks the turning, full size: the two plugs, a profile for each groove whose shoulders meet the land when it is
 * deep enough, and an edge for each cylinder.
 */
export const gaugeItems = (design: FullRingDesign, code: string): readonly Item[] => [
  ...plugs(design.bearing, gaugeKitOf(design.bearing), code),
  ...ringGauges(design, code),
]

/** The same with a cage: the balls stand apart, and one plug tells the groove's depth. */
export function cagedGaugeItems(design: CagedDesign, code: string): readonly Item[] {
  const { resolved } = design.bearing
  const say = sizeInWordsFor(design.bearing)
  const made = itemAt(gaugeKitOf(design.bearing).plugs, 0)
  const bare = resolved.finishAllowance > 0 ? GAUGE_LABELS.beforeFinish : ''
  const size = `${DIMENSION_SYMBOLS.plugDiameter} Ø${say(made.diameter)}${bare}`
  return [
    plug({ title: GAUGE_TITLES.plug, code }, made, say, [{ words: GAUGE_LABELS.plug(size) }]),
    ...ringGauges(design, code),
    edge({ title: GAUGE_TITLES.cageOutside, code }, design, 'cage.outsideDiameter', -1),
  ]
}

/** A profile for each groove, set-blocks for each raceway, and an edge for each cylinder. */
function ringGauges(design: DesignOf<DrawnRings>, code: string): readonly Item[] {
  const { outer, inner } = cylinderKeys(design.bearing)
  const kit = gaugeKitOf(design.bearing)
  return [
    ...profiles(design, kit, code),
    setBlocks({ title: GAUGE_TITLES.outerBlocks, code }, design, kit, 'outerRing'),
    setBlocks({ title: GAUGE_TITLES.innerBlocks, code }, design, kit, 'innerRing'),
    edge({ title: GAUGE_TITLES.outerOutside, code }, design, 'outerRing.outsideDiameter', -1),
    edge({ title: GAUGE_TITLES.outerHole, code }, design, outer, 1),
    edge({ title: GAUGE_TITLES.innerOutside, code }, design, inner, -1),
  ]
}

/** The same of plates. */
export function plateGaugeItems(design: ThrustDesign, code: string): readonly Item[] {
  const kit = plateGaugeKitOf(design.bearing)
  return [
    ...plugs(design.bearing, kit, code),
    profile({ title: GAUGE_TITLES.plateGroove, code }, design, 'plates', [{ words: GAUGE_LABELS.profile('face') }]),
    depthBlock({ title: GAUGE_TITLES.depthBlock, code }, design, kit),
    circleGauge({ title: GAUGE_TITLES.circle, code }, design, kit),
    edge({ title: GAUGE_TITLES.plateOutside, code }, design, 'plates.outsideDiameter', -1),
  ]
}

function plugs(bearing: BallRing, kit: GaugeKit | PlateGaugeKit, code: string): readonly Item[] {
  const { resolved } = bearing
  const { decides, whenGoEnters, whenNoGoRefuses } = plugReading(bearing)
  const [goPlug, noGoPlug] = kit.plugs as [PlugToTurn, PlugToTurn]
  const { units } = resolved.input
  const say = sizeInWordsFor({ resolved })
  // Plates keep their circle whatever comes on them.
  const isBare = !('profile' in kit) && resolved.finishAllowance > 0
  const size = (key: 'gauge.goDiameter' | 'gauge.noGoDiameter', diameter: Mm): string =>
    `${DIMENSION_SYMBOLS[key]} Ø${say(diameter)}${tradeSign(key, bearing)}${isBare ? GAUGE_LABELS.beforeFinish : ''}`
  const go = size('gauge.goDiameter', goPlug.diameter)
  const noGo = size('gauge.noGoDiameter', noGoPlug.diameter)
  const labels = (measured: string, verdict: string, gap: GapSpread): readonly Label[] =>
    decides
      ? [{ words: verdict }]
      : [
          {
            words: GAUGE_LABELS.entersAt(
              measured,
              isBare ? { ...gap, mean: gapBeforeFinish(gap.mean, bearing) } : gap,
              units,
            ),
          },
          { words: GAUGE_LABELS.decidesNothing },
        ]
  return [
    plug(
      { title: GAUGE_TITLES.goPlug, code },
      goPlug,
      say,
      labels(go, GAUGE_LABELS.goPlug(go, termsOf(resolved.input)), whenGoEnters),
    ),
    plug(
      { title: GAUGE_TITLES.noGoPlug, code },
      noGoPlug,
      say,
      labels(noGo, GAUGE_LABELS.noGoPlug(noGo), whenNoGoRefuses),
    ),
  ]
}

/** Of both grooves, where there are any: with the depth at which the sharp tool stops, and the dowel for the abrasive. */
const profiles = (design: DesignOf<DrawnRings>, kit: GaugeKit, code: string): readonly Item[] =>
  kit.profiles.map(({ ring, stopDepth }) => {
    const say = sizeInWordsFor(design.bearing)
    const dowel = kit.dowels.find((each) => each.ring === ring)
    const title = ring === 'outerRing' ? GAUGE_TITLES.outerGroove : GAUGE_TITLES.innerGroove
    return profile({ title, code }, design, ring, [
      { words: GAUGE_LABELS.stop(say(stopDepth)) },
      { words: GAUGE_LABELS.profile('land') },
      ...(dowel ? [{ words: `${GAUGE_LABELS.dowel(say(dowel.diameter), say(dowel.paper))} ${TRADE_SIGN}` }] : []),
    ])
  })

/** Above and below a gauge: the edge on top is the one that counts, and all are cut outside of their lines. */
function edged({ shapes, left, right, bottom, top }: Figure): Figure {
  const half = EDGE_WIDTH / 2
  return {
    shapes: [...shapes, edgeWords(EDGES.touches, at(0, top + EDGE_WORDS)), cutWords(at(0, bottom))],
    left: Math.min(left, -half),
    right: Math.max(right, half),
    bottom: bottom - EDGE_ROOM,
    top: top + EDGE_ROOM,
  }
}

const edgeWords = (words: string, place: Point, anchor: 'start' | 'middle' | 'end' = 'middle'): Shape =>
  text(words, place, SMALL_TEXT_HEIGHT, anchor, { role: 'mark' })

/** Below an edge. */
const cutWords = ({ x, y }: Point): Shape => edgeWords(EDGES.outside, at(x, y - EDGE_WORDS - SMALL_TEXT_HEIGHT))

/** A gauge, and the code that it carries when it is cut out. */
type Named = { readonly title: string; readonly code: string }

/** A disc or a bar. One that is larger than a page needs no outline glued together from many. */
function plug(named: Named, { diameter, barWidth }: PlugToTurn, say: SizeText, labels: readonly Label[]): Item {
  if (barWidth === undefined) return disc(named, diameter, labels)
  const words = [...labels, { words: GAUGE_LABELS.bar(say(barWidth)) }]
  return {
    ...labelledItem(named.title, bar([named.code, say(diameter)], diameter, barWidth), words),
    instead: labelledItem(named.title, endOfBar(named, diameter, barWidth), [...words, { words: GAUGE_LABELS.oneEnd }]),
  }
}

/** Where the ends of a bar begin, from its middle, and the bulge of their arcs. */
function endsOf(diameter: Mm, width: Mm) {
  const angle = Math.asin(width / diameter)
  return { end: (diameter / 2) * Math.cos(angle), bulge: Math.tan(angle / 2) }
}

/** What is left of a disc between two lines as far from its middle. */
function bar(words: readonly string[], diameter: Mm, width: Mm): Figure {
  const { end, bulge } = endsOf(diameter, width)
  const outline = loop(
    'finish',
    [at(-end, 0), { ...at(end, 0), bulge }, at(end, width), { ...at(-end, width), bulge }],
    'outside',
  )
  return {
    shapes: strip(outline, { length: diameter, height: width }, words, false),
    left: -diameter / 2,
    right: diameter / 2,
    bottom: -EDGE_ROOM,
    top: width,
  }
}

/** So much of a bar shows how its ends are rounded, in millimetres. */
const END_OF_BAR = 60

function endOfBar({ code }: Named, diameter: Mm, width: Mm): Figure {
  const { end, bulge } = endsOf(diameter, width)
  const tip = diameter / 2 - end
  const points = [at(-END_OF_BAR, 0), { ...at(0, 0), bulge }, at(0, width), at(-END_OF_BAR, width)]
  return {
    shapes: [
      loop('finish', points, 'outside'),
      carried(code, at(-0.75 * END_OF_BAR, width / 2), 0.4 * END_OF_BAR, width / 5),
      arrowHead(at(tip, width / 2), 0),
      edgeWords(EDGES.touches, at(tip - 4, width / 2 - SMALL_TEXT_HEIGHT / 2), 'end'),
      cutWords(at(-END_OF_BAR / 2, 0)),
    ],
    left: -END_OF_BAR,
    right: tip,
    bottom: -EDGE_ROOM,
    top: width,
  }
}

function disc({ title, code }: Named, diameter: Mm, labels: readonly Label[]): Item {
  const radius = diameter / 2
  const reach = Math.min(PUNCH_REACH, radius / 3)
  const item = labelledItem(
    title,
    edged({
      shapes: [
        circle('finish', CENTRE, radius, 'outside'),
        ...cross('mark', CENTRE, reach),
        carried(code, at(0, -0.6 * radius), radius, 0.25 * radius),
      ],
      left: -radius,
      right: radius,
      bottom: -radius,
      top: radius,
    }),
    labels,
  )
  const nothing: Figure = { shapes: [], left: 0, right: 0, bottom: 0, top: 0 }
  return { ...item, instead: labelledItem(title, nothing, [...labels, { words: GAUGE_LABELS.noOutline }]) }
}

/** A tongue with the groove's own arc for its nose, as long as the groove is deep, between two shoulders. */
function profile({ title, code }: Named, design: DesignOf<Placed>, part: PartName, labels: readonly Label[]): Item {
  const [radiusKey, depthKey] = [`${part}.grooveRadius`, `${part}.grooveDepth`] as const
  const [radius, depth] = [cutSize(design, radiusKey), cutSize(design, depthKey)]
  const { ballDiameter } = design.bearing.resolved
  const say = sizeInWordsFor(design.bearing)
  const { wide, quarter } = noseOf(radius, depth)
  const half = wide + SHOULDER * ballDiameter
  const body = ballDiameter
  const points: Vertex[] = [
    at(-half, -body),
    at(half, -body),
    at(half, 0),
    { ...at(wide, 0), bulge: quarter },
    at(-wide, 0),
    at(-half, 0),
  ]
  const figure = edged({
    shapes: [loop('finish', points, 'outside'), carried(code, at(0, -0.6 * body), 1.6 * half, 0.3 * body)],
    left: -half,
    right: half,
    bottom: -body,
    top: depth,
  })
  return labelledItem(title, figure, [
    {
      words: `${DIMENSION_SYMBOLS[radiusKey]} R${say(radius)}${tradeSign(radiusKey, design.bearing)}, ${DIMENSION_SYMBOLS[depthKey]} ${say(depth)}${tradeSign(depthKey, design.bearing)}`,
    },
    ...labels,
  ])
}

/** Beside the nose of a profile, in ball diameters. */
const SHOULDER = 0.4

/** Half the width of a groove at its edges, and the bulge of its arc: its height over half its chord. */
function noseOf(radius: Mm, depth: Mm) {
  const wide = grooveHalfWidth({ radius, depth: mm(Math.min(depth, radius)) })
  return { wide, quarter: depth / wide }
}

const BLOCK_HEIGHT = 12
const BLOCKS_APART = BLOCK_HEIGHT + EDGE_ROOM + 2
/** Words of an end stand in a block that has room for them and its own, else beside it. */
const END_WORDS = EDGE_WIDTH + 5
const OWN_WORDS = 24

/** Two strips, as long as the raceway measures across where the sharp tool stops, and when it is done. */
function setBlocks(named: Named, design: DesignOf<DrawnRings>, { setBlocks: all }: GaugeKit, ring: RingName): Item {
  const say = sizeInWordsFor(design.bearing)
  const { input } = design.bearing.resolved
  const blocks = all.filter((block) => block.ring === ring)
  const longest = Math.max(...blocks.map(({ length }) => length))
  const half = longest / 2 + (longest < 2 * END_WORDS + OWN_WORDS ? END_WORDS : 0)
  const figure: Figure = {
    shapes: blocks.flatMap((block, index) => {
      const words = [named.code, wordsOn(block, say, half > longest / 2)]
      const outline = box('finish', -block.length / 2, 0, block.length / 2, BLOCK_HEIGHT, 'outside')
      const shapes = strip(outline, { length: block.length, height: BLOCK_HEIGHT }, words, half > longest / 2)
      return placed(shapes, 1, at(0, -index * BLOCKS_APART))
    }),
    left: -half,
    right: half,
    bottom: -(blocks.length - 1) * BLOCKS_APART - EDGE_ROOM,
    top: BLOCK_HEIGHT,
  }
  const sign = ` ${TRADE_SIGN}`
  const labels = blocks.map(({ at: end, length }) => ({
    words: `${GAUGE_LABELS.block(end, say(length), termsOf(input))}${end === 'stop' ? sign : ''}`,
  }))
  return labelledItem(named.title, figure, labels)
}

/** Words that are smaller cannot be read at the bench. */
const LEAST_WORDS = 1.8

/** Which one it is, with its size where there is room for both: the two of a ring look alike. */
function wordsOn({ at: end, length }: SetBlock, say: SizeText, isMarkedBeside: boolean): string {
  const both = `${end} ${say(length)}`
  return fittedHeight(both, TEXT_HEIGHT, roomIn(length, isMarkedBeside)) < LEAST_WORDS ? end : both
}

/** Within a strip, for its own words. */
const roomIn = (length: number, isMarkedBeside: boolean): number =>
  isMarkedBeside ? 0.9 * length : length - 2 * END_WORDS

interface Across {
  readonly length: Mm
  readonly height: number
}

/** A strip above the origin, its ends marked. */
function strip(
  outline: Shape,
  { length, height }: Across,
  words: readonly string[],
  isMarkedBeside: boolean,
): readonly Shape[] {
  const half = length / 2
  const middle = height / 2
  const room = roomIn(length, isMarkedBeside)
  const ends = ([-1, 1] as const).flatMap((side) => {
    const out = isMarkedBeside ? side : -side
    return [
      arrowHead(at(side * half, middle), out === 1 ? 180 : 0),
      edgeWords(EDGES.touches, at(side * half + out * 4, middle - SMALL_TEXT_HEIGHT / 2), out === 1 ? 'start' : 'end'),
    ]
  })
  return [
    outline,
    ...words.map((content, row) => carried(content, at(0, middle + 1 - 4 * row), room, BLOCK_HEIGHT / 5)),
    ...ends,
    cutWords(at(0, 0)),
  ]
}

const STEP = 30

/** Two levels, as far from each other as the groove is deep. */
function depthBlock({ title, code }: Named, design: ThrustDesign, { depthBlock: { step } }: PlateGaugeKit): Item {
  const points = [
    at(-STEP, -BLOCK_HEIGHT),
    at(STEP, -BLOCK_HEIGHT),
    at(STEP, step),
    at(0, step),
    at(0, 0),
    at(-STEP, 0),
  ]
  const figure: Figure = {
    shapes: [
      loop('finish', points, 'outside'),
      ...[at(-STEP / 2, EDGE_WORDS), at(STEP / 2, step + EDGE_WORDS)].map((place) => edgeWords(EDGES.touches, place)),
      carried(code, at(0, -BLOCK_HEIGHT / 2), STEP, BLOCK_HEIGHT / 4),
      cutWords(at(0, -BLOCK_HEIGHT)),
    ],
    left: -STEP,
    right: STEP,
    bottom: -BLOCK_HEIGHT - EDGE_ROOM,
    top: step + EDGE_ROOM,
  }
  const size = sizeInWordsFor(design.bearing)(step)
  return labelledItem(title, figure, [
    { words: `${GAUGE_LABELS.depthBlock(size)}${tradeSign('plates.grooveDepth', design.bearing)}` },
  ])
}

/** Of the tongue that hangs in the bore: so much of the bore and of the plate, and no more than a hand needs, in millimetres. */
const TONGUE = 0.8
const MOST_TONGUE = 10

/** A card that stands on the face with a tongue against the wall of the bore, and has the profile of the groove where the groove is lowest. */
function circleGauge({ title, code }: Named, design: ThrustDesign, { profile, circle: gauge }: PlateGaugeKit): Item {
  const { plate, resolved } = design.bearing
  const { fromBore: tip } = gauge
  const { wide, quarter } = noseOf(profile.radius, profile.depth)
  const [across, long] = [plate.boreDiameter, plate.thickness].map((size) => Math.min(TONGUE * size, MOST_TONGUE)) as [
    number,
    number,
  ]
  const end = tip + wide + SHOULDER * resolved.ballDiameter
  const body = Math.max(resolved.ballDiameter, BLOCK_HEIGHT)
  const points: Vertex[] = [
    at(-across, -body),
    at(end, -body),
    at(end, 0),
    { ...at(tip + wide, 0), bulge: quarter },
    at(tip - wide, 0),
    at(0, 0),
    at(0, long),
    at(-across, long),
  ]
  // Past the arrow at the tongue.
  const above = Math.max(3.5, tip - EDGE_WIDTH / 2)
  const figure: Figure = {
    shapes: [
      loop('finish', points, 'outside'),
      edgeWords(EDGES.touches, at(-0.5, long + EDGE_WORDS), 'end'),
      arrowHead(at(0, long / 2), 180),
      edgeWords(EDGES.touches, at(above, profile.depth + EDGE_WORDS), 'start'),
      carried(code, at((end - across) / 2, -0.6 * body), 0.8 * (end + across), 0.3 * body),
      cutWords(at((end - across) / 2, -body)),
    ],
    left: -Math.max(across, EDGE_WIDTH + 0.5),
    right: Math.max(end, above + EDGE_WIDTH),
    bottom: -body - EDGE_ROOM,
    top: Math.max(long, profile.depth) + EDGE_ROOM,
  }
  return labelledItem(title, figure, [{ words: GAUGE_LABELS.circle(sizeInWordsFor(design.bearing)(tip)) }])
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
  const figure = edged({
    shapes: [
      loop('finish', points, 'outside'),
      ...centreTick(round * rise),
      carried(code, at(0, 3 - height), 1.6 * half, PLATE_HEIGHT / 4),
    ],
    left: -half,
    right: half,
    bottom: -height,
    top: Math.max(0, round * rise),
  })
  const size = `${DIMENSION_SYMBOLS[key]} Ø${sizeInWordsFor(design.bearing)(diameter)}${tradeSign(key, design.bearing)}`
  return labelledItem(title, figure, [{ words: GAUGE_LABELS.edge(size) }])
}

/** The code on the gauge itself, its middle here, no wider and no higher than there is room. */
const carried = (code: string, { x, y }: Point, room: number, high: number): Shape =>
  text(code, at(x, y), fittedHeight(code, Math.min(TEXT_HEIGHT, high), room), 'middle', { role: 'mark' })

/** The middle of the edge. */
const centreTick = (y: number): readonly Shape[] => [line('mark', at(0, y - 1), at(0, y - 4))]
