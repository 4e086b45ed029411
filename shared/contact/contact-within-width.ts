import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { completeElliptic } from '#shared/numbers/elliptic-integrals.ts'
import { mm } from '#shared/units/length.ts'
import { type Contact, type ContactForm, contactUnder, loadForSemiMinor } from './hertz.ts'

/** A ball in a groove of so much width: the ellipse cannot be longer than the groove is wide. */
export interface Surface {
  readonly form: ContactForm
  /** E* of ball and wood [MPa]. */
  readonly modulus: number
  /** The larger of the two relative curvatures: that of the plane in which the ball rolls [1/mm]. */
  readonly rolling: number
  /** Half the width to which the long axis can grow [mm]. */
  readonly halfWidth: number
}

export interface ContactWithin extends Contact {
  /** Whether the ellipse would be longer than the groove is wide. */
  readonly reachesEdges: boolean
}

/**
 * The contact under a load. Where Hertz's ellipse would reach over the groove's edges, that ellipse is taken which is just
 * as long as the groove is wide and meets the curvature in the plane of rolling: what the wood beyond does not carry,
 * it carries too. An estimate from there on; it goes over smoothly into the exact one.
 *
 * With a = w given:  ρ/2 = 3F / (2π E* w³) · (K − D)/k'²  fixes k' (see `contactForm`).
 */
export function contactWithin(surface: Surface, load: number): ContactWithin {
  const free = contactUnder(surface.form, surface.modulus, load)
  const { halfWidth } = surface
  if (free.semiMajor <= halfWidth) return { ...free, reachesEdges: false }
  const axisRatio = axisRatioAtWidth((k) => loadAtWidth(surface, k), load)
  const semiMinor = axisRatio * halfWidth
  const meanPressure = load / (Math.PI * halfWidth * semiMinor)
  const { first, second, difference } = completeElliptic(axisRatio)
  const section = (axisRatio * axisRatio * difference) / (first - difference)
  const curvature = (surface.rolling * (1 + section)) / 2
  return {
    semiMajor: mm(halfWidth),
    semiMinor: mm(semiMinor),
    maxPressure: 1.5 * meanPressure,
    meanPressure,
    approach: mm((curvature * semiMinor * semiMinor * first) / second),
    reachesEdges: true,
  }
}

/** The elastic load at which the short half axis is so long [N]. */
export function loadForSemiMinorWithin(surface: Surface, semiMinor: number): number {
  const { form, modulus, halfWidth } = surface
  if (semiMinor <= form.axisRatio * halfWidth) return loadForSemiMinor(form, modulus, semiMinor)
  const axisRatio = semiMinor / halfWidth
  // past a circle the pressure goes on growing as the contact does
  return loadAtWidth(surface, Math.min(1, axisRatio)) * Math.max(1, axisRatio * axisRatio)
}

/** F of an ellipse as long as the groove is wide, by its axis ratio:  π ρ E* w³ k'² / (3 (K − D)). */
function loadAtWidth({ rolling, modulus, halfWidth }: Surface, axisRatio: number): number {
  const { first, difference } = completeElliptic(axisRatio)
  const cube = halfWidth * halfWidth * halfWidth
  return (Math.PI * rolling * modulus * cube * axisRatio * axisRatio) / (3 * (first - difference))
}

/** The axis ratio at which a growing quantity reaches the wanted value; 1 if it does not. */
function axisRatioAtWidth(quantity: (axisRatio: number) => number, wanted: number): number {
  if (quantity(1) <= wanted) return 1
  const logarithm = Math.log(wanted)
  const beyond = (at: number): number => Math.log(quantity(Math.exp(at))) - logarithm
  let low = -1
  while (beyond(low) > 0) low *= 2
  return Math.exp(bracketedRoot(beyond, low, 0))
}
