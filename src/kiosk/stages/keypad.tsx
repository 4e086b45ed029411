import { LATHE } from '#src/words/kiosk/lathe.ts'

const KEYS = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '0', '.', '/'] as const

/** Large keys for a figure: digits, a point, a fraction. */
export function Keypad({ text, onText }: { readonly text: string; readonly onText: (text: string) => void }) {
  return (
    <fieldset class="keypad">
      <legend>{LATHE.keys}</legend>
      {KEYS.map((key) => (
        <button type="button" key={key} onClick={() => onText(text + key)}>
          {key}
        </button>
      ))}
      <button type="button" class="wide-key" onClick={() => onText(`${text} `)}>
        {LATHE.space}
      </button>
      <button type="button" aria-label={LATHE.back} onClick={() => onText(text.slice(0, -1))}>
        ⌫
      </button>
    </fieldset>
  )
}
