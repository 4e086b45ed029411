import type { FullRingDesign } from '#shared/bearing/arrangements.ts'
import { stockOf } from '#shared/making/stock.ts'
import { usualPaper } from '#src/drawings/papers.ts'
import { assemblySheet } from '#src/drawings/sheets/assembly.ts'
import { assembledRings } from '#src/drawings/sheets/rings-assembly.ts'
import { toSvg } from '#src/drawings/writers/svg.ts'
import { element } from './elements.ts'

/** Draws a bearing; without one the last drawing stays, faint. */
export function showPicture(design: FullRingDesign | undefined): void {
  const figure = element('drawing', HTMLElement)
  figure.toggleAttribute('data-stale', design === undefined)
  if (design === undefined) return
  const { bearing } = design
  const sheet = assemblySheet(assembledRings(design, stockOf(bearing)), usualPaper(bearing.resolved.input.units))
  const drawn = new DOMParser().parseFromString(toSvg(sheet, { fluid: true }), 'image/svg+xml')
  figure.replaceChildren(document.adoptNode(drawn.documentElement))
}
