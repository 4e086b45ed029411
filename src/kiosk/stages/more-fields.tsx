import type { Leaf } from '#shared/bearing/field.ts'
import { Choice, TextField } from '#src/kiosk/controls.tsx'
import type { DerivedBearing } from '#src/kiosk/derived-bearing.ts'
import { leavesFor } from '#src/kiosk/job/bearing.ts'
import type { BearingTexts } from '#src/kiosk/job/job.ts'
import { ARRANGEMENT_CHOICES, BEARING, FIELD_NAMES } from '#src/words/kiosk/bearing.ts'
import { SHELL } from '#src/words/kiosk/page.ts'

/** What the usual form already has. */
const ABOVE = ['balls.count', 'balls.diameter', 'balls.material', 'bore']

/** Every other value that such a bearing can have. */
export function MoreFields(of: {
  readonly bearing: BearingTexts
  readonly derived: DerivedBearing
  readonly set: (changes: BearingTexts) => void
}) {
  const { bearing, derived, set } = of
  const leaves = leavesFor(derived.arrangement).filter(({ names }) => !ABOVE.includes(names.join('.')))
  return (
    <details>
      <summary>{SHELL.more}</summary>
      <Choice
        label={BEARING.arrangement}
        name="arrangement"
        value={derived.arrangement}
        options={Object.entries(ARRANGEMENT_CHOICES).map(([value, label]) => ({ value, label }))}
        onPick={(arrangement) => set(ofArrangement(bearing, arrangement))}
      />
      <p>{BEARING.empty}</p>
      {leaves.map((leaf) => (
        <MoreField key={leaf.path} leaf={leaf} bearing={bearing} derived={derived} set={set} />
      ))}
    </details>
  )
}

/** What every arrangement has stays; the rest goes back to what is usual. */
const ofArrangement = (bearing: BearingTexts, arrangement: string): BearingTexts => ({
  ...Object.fromEntries(
    Object.keys(bearing)
      .filter((name) => name !== 'units' && !ABOVE.includes(name))
      .map((name) => [name, '']),
  ),
  arrangement,
})

function MoreField(of: {
  readonly leaf: Leaf
  readonly bearing: BearingTexts
  readonly derived: DerivedBearing
  readonly set: (changes: BearingTexts) => void
}) {
  const { field, names } = of.leaf
  const name = names.join('.')
  const label = FIELD_NAMES[name] ?? field.means
  const usual = field.byDefault && `${BEARING.usual}: ${field.byDefault.stated}`
  const value = of.bearing[name] ?? ''
  const choices = field.kind === 'choice' ? field.choices.map(String) : field.kind === 'flag' ? ['true', 'false'] : []
  if (choices.length > 0)
    return (
      <Choice
        label={label}
        name={name}
        value={value}
        hint={usual ?? ''}
        options={[{ value: '', label: BEARING.usualChoice }, ...choices.map((each) => ({ value: each, label: each }))]}
        onPick={(text) => of.set({ [name]: text })}
      />
    )
  return (
    <TextField
      label={label}
      name={name}
      value={value}
      fault={of.derived.read.faults.get(name)}
      hint={usual}
      onInput={(text) => of.set({ [name]: text })}
    />
  )
}
