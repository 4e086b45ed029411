import { traitsOf, woodPartsOf } from '#shared/bearing/arrangements.ts'
import type { WoodPart } from '#shared/bearing/wood-parts.ts'
import { CONSTRUCTIONS } from '#shared/wood/construction.ts'
import { Choice, TextField } from '#src/kiosk/controls.tsx'
import { type DerivedBearing, textsOf } from '#src/kiosk/derived-bearing.ts'
import {
  HUMIDITIES,
  hasPlace,
  MONTHS,
  monthsIn,
  PERCENT,
  textOfMonths,
  valueOrUsual,
  WITHOUT_SPECIES,
} from '#src/kiosk/job/bearing.ts'
import { type BearingTexts, withBearing } from '#src/kiosk/job/job.ts'
import { readNumber, Unread, withPoint } from '#src/kiosk/job/text.ts'
import { type Json, listOf, part, textOf } from '#src/kiosk/json.ts'
import { useReply } from '#src/kiosk/reply.ts'
import { later } from '#src/kiosk/second-script.ts'
import type { StageProps } from '#src/kiosk/stage.ts'
import { Answered, Summary, Warnings } from '#src/kiosk/waiting.tsx'
import { MONTH_NAMES, PLACE, STATE_NAMES } from '#src/words/kiosk/place.ts'
import { CONSTRUCTION_NAMES } from '#src/words/materials.ts'

const AIR = [
  [HUMIDITIES.today, PLACE.today],
  [HUMIDITIES.driest, PLACE.driest],
  [HUMIDITIES.dampest, PLACE.dampest],
] as const

/** The wood and the place, and what a year does there. */
export function PlaceStage({ job, derived, change }: StageProps) {
  const { bearing } = job
  const set = (changes: BearingTexts) => change(withBearing(job, changes), Object.keys(changes).join())
  const reply = useReply(
    '/v1/seasonal-fit',
    hasPlace(bearing) && derived.read.request ? { design: derived.read.request } : undefined,
  )
  return (
    <div class="columns">
      <form autocomplete="off" onSubmit={(event) => event.preventDefault()}>
        <TextField
          label={PLACE.name}
          name="name"
          value={bearing['making.name'] ?? ''}
          onInput={(text) => set({ 'making.name': text })}
        />
        {woodPartsOf(derived).map((each) => (
          <fieldset key={each}>
            <legend>{PLACE.parts[each]}</legend>
            <Wood part={each} label={PLACE.wood} bearing={bearing} faults={derived.read.faults} set={set} />
            <Choice
              label={PLACE.construction}
              name={constructionOf(each)}
              value={bearing[constructionOf(each)] ?? ''}
              fault={derived.read.faults.get(constructionOf(each))}
              options={[
                { value: '', label: notChosen(derived, constructionOf(each)) },
                ...CONSTRUCTIONS.map((value) => ({ value, label: CONSTRUCTION_NAMES[value] })),
              ]}
              onPick={(text) =>
                set({
                  [constructionOf(each)]: text,
                  ...(text === WITHOUT_SPECIES && { [`making.woods.${each}.species`]: '' }),
                })
              }
            />
          </fieldset>
        ))}
        {valueOrUsual(bearing, derived.arrangement, 'balls.material') === 'wood' && (
          <Wood
            part="balls"
            label={PLACE.elements(derived.terms.element.many)}
            bearing={bearing}
            faults={derived.read.faults}
            set={set}
          />
        )}
        <fieldset>
          <legend>{PLACE.air}</legend>
          {(bearing[MONTHS] === undefined ? AIR : AIR.slice(0, 1)).map(([name, label]) => (
            <TextField
              key={name}
              label={label}
              name={name}
              mode="decimal"
              value={bearing[name] ?? ''}
              fault={derived.read.faults.get(name)}
              hint={later()?.airQuestion(percentOf(bearing[name]))}
              onInput={(text) => set({ [name]: text })}
            />
          ))}
          <Months text={bearing[MONTHS]} set={set} />
        </fieldset>
      </form>
      <div class="result">
        {reply.kind === 'nothing' && (
          <p>{AIR.some(([name]) => derived.read.faults.has(name)) ? PLACE.correct : PLACE.ask}</p>
        )}
        <Answered reply={reply}>{(answer) => <Year answer={answer} derived={derived} set={set} />}</Answered>
      </div>
    </div>
  )
}

/** Until the words for it are there, only that it is not chosen. */
const notChosen = (derived: DerivedBearing, name: string): string =>
  later()?.notChosen(derived.countedAs[name], isByYear(derived, name)) ?? PLACE.unknown

/** Whether the stated year decided what nobody chose. */
const isByYear = ({ openings }: DerivedBearing, name: string): boolean =>
  openings?.input.seasoned?.paths.includes(`/${name.replaceAll('.', '/')}`) === true

const constructionOf = (part: WoodPart): string => `making.woods.${part}.construction`

/** Of a text, a relative humidity; undefined where it is none. */
function percentOf(text = ''): number | undefined {
  const read = readNumber(text, PERCENT)
  return read instanceof Unread ? undefined : read
}

function Wood(of: {
  readonly part: WoodPart | 'balls'
  readonly label: string
  readonly bearing: BearingTexts
  readonly faults: ReadonlyMap<string, string>
  readonly set: (changes: BearingTexts) => void
}) {
  const [name, construction] = [`making.woods.${of.part}.species`, `making.woods.${of.part}.construction`]
  const value = of.bearing[name] ?? ''
  const known = later()?.woodChoices ?? []
  // A wood that a link names is there before the list is, and where no list has it.
  const own = value === '' || known.some((each) => each.value === value) ? [] : [{ value, label: value }]
  return (
    <Choice
      label={of.label}
      name={name}
      value={value}
      fault={of.faults.get(name)}
      options={[{ value: '', label: PLACE.unknown }, ...own, ...known]}
      onPick={(text) =>
        of.set({
          [name]: text,
          ...(text !== '' && of.bearing[construction] === WITHOUT_SPECIES && { [construction]: '' }),
        })
      }
    />
  )
}

/** The air of each month, for those who have it: from a weather table, or from a hygrometer on the wall. */
function Months(of: { readonly text: string | undefined; readonly set: (changes: BearingTexts) => void }) {
  const months = monthsIn(of.text ?? '')
  const enter = (index: number, change: Partial<(typeof months)[number]>) =>
    of.set({ [MONTHS]: textOfMonths(months.map((month, at) => (at === index ? { ...month, ...change } : month))) })
  return (
    <details open={of.text !== undefined}>
      <summary>{PLACE.byMonth}</summary>
      <p>
        <small>{PLACE.monthHint}</small>
      </p>
      {MONTH_NAMES.map((name, index) => (
        <div class="month" key={name}>
          <span>{name}</span>
          {(['humidity', 'temperature'] as const).map((field) => (
            <input
              key={field}
              type="text"
              inputMode="decimal"
              maxLength={6}
              autocomplete="off"
              name={`${field}-${index + 1}`}
              aria-label={`${name}, ${PLACE[field]}`}
              placeholder={PLACE.units[field]}
              value={months[index]?.[field] ?? ''}
              onInput={({ currentTarget }) =>
                enter(index, { [field]: withPoint(currentTarget.value).replaceAll(/[,/]/g, '') })
              }
            />
          ))}
        </div>
      ))}
      {[...new Set(months.flatMap(({ humidity }) => later()?.airQuestion(percentOf(humidity)) ?? []))].map(
        (question) => (
          <p key={question}>
            <small>{question}</small>
          </p>
        ),
      )}
      {of.text !== undefined && (
        <button type="button" onClick={() => of.set({ [MONTHS]: '' })}>
          {PLACE.noMonths}
        </button>
      )}
    </details>
  )
}

/** What the year does, in a strip of its states, and the advice that can be taken with one press. */
function Year(of: {
  readonly answer: Json
  readonly derived: DerivedBearing
  readonly set: (changes: BearingTexts) => void
}) {
  const { answer, derived, set } = of
  const changes = listOf(part(answer['buildIn'])['changes']).map(part)
  const states = listOf(answer['states'])
  const isByMonth = states.length > 2
  const Picture = later()?.YearPicture
  return (
    <>
      <h3>{PLACE.year}</h3>
      <Summary text={textOf(answer['summary'])} />
      {later()
        ?.countedOn(
          derived.terms,
          woodPartsOf(derived).filter((each) => isByYear(derived, constructionOf(each))),
          traitsOf(derived).ballSet === 'full',
        )
        .map((line) => (
          <p key={line}>{line}</p>
        ))}
      {changes.length > 0 && (
        <button type="button" class="go" id="take-advice" onClick={() => set(textsOfChanges(changes))}>
          {PLACE.apply}
        </button>
      )}
      {Picture && <Picture states={(isByMonth ? states : [answer['today'], ...states]).map(part)} />}
      <ul>
        {states.map((state) => {
          const name = textOf(part(state)['name'])
          return (
            <li key={name}>
              <strong>{STATE_NAMES[name] ?? name}: </strong>
              {textOf(part(state)['message'])}
            </li>
          )
        })}
      </ul>
      <p>{textOf(part(answer['band'])['message'])}</p>
      <Warnings answer={answer} />
    </>
  )
}

/** Advice names places of a request: `/design/ballGap`. */
function textsOfChanges(changes: readonly Json[]): BearingTexts {
  const pairs = changes.map(({ path, value }) => {
    const name = textOf(path)
      .replace(/^\/design\//, '')
      .replaceAll('/', '.')
    return typeof value === 'object' && value !== null ? textsOf(part(value), name) : { [name]: String(value) }
  })
  return Object.assign({}, ...pairs)
}
