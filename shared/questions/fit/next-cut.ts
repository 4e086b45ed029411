import type { ToolError } from '#shared/making/tool-error.ts'
import { endByHalving } from '#shared/numbers/halving.ts'
import { MOST_SANDED } from './defaults.ts'
import type { ToolName } from './reading.ts'
import { type AfterCut, afterCut, deepAfter, type Room } from './room.ts'

/** A cut that could be made now. */
export interface Cut extends AfterCut {
  readonly with: ToolName
  readonly radial: number
}

export interface ToolAtHand {
  readonly name: ToolName
  readonly error: ToolError
  /** Depth of one stroke, if strokes were counted. */
  readonly perStroke?: number
}

/**
 * Share of the accepted risk that one cut may take: several cuts and the readings between them share it.
 * Derived here, from simulated rings.
 */
const SHARE_OF_RISK = 0.3
/** Each reading again at one state shows that less is to be learnt by waiting. */
const MORE_PER_READING = 2
/** The worth of a groove in band against the loss of one too deep. */
const WORTH_OF_BAND = 0.1
/** Extra worth of a cut that finishes the groove, because it saves a check. */
const WORTH_OF_DEPTH = 0.2
const DEPTHS = 24
/** To a thousandth of the depth that is looked through. */
const HALVINGS = 10

/** The chance of ending too deep that a cut may have now: never above what the maker accepts. */
export const riskNow = (overshootRisk: number, readAgain: number): number =>
  Math.min(overshootRisk, SHARE_OF_RISK * overshootRisk * (1 + MORE_PER_READING * readAgain))

/** The best cut of all tools whose risk keeps below `most`, none past the aim; nothing where there is none. */
export function bestCut(room: Room, tools: readonly ToolAtHand[], most: number): Cut | undefined {
  const before = deepAfter(room, 0, { absolute: 0, relative: 0 })
  const worthOf = ({ good, tooDeep, radial }: Cut): number =>
    good -
    Math.max(0, tooDeep - before) / WORTH_OF_BAND +
    WORTH_OF_DEPTH * Math.min(1, radial / Math.max(room.remaining, 1e-9))
  let best: Cut | undefined
  for (const tool of tools) {
    const deepest = deepestWithin(room, tool, most)
    if (!(deepest > 0)) continue
    for (let step = 1; step <= DEPTHS; step++) {
      const radial = inStrokes(tool, (deepest * step) / DEPTHS)
      if (!(radial > 0)) continue
      const cut = { with: tool.name, radial, ...afterCut(room, radial, tool.error) }
      if (cut.tooDeep <= most && (best === undefined || worthOf(cut) > worthOf(best))) best = cut
    }
  }
  return best
}

/** How deep a tool may go: within its risk, and not past the aim. */
function deepestWithin(room: Room, tool: ToolAtHand, most: number): number {
  const toAim = room.remaining / (1 + Math.max(room.toolMean, 0))
  const reach = Math.min(toAim, tool.name === 'abrasive' ? MOST_SANDED : Number.POSITIVE_INFINITY)
  if (!(reach > 0)) return 0
  if (deepAfter(room, reach, tool.error) <= most) return reach
  const [deepest] = endByHalving((depth) => deepAfter(room, depth, tool.error) <= most, 0, reach, HALVINGS)
  return deepest
}

/** Rounded down, for wood does not grow on again. */
const inStrokes = ({ perStroke }: ToolAtHand, depth: number): number =>
  perStroke === undefined ? depth : Math.floor(depth / perStroke) * perStroke
