import type { Bearing } from '#shared/bearing/bearing.ts'
import { element } from './elements.ts'

/** Draws a bearing; without one the last drawing stays, faint. */
export function showPicture(bearing: Bearing | undefined): void {
  const figure = element('drawing', HTMLElement)
  figure.toggleAttribute('data-stale', bearing === undefined)
}
