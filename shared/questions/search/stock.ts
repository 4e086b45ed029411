import type { Mm } from '#shared/units/length.ts'

/** Both rings, as far as their blanks are concerned. */
export interface Blanks {
  readonly outsideDiameter: number
  readonly outerLandDiameter: number
  readonly innerLandDiameter: number
  readonly bore: number
}

/** The narrowest board that holds a disc of this diameter, or its own width when there are no boards to choose from. */
export function boardFor(diameter: number, boardWidths: readonly Mm[]): number | undefined {
  return boardWidths.length === 0 ? diameter : boardWidths.find((width) => width >= diameter)
}

/**
 * The part of the boards' area that becomes rings. Each blank takes a length of board of its own diameter over the board's
 * whole width; the inner ring needs none where it comes out of the outer one's hole.
 *
 * @returns undefined where no board is wide enough
 */
export function materialUsed(blanks: Blanks, nested: boolean, boardWidths: readonly Mm[]): number | undefined {
  const { outsideDiameter, outerLandDiameter, innerLandDiameter, bore } = blanks
  const outer = boardFor(outsideDiameter, boardWidths)
  const inner = nested ? 0 : boardFor(innerLandDiameter, boardWidths)
  if (outer === undefined || inner === undefined) return undefined
  const rings =
    (Math.PI / 4) *
    (outsideDiameter * outsideDiameter -
      outerLandDiameter * outerLandDiameter +
      innerLandDiameter * innerLandDiameter -
      bore * bore)
  return rings / (outsideDiameter * outer + innerLandDiameter * inner)
}
