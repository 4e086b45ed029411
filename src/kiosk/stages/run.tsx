import { traitsOf } from '#shared/bearing/arrangements.ts'
import { goodGaps } from '#shared/bearing/ball-ring.ts'
import type { Traits } from '#shared/bearing/traits.ts'
import type { ContributorName } from '#shared/questions/tolerance/input.ts'
import { inKilograms } from '#shared/units/force.ts'
import { inUnits, mm } from '#shared/units/length.ts'
import { TextField } from '#src/kiosk/controls.tsx'
import type { DerivedBearing } from '#src/kiosk/derived-bearing.ts'
import { hasPlace } from '#src/kiosk/job/bearing.ts'
import { type ChoiceName, type Job, withChoice } from '#src/kiosk/job/job.ts'
import { readLength, readNumber, Unread } from '#src/kiosk/job/text.ts'
import { type Json, listOf, numberOf, part, textOf } from '#src/kiosk/json.ts'
import { type Awaited, useReply } from '#src/kiosk/reply.ts'
import { later } from '#src/kiosk/second-script.ts'
import type { StageProps } from '#src/kiosk/stage.ts'
import { Answered, isGrave, NoBearing, Summary, Warnings } from '#src/kiosk/waiting.tsx'
import { capitalised, countFigure, figure } from '#src/words/figure.ts'
import { inUnit } from '#src/words/kiosk/page.ts'

const LOAD = { min: 0.01, max: 100_000 }
/** A groove that is cut to a caliper, in millimetres. Common practice, no source. */
const GROOVE_SCATTER = mm(0.1)
/** Of the scatter of single balls, that of the mean of a lot. Common practice, no source. */
const LOT_SCATTER = 0.6

/** How often a bearing runs, and what it carries. */
export function RunStage({ job, derived, change }: StageProps) {
  const { request, units, terms } = derived
  const { members } = traitsOf(derived)
  const scatters = scattersOf(job, derived)
  const check = useReply('/v1/tolerance-check', request && scatters ? { design: request, ...scatters } : undefined)
  const load = loadOf(job, derived)
  const loads = useReply('/v1/load-check', request && load)
  const words = later()?.run
  if (request === undefined) return <NoBearing derived={derived} />
  if (words === undefined) return null
  const field = (name: ChoiceName, label: string, unit: string, read: (text: string) => unknown, hint?: string) => (
    <TextField
      label={inUnit(label, unit)}
      name={name}
      mode="decimal"
      value={job.choices[name] ?? ''}
      fault={faultOf(job.choices[name], read)}
      hint={hint}
      onInput={(text) => change(withChoice(job, name, text), name)}
    />
  )
  const carried = load && (
    <>
      <h3>{words.loads}</h3>
      <CarriedLoad reply={loads} />
    </>
  )
  return (
    <div class="columns">
      <form autocomplete="off" onSubmit={(event) => event.preventDefault()}>
        {hasGap(derived) && (
          <>
            {field('grooveScatter', words.cuts(terms), units, (text) => readLength(text, units))}
            {field('lotScatter', words.lots(terms), units, (text) => readLength(text, units))}
            <p>
              <small>{words.usual(figure(GROOVE_SCATTER, units), terms)}</small>
            </p>
          </>
        )}
        {field(
          'load',
          words.load[members],
          units === 'in' ? 'lbf' : 'N',
          (text) => readNumber(text, LOAD),
          words.weight(units, kilogramsOf(job.choices.load)),
        )}
      </form>
      <div class="result">
        {isGrave(loads) && carried}
        {hasGap(derived) ? !hasPlace(job.bearing) && <p>{words.noPlace}</p> : <p>{words.noGap}</p>}
        {load && hasGap(derived) && <h3>{words.chances}</h3>}
        <Answered reply={check}>{(answer) => <Spread answer={answer} derived={derived} />}</Answered>
        {!isGrave(loads) && carried}
      </div>
    </div>
  )
}

/** Without a gap that must fit nothing is asked of what scatters. */
const hasGap = ({ arrangement }: DerivedBearing): boolean => traitsOf({ arrangement }).ballSet === 'full'

const kilogramsOf = (text = ''): string | undefined => {
  const newtons = readNumber(text, LOAD)
  return newtons instanceof Unread ? undefined : countFigure(inKilograms(newtons))
}

const faultOf = (text: string | undefined, read: (text: string) => unknown): string | undefined => {
  const value = text === undefined ? undefined : read(text)
  return value instanceof Unread ? value.message : undefined
}

function Spread({ answer, derived }: { readonly answer: Json; readonly derived: DerivedBearing }) {
  const { design, units, terms } = derived
  const { histogram } = part(answer['ballGap'])
  const Picture = later()?.SpreadPicture
  return (
    <>
      <Summary text={textOf(answer['summary'])} />
      {Picture && design && 'ballGap' in design.bearing && (
        <Picture
          title={capitalised(terms.gap)}
          line={later()?.goodGapOf(design, terms) ?? ''}
          edges={listOf(part(histogram)['edges']).map(numberOf)}
          counts={listOf(part(histogram)['counts']).map(numberOf)}
          units={units}
          band={goodGaps(design.bearing.resolved)}
        />
      )}
      <Warnings answer={answer} />
    </>
  )
}

/** What a bearing carries. */
export const CarriedLoad = ({ reply }: { readonly reply: Awaited }) => (
  <Answered reply={reply}>
    {(answer) => (
      <>
        <Summary text={textOf(answer['summary'])} isGrave={isGrave(reply)} />
        <Warnings answer={answer} />
      </>
    )}
  </Answered>
)

/** What a cut misses, as a tolerance check names it. */
const CUT: Readonly<Record<Traits['members'], readonly ContributorName[]>> = {
  rings: ['outerGrooveBottomRadius', 'innerGrooveBottomRadius'],
  plates: ['grooveCircleRadius', 'grooveDepth'],
}

/** What differs from bearing to bearing; undefined while a figure cannot be read. */
function scattersOf({ choices }: Job, { design, units, arrangement }: DerivedBearing): object | undefined {
  if (design === undefined || !('ballGap' in design.bearing)) return undefined
  const { standardDeviation } = design.bearing.resolved.input.balls
  const ofBalls = standardDeviation === undefined ? undefined : inUnits(standardDeviation, units)
  const read = (name: ChoiceName, usual: number) => {
    const length = choices[name] === undefined ? usual : readLength(choices[name], units)
    return length instanceof Unread ? undefined : choices[name] === undefined ? usual : inUnits(length as never, units)
  }
  const groove = read('grooveScatter', inUnits(GROOVE_SCATTER, units))
  const lot = read('lotScatter', LOT_SCATTER * (ofBalls ?? 0))
  if (groove === undefined || lot === undefined) return undefined
  const normal = (deviation: number) => ({ kind: 'normal', standardDeviation: deviation })
  return {
    contributors: {
      ...Object.fromEntries(CUT[traitsOf({ arrangement }).members].map((name) => [name, normal(groove)])),
      ...(ofBalls !== undefined && ofBalls > 0 && { ballDiameter: normal(ofBalls) }),
      ...(lot > 0 && { ballLotMean: normal(lot) }),
    },
  }
}

/** The question about a load, where one is stated. */
export function loadOf({ choices }: Job, { request, arrangement }: DerivedBearing): object | undefined {
  const load = readNumber(choices.load ?? '', LOAD)
  if (load instanceof Unread || request === undefined) return undefined
  const { members } = traitsOf({ arrangement })
  return { design: request, [members === 'rings' ? 'radialLoad' : 'axialLoad']: load }
}
