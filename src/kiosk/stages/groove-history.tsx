import type { FittedRing } from '#shared/questions/fit/fit-setup.ts'
import type { Units } from '#shared/units/length.ts'
import { ringNow } from '#src/kiosk/job/lathe.ts'
import type { Cut, GrooveState, Reading } from '#src/kiosk/job/reading.ts'
import { cutLine, LATHE, latheWords, readingLine } from '#src/words/kiosk/lathe.ts'
import type { Terms } from '#src/words/terms.ts'

/** What was read of the groove as it is now, and every state before it with the cut that ended it. */
export function GrooveHistory(of: {
  readonly states: readonly GrooveState[]
  readonly ring: FittedRing
  readonly units: Units
  readonly terms: Terms
  readonly onRemove: (index: number) => void
  readonly onStartAgain: () => void
}) {
  const now = ringNow(of.states)
  const lineOf = ({ kind, value, second, result }: Reading): string =>
    readingLine({ kind, value, second, result, units: of.units, terms: of.terms })
  const lineOfCut = ({ with: tool, radial, strokes }: Cut): string =>
    cutLine({ tool, radial, strokes }, of.units, of.terms)
  const stateLine = ({ readings, cut }: GrooveState): string =>
    [...readings.map(lineOf), ...(cut === undefined ? [] : [lineOfCut(cut)])].join('; ')
  const earlier = of.states.slice(0, -1)
  return (
    <section class="history">
      <h3>{latheWords(of.ring, of.terms).now}</h3>
      {now.readings.length === 0 && <p>{earlier.length === 0 ? LATHE.nothingRead : LATHE.nothingSince}</p>}
      <ul id="read-now">
        {now.readings.map((reading, index) => (
          // A reading may be entered twice: its place is all that tells it apart.
          <li key={`${index} ${lineOf(reading)}`}>
            {lineOf(reading)}{' '}
            <button type="button" onClick={() => of.onRemove(index)} aria-label={`${LATHE.remove}: ${lineOf(reading)}`}>
              {LATHE.remove}
            </button>
          </li>
        ))}
      </ul>
      {earlier.length > 0 && (
        <>
          <h3>{LATHE.history}</h3>
          <ol id="read-before">
            {earlier.map((state, index) => (
              <li key={index}>{stateLine(state)}</li>
            ))}
          </ol>
          <button type="button" onClick={of.onStartAgain}>
            {LATHE.startAgain}
          </button>
        </>
      )}
    </section>
  )
}
