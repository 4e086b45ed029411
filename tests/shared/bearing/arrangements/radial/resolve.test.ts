import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import { type ResolvedRadial, resolveRadial } from '#shared/bearing/arrangements/radial/resolve.ts'
import { depthPath, groovePath } from '#shared/bearing/resolve.ts'
import { inches, mm } from '#shared/units/length.ts'
import { anyInput, likelyInput, PLAIN } from '#tests/support/inputs.ts'

function resolved(input: RadialInput): ResolvedRadial {
  const result = resolveRadial(input)
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.error)}`)
  return result.value
}

/** Every value of an input that is no branch, by its pointer. An array is one value. */
function leaves(value: object, at = ''): ReadonlyMap<string, unknown> {
  return new Map(
    Object.entries(value).flatMap(([name, inner]: [string, unknown]): (readonly [string, unknown])[] =>
      typeof inner === 'object' && inner !== null && !Array.isArray(inner)
        ? [...leaves(inner, `${at}/${name}`)]
        : [[`${at}/${name}`, inner]],
    ),
  )
}

describe('what was left out', () => {
  test('takes common practice, and is listed in the order of the input', () => {
    const { input, assumed, assembly } = resolved(PLAIN)
    expect(input).toEqual({
      units: 'mm',
      arrangement: 'radial',
      balls: { count: 12, diameter: 16, material: 'wood', standardDeviation: 0.1072 },
      bore: 12,
      outerRing: { engagement: 0.2, wall: 10.666667, roundOutsideDiameterTo: 5 },
      innerRing: { engagement: 0.4 },
      groove: { conformity: 0.53 },
      ballGap: expect.closeTo(assembly.assemblyGap + 0.4, 5),
      minBallGap: 0,
      maxBallGap: expect.closeTo(assembly.assemblyGap + 2, 5),
      radialInternalClearance: 0.4,
      finishAllowance: 0,
      width: 24,
      split: 'inner-ring',
    })
    expect(assumed).toEqual([
      '/balls/material',
      '/balls/standardDeviation',
      '/outerRing/engagement',
      '/outerRing/wall',
      '/outerRing/roundOutsideDiameterTo',
      '/innerRing/engagement',
      '/groove/conformity',
      '/ballGap',
      '/minBallGap',
      '/maxBallGap',
      '/radialInternalClearance',
      '/finishAllowance',
      '/width',
      '/split',
    ])
  })

  test('in inches: a quarter of an inch to round to, and a rule in 64ths', () => {
    const { input, assumed } = resolved({
      units: 'in',
      balls: { count: 12, diameter: inches(5 / 8) },
      bore: inches(1 / 2),
    })
    expect(input.outerRing?.roundOutsideDiameterTo).toBe(6.35)
    expect(input.shopDenominator).toBe(64)
    expect(assumed).toContain('/shopDenominator')
    expect(resolved(PLAIN).input).not.toHaveProperty('shopDenominator')
  })

  test.each([
    ['steel', 0.0005],
    ['acrylic', 0.003],
    ['glass', 0.008],
    ['wood', 0.0067],
  ] as const)('%s balls scatter by %s of their diameter', (material, share) => {
    const { input, assumed } = resolved({ ...PLAIN, balls: { count: 12, diameter: mm(16), material } })
    expect(input.balls.standardDeviation).toBeWithin(1e-12, share * 16)
    expect(assumed).not.toContain('/balls/material')
  })

  test('is listed exactly: every leaf of the whole input was either asked for, as it is, or assumed', () => {
    fc.assert(
      fc.property(fc.oneof(likelyInput, anyInput), (asked) => {
        const result = resolveRadial(asked)
        fc.pre(result.ok)
        if (!result.ok) return
        const [given, whole, assumed] = [leaves(asked), leaves(result.value.input), new Set(result.value.assumed)]
        for (const [path, value] of whole) {
          // The tag tells the input's shape: it is in every whole input, and no assumption.
          if (path === '/arrangement') continue
          expect(assumed.has(path), path).toBe(!given.has(path))
          if (given.has(path)) expect(value, path).toBe(given.get(path))
        }
        for (const path of assumed) expect(whole.has(path), path).toBe(true)
      }),
    )
  })

  test('a rounding that was switched off is not assumed', () => {
    expect(resolved({ ...PLAIN, outerRing: { roundOutsideDiameterTo: null } }).assumed).not.toContain(
      '/outerRing/roundOutsideDiameterTo',
    )
  })

  test('an outside diameter stands for the wall and the rounding', () => {
    const { input } = resolved({ ...PLAIN, outerRing: { outsideDiameter: mm(110) } })
    expect(input.outerRing).toEqual({ engagement: 0.2, outsideDiameter: 110 })
  })

  test('measured balls stand for a scatter', () => {
    const diameters = Array.from({ length: 12 }, () => mm(16.1))
    expect(resolved({ ...PLAIN, balls: { count: 12, diameter: mm(16), diameters } }).input.balls).toEqual({
      count: 12,
      diameter: 16,
      material: 'wood',
      diameters,
    })
  })

  test('a groove for both is not made up where each ring has its own', () => {
    const own = { groove: { conformity: 0.55 } }
    expect(resolved({ ...PLAIN, outerRing: own, innerRing: own }).input).not.toHaveProperty('groove')
    expect(resolved({ ...PLAIN, outerRing: own }).input.groove).toEqual({ conformity: 0.53 })
  })
})

describe('where a fault or a suggestion points', () => {
  test('at the name in which the depth was said', () => {
    expect(depthPath(PLAIN, 'outerRing')).toBe('/outerRing/engagement')
    expect(depthPath({ ...PLAIN, innerRing: { grooveDepth: mm(5) } }, 'innerRing')).toBe('/innerRing/grooveDepth')
  })

  test.each([
    [{}, '/groove/conformity'],
    [{ groove: { conformity: 0.55 } }, '/groove/conformity'],
    [{ groove: { grooveRadius: mm(9) } }, '/groove/grooveRadius'],
    [{ groove: { cutterDiameter: mm(18) } }, '/groove/cutterDiameter'],
    [
      { groove: { grooveRadius: mm(9) }, outerRing: { groove: { cutterDiameter: mm(18) } } },
      '/outerRing/groove/cutterDiameter',
    ],
    [{ outerRing: { groove: {} } }, '/outerRing/groove/conformity'],
  ] satisfies [Partial<RadialInput>, string][])('%o: the arc of the outer ring at %s', (change, path) => {
    expect(groovePath({ ...PLAIN, ...change }, 'outerRing')).toBe(path)
  })
})
