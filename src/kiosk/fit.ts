import { inUnits, lengthOf, type Units } from '#shared/units/length.ts'
import { FIT, FIT_HEADINGS, FIT_REASONS, gapNow } from '#src/words/kiosk.ts'
import { type Choices, readLength } from './choices.ts'
import { chosen, element, field, fillList, made } from './elements.ts'
import { ask, type Json, messagesOf, numberOf, part, type Reply, textOf } from './service.ts'

/** A common rule: a reading is rounded to this, unless a caliper was used. Common practice, no source. */
const GRADUATION: Readonly<Record<Units, number>> = { in: 1 / 32, mm: 0.5 }

/** The form for a reading: what the service makes of it is shown below. */
export function startFit(choices: () => Choices | undefined): void {
  const form = element('reading', HTMLFormElement)
  const advice = element('advice', HTMLDivElement)
  let asking = new AbortController()

  form.addEventListener('change', () => {
    element('value-field', HTMLLabelElement).hidden = isWord(chosen(form, 'kind'))
  })
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    asking.abort()
    asking = new AbortController()
    const bearing = choices()
    const reading = bearing && readingOf(form, bearing.input.units)
    if (bearing === undefined) advice.replaceChildren(made('p', FIT.noBearing))
    else if (reading !== undefined) {
      ask('/v1/fit-correction', { design: bearing.request, ring: 'outer', readings: [reading] }, asking.signal).then(
        (reply) => advice.replaceChildren(...toAdvice(reply, bearing.input.units)),
        () => undefined, // broken off by the next question
      )
    }
  })
}

/** Readings without a figure. */
const isWord = (kind: string): boolean => kind === 'last-ball-refused' || kind === 'last-ball-in'

function readingOf(form: HTMLFormElement, units: Units): object | undefined {
  const kind = chosen(form, 'kind')
  const input = field(form, 'value')
  const fault = element('value-fault', HTMLParagraphElement)
  const read = isWord(kind) ? undefined : readLength(input.value, units)
  fault.textContent = typeof read === 'string' ? read : ''
  input.setAttribute('aria-invalid', String(typeof read === 'string'))
  if (typeof read === 'string') {
    input.focus()
    return undefined
  }
  if (read === undefined) return { kind }
  const value = inUnits(read, units)
  return kind === 'groove-bottom-diameter' ? { kind, value } : { kind, value, graduation: GRADUATION[units] }
}

function toAdvice(reply: Reply, units: Units): readonly HTMLElement[] {
  if (reply.kind === 'unreached') return [made('p', FIT.unreached)]
  if (reply.kind === 'problem') {
    const list = made('ul')
    fillList(list, reply.messages)
    return [made('h2', FIT.impossible), list]
  }
  return [
    made('h2', headingOf(reply.body)),
    firstLine(textOf(reply.body['summary'])),
    made('p', gapSentence(part(reply.body['ballGap']), units)),
    ...rescues(reply.body),
    ...cautions(reply.body),
  ]
}

const headingOf = (answer: Json): string =>
  FIT_REASONS[textOf(answer['reason'])] ?? FIT_HEADINGS[textOf(answer['action'])] ?? FIT.next

function firstLine(text: string): HTMLElement {
  const line = made('p', text)
  line.className = 'first'
  return line
}

function gapSentence(gap: Json, units: Units): string {
  const length = (value: unknown) => lengthOf(numberOf(value), units)
  const { min, max } = part(gap['interval95'])
  return gapNow({ value: length(gap['value']), low: length(min), high: length(max) }, units)
}

function rescues(answer: Json): readonly HTMLElement[] {
  const options = messagesOf(answer['rescue'])
  return options.length === 0 ? [] : [listed(options, 'ol')]
}

function cautions(answer: Json): readonly HTMLElement[] {
  const messages = messagesOf(answer['cautions'])
  return messages.length === 0 ? [] : [made('h2', FIT.cautions), listed(messages, 'ul')]
}

function listed(texts: readonly string[], name: 'ol' | 'ul'): HTMLElement {
  const list = made(name)
  fillList(list, texts)
  return list
}
