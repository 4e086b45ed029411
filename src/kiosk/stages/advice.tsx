import { lengthOf, type Units } from '#shared/units/length.ts'
import { Messages } from '#src/kiosk/controls.tsx'
import type { DerivedBearing } from '#src/kiosk/derived-bearing.ts'
import { BandPicture } from '#src/kiosk/pictures/band.tsx'
import type { Awaited } from '#src/kiosk/reply.ts'
import { type Json, listOf, messagesOf, numberOf, part, textOf } from '#src/kiosk/service.ts'
import { Answered } from '#src/kiosk/waiting.tsx'
import { percent } from '#src/words/figure.ts'
import { cutUntil, gapNow, HEADLINES, LATHE, playNow, sandUntil } from '#src/words/kiosk/lathe.ts'

/** What to do next, large enough to read from two metres. Its title names the bearing and the ring that it is for. */
export function Advice(of: { readonly reply: Awaited; readonly derived: DerivedBearing; readonly title: string }) {
  const { units, terms } = of.derived
  return (
    <section class="advice" id="advice" role="status" aria-label={of.title}>
      <p class="advice-for">{of.title}</p>
      <Answered reply={of.reply}>
        {(answer) => (
          <>
            <p class="headline">{headlineOf(answer, units, terms.acrossIt)}</p>
            <p class="summary">{textOf(answer['summary'])}</p>
            <Chances answer={answer} />
            <p>{stateOf(answer, units)}</p>
            <Messages title={LATHE.disagree} texts={messagesOf(part(answer['agreement'])['disagreements'])} />
            <Rescues answer={answer} />
          </>
        )}
      </Answered>
    </section>
  )
}

/** The size to stop at, or why not to cut. */
function headlineOf(answer: Json, units: Units, acrossIt: string): string {
  const step = part(answer['nextStep'])
  const [until] = Object.values(part(step['until']))
  if (answer['action'] === 'cut' && typeof until === 'number') {
    const size = `${onTheSafeSide(until, answer['ring'] === 'inner', units)} ${units}`
    return step['with'] === 'abrasive' ? sandUntil(size, acrossIt) : cutUntil(size, acrossIt)
  }
  return HEADLINES[(answer['reason'] ?? answer['action']) as keyof typeof HEADLINES] ?? ''
}

/** Rounded to what a caliper reads, on the side on which less wood comes off: an inner groove gets smaller, all others larger. */
function onTheSafeSide(size: number, isInner: boolean, units: Units): string {
  const steps = 10 ** UNTIL_DECIMALS[units]
  const rounded = isInner ? Math.ceil(size * steps - NEARLY) : Math.floor(size * steps + NEARLY)
  return (rounded / steps).toFixed(UNTIL_DECIMALS[units])
}

/** Of a step: a figure that is one already stays it. */
const NEARLY = 1e-6

const UNTIL_DECIMALS: Readonly<Record<Units, number>> = { in: 3, mm: 1 }

function Chances({ answer }: { readonly answer: Json }) {
  const { tooTight, inBand, tooDeep } = part(answer['probability'])
  const chances = [tooTight, inBand, tooDeep].map(numberOf)
  const risk = answer['action'] === 'cut' ? numberOf(part(answer['nextStep'])['overshootProbability']) : undefined
  return (
    <>
      {risk !== undefined && (
        <p class="risk">
          {LATHE.chance}: {percent(risk)}
        </p>
      )}
      <BandPicture title={LATHE.standing} names={[LATHE.tooTight, LATHE.inBand, LATHE.tooDeep]} chances={chances} />
    </>
  )
}

function stateOf(answer: Json, units: Units): string {
  const isInner = answer['ring'] === 'inner'
  const figure = part(answer[isInner ? 'radialInternalClearance' : 'ballGap'])
  const { min, max } = part(figure['interval95'])
  const length = (value: unknown) => lengthOf(numberOf(value), units)
  const told = isInner ? playNow : gapNow
  return told({ value: length(figure['value']), low: length(min), high: length(max) }, units)
}

/** The possible ones first, in the order in which to try them. */
function Rescues({ answer }: { readonly answer: Json }) {
  const options = listOf(answer['rescue']).map(part)
  if (options.length === 0) return null
  return (
    <section class="rescue">
      <h3>{LATHE.rescue}</h3>
      <ol>
        {options
          .filter((option) => option['possible'] === true)
          .map((option) => (
            <li key={textOf(option['option'])}>
              {textOf(option['message'])} {textOf(option['livingWithIt'])}
            </li>
          ))}
      </ol>
    </section>
  )
}
