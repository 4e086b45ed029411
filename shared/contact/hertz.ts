import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { completeElliptic } from '#shared/numbers/elliptic-integrals.ts'
import { requireAboveZero } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/*
 * Hertz's contact of two smooth elastic bodies whose surfaces have unequal curvatures: Hertz 1881; K. L. Johnson, Contact
 * Mechanics (1985), 4.2, for spheres as quoted (`hertz`). Forces in newtons, pressures and moduli in megapascals, lengths in millimetres.
 */

/** The elastic constants of a body. */
export interface Elastic {
  /** Young's modulus E [MPa]. */
  readonly stiffness: number
  readonly poissonsRatio: number
}

/** Relative curvatures of the two bodies in the two main planes [1/mm]: sums, hollow surfaces counting below 0. */
export type Curvatures = readonly [number, number]

/** The form of a contact, whatever its load. */
export interface ContactForm {
  /** Short over long axis of the ellipse, b / a. */
  readonly axisRatio: number
  /** Half the sum of both relative curvatures, A + B [1/mm]. */
  readonly curvature: number
  readonly firstIntegral: number
  readonly secondIntegral: number
}

/** An ellipse of contact under its load. */
export interface Contact {
  /** Semi-axes [mm]: the long one lies in the plane of the smaller curvature. */
  readonly semiMajor: Mm
  readonly semiMinor: Mm
  /** [MPa] */
  readonly maxPressure: number
  readonly meanPressure: number
  /** How far the bodies come together [mm]. */
  readonly approach: Mm
}

/** E* of two bodies:  1/E* = (1 − ν₁²)/E₁ + (1 − ν₂²)/E₂. Half of the E' of the bearing literature. */
export const contactModulus = (...bodies: readonly [Elastic, Elastic]): number =>
  1 / bodies.reduce((sum, { stiffness, poissonsRatio: ratio }) => sum + (1 - ratio * ratio) / stiffness, 0)

/**
 * The form of the contact: the axis ratio k' = b/a at which the ratio of the curvatures is
 * ρ₁/ρ₂ = ((a/b)² E − K) / (K − E) = (K − D) / (k'² D), D = (K − E)/e², by a bracketed root find.
 *
 * @param curvatures both above 0 [1/mm]
 * @returns the axis ratio to rounding
 * @throws RangeError for a curvature that is not above 0: such bodies touch along a line, or all over
 */
export function contactForm(curvatures: Curvatures): ContactForm {
  for (const curvature of curvatures) requireAboveZero('curvature', curvature)
  const ratio = Math.max(...curvatures) / Math.min(...curvatures)
  const axisRatio = axisRatioFor(ratio)
  const { first, second } = completeElliptic(axisRatio)
  return {
    axisRatio,
    curvature: (curvatures[0] + curvatures[1]) / 2,
    firstIntegral: first,
    secondIntegral: second,
  }
}

/** In the logarithm of the axis ratio, which the logarithm of the curvatures' ratio follows almost straight. */
function axisRatioFor(ratio: number): number {
  const wanted = Math.log(ratio)
  const beyond = (flatness: number): number => {
    const axes = Math.exp(-flatness)
    const { first, difference } = completeElliptic(axes)
    return Math.log((first - difference) / difference) + 2 * flatness - wanted
  }
  if (beyond(0) >= 0) return 1
  let high = 1
  while (beyond(high) < 0) high *= 2
  return Math.exp(-bracketedRoot(beyond, 0, high))
}

/**
 * The contact under a load F:  b³ = 3 F E k' / (2π E* (A + B)),  a = b/k',  p₀ = 3 F / (2π a b),
 * approach δ = (A + B) b² K / E. For equal curvatures it is the circle a³ = 3 F R / 4E*, δ = a²/R.
 *
 * @param modulus E* [MPa], above 0
 * @param load F [N], above 0
 */
export function contactUnder(form: ContactForm, modulus: number, load: number): Contact {
  requireAboveZero('modulus', modulus)
  requireAboveZero('load', load)
  const { axisRatio, curvature, firstIntegral, secondIntegral } = form
  const semiMinor = Math.cbrt((3 * load * secondIntegral * axisRatio) / (2 * Math.PI * modulus * curvature))
  const semiMajor = semiMinor / axisRatio
  const meanPressure = load / (Math.PI * semiMajor * semiMinor)
  return {
    semiMajor: mm(semiMajor),
    semiMinor: mm(semiMinor),
    maxPressure: 1.5 * meanPressure,
    meanPressure,
    approach: mm((curvature * semiMinor * semiMinor * firstIntegral) / secondIntegral),
  }
}

/** The load that makes the short half axis so long [N]: `contactUnder` turned round. */
export const loadForSemiMinor = (form: ContactForm, modulus: number, semiMinor: number): number =>
  (2 * Math.PI * modulus * form.curvature * semiMinor * semiMinor * semiMinor) /
  (3 * form.secondIntegral * form.axisRatio)

/** Q / δ^1.5 of a contact [N/mm^1.5]. */
export function contactStiffness(form: ContactForm, modulus: number): number {
  const { approach } = contactUnder(form, modulus, 1)
  return 1 / (approach * Math.sqrt(approach))
}
