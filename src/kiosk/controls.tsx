import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'

/** A text field with its label and, below it, what is wrong with it. */
export function TextField(of: {
  readonly label: string
  readonly name: string
  readonly value: string
  readonly fault?: string | undefined
  readonly hint?: string | undefined
  readonly mode?: 'decimal' | 'numeric' | 'text'
  readonly onInput: (text: string) => void
  readonly inputRef?: (input: HTMLInputElement | null) => void
}) {
  const id = useId()
  return (
    <div class="field">
      <label for={id}>{of.label}</label>
      <input
        id={id}
        type="text"
        name={of.name}
        inputMode={of.mode ?? 'text'}
        maxLength={200}
        autocomplete="off"
        value={of.value}
        ref={of.inputRef ?? null}
        aria-invalid={of.fault !== undefined}
        aria-describedby={`${id}-fault ${id}-hint`}
        onInput={({ currentTarget }) => of.onInput(currentTarget.value)}
      />
      <small id={`${id}-hint`}>{of.hint}</small>
      <Fault id={`${id}-fault`} text={of.fault} />
    </div>
  )
}

/** What is wrong with a field; empty as long as nothing is. */
const Fault = (of: { readonly id?: string; readonly text: string | undefined }) => (
  <p class="fault" id={of.id} role="alert">
    {of.text}
  </p>
)

/** One of a few, as buttons in a row. */
export function Picks<Value extends string>(of: {
  readonly legend: string
  readonly name: string
  readonly options: readonly { readonly value: Value; readonly label: string; readonly picture?: ComponentChildren }[]
  readonly value: string
  readonly fault?: string | undefined
  readonly isTall?: boolean
  readonly onPick: (value: Value) => void
}) {
  return (
    <fieldset class={of.isTall ? 'tall' : 'row'}>
      <legend>{of.legend}</legend>
      {of.options.map(({ value, label, picture }) => (
        <label class="pick" key={value}>
          <input
            type="radio"
            name={of.name}
            value={value}
            checked={value === of.value}
            onChange={() => of.onPick(value)}
          />
          <span>
            {picture}
            {label}
          </span>
        </label>
      ))}
      <Fault text={of.fault} />
    </fieldset>
  )
}

/** One of many. */
export function Choice(of: {
  readonly label: string
  readonly name: string
  readonly value: string
  readonly hint?: string
  readonly fault?: string | undefined
  readonly options: readonly { readonly value: string; readonly label: string }[]
  readonly onPick: (value: string) => void
}) {
  const id = useId()
  return (
    <div class="field">
      <label for={id}>{of.label}</label>
      <select
        id={id}
        name={of.name}
        value={of.value}
        aria-invalid={of.fault !== undefined}
        aria-describedby={`${id}-fault ${id}-hint`}
        onChange={({ currentTarget }) => of.onPick(currentTarget.value)}
      >
        {of.options.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
      <small id={`${id}-hint`}>{of.hint}</small>
      <Fault id={`${id}-fault`} text={of.fault} />
    </div>
  )
}

/** A field between − and +. */
export function Stepper(of: {
  readonly label: string
  readonly name: string
  readonly value: string
  readonly fault: string | undefined
  readonly fewer: string
  readonly more: string
  readonly onInput: (text: string) => void
  readonly onStep: (by: 1 | -1) => void
}) {
  const id = useId()
  return (
    <fieldset class="row">
      <legend>{of.label}</legend>
      <button type="button" class="step" aria-label={of.fewer} onClick={() => of.onStep(-1)}>
        −
      </button>
      <input
        type="text"
        name={of.name}
        inputMode="text"
        maxLength={40}
        autocomplete="off"
        aria-label={of.label}
        value={of.value}
        aria-invalid={of.fault !== undefined}
        aria-describedby={id}
        onInput={({ currentTarget }) => of.onInput(currentTarget.value)}
      />
      <button type="button" class="step" aria-label={of.more} onClick={() => of.onStep(1)}>
        +
      </button>
      <Fault id={id} text={of.fault} />
    </fieldset>
  )
}

/** A list under a heading; nothing where it is empty. */
export function Messages(of: { readonly title: string; readonly texts: readonly string[]; readonly class?: string }) {
  if (of.texts.length === 0) return null
  return (
    <section class={of.class ?? ''}>
      <h3>{of.title}</h3>
      <ul>
        {of.texts.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  )
}
