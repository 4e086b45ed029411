import type { CagedBearing, Design } from '#shared/bearing/arrangements.ts'
import { isOfPlates } from '#shared/bearing/arrangements.ts'
import { bearingFacts } from '#src/words/bearing-facts.ts'
import { figure } from '#src/words/figure.ts'
import { BEARING } from '#src/words/kiosk/bearing.ts'

/** Of the picture, in units that are pixels on the narrowest screen: text of 16 can be read there. */
const SIZE = 340
const MIDDLE = SIZE / 2
const LABELS = 44

interface Ring {
  readonly radius: number
  readonly class: string
}

/** The bearing from the front with its three main sizes and text that can be read on a phone. The gap is drawn as wide as it is. */
export function FrontPicture({ design }: { readonly design: Design }) {
  const { count, ballDiameter, outside, bore, units } = bearingFacts(design)
  const scale = (MIDDLE - 4) / (outside / 2)
  const { pitchRadius } = design.bearing
  const step = stepOf(design, count)
  const rings: readonly Ring[] = [
    { radius: outside / 2, class: 'wood' },
    ...(isOfPlates(design)
      ? []
      : [
          { radius: design.bearing.outerRing.landDiameter / 2, class: 'hollow' },
          { radius: design.bearing.innerRing.landDiameter / 2, class: 'wood' },
        ]),
    { radius: bore / 2, class: 'hollow' },
  ]
  const balls = Array.from({ length: count }, (_, index) => {
    const angle = index * step - Math.PI / 2
    return { x: MIDDLE + pitchRadius * scale * Math.cos(angle), y: MIDDLE + pitchRadius * scale * Math.sin(angle) }
  })
  const labels = [
    `⌀ ${figure(outside, units)}`,
    `${count} × ${figure(ballDiameter, units)}`,
    `⌀ ${figure(bore, units)}`,
  ]
  return (
    <figure class="front">
      <svg viewBox={`0 0 ${SIZE} ${SIZE + LABELS}`} role="img" aria-label={`${BEARING.picture}: ${labels.join(', ')}`}>
        {rings.map(({ radius, class: name }) => (
          <circle key={`${name}${radius}`} class={name} cx={MIDDLE} cy={MIDDLE} r={Math.max(radius * scale, 0)} />
        ))}
        {'cage' in design.bearing && <Cage of={design.bearing} step={step} scale={scale} />}
        {balls.map(({ x, y }) => (
          <circle key={`${x} ${y}`} class="ball" cx={x} cy={y} r={(ballDiameter / 2) * scale} />
        ))}
        {labels.map((label, index) => (
          <text
            key={label}
            x={[4, MIDDLE, SIZE - 4][index]}
            y={SIZE + 28}
            text-anchor={['start', 'middle', 'end'][index]}
          >
            {label}
          </text>
        ))}
      </svg>
    </figure>
  )
}

/** The webs of a cage as one dashed circle: it begins behind the first pocket, and a dash and a gap are a step. */
function Cage(part: { readonly of: CagedBearing; readonly step: number; readonly scale: number }) {
  const { cage, pitchRadius } = part.of
  const half = Math.asin(cage.pocketDiameter / 2 / pitchRadius)
  const open = (2 * half) / part.step
  return (
    <circle
      class="cage"
      cx={MIDDLE}
      cy={MIDDLE}
      r={((cage.outsideDiameter + cage.boreDiameter) / 4) * part.scale}
      stroke-width={((cage.outsideDiameter - cage.boreDiameter) / 2) * part.scale}
      pathLength={(2 * Math.PI) / part.step}
      stroke-dasharray={`${1 - open} ${open}`}
      transform={`rotate(${(half * 180) / Math.PI - 90} ${MIDDLE} ${MIDDLE})`}
    />
  )
}

/** From one ball to the next: side by side where the ring is full, else evenly. */
function stepOf(design: Design, count: number): number {
  const even = (2 * Math.PI) / count
  if (!('ballGap' in design.bearing)) return even
  const { pitchRadius, resolved } = design.bearing
  const half = resolved.ballDiameter / (2 * pitchRadius)
  return half < 1 ? Math.min(even, 2 * Math.asin(half)) : even
}
