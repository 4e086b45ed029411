import { requireWhole } from '#shared/precondition.ts'

/** A complex sequence: real and imaginary parts, equally long. */
export interface ComplexRow {
  readonly real: Float64Array
  readonly imaginary: Float64Array
}

/**
 * The discrete Fourier transform  X_j = Σ_k x_k e^(−2πi jk / n), in place, by the algorithm of J. W. Cooley and J. W. Tukey
 * (Mathematics of Computation 19 (1965)) for a power of two.
 *
 * @throws RangeError where the length is no power of two
 */
export function fourierTransform({ real, imaginary }: ComplexRow): void {
  const size = real.length
  requireWhole('length', size, 1)
  if ((size & (size - 1)) !== 0 || imaginary.length !== size) {
    throw new RangeError(`both parts must be a power of two long, got ${size} and ${imaginary.length}`)
  }
  reorder(real, imaginary)
  const [cosines, sines] = circle(size)
  for (let half = 1; half < size; half *= 2) {
    const stride = size / (2 * half)
    for (let from = 0; from < size; from += 2 * half) {
      for (let place = 0; place < half; place++) {
        const low = from + place
        const high = low + half
        const cosine = cosines[place * stride] ?? Number.NaN
        const sine = sines[place * stride] ?? Number.NaN
        const x = real[high] ?? Number.NaN
        const y = imaginary[high] ?? Number.NaN
        const turnedX = x * cosine + y * sine
        const turnedY = y * cosine - x * sine
        real[high] = (real[low] ?? Number.NaN) - turnedX
        imaginary[high] = (imaginary[low] ?? Number.NaN) - turnedY
        real[low] = (real[low] ?? Number.NaN) + turnedX
        imaginary[low] = (imaginary[low] ?? Number.NaN) + turnedY
      }
    }
  }
}

/** Each value to the place whose number, in binary, is its own read backwards. */
function reorder(real: Float64Array, imaginary: Float64Array): void {
  const size = real.length
  let other = 0
  for (let place = 0; place < size; place++) {
    if (place < other) {
      const [x, y] = [real[place] ?? Number.NaN, imaginary[place] ?? Number.NaN]
      real[place] = real[other] ?? Number.NaN
      imaginary[place] = imaginary[other] ?? Number.NaN
      real[other] = x
      imaginary[other] = y
    }
    let bit = size >> 1
    while (bit > 0 && (other & bit) !== 0) {
      other ^= bit
      bit >>= 1
    }
    other |= bit
  }
}

/** Cosines and sines of half a circle in as many steps as half the length; those of the last length are kept. */
let known: readonly [Float64Array, Float64Array] = [new Float64Array(0), new Float64Array(0)]

function circle(size: number): readonly [cosines: Float64Array, sines: Float64Array] {
  if (known[0].length !== size / 2) {
    const angles = Float64Array.from({ length: size / 2 }, (_, place) => (2 * Math.PI * place) / size)
    known = [angles.map(Math.cos), angles.map(Math.sin)]
  }
  return known
}
