import { useRef, useState } from 'preact/hooks'
import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import type { FittedRing } from '#shared/questions/fit/fit-setup.ts'
import type { ReadingKind } from '#shared/questions/fit/reading.ts'
import type { Units } from '#shared/units/length.ts'
import { Picks, TextField } from '#src/kiosk/controls.tsx'
import { kindsOf, PLUG_FITS, type PlugFit, READING_FIELDS, type Reading } from '#src/kiosk/job/reading.ts'
import { readCount, readLength, Unread, withPoint } from '#src/kiosk/job/text.ts'
import { listOf, numberOf, part } from '#src/kiosk/json.ts'
import type { Awaited } from '#src/kiosk/reply.ts'
import { later } from '#src/kiosk/second-script.ts'
import { LATHE, latheWords, PLUG_NAMES } from '#src/words/kiosk/lathe.ts'
import { inUnit } from '#src/words/kiosk/page.ts'
import { TERMS } from '#src/words/terms.ts'
import { Keypad } from './keypad.tsx'

const COUNT = { min: 1, max: 200 }

/** What the advice asks to read: its kind, if it asks at all, and how many balls it is of where that matters. */
export interface Asked {
  readonly kind?: string
  readonly second?: string
}

/**
 * A reading of any kind that this ring has: the kind by its picture, the figure by large keys or the keyboard. It begins with the kind
 * that the advice asks for, until a hand picks another or types a figure.
 */
export function ReadingForm(of: {
  readonly ring: FittedRing
  readonly units: Units
  readonly arrangement: ArrangementName
  /** Undefined until there is advice. */
  readonly asked: Asked | undefined
  /** The kind that was read last: where nothing is asked for, it is the likeliest. */
  readonly last: ReadingKind | undefined
  /** The job sheet, for the numbers of its blanks. */
  readonly blanks: Awaited
  readonly onEnter: (reading: Reading) => void
}) {
  const terms = TERMS[of.arrangement]
  const words = latheWords(of.ring, terms)
  const kinds = kindsOf(of.ring, of.arrangement)
  // While an answer is on its way, the one before still stands: no kind may change under a hand.
  const asked = useRef(of.asked)
  if (of.asked !== undefined) asked.current = of.asked
  const [picked, setPicked] = useState<ReadingKind>()
  const [value, setValue] = useState('')
  const [typedSecond, setSecond] = useState<string>()
  const [result, setResult] = useState<PlugFit>('enters')
  const [faults, setFaults] = useState<Faults>({})
  const [typing, setTyping] = useState<'value' | 'second'>('value')
  const field = useRef<HTMLInputElement | null>(null)
  const known = (name: string | undefined) => kinds.find((each) => each === name)
  const kind = picked ?? known(asked.current?.kind) ?? known(of.last) ?? kinds[0] ?? 'ball-gap'
  const fields = READING_FIELDS[kind]
  const usual = (kind === asked.current?.kind ? asked.current.second : undefined) ?? fields.second?.usual ?? ''
  const second = typedSecond ?? usual
  const nameOf = (each: ReadingKind) => later()?.kindName(each, blanksOf(of.blanks, each, of.ring), terms) ?? ''
  const Picture = later()?.ReadingPicture
  const pick = (next: ReadingKind | undefined) => {
    setPicked(next)
    setFaults({})
    setSecond(undefined)
    setTyping('value')
  }
  const typeValue = (text: string) => {
    setPicked(kind)
    setValue(text)
  }
  const enter = () => {
    const read = readForm({ kind, value, second, result }, of.units)
    setFaults(read.faults)
    if (read.reading === undefined) return field.current?.focus()
    of.onEnter(read.reading)
    setValue('')
    pick(undefined)
  }
  const [typed, setTyped] = typing === 'value' || fields.second === undefined ? [value, typeValue] : [second, setSecond]
  return (
    <form
      autocomplete="off"
      class="reading"
      aria-busy={of.blanks.kind === 'waiting'}
      onSubmit={(event) => {
        event.preventDefault()
        enter()
      }}
    >
      <fieldset class="entry">
        <legend>{nameOf(kind)}</legend>
        <div class="figures">
          {fields.value !== undefined && (
            <div onFocusIn={() => setTyping('value')}>
              <TextField
                label={inUnit(kind === 'plug' ? LATHE.diameter : LATHE.value, of.units)}
                name="value"
                mode="decimal"
                value={value}
                fault={faults.value}
                inputRef={(input) => {
                  field.current = input
                }}
                onInput={typeValue}
              />
            </div>
          )}
          {fields.second !== undefined && (
            <div onFocusIn={() => setTyping('second')}>
              <TextField
                label={secondLabel(words[fields.second.name], fields.second.kind, of.units)}
                name={fields.second.name}
                mode="decimal"
                value={second}
                fault={faults.second}
                onInput={setSecond}
              />
            </div>
          )}
        </div>
        {fields.hasResult && (
          <Picks
            legend={LATHE.result}
            name="result"
            value={result}
            options={PLUG_FITS.map((fit) => ({ value: fit, label: PLUG_NAMES[fit] }))}
            onPick={setResult}
          />
        )}
        {fields.value !== undefined && <Keypad units={of.units} text={typed} onText={setTyped} />}
        <button type="submit" class="go large">
          {LATHE.add}
        </button>
      </fieldset>
      <div class="kinds">
        <Picks
          isTall
          legend={LATHE.measured}
          name="kind"
          value={kind}
          options={kinds.map((each) => ({
            value: each,
            label: nameOf(each),
            picture: Picture && <Picture kind={each} ring={of.ring} isTrack={terms.raceway.one === 'track'} />,
          }))}
          onPick={pick}
        />
        {of.blanks.kind === 'answer' && (
          <p>
            <small>{LATHE.blanks}</small>
          </p>
        )}
      </div>
    </form>
  )
}

const secondLabel = (label: string, kind: 'count' | 'length', units: Units): string =>
  kind === 'length' ? inUnit(label, units) : label

/** Of the blanks on the job sheet, those for such a reading of this ring. Plates have but one. */
function blanksOf(sheet: Awaited, kind: ReadingKind, ring: FittedRing): readonly number[] {
  if (sheet.kind !== 'answer') return []
  return listOf(sheet.body['operations'])
    .flatMap((operation) => listOf(part(operation)['readings']).map(part))
    .filter((blank) => blank['kind'] === kind && (blank['ring'] ?? ring) === ring)
    .map((blank) => numberOf(blank['number']))
}

interface Faults {
  readonly value?: string
  readonly second?: string
}

/** The reading as it is kept: a point for a comma, no blanks round it. */
function readForm(
  { kind, value, second, result }: { kind: ReadingKind; value: string; second: string; result: PlugFit },
  units: Units,
): { readonly reading?: Reading; readonly faults: Faults } {
  const fields = READING_FIELDS[kind]
  const length = fields.value === undefined ? undefined : readLength(value, units, OF_READING[kind])
  const more = fields.second
  const figure = second.trim() === '' ? (more?.usual ?? '') : second
  const other = more && (more.kind === 'count' ? readCount(figure, COUNT) : readLength(figure, units))
  if (length instanceof Unread || other instanceof Unread)
    return {
      faults: {
        ...(length instanceof Unread && { value: length.message }),
        ...(other instanceof Unread && { second: other.message }),
      },
    }
  return {
    faults: {},
    reading: {
      kind,
      ...(fields.value !== undefined && { value: withPoint(value) }),
      ...(more !== undefined && { second: withPoint(figure) }),
      ...(fields.hasResult && { result }),
    },
  }
}

/** A gap and a play may be 0. */
const OR_NONE = { min: 0, max: 10_000 }
const OF_READING: Partial<Record<ReadingKind, typeof OR_NONE>> = { 'ball-gap': OR_NONE, 'radial-play': OR_NONE }
