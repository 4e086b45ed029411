import type { Units } from '#shared/units/length.ts'
import { LATHE } from '#src/words/kiosk/lathe.ts'

const BACK = 'back'
const SPACE = ' '
/** Rows of as many keys as there are columns; with inches two keys of the last column are as high as two rows, for fractions. */
const KEYS: Readonly<Record<Units, readonly string[]>> = {
  in: ['7', '8', '9', BACK, '4', '5', '6', '1', '2', '3', SPACE, '0', '.', '/'],
  mm: ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0', BACK],
}

/** Large keys for a figure: digits, a point, what takes the last sign back; with inches a stroke and a space, for `1 3/8`. */
export function Keypad(of: { readonly units: Units; readonly text: string; readonly onText: (text: string) => void }) {
  const { units, text, onText } = of
  return (
    <fieldset class={`keypad ${units}`} aria-label={LATHE.keys}>
      {KEYS[units].map((key) => (
        <button
          type="button"
          key={key}
          class={key === BACK ? 'back' : key === SPACE ? 'space' : undefined}
          aria-label={key === BACK ? LATHE.back : undefined}
          onClick={() => onText(key === BACK ? text.slice(0, -1) : text + key)}
        >
          {key === BACK ? '⌫' : key === SPACE ? LATHE.space : key}
        </button>
      ))}
    </fieldset>
  )
}
