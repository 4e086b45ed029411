import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { requireAboveZero } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { loadForSemiMinorWithin, type Surface } from './contact-within-width.ts'
import { type Line, loadForHalfWidth } from './line-contact.ts'

/**
 * The ball of the side-hardness (Janka) test, pressed in to half its diameter: 0.444 in (ASTM D143). It covers a circle of
 * 1 cm² then.
 */
const HARDNESS_BALL = (0.444 * 254) / 10
const HARDNESS_AREA = (Math.PI / 4) * HARDNESS_BALL * HARDNESS_BALL

/** Hardness as a pressure: the test's force over the circle that its ball covers [MPa]. */
export const hardnessPressure = (sideHardness: number): number => sideHardness / HARDNESS_AREA

/*
 * How a ball sinks into wood for good. Measured on beech with balls and cylinders, the force goes with the 5/2 power of the
 * mark's diameter for balls and with the 3/2 power of its width for cylinders (Koczan, Karwat, Kozakiewicz, Journal of Wood
 * Science 67, 2021): in both cases the mean pressure goes with the root of the mark's half width over the radius,
 * s = b ρ. The side-hardness test is the same law at s = 1. So, for an ellipse too, which lies between both:
 *
 *   F = H √s · π a b  (of a roller, touching over its length L,  H √s · 2 b L),    H = side hardness / 1 cm²
 *
 * A contact smaller than where Hertz needs as much pressure is elastic. Of a larger one, what springs back is taken as
 * Hertz's (Johnson, Contact Mechanics, 6.4): what stays is  δ = b² ρ / 2 · (1 − F / F of Hertz for that b).
 * Derived here from those; wood varies by a quarter from board to board.
 */

/** A contact, and the hardness of its softer side as a pressure [MPa]. */
export interface Dented {
  readonly surface: Surface | Line
  readonly hardness: number
}

/** The law is that of a test that ends at half a ball: s = 1. By definition. */
const DEEPEST = 1

const longAxis = ({ form, halfWidth }: Surface, semiMinor: number): number =>
  Math.min(semiMinor / form.axisRatio, halfWidth)

const isLine = (surface: Dented['surface']): surface is Line => 'length' in surface

const markedArea = (surface: Dented['surface'], semiMinor: number): number =>
  isLine(surface) ? 2 * semiMinor * surface.length : Math.PI * semiMinor * longAxis(surface, semiMinor)

const elasticLoad = (surface: Dented['surface'], semiMinor: number): number =>
  isLine(surface) ? loadForHalfWidth(surface, semiMinor) : loadForSemiMinorWithin(surface, semiMinor)

/** The force that makes a mark of this half width [N]. */
function markingLoad({ surface, hardness }: Dented, semiMinor: number): number {
  const pressure = hardness * Math.sqrt(semiMinor * surface.rolling)
  return pressure * markedArea(surface, semiMinor)
}

/** Depth that a mark of this half width keeps once the load is gone [mm]. */
function lastingDepth(dented: Dented, semiMinor: number): number {
  const share = markingLoad(dented, semiMinor) / elasticLoad(dented.surface, semiMinor)
  return (semiMinor * semiMinor * dented.surface.rolling * Math.max(0, 1 - share)) / 2
}

/**
 * Depth of the dent that a load leaves.
 *
 * @param load [N], above 0
 * @returns 0 where the contact stays elastic; undefined where the ball would sink in past its middle
 */
export function dentUnder(dented: Dented, load: number): Mm | undefined {
  requireAboveZero('load', load)
  const semiMinor = markUnder(dented, load)
  return semiMinor * dented.surface.rolling <= DEEPEST ? mm(lastingDepth(dented, semiMinor)) : undefined
}

/** Half the width of the mark that a load makes: `markingLoad` turned round. */
function markUnder({ surface, hardness }: Dented, load: number): number {
  const root = hardness * Math.sqrt(surface.rolling)
  if (isLine(surface)) return Math.exp(Math.log(load / (root * 2 * surface.length)) * (2 / 3))
  const free = Math.exp(Math.log((load * surface.form.axisRatio) / (root * Math.PI)) * (2 / 5))
  return free / surface.form.axisRatio <= surface.halfWidth
    ? free
    : Math.exp(Math.log(load / (root * Math.PI * surface.halfWidth)) * (2 / 3))
}

/**
 * The load that leaves a dent of this depth [N].
 *
 * @param depth above 0 [mm]
 * @returns where the ball would sink in to its middle before, the load that does that
 */
export function loadForDent(dented: Dented, depth: Mm): number {
  requireAboveZero('depth', depth)
  const { rolling } = dented.surface
  const widest = DEEPEST / rolling
  if (!(lastingDepth(dented, widest) > depth)) return markingLoad(dented, widest)
  const width = bracketedRoot((semiMinor) => (semiMinor > 0 ? lastingDepth(dented, semiMinor) : 0) - depth, 0, widest)
  return markingLoad(dented, width)
}
