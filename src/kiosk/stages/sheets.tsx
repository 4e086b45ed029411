import { PAPERS, usualPaper } from '#src/drawings/papers.ts'
import { queryOf } from '#src/kiosk/bearing-query.ts'
import { Picks } from '#src/kiosk/controls.tsx'
import { EmbedThis } from '#src/kiosk/embed-this.tsx'
import { withChoice } from '#src/kiosk/job/job.ts'
import { QrCode } from '#src/kiosk/qr-code.tsx'
import { useReach } from '#src/kiosk/reach.ts'
import { useReply } from '#src/kiosk/reply.ts'
import { later } from '#src/kiosk/second-script.ts'
import type { StageProps } from '#src/kiosk/stage.ts'
import { NoBearing } from '#src/kiosk/waiting.tsx'
import type { SHEETS } from '#src/words/kiosk/sheets.ts'

type Sheet = keyof (typeof SHEETS)['names']
type Format = keyof (typeof SHEETS)['formats']

const FORMATS: Readonly<Record<Sheet, readonly Format[]>> = {
  'job-sheet': ['html', 'pdf'],
  assembly: ['html', 'pdf', 'svg', 'dxf'],
  templates: ['pdf', 'svg', 'dxf'],
  gauges: ['pdf', 'svg', 'dxf'],
}

/** A button for each sheet and each file. Where there is no bearing there is nothing to open. */
export function SheetsStage({ job, derived, change }: StageProps) {
  const { sheetRequest: request, units, name } = derived
  // Sheets are links: only an answer tells whether the service that makes them is there.
  useReply('/v1/design', request)
  const reach = useReach()
  const isOut = (format: Format) => reach === 'nobody' || (reach === 'browser' && format === 'pdf')
  const paper = PAPERS.find((each) => each === job.choices.paper) ?? usualPaper(units)
  const words = later()?.sheets
  if (request === undefined) return <NoBearing derived={derived} />
  if (words === undefined) return null
  const query = queryOf({ ...request, paper })
  return (
    <>
      <Picks
        legend={words.paper}
        name="paper"
        value={paper}
        options={PAPERS.map((value) => ({ value, label: words.papers[value] }))}
        onPick={(chosen) => change(withChoice(job, 'paper', chosen))}
      />
      <p>{words.scale}</p>
      <p>{words.onScreen}</p>
      <p>{words.files}</p>
      {(reach === 'browser' || reach === 'nobody') && <p class="warning">{later()?.notOffline[reach]}</p>}
      {(Object.keys(FORMATS) as readonly Sheet[]).map((sheet) => (
        <section key={sheet} class="sheet">
          <h3>{words.names[sheet]}</h3>
          <p class="row">
            {FORMATS[sheet].map((format) =>
              isOut(format) ? (
                <span key={format} class="go plain out">
                  {words.formats[format]}
                </span>
              ) : (
                <a
                  key={format}
                  class={format === 'pdf' ? 'go' : 'go plain'}
                  href={addressOf(sheet, format, query)}
                  target="_blank"
                  rel="noopener"
                  aria-label={`${words.formats[format]}: ${words.names[sheet]}, ${name}`}
                >
                  {words.formats[format]}
                </a>
              ),
            )}
          </p>
        </section>
      ))}
      <EmbedThis request={request} name={name} />
      <QrCode bearing={job.bearing} derived={derived} />
      <p>
        <a class="go plain" href="/docs">
          {words.documents}
        </a>
      </p>
    </>
  )
}

const addressOf = (sheet: Sheet, format: Format, query: string): string =>
  sheet === 'job-sheet' ? `/v1/job-sheet?${query}&format=${format}` : `/v1/drawings/${sheet}.${format}?${query}`
