import { inUnits, type Units } from '#shared/units/length.ts'
import { decimalFigure } from '#src/words/figure.ts'
import type { GoodGap } from '#src/words/good-gap.ts'
import { middlesBelow } from './figures-below.ts'

const WIDTH = 340
const HEIGHT = 150
const FOOT = 24

/**
 * A spread as columns: in their colour as far as they are within the band to which a ring is made, and paler what is good if the last ball
 * goes in. A column that an end of the band crosses changes its colour there. The ends of the band are named below.
 */
export function SpreadPicture(of: {
  readonly title: string
  readonly line: string
  readonly edges: readonly number[]
  readonly counts: readonly number[]
  readonly units: Units
  readonly band: GoodGap
}) {
  const { edges, counts, units, band } = of
  const [first = 0, last = 1] = [edges[0], edges.at(-1)]
  const tallest = Math.max(...counts, 1)
  const across = (value: number) => (WIDTH * (value - first)) / (last - first)
  const ends = [band.min, band.free, band.most].map((end) => inUnits(end, units))
  const [min = 0, free = 0, most = 0] = ends
  const nameOf = (gap: number) => (gap < min || gap > most ? 'part-0' : gap < free ? 'part-1 maybe' : 'part-1')
  // The ends that the line below names.
  const named = free > most ? [band.most] : [band.free, band.most]
  const figures = named.map((end) => decimalFigure(end, units))
  const places = middlesBelow(
    named.map((end) => across(inUnits(end, units))),
    figures,
    WIDTH,
  )
  return (
    <figure class="strip">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT + FOOT}`} role="img" aria-label={`${of.title}. ${of.line}`}>
        {counts.map((count, index) => {
          const [from = 0, to = 0] = [edges[index], edges[index + 1]]
          const height = (HEIGHT * count) / tallest
          return partsOf(from, to, ends).map((part) => (
            <rect
              key={part.from}
              class={nameOf((part.from + part.to) / 2)}
              x={across(part.from)}
              y={HEIGHT - height}
              width={Math.max(across(part.to) - across(part.from) - (part.to === to ? 0.5 : 0), 0)}
              height={height}
            />
          ))
        })}
        {named.map((end, index) => (
          <g key={end}>
            <path class="end" d={`M${across(inUnits(end, units))} 0 V${HEIGHT + 4}`} />
            <text x={places[index]} y={HEIGHT + 20} text-anchor="middle">
              {figures[index]}
            </text>
          </g>
        ))}
      </svg>
      <figcaption>{of.line}</figcaption>
    </figure>
  )
}

/** A column, parted where an end of the band crosses it. */
function partsOf(from: number, to: number, ends: readonly number[]) {
  const cuts = [from, ...ends.filter((end) => end > from && end < to).toSorted((one, other) => one - other), to]
  return cuts.slice(1).map((end, index) => ({ from: cuts[index] ?? from, to: end }))
}
