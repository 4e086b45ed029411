import { LATHE } from '#src/words/kiosk/lathe.ts'

const BACK = 'back'
const SPACE = ' '
/** In rows of four; the last column has two keys, each as high as two rows. */
const KEYS = ['7', '8', '9', BACK, '4', '5', '6', '1', '2', '3', SPACE, '0', '.', '/'] as const

/** Large keys for a figure: digits, a point, a fraction, what takes the last sign back, and what parts a whole number from a fraction. */
export function Keypad({ text, onText }: { readonly text: string; readonly onText: (text: string) => void }) {
  return (
    <fieldset class="keypad" aria-label={LATHE.keys}>
      {KEYS.map((key) =>
        key === BACK ? (
          <button
            type="button"
            key={key}
            class="tall-key"
            aria-label={LATHE.back}
            onClick={() => onText(text.slice(0, -1))}
          >
            ⌫
          </button>
        ) : (
          <button
            type="button"
            key={key}
            class={key === SPACE ? 'tall-key' : undefined}
            onClick={() => onText(text + key)}
          >
            {key === SPACE ? LATHE.space : key}
          </button>
        ),
      )}
    </fieldset>
  )
}
