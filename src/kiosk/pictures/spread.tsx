import { inUnits, type Units } from '#shared/units/length.ts'
import { decimalFigure } from '#src/words/figure.ts'
import type { GoodGap } from '#src/words/good-gap.ts'

const WIDTH = 340
const HEIGHT = 150
const FOOT = 24

/**
 * A spread as columns: in their colour those within the band to which a ring is made, and paler those that are good if the last ball goes
 * in. The ends of the band are named below.
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
  const min = inUnits(band.min, units)
  const free = inUnits(band.free, units)
  const most = inUnits(band.most, units)
  const classOf = (gap: number) => (gap < min || gap > most ? 'part-0' : gap < free ? 'part-1 maybe' : 'part-1')
  return (
    <figure class="strip">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT + FOOT}`} role="img" aria-label={`${of.title}. ${of.line}`}>
        {counts.map((count, index) => {
          const [from = 0, to = 0] = [edges[index], edges[index + 1]]
          const height = (HEIGHT * count) / tallest
          return (
            <rect
              key={from}
              class={classOf((from + to) / 2)}
              x={across(from)}
              y={HEIGHT - height}
              width={Math.max(across(to) - across(from) - 0.5, 0)}
              height={height}
            />
          )
        })}
        {[band.free, band.most].map((end) => {
          const x = across(inUnits(end, units))
          return (
            <g key={end}>
              <path class="end" d={`M${x} 0 V${HEIGHT + 4}`} />
              <text x={Math.min(Math.max(x, 24), WIDTH - 24)} y={HEIGHT + 20} text-anchor="middle">
                {decimalFigure(end, units).replace(` ${units}`, '')}
              </text>
            </g>
          )
        })}
      </svg>
      <figcaption>{of.line}</figcaption>
    </figure>
  )
}
