import { type Json, numberOf, textOf } from '#src/kiosk/json.ts'
import { percent } from '#src/words/figure.ts'
import { PLACE, STATE_NAMES } from '#src/words/kiosk/place.ts'

const WIDTH = 340
const HEIGHT = 120
const FOOT = 26
/** A column that is narrower has room for a letter below it, and for no figure. */
const LEAST_FOR_FIGURES = 70

/** As the sentences beside it have it: never none, never all. */
const outOf100 = (share: number): number | string => {
  const count = Math.round(share * 100)
  return count === 0 ? '< 1' : count === 100 ? '> 99' : count
}

/** The states of a year side by side, or its months: how many of a hundred bearings run in each. */
export function YearPicture({ states }: { readonly states: readonly Json[] }) {
  const step = WIDTH / states.length
  const isWide = step >= LEAST_FOR_FIGURES
  const columns = states.map((state) => ({
    name: STATE_NAMES[textOf(state['name'])] ?? textOf(state['name']),
    runs: Math.min(Math.max(numberOf(state['runs']) || 0, 0), 1),
  }))
  const told = columns.map(({ name, runs }) => `${name}: ${percent(runs)} ${PLACE.runs}`).join(', ')
  return (
    <figure class="strip">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT + FOOT}`} role="img" aria-label={told}>
        {columns.map(({ name, runs }, index) => (
          <g key={name}>
            <rect class="part-2" x={index * step + 2} y={0} width={step - 4} height={HEIGHT} />
            <rect class="part-1" x={index * step + 2} y={HEIGHT * (1 - runs)} width={step - 4} height={HEIGHT * runs} />
            {isWide && (
              <>
                <rect class="plate" x={(index + 0.5) * step - 34} y={HEIGHT / 2 - 15} width={68} height={24} />
                <text x={(index + 0.5) * step} y={HEIGHT / 2 + 3} text-anchor="middle">
                  {outOf100(runs)} %
                </text>
              </>
            )}
            <text x={(index + 0.5) * step} y={HEIGHT + 19} text-anchor="middle">
              {isWide ? name : name.slice(0, 1)}
            </text>
          </g>
        ))}
      </svg>
      {!isWide && <figcaption>{PLACE.green}</figcaption>}
    </figure>
  )
}
