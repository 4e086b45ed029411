import { BALLS } from '#src/words/kiosk/balls.ts'
import type { Terms } from '#src/words/terms.ts'

const SIZE = 340
const MIDDLE = SIZE / 2
/** Nobody could see a tenth of a millimetre. */
const EXAGGERATION = 20
/** Of the usual ball, what the picture of one may at most differ by. */
const MOST = 0.35
/** Of the room for a ball, what the largest takes. */
const FILLED = 0.98
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
  const offOf = (diameter: number) => Math.min(Math.max((EXAGGERATION * (diameter - mean)) / mean, -MOST), MOST)
  const usual = (radius * place * FILLED) / (1 + Math.max(...balls.map(({ diameter }) => offOf(diameter))))
  const told = balls.map(({ number, diameter }) => `${number}: ${diameter}`).join(', ')
  return (
    <figure class="front">
      <svg viewBox={`0 0 ${SIZE} ${SIZE}`} role="img" aria-label={`${BALLS.ring(terms)}: ${told}`}>
        {balls.map(({ number, diameter }, index) => {
          const angle = (2 * Math.PI * index) / balls.length - Math.PI / 2
          const [x, y] = [MIDDLE + radius * Math.cos(angle), MIDDLE + radius * Math.sin(angle)]
          return (
            <g key={number}>
              <circle class="ball" cx={x} cy={y} r={usual * (1 + offOf(diameter))} />
              {usual >= LEAST_FOR_NUMBERS && (
                <text x={x} y={y + 5} text-anchor="middle">
                  {number}
                </text>
              )}
            </g>
          )
        })}
      </svg>
      <figcaption>{usual >= LEAST_FOR_NUMBERS ? BALLS.numbered : `${BALLS.ring(terms)}: ${told}`}</figcaption>
    </figure>
  )
}
