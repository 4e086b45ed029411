import { describe, expect, test } from 'vitest'
import { sampleError } from '#shared/questions/tolerance/sample-error.ts'
import { normalCdf, normalQuantile } from '#shared/statistics/normal.ts'
import { sampleOf } from '#shared/statistics/sample.ts'
import { normals, uniforms } from '#tests/support/chance.ts'

/*
 * A sum of a normal number and of a sample of others. With values that are normal too, its shares are known: those of a sample
 * scatter about them, over many samples, by what is said of one.
 */
const REST = 0.8
const OF_VALUES = 0.6
const SAMPLE = 400
const PLACES = [-2, -1, 0, 1, 2]

const normal = normals(uniforms(5))
const samples = Array.from({ length: 300 }, () => Float64Array.from({ length: SAMPLE }, () => OF_VALUES * normal()))
const piecesOf = (own: Float64Array) => ({ pieces: [{ middle: [0, 0], half: [0, 0], own: sampleOf(own) }] }) as const

describe('the error of a share of a sum by a sample', () => {
  test.each(PLACES)('is how far samples scatter, at %d deviations', (place) => {
    const shares = samples.map((own) => own.reduce((sum, each) => sum + normalCdf((place - each) / REST), 0) / SAMPLE)
    const scatter = Math.sqrt(shares.reduce((sum, share) => sum + (share - normalCdf(place)) ** 2, 0) / shares.length)
    const density = Math.exp(-0.5 * place * place) / Math.sqrt(2 * Math.PI)
    const said = samples.map((own) => sampleError(piecesOf(own), 1, REST).at(place) * density)
    const usual = said.reduce((sum, error) => sum + error, 0) / said.length
    // Three hundred samples tell a scatter to a twenty-fourth of it; between its places the error is a straight line.
    expect(scatter / usual).toBeWithin(0.2, 1)
  })

  test('so many trials come as near: more than there are values, by as much as the rest smooths', () => {
    const own = Float64Array.from({ length: 4000 }, (_, index) => OF_VALUES * normalQuantile((index + 0.5) / 4000))
    const { asGoodAs } = sampleError(piecesOf(own), 1, REST)
    // In the middle P(rest < −value) is Φ(x) of a normal x with variance q = 0.36 / 0.64, and has the variance arcsin(q / (1 + q)) / 2π.
    const q = (OF_VALUES / REST) ** 2
    expect(asGoodAs / 4000).toBeWithin(0.05, 0.25 / (Math.asin(q / (1 + q)) / (2 * Math.PI)))
  })

  test('values in strata of their own err by what scatters within each', () => {
    const low = Float64Array.of(-0.1, 0.1)
    const pieces = [-1, 1].map((place) => ({ middle: [0, place], half: [0, 0], own: sampleOf(low) }) as const)
    const whole = Float64Array.of(-1.1, -0.9, 0.9, 1.1)
    const apart = sampleError({ pieces }, 1, REST).at(0)
    expect(apart).toBeLessThan(sampleError(piecesOf(whole), 1, REST).at(0) / 4)
  })
})
