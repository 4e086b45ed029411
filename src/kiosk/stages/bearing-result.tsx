import { Messages } from '#src/kiosk/controls.tsx'
import type { DerivedBearing, Notice } from '#src/kiosk/derived-bearing.ts'
import type { BearingTexts } from '#src/kiosk/job/job.ts'
import { FrontPicture } from '#src/kiosk/pictures/front.tsx'
import { later } from '#src/kiosk/second-script.ts'
import { Noticed } from '#src/kiosk/waiting.tsx'
import { fieldName, followSuggestion } from '#src/words/kiosk/bearing.ts'
import { SHELL } from '#src/words/kiosk/page.ts'
import { SizesTable } from './sizes-table.tsx'

/** What follows from the choices: the picture, what speaks against it, the sizes. Without a bearing there is none of it. */
export function BearingResult(of: { readonly derived: DerivedBearing; readonly set: (changes: BearingTexts) => void }) {
  const { design, refusals, isWaiting } = of.derived
  return (
    <div class="result" id="result" aria-busy={isWaiting}>
      {isWaiting && <p class="waiting">{SHELL.waiting}</p>}
      <Messages class="refusals" title={SHELL.refused} texts={refusals} />
      {design && (
        <>
          <FrontPicture design={design} />
          <Noticed
            notices={of.derived.warnings}
            follow={(notice) => <Follow notice={notice} derived={of.derived} set={of.set} />}
          />
          <SizesTable design={design} arrangement={of.derived.arrangement} openings={of.derived.openings} />
        </>
      )}
    </div>
  )
}

/** A button that takes the advice of a warning. */
function Follow(of: {
  readonly notice: Notice
  readonly derived: DerivedBearing
  readonly set: (changes: BearingTexts) => void
}) {
  const { suggestion } = of.notice
  const words = later()
  if (suggestion === undefined || words === undefined) return null
  const name = suggestion.path.slice(1).replaceAll('/', '.')
  const { units, terms, design } = of.derived
  const denominator = design?.bearing.resolved.input.shopDenominator
  const text = words.textOfSuggestion(suggestion, units, denominator)
  return (
    <button type="button" onClick={() => of.set({ ...instead(name), [name]: text })}>
      {followSuggestion(fieldName(name, terms) ?? name, words.suggestionWords(suggestion, units, denominator))}
    </button>
  )
}

/** Of two ways to state a size only one may stay. */
const PAIRS: Readonly<Record<string, string>> = {
  engagement: 'grooveDepth',
  grooveDepth: 'engagement',
  outsideDiameter: 'wall',
  wall: 'outsideDiameter',
  standardDeviation: 'diameters',
  diameters: 'standardDeviation',
}

function instead(name: string): BearingTexts {
  const parts = name.split('.')
  const other = PAIRS[parts.at(-1) ?? '']
  return other === undefined ? {} : { [[...parts.slice(0, -1), other].join('.')]: '' }
}
