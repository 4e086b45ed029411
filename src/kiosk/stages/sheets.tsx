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
import { FORMAT_NAMES, PAPER_NAMES, SHEET_NAMES, SHEETS } from '#src/words/kiosk/sheets.ts'

type Sheet = keyof typeof SHEET_NAMES
type Format = keyof typeof FORMAT_NAMES

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
  if (request === undefined) return <NoBearing derived={derived} />
  const query = queryOf({ ...request, paper })
  return (
    <>
      <Picks
        legend={SHEETS.paper}
        name="paper"
        value={paper}
        options={PAPERS.map((value) => ({ value, label: PAPER_NAMES[value] ?? value }))}
        onPick={(chosen) => change(withChoice(job, 'paper', chosen))}
      />
      <p>{SHEETS.scale}</p>
      <p>{SHEETS.onScreen}</p>
      {(reach === 'browser' || reach === 'nobody') && <p class="warning">{later()?.notOffline[reach]}</p>}
      {(Object.keys(FORMATS) as readonly Sheet[]).map((sheet) => (
        <section key={sheet} class="sheet">
          <h3>{SHEET_NAMES[sheet]}</h3>
          <p class="row">
            {FORMATS[sheet].map((format) =>
              isOut(format) ? (
                <span key={format} class="go plain out">
                  {FORMAT_NAMES[format]}
                </span>
              ) : (
                <a
                  key={format}
                  class={format === 'pdf' ? 'go' : 'go plain'}
                  href={addressOf(sheet, format, query)}
                  target="_blank"
                  rel="noopener"
                  aria-label={`${FORMAT_NAMES[format]}: ${SHEET_NAMES[sheet]}, ${name}`}
                >
                  {FORMAT_NAMES[format]}
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
          {SHEETS.documents}
        </a>
      </p>
    </>
  )
}

const addressOf = (sheet: Sheet, format: Format, query: string): string =>
  sheet === 'job-sheet' ? `/v1/job-sheet?${query}&format=${format}` : `/v1/drawings/${sheet}.${format}?${query}`
