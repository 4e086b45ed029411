import { useState } from 'preact/hooks'
import { traitsOf } from '#shared/bearing/arrangements.ts'
import { inUnits, mm } from '#shared/units/length.ts'
import { TextField } from '#src/kiosk/controls.tsx'
import { useDerivedBearing } from '#src/kiosk/derived-bearing.ts'
import { readBearing } from '#src/kiosk/job/bearing.ts'
import type { FindQuery } from '#src/kiosk/job/find-query.ts'
import { type ChoiceName, type Job, withBearing, withChoice } from '#src/kiosk/job/job.ts'
import { readLength, Unread } from '#src/kiosk/job/text.ts'
import { listOf, numberOf, part, textOf } from '#src/kiosk/json.ts'
import { useReply } from '#src/kiosk/reply.ts'
import { later } from '#src/kiosk/second-script.ts'
import type { StageProps } from '#src/kiosk/stage.ts'
import { Answered } from '#src/kiosk/waiting.tsx'
import { bearingFacts } from '#src/words/bearing-facts.ts'
import { figure, percent } from '#src/words/figure.ts'
import { inUnit } from '#src/words/kiosk/page.ts'

type FindProps = Pick<StageProps, 'job' | 'derived' | 'change'>

/**
 * For who has balls, or a place, and no bearing yet: the best that fit, and a table of all. Each is the bearing of the page with
 * other balls, worked out as the page would, so whoever takes it gets the figures that stand beside it. Nothing is asked until it
 * is opened.
 */
export function FindBearing({ job, derived, change }: FindProps) {
  const [isOpen, setIsOpen] = useState(job.choices.findSizes !== undefined)
  const { units, terms } = derived
  const words = later()?.find
  const query = later()?.readFindQuery(job.choices, units)
  const hasTable = traitsOf(derived).ballSet === 'full'
  if (words === undefined || query === undefined) return null
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
  const sizes = query.sizes.map(({ size }) => figure(size, units))
  return (
    <details open={isOpen} onToggle={({ currentTarget }) => setIsOpen(currentTarget.open)}>
      <summary>{words.title}</summary>
      {field(
        'findSizes',
        inUnit(words.sizes(terms), units),
        sizes.length > 0 ? words.readAs(sizes) : words.sizesHint(units),
      )}
      {field('findOutside', inUnit(words.outside, units), '')}
      {field(
        'findCounts',
        words.counts(terms),
        query.counts.length > 0 ? words.readAs(words.runs(query.counts)) : words.countsHint(hasTable),
      )}
      {isOpen && query.sizes.length > 0 && Object.keys(query.faults).length === 0 && (
        <>
          <Best query={query} job={job} derived={derived} change={change} />
          {hasTable && query.counts.length > 0 && <Table query={query} job={job} derived={derived} change={change} />}
        </>
      )}
    </details>
  )
}

type AskedProps = FindProps & { readonly query: FindQuery }

/** The bearing of the page with other balls. */
const withBalls = (job: Job, count: number, size: string): Job =>
  withBearing(job, { 'balls.count': String(count), 'balls.diameter': size })

function Best({ query, job, derived, change }: AskedProps) {
  const { units, terms } = derived
  const { sizes, counts, outside } = query
  // Whatever balls the page has now, only the rest of its bearing counts.
  const [first] = sizes
  const { request } = readBearing(withBalls(job, ANY_COUNT, first?.text ?? '').bearing)
  const limits = outside !== undefined && { sizes: sizes.map(({ size }) => inUnits(size, units)), counts, outside }
  const reply = useReply('/v1/design-search', (request && limits && later()?.searchFor(request, limits)) || undefined)
  const words = later()?.find
  return (
    <Answered reply={reply}>
      {(answer) => {
        const pairs = later()?.bestPairs(listOf(answer['ranked']).map(part), counts) ?? []
        return (
          <>
            <h3>{words?.best}</h3>
            <ol class="found">
              {pairs.map(({ count, diameter, score }) => {
                const size = sizes.find((each) => isSame(inUnits(each.size, units), diameter))?.text ?? String(diameter)
                const found = withBalls(job, count, size)
                return (
                  <Found
                    key={`${count} ${size}`}
                    found={found}
                    limit={outside}
                    score={score}
                    take={() => change(found)}
                  />
                )
              })}
            </ol>
            {pairs.length === 0 ? (
              <p>{textOf(answer['summary'])}</p>
            ) : (
              <p>
                <small>{words?.scored(terms)}</small>
              </p>
            )}
          </>
        )
      }}
    </Answered>
  )
}

const ANY_COUNT = 12
/** An answer has a size to six digits. */
const isSame = (one: number, other: number): boolean => Math.abs(one - other) < 1e-5

/** One of the best, with the sizes that the page would give it, and how often it runs all year where there is a place. */
function Found(of: {
  readonly found: Job
  readonly limit: number | undefined
  readonly score: number
  readonly take: () => void
}) {
  const { design, units, terms, refusals, isWaiting, isUnreached, read } = useDerivedBearing(of.found.bearing)
  const isPlaced = part(part(read.request)['making'])['climate'] !== undefined
  const season = useReply('/v1/seasonal-fit', isPlaced && design ? { design: read.request } : undefined)
  const words = later()?.find
  if (words === undefined || isUnreached) return null
  const facts = design && bearingFacts(design)
  const isWide = facts !== undefined && of.limit !== undefined && inUnits(facts.outside, units) > of.limit
  const year = season.kind === 'answer' ? numberOf(part(season.body['probability'])['runsAllYear']) : undefined
  return (
    <li aria-busy={isWaiting || season.kind === 'waiting'}>
      {facts &&
        words.line({
          count: facts.count,
          diameter: figure(facts.ballDiameter, units),
          outside: figure(facts.outside, units),
          score: percent(of.score),
          year: year === undefined ? undefined : percent(year),
          isWide,
          terms,
        })}{' '}
      {refusals[0]}{' '}
      {design && (
        <button type="button" onClick={of.take}>
          {words.take}
        </button>
      )}
    </li>
  )
}

/** More rows are read by nobody, and each may be a question to the service. */
const MOST_ROWS = 40

function Table({ query, job, derived, change }: AskedProps) {
  const words = later()?.find
  const pairs = query.sizes.flatMap(({ text }) => query.counts.map((count) => [count, text] as const))
  if (words === undefined) return null
  return (
    <>
      <table id="size-table">
        <caption>{words.table}</caption>
        <thead>
          <tr>
            {words.columns(derived.terms).map((name) => (
              <th scope="col" key={name}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {pairs.slice(0, MOST_ROWS).map(([count, size]) => {
            const found = withBalls(job, count, size)
            return <Row key={`${count} ${size}`} found={found} take={() => change(found)} />
          })}
        </tbody>
      </table>
      {pairs.length > MOST_ROWS && <p>{words.tooMany(MOST_ROWS, pairs.length)}</p>}
    </>
  )
}

function Row({ found, take }: { readonly found: Job; readonly take: () => void }) {
  const { design, units, refusals, isWaiting } = useDerivedBearing(found.bearing)
  const words = later()?.find
  const size = readLength(found.bearing['balls.diameter'] ?? '', units)
  const name = words?.balls(Number(found.bearing['balls.count']), size instanceof Unread ? '' : figure(size, units))
  return (
    <tr aria-busy={isWaiting}>
      <th scope="row">{name}</th>
      {design ? (
        <>
          <td>{figure(mm(2 * design.bearing.pitchRadius), units)}</td>
          <td>{figure(bearingFacts(design).outside, units)}</td>
          <td>
            <button type="button" aria-label={`${words?.take}: ${name}`} onClick={take}>
              {words?.takeRow}
            </button>
          </td>
        </>
      ) : (
        <td colSpan={3} class="refused">
          {refusals[0]}
        </td>
      )}
    </tr>
  )
}
