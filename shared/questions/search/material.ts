import type { Mm } from '#shared/units/length.ts'
import type { Disc } from './module.ts'

/** The narrowest board that holds a disc of this diameter, or its own width where no boards are stated. */
export function boardFor(diameter: number, boardWidths: readonly Mm[]): number | undefined {
  return boardWidths.length === 0 ? diameter : boardWidths.find((width) => width >= diameter)
}

/**
 * The part of the boards' area that becomes the bearing. Each disc takes a length of board of its own diameter over the
 * board's whole width; the second needs none where it comes out of the hole of the first.
 *
 * @returns undefined where no board is wide enough
 */
export function materialUsed(
  discs: readonly Disc[],
  bore: number,
  isNested: boolean,
  boardWidths: readonly Mm[],
): number | undefined {
  let [used, taken] = [0, 0]
  for (const [place, { outside, hole }] of discs.entries()) {
    used += (Math.PI / 4) * (outside * outside - (hole === 'bore' ? bore * bore : hole * hole))
    if (place === 1 && isNested) continue
    const board = boardFor(outside, boardWidths)
    if (board === undefined) return undefined
    taken += outside * board
  }
  return used / taken
}
