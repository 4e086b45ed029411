import { useState } from 'preact/hooks'
import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import type { Leaf } from '#shared/bearing/field.ts'
import { Choice, TextField } from '#src/kiosk/controls.tsx'
import type { DerivedBearing } from '#src/kiosk/derived-bearing.ts'
import { leavesFor, scopeOf } from '#src/kiosk/job/bearing.ts'
import type { BearingTexts } from '#src/kiosk/job/job.ts'
import type { OtherArrangement } from '#src/kiosk/job/other-arrangement.ts'
import { later } from '#src/kiosk/second-script.ts'
import { ARRANGEMENT_CHOICES, BEARING, choiceName, fieldName } from '#src/words/kiosk/bearing.ts'
import { inUnit, SHELL } from '#src/words/kiosk/page.ts'
import type { Terms } from '#src/words/terms.ts'

/** What the usual form already has. */
const ABOVE = ['balls.count', 'balls.diameter', 'balls.material', 'bore']

/** Every other value that such a bearing can have. */
export function MoreFields(of: {
  readonly bearing: BearingTexts
  readonly derived: DerivedBearing
  readonly set: (changes: BearingTexts) => void
}) {
  const { bearing, derived, set } = of
  // What a change of the kind has dropped, as long as it is of this kind.
  const [changed, setChanged] = useState<OtherArrangement & { readonly to: string; readonly from: Terms }>()
  const leaves = leavesFor(derived.arrangement).filter(({ names }) => !ABOVE.includes(names.join('.')))
  return (
    <details>
      <summary>{SHELL.more}</summary>
      <Choice
        label={BEARING.arrangement}
        name="arrangement"
        value={derived.arrangement}
        options={Object.entries(ARRANGEMENT_CHOICES).map(([value, label]) => ({ value, label }))}
        onPick={(picked) => {
          const scopes = [scopeOf(derived.arrangement), scopeOf(picked as ArrangementName)] as const
          const other = later()?.asArrangement(bearing, ...scopes)
          if (other === undefined) return
          set(other.changes)
          setChanged({ to: picked, from: derived.terms, ...other })
        }}
      />
      <p role="status">
        {changed?.to === derived.arrangement && later()?.changedKind({ ...changed, terms: derived.terms })}
      </p>
      <p>{BEARING.empty}</p>
      {leaves.map((leaf) => (
        <MoreField key={leaf.path} leaf={leaf} bearing={bearing} derived={derived} set={set} />
      ))}
    </details>
  )
}

function MoreField(of: {
  readonly leaf: Leaf
  readonly bearing: BearingTexts
  readonly derived: DerivedBearing
  readonly set: (changes: BearingTexts) => void
}) {
  const { field, names } = of.leaf
  const name = names.join('.')
  const label = fieldName(name, of.derived.terms) ?? field.means
  const usual = hintOf(of.leaf, of.derived)
  const value = of.bearing[name] ?? ''
  const choices = field.kind === 'choice' ? field.choices.map(String) : field.kind === 'flag' ? ['true', 'false'] : []
  if (choices.length > 0)
    return (
      <Choice
        label={label}
        name={name}
        value={value}
        hint={usual ?? ''}
        fault={of.derived.read.faults.get(name)}
        options={[
          { value: '', label: BEARING.usualChoice },
          ...choices.map((each) => ({ value: each, label: choiceName(each) })),
        ]}
        onPick={(text) => of.set({ [name]: text })}
      />
    )
  return (
    <TextField
      label={field.kind.startsWith('length') ? inUnit(label, of.derived.units) : label}
      name={name}
      value={value}
      fault={of.derived.read.faults.get(name)}
      hint={usual}
      onInput={(text) => of.set({ [name]: text })}
    />
  )
}

/** What stands for a field that is left empty: its usual value, or what a stated year asks for. */
function hintOf(
  { field, names, path }: Leaf,
  { terms, openings, countedAs, units }: DerivedBearing,
): string | undefined {
  const words = later()
  const counted = countedAs[names.join('.')]
  if (counted !== undefined && openings?.input.seasoned?.paths.includes(path))
    return words?.decidedByYear(counted, field.kind === 'length' ? units : '')
  const stated = field.byDefault && choiceName(field.byDefault.stated)
  return stated && `${BEARING.usual}: ${words?.onThePage(stated, terms) ?? ''}`
}
