import { type Design, isCaged, isOfPlates } from '#shared/bearing/arrangements.ts'
import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import type { Mm } from '#shared/units/length.ts'
import type { CautionCode } from '#src/words/caution.ts'
import { gapReadings, type Job, type Operation, type Reading, type Size } from './operation.ts'

/* What is done at last, whatever the bearing. Common practice, no source, as all of the sheet. */

export function finish({ design, say }: Job<Design>): Operation {
  const { finishAllowance } = design.bearing.settled
  const isBare = finishAllowance === 0
  return {
    id: 'finish',
    part: 'both',
    title: isBare ? 'Leave it bare, or finish outside the grooves only' : 'Put the finish on',
    tool: 'cloth, thin finish',
    how: isBare
      ? 'The sizes are for bare wood. Finish the outsides and faces alone, and keep it out of the grooves.'
      : `Thin, even coats on every turned surface: the sizes leave ${say(finishAllowance)} for it on each.`,
    sizes: isBare ? [] : [{ name: 'film on each surface', value: finishAllowance }],
    check: 'The plugs and the play again, when it is dry.',
    mistake: {
      looksLike: 'A run of finish in a groove.',
      costs: 'A bump that every ball climbs: scrape it out before it hardens.',
    },
    cautions: ['finish'],
    readings: gapReadings(design),
  }
}

export const grain = (): Operation => ({
  id: 'grain',
  part: 'both',
  title: 'Knock the raised grain back',
  tool: 'fine abrasive, used',
  how: 'A first coat, or damp air, lifts the fibres. When dry, rub them off with two or three light strokes in each groove.',
  sizes: [],
  check: 'A cloth drags nowhere; the balls run without a hiss.',
  mistake: { looksLike: 'Sanding on until it is smooth to the eye.', costs: 'Depth: the gap opens again.' },
  cautions: ['dust'],
  readings: [],
})

export const wax = (): Operation => ({
  id: 'wax',
  part: 'both',
  title: 'Wax the grooves',
  tool: 'hard paste wax, soft cloth',
  how: 'A thin coat in both grooves, left to dry and buffed off.',
  sizes: [],
  check: 'Nothing comes off on a finger.',
  mistake: { looksLike: 'Wax left thick.', costs: 'It gathers dust into crumbs that feel like a rough groove.' },
  cautions: ['finish'],
  readings: [],
})

const PLAY_READING = { name: 'play, side to side', at: 'inner', kind: 'radial-play', field: '/value' } as const

/** What is read once more at the end, and what it should be by then. */
type Kept = {
  readonly read: string
  readonly sizes: readonly Size[]
  readonly still: string
  readonly readings: readonly Reading[]
}

function keptBy(design: Design, say: (length: Mm) => string): Kept {
  if (isCaged(design)) {
    return {
      read: 'the play',
      sizes: [playOf(design.bearing)],
      still: 'the cage drags nowhere',
      readings: [PLAY_READING],
    }
  }
  const { bearing } = design
  const gap = { symbol: DIMENSION_SYMBOLS.ballGap, name: 'ball gap', value: bearing.ballGap }
  const still = `the gap is still ${say(bearing.settled.minBallGap)} or more`
  if (isOfPlates(design)) {
    const between = { symbol: DIMENSION_SYMBOLS.plateGap, name: 'between the plates', value: design.bearing.plateGap }
    return { read: 'the gap', sizes: [gap, between], still, readings: gapReadings(design) }
  }
  return {
    read: 'the gap and the play',
    sizes: [gap, playOf(design.bearing)],
    still,
    readings: [...gapReadings(design), PLAY_READING],
  }
}

const playOf = ({ radialInternalClearance: value }: RingPair): Size => ({
  symbol: DIMENSION_SYMBOLS.radialInternalClearance,
  name: 'play',
  value,
})

export function runIn({ design, say }: Job<Design>): Operation {
  const { settled } = design.bearing
  const { read, sizes, still, readings } = keptBy(design, say)
  return {
    id: 'run-in',
    part: 'both',
    title: isCaged(design) ? 'Run it in by hand' : 'Assemble and run in by hand',
    tool: 'hands',
    how: `A few hundred turns by hand, light load, both ways. Take it apart, wipe out the dust, look for shiny spots, and read ${read} once more.`,
    sizes,
    check: `It coasts, and is as quiet at the end of a turn as at its start; ${still}.`,
    mistake: {
      looksLike: 'A shiny spot at one place of a groove: high wood or a large ball.',
      costs: 'Wear that grows. Ease the spot with two strokes, no more.',
    },
    cautions: [
      'light-use-only',
      ...((settled.traits.rolls === 'rollers' ? ['roller-skew'] : []) as CautionCode[]),
      ...((settled.input.balls.material === 'glass' ? ['glass-balls'] : []) as CautionCode[]),
    ],
    readings,
  }
}
