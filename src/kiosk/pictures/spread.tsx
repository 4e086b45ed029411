import { lengthOf, type Units } from '#shared/units/length.ts'
import { figure } from '#src/words/figure.ts'

const WIDTH = 340
const HEIGHT = 150
const FOOT = 24

/** A spread as columns, those within the good band in its colour, the ends of the band named below. */
export function SpreadPicture(of: {
  readonly title: string
  readonly line: string
  readonly edges: readonly number[]
  readonly counts: readonly number[]
  readonly units: Units
  readonly band: { readonly min: number; readonly max: number }
}) {
  const { edges, counts, band } = of
  const [first = 0, last = 1] = [edges[0], edges.at(-1)]
  const most = Math.max(...counts, 1)
  const across = (value: number) => (WIDTH * (value - first)) / (last - first)
  return (
    <figure class="strip">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT + FOOT}`} role="img" aria-label={`${of.title}. ${of.line}`}>
        {counts.map((count, index) => {
          const [from = 0, to = 0] = [edges[index], edges[index + 1]]
          const isGood = (from + to) / 2 >= band.min && (from + to) / 2 <= band.max
          const height = (HEIGHT * count) / most
          return (
            <rect
              key={from}
              class={isGood ? 'part-1' : 'part-0'}
              x={across(from)}
              y={HEIGHT - height}
              width={Math.max(across(to) - across(from) - 0.5, 0)}
              height={height}
            />
          )
        })}
        {[band.min, band.max].map((end) => (
          <g key={end}>
            <path class="end" d={`M${across(end)} 0 V${HEIGHT + 4}`} />
            <text x={Math.min(Math.max(across(end), 24), WIDTH - 24)} y={HEIGHT + 20} text-anchor="middle">
              {figure(lengthOf(end, of.units), of.units).replace(` ${of.units}`, '')}
            </text>
          </g>
        ))}
      </svg>
      <figcaption>
        {of.title}. {of.line}
      </figcaption>
    </figure>
  )
}
