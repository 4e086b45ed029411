import { inUnits, type Units } from '#shared/units/length.ts'
import { BALL_SIZES, type Choices, changeUnits, choicesOf, readLength, unitsOf } from './choices.ts'
import { element, field, made } from './elements.ts'
import { startFit } from './fit.ts'
import { setBusy, showHere, showService, stand } from './result.ts'
import { queryOf } from './service.ts'
import { startTabs } from './tabs.ts'

/** The bearing that the page begins with, and where the sliders stand. */
const FIRST = { diameter: '16', count: '12', bore: '12', outer: '20', inner: '40' } as const

/** Of the tide clock in the README: fourteen marbles. */
const TIDE_CLOCK = { diameter: '14', count: '14', bore: '10', outer: '20', inner: '40' } as const

/** What − and + change a bore by. */
const EVEN_STEP: Readonly<Record<Units, number>> = { in: 1 / 16, mm: 1 }

/** So long nobody touches anything before the page asks the service. */
const CALM_MS = 250

const form = element('bearing', HTMLFormElement)
let choices: Choices | undefined
let units = unitsOf(form)
let checking = new AbortController()
let calm: number | undefined

fill(FIRST)
element('example', HTMLButtonElement).addEventListener('click', () => {
  for (const name of ['mm', 'glass']) press(name)
  if (units !== 'mm') {
    units = 'mm'
    offerSizes()
  }
  fill(TIDE_CLOCK)
  update()
})
form.addEventListener('submit', (event) => event.preventDefault())
form.addEventListener('input', ({ target }) => {
  if (unitsOf(form) !== units) {
    changeUnits(form, units, unitsOf(form))
    units = unitsOf(form)
    offerSizes()
  }
  if (target instanceof HTMLInputElement && target.name === 'size') field(form, 'diameter').value = target.value
  update()
})
form.addEventListener('click', ({ target }) => {
  if (target instanceof HTMLButtonElement && target.className === 'step') take(target)
})
offerSizes()
startTabs()
startFit(() => choices)
update()
navigator.serviceWorker?.register('/service-worker.js').catch(() => undefined) // where the page came by plain HTTP

function fill(values: Readonly<Record<string, string>>): void {
  for (const [name, value] of Object.entries(values)) field(form, name).value = value
}

/** Presses the button of a choice. */
function press(value: string): void {
  const button = form.querySelector<HTMLInputElement>(`input[type=radio][value="${value}"]`)
  if (button !== null) button.checked = true
}

/** A press on − or +: one ball, or one even step of the rule. */
function take({ dataset }: HTMLButtonElement): void {
  const input = field(form, dataset['of'] ?? '')
  const by = Number(dataset['by'])
  if (input.name === 'count') input.value = String(Number(input.value) + by)
  else {
    const read = readLength(input.value, units)
    if (typeof read !== 'number') return
    const steps = inUnits(read, units) / EVEN_STEP[units]
    const next = Math.max(by < 0 ? Math.ceil(steps) - 1 : Math.floor(steps) + 1, 1)
    input.value = units === 'in' ? sixteenths(next) : String(next)
  }
  update()
}

function sixteenths(steps: number): string {
  const whole = Math.floor(steps / 16)
  const rest = steps % 16
  return rest === 0 ? String(whole) : `${whole === 0 ? '' : `${whole} `}${rest}/16`
}

/** Reads the form, shows what follows, and asks the service once the hand is off. */
function update(): void {
  checking.abort()
  clearTimeout(calm)
  pressSize()
  const read = choicesOf(form)
  choices = read.choices
  for (const name of ['diameter', 'count', 'bore']) {
    element(`${name}-fault`, HTMLParagraphElement).textContent = read.faults.get(name) ?? ''
    field(form, name).setAttribute('aria-invalid', String(read.faults.has(name)))
  }
  for (const name of ['outer', 'inner'])
    element(`${name}-depth`, HTMLOutputElement).value = `${field(form, name).value} %`
  stand('')
  setBusy(choices !== undefined)
  if (choices === undefined) return
  const [sent, here] = [choices, showHere(choices)]
  linkSheets(sent)
  checking = new AbortController()
  const { signal } = checking
  calm = setTimeout(() => {
    showService(sent, here, signal).then(
      () => setBusy(false),
      () => undefined, // broken off by the next choice
    )
  }, CALM_MS)
}

/** The usual sizes as buttons. */
function offerSizes(): void {
  element('sizes', HTMLDivElement).replaceChildren(
    ...BALL_SIZES[units].map((size) => {
      const [label, input] = [made('label'), made('input')]
      label.className = 'pick'
      Object.assign(input, { type: 'radio', name: 'size', value: size })
      label.append(input, made('span', `${size} ${units}`))
      return label
    }),
  )
}

/** The button of the size that stands in the field is pressed, and no other. */
function pressSize(): void {
  const { value } = field(form, 'diameter')
  for (const input of element('sizes', HTMLDivElement).querySelectorAll('input')) input.checked = input.value === value
}

function linkSheets({ request }: Choices): void {
  const query = queryOf(request)
  element('open-sheet', HTMLAnchorElement).href = `/v1/job-sheet?${query}`
  element('print-sheet', HTMLAnchorElement).href = `/v1/job-sheet?${query}&format=pdf`
}
