import { expect, test } from 'vitest'
import { fourierTransform } from '#shared/numbers/fourier-transform.ts'
import { uniforms } from '#tests/support/chance.ts'

const random = (size: number, seed: number) => {
  const uniform = uniforms(seed)
  const row = () => Float64Array.from({ length: size }, () => uniform() - 0.5)
  return { real: row(), imaginary: row() }
}

test.each([1, 2, 4, 8, 64, 256])('%d values: each is the sum that defines it', (size) => {
  const given = random(size, size)
  const found = { real: given.real.slice(), imaginary: given.imaginary.slice() }
  fourierTransform(found)
  for (let j = 0; j < size; j++) {
    let [real, imaginary] = [0, 0]
    for (let k = 0; k < size; k++) {
      const angle = (-2 * Math.PI * ((j * k) % size)) / size
      const [x, y] = [given.real[k] ?? 0, given.imaginary[k] ?? 0]
      real += x * Math.cos(angle) - y * Math.sin(angle)
      imaginary += x * Math.sin(angle) + y * Math.cos(angle)
    }
    expect(found.real[j]).toBeWithin(1e-12, real)
    expect(found.imaginary[j]).toBeWithin(1e-12, imaginary)
  }
})

test('twice is the values themselves, backwards and as many times as there are', () => {
  const size = 1024
  const given = random(size, 5)
  const found = { real: given.real.slice(), imaginary: given.imaginary.slice() }
  fourierTransform(found)
  fourierTransform(found)
  for (let k = 0; k < size; k++) {
    expect((found.real[(size - k) % size] ?? 0) / size).toBeWithin(1e-13, given.real[k] ?? 0)
    expect((found.imaginary[(size - k) % size] ?? 0) / size).toBeWithin(1e-13, given.imaginary[k] ?? 0)
  }
})

test('no other length, and no two', () => {
  const row = (size: number) => new Float64Array(size)
  expect(() => fourierTransform({ real: row(3), imaginary: row(3) })).toThrow(/power of two/)
  expect(() => fourierTransform({ real: row(4), imaginary: row(8) })).toThrow(/power of two/)
  expect(() => fourierTransform({ real: row(0), imaginary: row(0) })).toThrow(RangeError)
})
