import { itemAt } from '#shared/numbers/item-at.ts'
import { certainties } from '#src/words/figure.ts'

const WIDTH = 340
const HEIGHT = 36

/** Chances as a bar that is split by them, each named below it. */
export function BandPicture(of: {
  readonly title: string
  readonly names: readonly string[]
  readonly chances: readonly number[]
}) {
  const labels = certainties(of.chances).map((share, index) => `${of.names[index]}: ${share}`)
  const starts = of.chances.map((_, index) => of.chances.slice(0, index).reduce((sum, chance) => sum + chance, 0))
  return (
    <figure class="band">
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        preserveAspectRatio="none"
        role="img"
        aria-label={`${of.title}: ${labels.join(', ')}`}
      >
        {of.chances.map((chance, index) => (
          <rect
            key={of.names[index]}
            class={`part-${index}`}
            x={itemAt(starts, index) * WIDTH}
            y={0}
            width={Math.max(chance, 0) * WIDTH}
            height={HEIGHT}
          />
        ))}
      </svg>
      <figcaption aria-hidden="true">
        {labels.map((label, index) => (
          <span key={label} class={`of-${index}`}>
            {label}
          </span>
        ))}
      </figcaption>
    </figure>
  )
}
