import { BALLS } from '#src/words/kiosk/balls.ts'
import type { Terms } from '#src/words/terms.ts'

const SIZE = 340
const MIDDLE = SIZE / 2
/** Nobody could see a tenth of a millimetre. */
const EXAGGERATION = 20
/** Of a ball's place, what its picture may at most differ by. */
const MOST = 0.35
/** Below this the numbers would run into each other. */
const LEAST_FOR_NUMBERS = 11

/** The chosen balls in their order round the ring, their differences drawn large. */
export function LotPicture({
  balls,
  terms,
}: {
  readonly terms: Terms
  readonly balls: readonly { readonly number: number; readonly diameter: number }[]
}) {
  const mean = balls.reduce((sum, { diameter }) => sum + diameter, 0) / balls.length
  const place = Math.sin(Math.PI / balls.length)
  const radius = MIDDLE / (1 + 1.4 * place)
  const usual = radius * place * 0.9
  const told = balls.map(({ number, diameter }) => `${number}: ${diameter}`).join(', ')
  return (
    <figure class="front">
      <svg viewBox={`0 0 ${SIZE} ${SIZE}`} role="img" aria-label={`${BALLS.ring(terms)}: ${told}`}>
        {balls.map(({ number, diameter }, index) => {
          const angle = (2 * Math.PI * index) / balls.length - Math.PI / 2
          const [x, y] = [MIDDLE + radius * Math.cos(angle), MIDDLE + radius * Math.sin(angle)]
          const off = Math.min(Math.max((EXAGGERATION * (diameter - mean)) / mean, -MOST), MOST)
          return (
            <g key={number}>
              <circle class="ball" cx={x} cy={y} r={usual * (1 + off)} />
              {usual >= LEAST_FOR_NUMBERS && (
                <text x={x} y={y + 5} text-anchor="middle">
                  {number}
                </text>
              )}
            </g>
          )
        })}
      </svg>
      <figcaption>{BALLS.numbered}</figcaption>
    </figure>
  )
}
