import type { FittedRing } from '#shared/questions/fit/fit-setup.ts'
import type { ToolName } from '#shared/questions/fit/reading.ts'
import { lengthOf, type Units } from '#shared/units/length.ts'
import { Messages } from '#src/kiosk/controls.tsx'
import type { DerivedBearing } from '#src/kiosk/derived-bearing.ts'
import { type Json, listOf, messagesOf, numberOf, part, textOf } from '#src/kiosk/json.ts'
import type { Awaited } from '#src/kiosk/reply.ts'
import { later } from '#src/kiosk/second-script.ts'
import { Answered } from '#src/kiosk/waiting.tsx'
import { percent } from '#src/words/figure.ts'
import { type BeforeInner, type Headlines, LATHE, latheWords, tooFar } from '#src/words/kiosk/lathe.ts'
import type { Terms } from '#src/words/terms.ts'

/** What to do next, large enough to read from two metres. Its title names the bearing and the ring that it is for. */
export function Advice(of: {
  readonly reply: Awaited
  readonly derived: DerivedBearing
  readonly title: string
  /** Why the outer ring must be done before this one. */
  readonly before: BeforeInner | undefined
  readonly toOuter: () => void
  /** Only one reading is entered. */
  readonly isLone: boolean
  /** What comes when this groove is finished. */
  readonly next: Next
}) {
  const { units, terms } = of.derived
  return (
    <section class="advice" id="advice" role="status" aria-label={of.title}>
      <p class="advice-for">{of.title}</p>
      {isContradicted(of.reply) && <p class="headline">{later()?.doubtWords(of.isLone).headline}</p>}
      <Answered reply={of.reply}>
        {(answer) => {
          const disagreements = disagreementsIn(answer)
          // To stop is right either way, but for a reading that was probably of something else.
          const isLost = answer['reason'] === 'too-deep' && answer['askedReading'] === undefined
          const isSure = isLost || disagreements.length === 0
          // Balls in a row say nothing of the groove: there may be none yet.
          const isFresh =
            isSure && answer['state'] === 'unread' && listOf(part(answer['input'])['earlier']).length === 0
          const tool = isFresh ? 'sharp-tool' : part(answer['nextStep'])['with']
          const doubt = later()?.doubtWords(isOnlyReading(answer))
          const faces = isSure && later()?.facesAdvice(answer, terms)
          if (of.before !== undefined && answer['action'] !== 'stop')
            return (
              <>
                <p class="headline">{of.before.headline}</p>
                <p class="summary">{of.before.summary}</p>
                <Go label={of.before.label} go={of.toOuter} />
              </>
            )
          return (
            <>
              <p class="headline">{isSure ? headlineOf(answer, units, terms) : doubt?.headline}</p>
              <p class="summary">{textOf(answer['summary'])}</p>
              {isFresh && <p>{later()?.firstCut(of.derived, ringOf(answer))}</p>}
              {isSure && tool !== undefined && (
                <p class="fault">{later()?.cuttingCaution(tool as ToolName, ringOf(answer), terms)}</p>
              )}
              {isSure && answer['reason'] === 'in-band' && <Go {...of.next} />}
              {faces && <p>{faces}</p>}
              <Messages title={doubt?.title ?? ''} texts={disagreements} />
              {isSure && <Rescues answer={answer} />}
            </>
          )
        }}
      </Answered>
    </section>
  )
}

const isContradicted = (reply: Awaited): boolean => reply.kind === 'problem' && reply.faults.has('readings')

/** Where the job goes on. */
export interface Next {
  readonly label: string | undefined
  readonly go: () => void
}

/** The button to where the job goes on. */
export const Go = ({ label, go }: Next) => (
  <button type="button" class="go large" id="fitted" onClick={go}>
    {label}
  </button>
)

function isOnlyReading(answer: Json): boolean {
  const { earlier, readings } = part(answer['input'])
  return listOf(earlier).length === 0 && listOf(readings).length === 1
}

/** Before anything told where the groove is, all that is said of it would be a guess from the drawing. */
const GUESSED = ['groove-unread', 'refusal-has-no-figure']

function isGuess(answer: Json): boolean {
  const why = textOf(part(answer['nextReading'])['why'])
  return listOf(part(answer['input'])['earlier']).length === 0 && GUESSED.includes(why)
}

const disagreementsIn = (answer: Json): readonly string[] => messagesOf(part(answer['agreement'])['disagreements'])

/** The groove as the readings show it. Where they do not agree, nothing is certain of it. */
export function GrooveNow({ reply, derived }: { readonly reply: Awaited; readonly derived: DerivedBearing }) {
  if (reply.kind !== 'answer' || disagreementsIn(reply.body).length > 0 || isGuess(reply.body)) return null
  return (
    <>
      <Chances answer={reply.body} terms={derived.terms} />
      <p>{stateOf(reply.body, derived)}</p>
    </>
  )
}

/** How far to cut, or why not to. */
function headlineOf(answer: Json, units: Units, terms: Terms): string {
  const step = part(answer['nextStep'])
  const [until] = Object.values(part(step['until']))
  if (answer['action'] === 'cut') {
    const size = step['isSizeKnown'] === true && typeof until === 'number' ? lengthOf(until, units) : undefined
    const tool = step['with'] === 'abrasive' ? 'abrasive' : 'sharp-tool'
    return later()?.cutLarge({ tool, radial: lengthOf(numberOf(step['radial']), units), size }, units, terms) ?? ''
  }
  return (
    later()?.headlines(answer['ring'] === undefined ? 'plate' : ringOf(answer), terms)[
      (answer['reason'] ?? answer['action']) as keyof Headlines
    ] ?? ''
  )
}

const ringOf = (answer: Json): FittedRing => (answer['ring'] === 'inner' ? 'inner' : 'outer')

function Chances({ answer, terms }: { readonly answer: Json; readonly terms: Terms }) {
  const ring = ringOf(answer)
  const words = latheWords(ring, terms)
  const Picture = later()?.BandPicture
  const { tooTight, inBand, tooDeep } = part(answer['probability'])
  const chances = [tooTight, inBand, tooDeep].map(numberOf)
  const risk = answer['action'] === 'cut' ? numberOf(part(answer['nextStep'])['overshootProbability']) : undefined
  return (
    <>
      {risk !== undefined && (
        <p class="risk">
          {words.chance}: {percent(risk)}
        </p>
      )}
      <h3>{words.standing}</h3>
      {Picture && (
        <Picture title={words.standing} names={[LATHE.tooTight, LATHE.inBand, tooFar(ring, terms)]} chances={chances} />
      )}
    </>
  )
}

function stateOf(answer: Json, { design, units, terms }: DerivedBearing): string | undefined {
  const isInner = ringOf(answer) === 'inner'
  const figure = part(answer[isInner ? 'radialInternalClearance' : 'ballGap'])
  const { min, max } = part(figure['interval95'])
  const length = (value: unknown) => lengthOf(numberOf(value), units)
  const told = { value: length(figure['value']), low: length(min), high: length(max) }
  if (isInner) {
    const { minRadialInternalClearance: least, maxRadialInternalClearance: most } = part(
      part(answer['input'])['target'],
    )
    return later()?.playNow(told, { low: length(least), high: length(most) }, units)
  }
  const good = design && later()?.goodGapOf(design, terms)
  return [later()?.gapNow(told, units), good].join(' ')
}

/** The possible ones first, in the order in which to try them. */
function Rescues({ answer }: { readonly answer: Json }) {
  const options = listOf(answer['rescue']).map(part)
  if (options.length === 0) return null
  // Of balls that the maker has listed it is said why none of them serve.
  const isListed = listOf(part(answer['input'])['ballsOnHand']).length > 0
  const passedOver = options.filter(
    ({ option, possible }) => isListed && option === 'balls-on-hand' && possible !== true,
  )
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
      {passedOver.map(({ message }) => (
        <p key="balls-on-hand">{textOf(message)}</p>
      ))}
    </section>
  )
}
