import type { Page } from 'playwright-core'

/** How light something is, from 0 for black to 1 for white. */
export interface Ink {
  /** The ground on which a drawing stands. */
  readonly paper: number
  /** Of all that is drawn but a code for a camera, what stands out least from the ground … */
  readonly leastContrast: number
  /** … and how light it is. */
  readonly ink: number
}

/** Of two colours as a browser names them: how light each is as an eye sees it, and their contrast (WCAG 2.2: from 1 to 21). */
const CONTRAST = `
    const partsOf = (colour) => colour.match(/[\\d.]+/g).map(Number)
    const luminance = (colour) => {
      const [r, g, b] = partsOf(colour).map((part) => part / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4))
      return 0.2126 * r + 0.7152 * g + 0.0722 * b
    }
    const contrast = (one, other) => {
      const [low, high] = [luminance(one), luminance(other)].toSorted((a, b) => a - b)
      return (high + 0.05) / (low + 0.05)
    }`

/** The least contrast of a figure with the ball on which it stands. */
export const leastContrastOnBalls = (page: Page): Promise<number> =>
  page.evaluate(`(() => {${CONTRAST}
    const fillOf = (shape) => getComputedStyle(shape).fill
    return Math.min(...[...document.querySelectorAll('.ball + text')].map((text) => contrast(fillOf(text), fillOf(text.previousElementSibling))))
  })()`)

/** The colours of a drawing in the page, as they are seen (contrast by WCAG 2.2: from 1 to 21). */
export const inkOf = (page: Page, drawing: string): Promise<Ink> =>
  page.evaluate(`(() => {${CONTRAST}
    const light = (colour) => partsOf(colour).slice(0, 3).reduce((sum, part) => sum + part, 0) / 765
    const svg = document.querySelector(${JSON.stringify(drawing)})
    let ground = svg
    while (getComputedStyle(ground).backgroundColor === 'rgba(0, 0, 0, 0)') ground = ground.parentElement
    const paper = getComputedStyle(ground).backgroundColor
    const seen = [...svg.querySelectorAll('path, circle, text, rect')]
      .filter((shape) => shape.closest('[shape-rendering]') === null)
      .flatMap((shape) => [getComputedStyle(shape).stroke, getComputedStyle(shape).fill])
      .filter((colour) => colour !== 'none')
      .map((colour) => ({ leastContrast: contrast(colour, paper), ink: light(colour) }))
    const [least] = seen.toSorted((a, b) => a.leastContrast - b.leastContrast)
    return { paper: light(paper), ...least }
  })()`)
