import { useId } from 'preact/hooks'
import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import { valueOrUsual } from '#src/kiosk/job/bearing.ts'
import type { BearingTexts } from '#src/kiosk/job/job.ts'
import { BEARING } from '#src/words/kiosk/bearing.ts'

/** How deep a slider reaches, in hundredths of a ball. Common practice, no source. */
const MOST = { outerRing: 50, innerRing: 60 } as const
const LEAST = 5

/** The depth of a groove in hundredths of a ball, or its usual one. Where it is given as a length, there is nothing to slide. */
export function DepthSlider(of: {
  readonly ring: 'outerRing' | 'innerRing'
  readonly arrangement: ArrangementName
  readonly bearing: BearingTexts
  readonly set: (changes: BearingTexts) => void
}) {
  const id = useId()
  const name = `${of.ring}.engagement`
  const text = valueOrUsual(of.bearing, of.arrangement, name)
  if (text === '' || of.bearing[`${of.ring}.grooveDepth`] !== undefined) return null
  const hundredths = Math.round(Number(text) * 100)
  return (
    <div class="slide">
      <label for={id}>{BEARING[of.ring]}</label>
      <input
        id={id}
        type="range"
        name={of.ring}
        min={LEAST}
        max={MOST[of.ring]}
        step={1}
        value={hundredths}
        onInput={({ currentTarget }) => of.set({ [name]: String(Number(currentTarget.value) / 100) })}
      />
      <output for={id}>{hundredths} %</output>
    </div>
  )
}
