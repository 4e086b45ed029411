import { type ArrangementName, traitsOf } from '#shared/bearing/arrangements.ts'
import { inUnits, type Units } from '#shared/units/length.ts'
import { shopFigure } from '#shared/units/shop-figure.ts'
import { Picks, Stepper, TextField } from '#src/kiosk/controls.tsx'
import type { DerivedBearing } from '#src/kiosk/derived-bearing.ts'
import { hasPlace, scopeOf, statedBesides, statedIdly, valueOrUsual } from '#src/kiosk/job/bearing.ts'
import { BALL_WOOD, type BearingTexts, type Job, withBearing } from '#src/kiosk/job/job.ts'
import { readingsIn } from '#src/kiosk/job/reading.ts'
import { readLength, Unread, withPoint } from '#src/kiosk/job/text.ts'
import { AssemblyPicture } from '#src/kiosk/pictures/assembly.tsx'
import { later } from '#src/kiosk/second-script.ts'
import type { StageProps } from '#src/kiosk/stage.ts'
import { BEARING, elementWords, MATERIAL_CHOICES } from '#src/words/kiosk/bearing.ts'
import { inUnit } from '#src/words/kiosk/page.ts'
import { BearingResult } from './bearing-result.tsx'
import { DepthSlider } from './depth-slider.tsx'
import { FindBearing } from './find-bearing.tsx'
import { MoreFields } from './more-fields.tsx'

/** Balls that shops have. Common practice, no source. */
const BALL_SIZES: Readonly<Record<Units, readonly string[]>> = {
  in: ['3/8', '1/2', '5/8', '3/4', '1'],
  mm: ['10', '12', '14', '16', '20'],
}

/** What − and + change a bore by. */
const EVEN_STEP: Readonly<Record<Units, number>> = { in: 1 / 16, mm: 1 }

/** Whether it has rings with a groove each. */
const hasDepths = (arrangement: ArrangementName): boolean => {
  const { members, raceway } = traitsOf({ arrangement })
  return members === 'rings' && raceway === 'groove'
}

/** Lengths that are chosen as a rule shows them. All others stay what they are when the units change. */
const ON_THE_RULE = ['balls.diameter', 'bore'] as const

/** The bearing: its form, and what follows from it. */
export function BearingStage({ job, derived, change }: StageProps) {
  const { bearing } = job
  const { units, read } = derived
  const set = (changes: BearingTexts) => change(withBearing(job, changes), Object.keys(changes).join())
  const text = (name: string) => bearing[name] ?? ''
  const fault = (name: string) => read.faults.get(name)
  const words = elementWords(derived.terms)
  return (
    <>
      <div class="columns">
        <form autocomplete="off" onSubmit={(event) => event.preventDefault()}>
          <Picks
            legend={BEARING.units}
            name="units"
            value={units}
            options={[
              { value: 'in', label: BEARING.in },
              { value: 'mm', label: BEARING.mm },
            ]}
            onPick={(to: Units) => {
              const sizes = isBegun(job) ? {} : onTheRule(bearing, units, to)
              const other =
                to === units ? undefined : later()?.inOtherUnits(job, to, sizes, scopeOf(derived.arrangement))
              if (other !== undefined) change(other)
            }}
          />
          <Picks
            legend={words.diameter}
            name="size"
            value={text('balls.diameter')}
            options={BALL_SIZES[units].map((size) => ({ value: size, label: `${size} ${units}` }))}
            onPick={(size) => set({ 'balls.diameter': size })}
          />
          <TextField
            label={inUnit(BEARING.otherSize, units)}
            name="diameter"
            value={text('balls.diameter')}
            fault={fault('balls.diameter')}
            onInput={(size) => set({ 'balls.diameter': typed(size) })}
          />
          <Picks
            legend={words.material}
            name="material"
            value={valueOrUsual(bearing, derived.arrangement, 'balls.material')}
            fault={fault('balls.material')}
            options={Object.entries(MATERIAL_CHOICES).map(([value, label]) => ({ value, label }))}
            onPick={(material) => set(ofMaterial(bearing, material))}
          />
          <Stepper
            label={words.count}
            name="count"
            value={text('balls.count')}
            fault={fault('balls.count')}
            fewer={words.fewer}
            more={words.more}
            onInput={(count) => set({ 'balls.count': typed(count) })}
            onStep={(by) =>
              set({ 'balls.count': String(Math.max(1, Math.round(Number(text('balls.count')) || 0) + by)) })
            }
          />
          <Stepper
            label={inUnit(BEARING.bore, units)}
            name="bore"
            value={text('bore')}
            fault={fault('bore')}
            fewer={BEARING.smallerBore}
            more={BEARING.largerBore}
            onInput={(bore) => set({ bore: typed(bore) })}
            onStep={(by) => set({ bore: stepped(text('bore'), by, units) })}
          />
          {hasDepths(derived.arrangement) && (
            <fieldset>
              <legend>{BEARING.depth}</legend>
              <DepthSlider ring="outerRing" arrangement={derived.arrangement} bearing={bearing} set={set} />
              <DepthSlider ring="innerRing" arrangement={derived.arrangement} bearing={bearing} set={set} />
            </fieldset>
          )}
          <Besides bearing={bearing} derived={derived} set={set} />
          <MoreFields bearing={bearing} derived={derived} set={set} />
          <FindBearing job={job} derived={derived} change={change} />
        </form>
        <BearingResult derived={derived} set={set} />
      </div>
      {derived.sheetRequest && <AssemblyPicture request={derived.sheetRequest} />}
    </>
  )
}

/** What came with a link alone can be removed where it no longer applies. */
function Besides(of: {
  readonly bearing: BearingTexts
  readonly derived: DerivedBearing
  readonly set: (changes: BearingTexts) => void
}) {
  const { bearing, set } = of
  const { units, terms, arrangement } = of.derived
  const words = later()
  if (words === undefined) return null
  const lines = [
    ...statedBesides(bearing, arrangement).map((name) => ({
      name,
      line: words.statedLine(name, bearing[name] ?? '', units, terms),
    })),
    ...statedIdly(bearing, arrangement).map((name) => ({
      name,
      line: words.idleLine(name, bearing[name] ?? '', terms),
    })),
  ]
  if (lines.length === 0) return null
  return (
    <fieldset>
      <legend>{BEARING.besides}</legend>
      {lines.map(({ name, line }) => (
        <p class="row" key={name}>
          {line}
          <button type="button" aria-label={`${BEARING.remove}: ${line}`} onClick={() => set({ [name]: '' })}>
            {BEARING.remove}
          </button>
        </p>
      ))}
    </fieldset>
  )
}

/** A field that was emptied stays in the job, so that its fault can be shown. */
const typed = (text: string): string => (text === '' ? ' ' : text)

/** Balls were measured, or a ring: from then on the bearing stays what it is. */
const isBegun = ({ lot, outer, inner }: Job): boolean => lot.length + readingsIn(outer) + readingsIn(inner) > 0

/** The main sizes in the other units, as near as a rule shows them. */
const onTheRule = (bearing: BearingTexts, from: Units, to: Units): BearingTexts =>
  Object.fromEntries(
    ON_THE_RULE.flatMap((name) => {
      const read = readLength(bearing[name] ?? '', from)
      return read instanceof Unread ? [] : [[name, shopFigure(read, to).text.replace(` ${to}`, '')]]
    }),
  )

/** Wooden balls move with the place too, so they have a wood there; no others have one. */
const ofMaterial = (bearing: BearingTexts, material: string): BearingTexts => ({
  'balls.material': material,
  [BALL_WOOD.name]: material === 'wood' && hasPlace(bearing) ? BALL_WOOD.usual : '',
})

/** The next even figure of the rule. */
function stepped(text: string, by: 1 | -1, units: Units): string {
  const read = readLength(withPoint(text), units)
  if (read instanceof Unread) return text
  const steps = inUnits(read, units) / EVEN_STEP[units]
  const next = Math.max(by < 0 ? Math.ceil(steps) - 1 : Math.floor(steps) + 1, 1)
  return units === 'in' ? sixteenths(next) : String(next)
}

function sixteenths(steps: number): string {
  const whole = Math.floor(steps / 16)
  const rest = steps % 16
  return rest === 0 ? String(whole) : `${whole === 0 ? '' : `${whole} `}${rest}/16`
}
