import { useState } from 'preact/hooks'
import { traitsOf } from '#shared/bearing/arrangements.ts'
import { inUnits, lengthOf, type Mm, type Units } from '#shared/units/length.ts'
import { TextField } from '#src/kiosk/controls.tsx'
import { textsOf } from '#src/kiosk/derived-bearing.ts'
import { type BearingTexts, type ChoiceName, withBearing, withChoice } from '#src/kiosk/job/job.ts'
import { listIn, readCount, readLength, Unread } from '#src/kiosk/job/text.ts'
import { useReply } from '#src/kiosk/reply.ts'
import { type Json, listOf, numberOf, part, textOf } from '#src/kiosk/service.ts'
import type { StageProps } from '#src/kiosk/stage.ts'
import { Answered } from '#src/kiosk/waiting.tsx'
import { figure, percent } from '#src/words/figure.ts'
import { FIND } from '#src/words/kiosk/find.ts'
import { inUnit } from '#src/words/kiosk/page.ts'
import type { Terms } from '#src/words/terms.ts'

type FindProps = Pick<StageProps, 'job' | 'derived' | 'change'>

/**
 * For who has balls, or a place, and no bearing yet: the best that fit, and a table of all. Nothing is asked until
 * it is opened.
 */
export function FindBearing({ job, derived, change }: FindProps) {
  const [isOpen, setIsOpen] = useState(job.choices.findSizes !== undefined)
  const { units, terms } = derived
  const query = readQuery(job.choices, units)
  const hasTable = traitsOf(derived).ballSet === 'full'
  const field = (name: ChoiceName, label: string, hint: string) => (
    <TextField
      label={label}
      name={name}
      value={job.choices[name] ?? ''}
      hint={hint}
      fault={query.faults[name]}
      onInput={(text) => change(withChoice(job, name, text), name)}
    />
  )
  return (
    <details open={isOpen} onToggle={({ currentTarget }) => setIsOpen(currentTarget.open)}>
      <summary>{FIND.title}</summary>
      {field('findSizes', FIND.sizes(terms), FIND.sizesHint(units))}
      {field('findOutside', inUnit(FIND.outside, units), '')}
      {field('findCounts', FIND.counts(terms), FIND.countsHint(hasTable))}
      {isOpen && query.sizes.length > 0 && (
        <>
          <Best query={query} job={job} derived={derived} change={change} />
          {hasTable && query.counts.length > 0 && <Table query={query} job={job} derived={derived} change={change} />}
        </>
      )}
    </details>
  )
}

interface FindQuery {
  readonly sizes: readonly number[]
  readonly counts: readonly number[]
  readonly outside?: number
  readonly faults: Readonly<Partial<Record<ChoiceName, string>>>
}

const COUNT = { min: 3, max: 200 }

/** What can be read of the three fields. With a fault in one, nothing of it is asked. */
function readQuery(choices: FindProps['job']['choices'], units: Units): FindQuery {
  const lengths = listIn(choices.findSizes ?? '').map((text) => readLength(text, units))
  const counts = listIn(choices.findCounts ?? '').map((text) => readCount(text, COUNT))
  const outside = choices.findOutside === undefined ? undefined : readLength(choices.findOutside, units)
  const faultOf = (name: ChoiceName, read: readonly unknown[]) => {
    const fault = read.find((each) => each instanceof Unread)
    return fault instanceof Unread ? { [name]: fault.message } : {}
  }
  const good = <T,>(read: readonly (T | Unread)[]) =>
    read.some((each) => each instanceof Unread) ? [] : (read as readonly T[])
  return {
    sizes: good(lengths).map((length) => inUnits(length, units)),
    counts: good(counts),
    ...(outside !== undefined && !(outside instanceof Unread) && { outside: inUnits(outside, units) }),
    faults: {
      ...faultOf('findSizes', lengths),
      ...faultOf('findCounts', counts),
      ...faultOf('findOutside', [outside]),
    },
  }
}

/** So many can be looked through without a wheel. */
const SHOWN = 5

function Best({ query, job, derived, change }: FindProps & { readonly query: FindQuery }) {
  const { units, arrangement, terms } = derived
  const read = readLength(job.bearing['bore'] ?? '', units)
  const bore = read instanceof Unread ? undefined : inUnits(read, units)
  const material = job.bearing['balls.material']
  const reply = useReply(
    '/v1/design-search',
    bore === undefined || query.outside === undefined
      ? undefined
      : {
          units,
          arrangement,
          balls: query.sizes.map((diameter) => ({ diameter, ...(material !== undefined && { material }) })),
          bore: { min: bore, max: bore },
          ...(query.counts.length > 0 && {
            counts: { min: Math.min(...query.counts), max: Math.max(...query.counts) },
          }),
          outsideDiameter: { max: query.outside },
          limit: SHOWN,
        },
  )
  return (
    <Answered reply={reply}>
      {(answer) => (
        <>
          <h3>{FIND.best}</h3>
          <ol class="found">
            {listOf(answer['ranked'])
              .map(part)
              .map((ranked) => (
                <li key={JSON.stringify(ranked['design'])}>
                  {lineOf(ranked, units, terms)}{' '}
                  <button
                    type="button"
                    onClick={() => change(withBearing(job, instead(job.bearing, part(ranked['design']))))}
                  >
                    {FIND.take}
                  </button>
                </li>
              ))}
          </ol>
          {listOf(answer['ranked']).length === 0 ? (
            <p>{textOf(answer['summary'])}</p>
          ) : (
            <p>
              <small>{FIND.scored(terms)}</small>
            </p>
          )}
        </>
      )}
    </Answered>
  )
}

/** Outside diameter of the bearing, whatever its outermost part is called. */
const outsideOf = (row: Json): unknown =>
  Object.values(row)
    .map((each) => part(each)['outsideDiameter'])
    .find((diameter) => diameter !== undefined)

const sizeIn = (value: unknown, units: Units): string => figure(lengthOf(numberOf(value), units) as Mm, units)

function lineOf(ranked: Json, units: Units, terms: Terms): string {
  const { count, diameter } = part(part(ranked['design'])['balls'])
  return FIND.line({
    count: numberOf(count),
    diameter: sizeIn(diameter, units),
    outside: sizeIn(ranked['outsideDiameter'], units),
    score: percent(numberOf(ranked['score'])),
    terms,
  })
}

/** Another bearing in the place of this one; its name, wood and place stay. */
function instead(bearing: BearingTexts, design: Json): BearingTexts {
  const cleared = Object.keys(bearing).filter((name) => !name.startsWith('making.'))
  return { ...Object.fromEntries(cleared.map((name) => [name, ''])), ...textsOf(design) }
}

function Table({ query, job, derived, change }: FindProps & { readonly query: FindQuery }) {
  const { units, arrangement, terms } = derived
  const reply = useReply('/v1/size-table', { units, arrangement, diameters: query.sizes, counts: query.counts })
  return (
    <Answered reply={reply}>
      {(answer) => (
        <table id="size-table">
          <caption>{FIND.table}</caption>
          <thead>
            <tr>
              {FIND.columns(terms).map((name) => (
                <th scope="col" key={name}>
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {listOf(answer['rows'])
              .map(part)
              .map((row) => {
                const { count, diameter } = part(row['balls'])
                const name = FIND.balls(numberOf(count), sizeIn(diameter, units))
                return (
                  <tr key={name}>
                    <th scope="row">{name}</th>
                    <td>{sizeIn(row['pitchDiameter'], units)}</td>
                    <td>{sizeIn(outsideOf(row), units)}</td>
                    <td>
                      <button
                        type="button"
                        aria-label={`${FIND.take}: ${name}`}
                        onClick={() =>
                          change(withBearing(job, { 'balls.count': String(count), 'balls.diameter': String(diameter) }))
                        }
                      >
                        {FIND.takeRow}
                      </button>
                    </td>
                  </tr>
                )
              })}
          </tbody>
        </table>
      )}
    </Answered>
  )
}
