import { useState } from 'preact/hooks'
import type { ToolName } from '#shared/questions/fit/reading.ts'
import { lengthOf, type Units } from '#shared/units/length.ts'
import { Picks, TextField } from '#src/kiosk/controls.tsx'
import type { Cut } from '#src/kiosk/job/reading.ts'
import { readLength, Unread, withPoint } from '#src/kiosk/job/text.ts'
import { numberOf, part } from '#src/kiosk/json.ts'
import type { Awaited } from '#src/kiosk/reply.ts'
import { later } from '#src/kiosk/second-script.ts'
import { LATHE, TOOL_NAMES } from '#src/words/kiosk/lathe.ts'
import { inUnit } from '#src/words/kiosk/page.ts'

/** A cut that was made: what was meant to come off, with what, and how many strokes. The advice fills it in. */
export function CutForm(of: {
  readonly reply: Awaited
  readonly units: Units
  readonly ofCut: string
  /** Whether a cut is what comes next; one that was made all the same can still be entered. */
  readonly isAdvised: boolean
  /** What the last cut was made with. */
  readonly last: ToolName | undefined
  readonly onCut: (cut: Cut) => void
}) {
  const step = of.isAdvised && of.reply.kind === 'answer' ? part(of.reply.body['nextStep']) : {}
  const advised = numberOf(step['radial'])
  const [typed, setTyped] = useState<string>()
  const [tool, setTool] = useState<ToolName>()
  const [strokes, setStrokes] = useState(0)
  const [fault, setFault] = useState<string>()
  const chosen = tool ?? TOOLS.find((each) => each === step['with']) ?? of.last ?? 'sharp-tool'
  // The figure of the large line: whoever cuts by it enters what was said.
  const told = Number.isFinite(advised) ? later()?.cutFigures(lengthOf(advised, of.units), of.units).depth : undefined
  const depth = typed ?? (told === undefined ? '' : String(Number.parseFloat(told)))
  const done = () => {
    const read = readLength(depth, of.units)
    if (read instanceof Unread) setFault(read.message)
    else of.onCut({ with: chosen, radial: withPoint(depth), ...(chosen === 'abrasive' && strokes > 0 && { strokes }) })
  }
  const form = (
    <fieldset class="cut">
      <legend>{LATHE.cut}</legend>
      <TextField
        label={inUnit(LATHE.depth, `${of.units} ${of.ofCut}`)}
        name="radial"
        mode="decimal"
        value={depth}
        fault={fault}
        onInput={setTyped}
      />
      <Picks
        legend={LATHE.tool}
        name="tool"
        value={chosen}
        options={TOOLS.map((value) => ({ value, label: TOOL_NAMES[value] }))}
        onPick={setTool}
      />
      {chosen === 'abrasive' && (
        <p class="row">
          <button type="button" class="large" onClick={() => setStrokes(strokes + 1)}>
            {LATHE.oneStroke}
          </button>
          <span role="status">
            {LATHE.strokes}: {strokes === 0 ? LATHE.noStrokes : strokes}
          </span>
        </p>
      )}
      <button type="button" class={of.isAdvised ? 'go large' : 'large'} id="cut-done" onClick={done}>
        {LATHE.cutDone}
      </button>
    </fieldset>
  )
  return of.isAdvised ? (
    form
  ) : (
    <details>
      <summary>{LATHE.cutAnyway}</summary>
      {form}
    </details>
  )
}

const TOOLS: readonly ToolName[] = ['sharp-tool', 'abrasive']
