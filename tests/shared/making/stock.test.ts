import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import { type FullRingBearing, fullRingsOf } from '#shared/bearing/arrangements.ts'
import { LUMBERS, type MakingInput } from '#shared/bearing/making-input.ts'
import { SCREW_GAUGES } from '#shared/making/screws.ts'
import { type Stock, stockOf } from '#shared/making/stock.ts'
import { stubBoltFor } from '#shared/making/work-holding.ts'
import { inches, inUnits, type Mm, mm } from '#shared/units/length.ts'
import { between, likelyInput, PLAIN, ROLLERS } from '#tests/support/inputs.ts'

function made(input: RadialInput): FullRingBearing {
  const result = fullRingsOf(input)
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.error)}`)
  return result.value
}

/** The stock of a bearing that is made in another way. */
const remade = (bearing: FullRingBearing, making: MakingInput): Stock =>
  stockOf({
    ...bearing,
    resolved: { ...bearing.resolved, input: { ...bearing.resolved.input, making } },
  } as FullRingBearing)
const stocked = (design: RadialInput, making: MakingInput = {}): Stock => stockOf(made({ ...design, making }))
const toInches = (length: Mm): number => inUnits(length, 'in')

describe('blanks', () => {
  test('a turning allowance wider outside, narrower inside, all round', () => {
    const bearing = made(PLAIN)
    const { outerRing, innerRing } = remade(bearing, { allowances: { turning: mm(5) } })
    expect(outerRing.blank.roughCircle).toBe(bearing.outerRing.outsideDiameter + 10)
    expect(outerRing.blank.roughHole).toBe(bearing.outerRing.landDiameter - 10)
    expect(innerRing.blank.roughCircle).toBe(bearing.innerRing.landDiameter + 10)
    expect(innerRing.blank.roughHole).toBeUndefined()
  })

  test('the ring that comes apart is two pieces of half the width, the other one of all of it', () => {
    const { outerRing, innerRing } = stocked({ ...PLAIN, width: mm(24) }, { allowances: { side: mm(1) } })
    expect([innerRing.blank.pieces, innerRing.blank.thickness]).toEqual([2, 14])
    expect([outerRing.blank.pieces, outerRing.blank.thickness]).toEqual([1, 26])
    const whole = stocked({ ...PLAIN, split: 'none' })
    expect([whole.innerRing.blank.pieces, whole.outerRing.blank.pieces]).toEqual([1, 1])
    expect(whole.split).toBeUndefined()
  })

  test('where allowances leave nothing of the hole it is not sawn', () => {
    const small: RadialInput = { units: 'mm', balls: { count: 3, diameter: mm(6) }, bore: mm(0.5) }
    const { outerRing, entryHole, nesting } = stocked(small)
    expect(outerRing.blank.roughHole).toBeUndefined()
    expect(entryHole).toBeUndefined()
    expect(nesting).toMatchObject({ nests: false, core: 0 })
  })
})

const nested = ({ nesting }: Pick<Stock, 'nesting'>) => {
  if (nesting === undefined) throw new Error('a ring with a core')
  return nesting
}

describe('one blank inside the other', () => {
  test('allowances and kerf decide: with the largest allowance that is said it does, with more it does not', () => {
    const widths = [likelyInput, between(0, 12), between(0, 3)] as const
    fc.assert(
      fc.property(...widths, (design, allowance, kerf) => {
        const result = fullRingsOf({ ...design, split: 'none' })
        if (!result.ok) return
        const nestedWith = (turningAllowance: number) =>
          nested(remade(result.value, { allowances: { turning: mm(turningAllowance), sawKerf: mm(kerf) } }))
        const { nests, shortBy, largestAllowance } = nestedWith(allowance)
        expect(nests).toBe(shortBy <= 0)
        if (largestAllowance === undefined) {
          expect(nestedWith(0).nests).toBe(false)
        } else {
          expect(nestedWith(largestAllowance * (1 - 1e-6)).shortBy).toBeLessThanOrEqual(1e-9)
          expect(nestedWith(largestAllowance + 0.01).nests).toBe(false)
        }
      }),
    )
  })

  test('the land gap that is said is the one that does', () => {
    // Play moves the lands apart and nothing else.
    const nesting = nested(stocked({ ...PLAIN, split: 'none' }, { allowances: { turning: mm(1), sawKerf: mm(1.2) } }))
    expect(nesting.landGapNeeded).toBe(3.2)
    const wide = made({ ...PLAIN, split: 'none', outerRing: { engagement: 0.2 }, innerRing: { engagement: 0.2 } })
    const narrow = made({ ...PLAIN, split: 'none', outerRing: { engagement: 0.4 }, innerRing: { engagement: 0.41 } })
    for (const bearing of [wide, narrow])
      expect(nested(remade(bearing, { allowances: { turning: mm(1), sawKerf: mm(1.2) } })).nests).toBe(
        bearing.landGap >= 3.2 - 1e-9,
      )
  })

  test('a core that is wide enough gives both halves only when it is a kerf thicker', () => {
    const shallow: RadialInput = {
      ...PLAIN,
      width: mm(24),
      outerRing: { engagement: 0.15 },
      innerRing: { engagement: 0.15 },
    }
    const nesting = nested(stocked(shallow, { allowances: { turning: mm(1), sawKerf: mm(1.5) } }))
    expect(nesting.shortBy).toBeLessThan(0)
    expect(nesting.thicknessNeeded).toBe(25.5)
    expect(nesting.nests).toBe(false)
    expect(nested(stocked({ ...shallow, split: 'none' }, { allowances: { turning: mm(1) } })).nests).toBe(true)
  })
})

/** Circles that are laid along boards of 2400 mm, one by one, a kerf of 1.5 mm between them. */
function laidOut(circle: number, boards: number): number {
  let circles = 0
  for (let board = 0; board < boards; board++)
    for (let at = 0; at + circle <= 2400 + 1e-9; at += circle + 1.5) circles += 1
  return circles
}

const millimetres = likelyInput.map((design): RadialInput => ({ ...design, units: 'mm' }))

describe('boards', () => {
  const threeQuarters: RadialInput = {
    units: 'in',
    balls: { count: 10, diameter: inches(3 / 4) },
    bore: inches(1 / 2),
    split: 'none',
  }

  // Common practice, no source: wood really 1 in thick for balls of 3/4 in, really 1 1/2 in for balls of 1 in.
  test('a ring really 1 in thick does not come from what is called 1 in', () => {
    const hardwood = stocked({ ...threeQuarters, width: inches(1) }).outerRing.boards
    // NHLA: 4/4 is 13/16 in when planed, 5/4 is 1 1/16 in.
    expect(hardwood[0]).toMatchObject({ nominalThickness: '5/4', layers: 1 })
    expect(toInches(hardwood[0]?.planing ?? mm(Number.NaN))).toBeWithin(1e-9, 1 / 16)
    // PS 20: nominal 1 in is 3/4 in, nominal 1 1/4 in is 1 in.
    const softwood = stocked({ ...threeQuarters, width: inches(1) }, { lumber: 'softwood' }).outerRing.boards
    expect(softwood[0]).toMatchObject({ nominalThickness: '1 1/4', planing: 0 })
  })

  test('a ring really 1 1/2 in thick comes from what is called 2 in, or 7/4', () => {
    const oneInch: RadialInput = { ...threeQuarters, balls: { count: 10, diameter: inches(1) }, width: inches(3 / 2) }
    expect(stocked(oneInch, { lumber: 'softwood' }).outerRing.boards[0]).toMatchObject({
      nominalThickness: '2',
      planing: 0,
    })
    expect(stocked(oneInch).outerRing.boards[0]).toMatchObject({ nominalThickness: '7/4' })
  })

  test('the narrowest softwood that is wide enough', () => {
    const { blank, boards } = stocked({ ...threeQuarters, width: inches(1) }, { lumber: 'softwood' }).outerRing
    const [board] = boards
    expect(board?.dressedWidth).toBeGreaterThanOrEqual(blank.roughCircle)
    // PS 20, widths: 2 1/2, 3 1/2, 4 1/2, 5 1/2, 6 1/2, 7 1/4, …
    const widths = [2.5, 3.5, 4.5, 5.5, 6.5, 7.25, 8.25, 9.25, 10.25, 11.25, 13.25, 15.25]
    expect(toInches(board?.dressedWidth ?? mm(Number.NaN))).toBe(
      widths.find((width) => width >= toInches(blank.roughCircle)),
    )
  })

  test('whatever the ring, the first option planes least, and all of them hold the blank', () => {
    fc.assert(
      fc.property(millimetres, fc.constantFrom(...LUMBERS), (design, lumber) => {
        const result = fullRingsOf(design)
        if (!result.ok) return
        for (const { blank, boards } of [
          remade(result.value, { lumber }).outerRing,
          remade(result.value, { lumber }).innerRing,
        ]) {
          expect(boards.length).toBeGreaterThan(0)
          for (const { layers, dressedThickness, planing, across, dressedWidth, length, boards: number } of boards) {
            expect(layers * dressedThickness - blank.thickness).toBeWithin(1e-6, planing)
            expect(planing).toBeGreaterThanOrEqual(boards[0]?.planing ?? Number.NaN)
            expect(across * dressedWidth).toBeGreaterThanOrEqual(blank.roughCircle * (1 - 1e-9))
            const circles = blank.pieces * layers * across
            expect(length).toBeWithin(1e-9 * length, circles * blank.roughCircle + (circles - 1) * 1.5)
            if (number === undefined) expect(blank.roughCircle).toBeGreaterThan(2400)
            else expect(laidOut(blank.roughCircle, number)).toBeGreaterThanOrEqual(blank.pieces * layers * across)
            if (number !== undefined && number > 1)
              expect(laidOut(blank.roughCircle, number - 1)).toBeLessThan(blank.pieces * layers * across)
          }
        }
      }),
    )
  })
})

describe('saw', () => {
  // Published tables, the larger radius where they disagree: 1/4 in turns 5/8 in, 3/8 in turns 1 1/2 in, 1/2 in 2 1/2 in.
  test('blades that turn a circle of 3 in: up to 3/8 in', () => {
    const rings = stocked(
      {
        ...PLAIN,
        outerRing: { outsideDiameter: inches(3) },
        balls: { count: 10, diameter: mm(10) },
        bore: mm(6),
      },
      { allowances: { turning: mm(0) } },
    )
    expect(rings.outerRing.blades).toEqual(['1/8', '3/16', '1/4', '3/8'])
  })

  test('the entry hole lies in the waste, a millimetre inside the circle to saw', () => {
    const { entryHole, outerRing } = stocked(PLAIN, { allowances: { entryHole: mm(8) } })
    expect((entryHole?.fromCentre ?? Number.NaN) + 4 + 1).toBe((outerRing.blank.roughHole ?? Number.NaN) / 2)
  })
})

describe('work holding', () => {
  // Rule of woodturners, as it is told: 9000 over the diameter in inches at the most; 10 in: 900 a minute.
  test.each([
    [4, 2250],
    [6, 1500],
    [10, 900],
    [18, 500],
  ])('a blank of %s in turns at %s a minute at the most', (diameter, speed) => {
    const design: RadialInput = {
      ...PLAIN,
      outerRing: { outsideDiameter: inches(diameter) },
      balls: { count: 8, diameter: mm(8) },
      bore: mm(6),
    }
    const { turning } = stocked(design, { allowances: { turning: mm(0) } }).outerRing
    expect(turning.speed.max).toBeWithin(0.5, speed)
    expect(turning.speed.min).toBeWithin(0.5, (speed * 2) / 3)
    // 2356 ft/min, 12.0 m/s
    expect(turning.rimSpeed).toBeWithin(0.05, 12)
  })

  test('a bolt for the bore: the very one, or the next smaller with a bush', () => {
    expect(stocked({ ...PLAIN, bore: mm(12) }).mandrel).toEqual({ bolt: 'M12', diameter: 12, bush: 0 })
    expect(stocked({ ...PLAIN, bore: mm(11) }).mandrel).toEqual({ bolt: 'M10', diameter: 10, bush: 0.5 })
    expect(stocked({ ...PLAIN, units: 'in', bore: inches(5 / 16) }).mandrel).toMatchObject({ bolt: '5/16 in', bush: 0 })
    expect(stocked({ ...PLAIN, bore: mm(3) }).mandrel).toBeUndefined()
  })

  test('a bolt through the stub of a plate is thin enough to leave wood round it', () => {
    expect(stubBoltFor(mm(40), 'mm')).toEqual({ bolt: 'M12', diameter: 12, bush: 14 })
    expect(stubBoltFor(mm(12), 'mm')).toEqual({ bolt: 'M6', diameter: 6, bush: 3 })
    expect(stubBoltFor(inches(1.5), 'in')).toMatchObject({ bolt: '1/2 in' })
    expect(stubBoltFor(mm(9), 'mm')).toBeUndefined()
    for (let bore = 10; bore < 200; bore += 7) {
      const { diameter, bush } = stubBoltFor(mm(bore), 'mm') ?? { diameter: bore, bush: 0 }
      expect(bush).toBeGreaterThanOrEqual(bore / 4 - 1e-9)
      expect(diameter + 2 * bush).toBeWithin(1e-9, bore)
    }
  })

  test('what the chuck takes, and what clears the bed', () => {
    const { outerRing } = stocked(PLAIN, { chuck: { min: mm(45), max: mm(75) }, swing: mm(100) })
    expect(outerRing.turning).toMatchObject({ grip: 'hole', clearsBed: false })
    expect(stocked(PLAIN).outerRing.turning).not.toHaveProperty('grip')
    const wide = stocked(PLAIN, { chuck: { min: mm(45), max: mm(200) }, swing: mm(300) })
    expect(wide.outerRing.turning).toMatchObject({ grip: 'outside', clearsBed: true })
    expect(stocked(PLAIN, { chuck: { min: mm(1), max: mm(2) } }).outerRing.turning.grip).toBe('faceplate')
  })
})

describe('the ring that comes apart', () => {
  const { split } = stocked({ ...PLAIN, width: mm(24) })

  test('parts at mid groove, with the screws midway between bore and groove', () => {
    const { innerRing } = made({ ...PLAIN, width: mm(24) })
    expect(split).toMatchObject({ ring: 'innerRing', partingPlane: 12, faults: [] })
    expect(split?.screwCircle).toBeWithin(1e-9, (innerRing.boreDiameter + innerRing.grooveBottomDiameter) / 2)
    expect(split?.wall).toBeWithin(1e-9, innerRing.wall)
  })

  test('as much wood beside head and thread as the shank is thick, three shanks of thread in the far half, the point inside', () => {
    fc.assert(
      fc.property(likelyInput, (design) => {
        const result = fullRingsOf(design)
        if (!result.ok) return
        const { split: ring } = remade(result.value, {})
        if (ring?.screws === undefined) return
        const { screws } = ring
        expect(screws.besideHead).toBeGreaterThanOrEqual(screws.shankDiameter - 1e-6)
        expect(screws.besideHeadTowardsGroove).toBeGreaterThanOrEqual(screws.shankDiameter - 1e-6)
        expect(screws.besideThread).toBeGreaterThanOrEqual(screws.besideHead)
        expect(screws.pilotDepth).toBeGreaterThanOrEqual(3 * screws.shankDiameter - 1e-6)
        const { width } = result.value.resolved
        expect(screws.counterboreDepth + screws.length).toBeLessThan(width)
        if (screws.counterboreDepth > 0)
          expect(screws.counterboreDepth + screws.countersinkDepth).toBeLessThanOrEqual(width / 4 + 1e-9)
        expect(screws.clearance.diameter).toBeGreaterThanOrEqual(screws.shankDiameter)
        expect(screws.pilot.diameter).toBeLessThan(screws.shankDiameter)
        expect(screws.clearance.name).toMatch(design.units === 'in' ? / in$/ : / mm$/)
        // by coordinates: heads on their circle do not touch the bore or the land
        const circle = ring.screwCircle / 2
        if (ring.ring === 'innerRing') {
          expect(circle - screws.headDiameter / 2).toBeGreaterThan(result.value.innerRing.boreDiameter / 2)
          expect(circle + screws.headDiameter / 2).toBeLessThan(result.value.innerRing.landDiameter / 2)
        } else {
          expect(circle + screws.headDiameter / 2).toBeLessThan(result.value.outerRing.outsideDiameter / 2)
          expect(circle - screws.headDiameter / 2).toBeGreaterThan(result.value.outerRing.landDiameter / 2)
        }
      }),
    )
  })

  test('holes by the wood: published tables for a No. 8 screw', () => {
    const wide: RadialInput = {
      units: 'in',
      balls: { count: 14, diameter: inches(1) },
      bore: inches(1 / 2),
      width: inches(17 / 8),
    }
    const eight = (lumber: MakingInput['lumber'] & string) =>
      stocked(wide, { lumber, screws: { gauge: 8 } }).split?.screws
    expect(eight('hardwood')).toMatchObject({
      name: 'No. 8',
      clearance: { name: '11/64 in' },
      pilot: { name: '3/32 in' },
    })
    expect(eight('softwood')).toMatchObject({
      name: 'No. 8',
      clearance: { name: '11/64 in' },
      pilot: { name: '5/64 in' },
    })
    // A cone of 82 degrees from 0.332 in to 0.164 in: half the difference over tan 41.
    expect(toInches(eight('hardwood')?.countersinkDepth ?? mm(Number.NaN))).toBeWithin(5e-4, 0.0966)
  })

  test('too little wood: the bore that clears it does', () => {
    const thin: RadialInput = { ...PLAIN, bore: mm(28), width: mm(24) }
    const fault = stocked(thin).split?.faults.find(({ code }) => code === 'wall-too-thin')
    expect(fault).toMatchObject({ screw: '3 mm' })
    const bore = fault?.code === 'wall-too-thin' ? fault.bore : undefined
    const mended = stocked({ ...thin, bore: bore ?? mm(Number.NaN) }).split
    expect(mended?.faults).toEqual([])
    expect(mended?.screws?.name).toBe('3 mm')
  })

  test('a wider ring never refuses a screw that a narrower one takes', () => {
    const takes = (width: number): boolean =>
      (stocked({ ...PLAIN, bore: mm(6), width: mm(width) }).split?.faults ?? []).every(
        ({ code }) => code !== 'no-screw-length',
      )
    const widths = Array.from({ length: 400 }, (_, i) => 10 + i / 8)
    const first = widths.findIndex(takes)
    expect(first).toBeGreaterThan(0)
    expect(widths.slice(first).filter((width) => !takes(width))).toEqual([])
    // It once took a screw at 21 and none at 21.33.
    const takesGauge = (width: number): boolean =>
      stocked({ ...PLAIN, bore: mm(6), width: mm(width) }, { screws: { gauge: 4 } }).split?.screws !== undefined
    expect([21, 21.33].map(takesGauge)).toEqual([true, true])
  })

  test('too narrow: the width that clears it does, and is no narrower', () => {
    fc.assert(
      fc.property(between(8, 60), (width) => {
        const at = (w: number) => stocked({ ...PLAIN, bore: mm(6), width: mm(w) }).split
        const fault = at(width)?.faults.find(({ code }) => code === 'no-screw-length')
        if (fault?.code !== 'no-screw-length' || fault.clearing === undefined) return
        expect(fault.clearing).toBeGreaterThanOrEqual(width)
        expect(at(fault.clearing)?.faults).toEqual([])
      }),
    )
  })

  test('an outer ring that comes apart: wood from groove to outside', () => {
    const design: RadialInput = {
      ...PLAIN,
      split: 'outer-ring',
      outerRing: { wall: mm(5), roundOutsideDiameterTo: null },
      width: mm(24),
    }
    const fault = stocked(design).split?.faults[0]
    const outside = fault?.code === 'wall-too-thin' ? fault.outside : undefined
    expect(stocked({ ...design, outerRing: { outsideDiameter: outside ?? mm(Number.NaN) } }).split?.faults).toEqual([])
  })

  test('screws that crowd: no more than are said', () => {
    const crowd = stocked({ ...PLAIN, width: mm(24) }, { screws: { count: 48 } }).split?.faults[0]
    const most = crowd?.code === 'screws-crowd' ? crowd.most : Number.NaN
    expect(stocked({ ...PLAIN, width: mm(24) }, { screws: { count: most } }).split?.faults).toEqual([])
    expect(stocked({ ...PLAIN, width: mm(24) }, { screws: { count: most + 1 } }).split?.faults).not.toEqual([])
  })

  test('a dowel has as much wood beside it as it is thick, and a floor', () => {
    const { dowels } = stocked({ ...PLAIN, width: mm(24) }).split ?? {}
    expect(dowels?.besideDowel).toBeGreaterThanOrEqual(dowels?.diameter ?? Number.NaN)
    expect(dowels?.depthEachHalf).toBe(9)
    expect(dowels?.length).toBeLessThan(2 * 9)
  })

  test('gauges that may be asked for have every hole', () => {
    expect(SCREW_GAUGES).toEqual([4, 6, 8, 10, 12])
  })
})

test('a segmented ring holds the rough one', () => {
  const { outerRing, innerRing } = stocked(PLAIN, {
    woods: { outerRing: { segments: { count: 12 } }, innerRing: { segments: { count: 6 } } },
  })
  expect(outerRing.segments).toMatchObject({ count: 12, miter: 15 })
  expect(outerRing.segments?.outerEdge).toBeWithin(1e-9, outerRing.blank.roughCircle * Math.tan(Math.PI / 12))
  // The bore of 12 mm less an allowance on either side is nothing: wedges to the middle.
  expect(innerRing.segments).toMatchObject({ count: 6, innerEdge: 0 })
})

test('the boards of a segmented ring give its strips, not the whole circle, for every half and layer', () => {
  const segmentCounts = fc.integer({ min: 3, max: 48 })
  fc.assert(
    fc.property(millimetres, segmentCounts, fc.constantFrom(...LUMBERS), (design, count, lumber) => {
      const result = fullRingsOf(design)
      if (!result.ok) return
      const { outerRing, entryHole, nesting } = remade(result.value, {
        lumber,
        woods: { outerRing: { segments: { count } } },
      })
      const { blank, boards, segments } = outerRing
      if (segments === undefined) throw new Error('a ring of segments')
      // A ring with its hole glued in has no core to saw out.
      expect([blank.roughHole, entryHole, nesting]).toEqual([undefined, undefined, undefined])
      expect(segments.stockLength).toBe(boards[0]?.length)
      for (const { layers, across, dressedWidth, length, boards: number } of boards) {
        expect(across * dressedWidth).toBeGreaterThanOrEqual(segments.stripWidth * (1 - 1e-9))
        // The area of all pieces, of every half and layer, and no more than the waste at cuts and ends beyond it.
        const pieces = blank.pieces * layers * across * count
        const middle = (segments.outerEdge + segments.innerEdge) / 2
        const cut = 3 / Math.cos(Math.PI / count)
        expect(length).toBeGreaterThan(pieces * (middle + cut) * (1 - 1e-9))
        expect(length).toBeLessThan(
          (1 + 1 / count) * pieces * (middle + cut) + blank.pieces * layers * across * segments.outerEdge,
        )
        if (number !== undefined) expect(number * 2400).toBeGreaterThan(pieces * (middle + cut) * (1 - 1e-9))
      }
    }),
  )
})

describe('the screws of cheeks', () => {
  const screwsOf = (wall: number, stock: MakingInput = {}) => {
    const result = fullRingsOf({ ...ROLLERS, outerRing: { wall: mm(wall), roundOutsideDiameterTo: null } })
    if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.error)}`)
    return { bearing: result.value, screws: remade(result.value, stock).cheekScrews }
  }

  // ASME B18.6.1: the shank of a No. 4 is 0.112 in, 2.845 mm; with as much wood on both sides 8.53 mm behind the track.
  test.each([
    [8.4, undefined],
    [8.6, 'No. 4'],
  ])('%d mm of wood behind the track, a gauge asked for: %s', (wall, name) => {
    expect(screwsOf(wall, { screws: { gauge: 4 } }).screws?.name).toBe(name)
  })

  test.each([
    [8.9, undefined],
    [9.1, '3 mm'],
  ])('%d mm of wood behind the track, in millimetres: %s', (wall, name) => {
    expect(screwsOf(wall).screws?.name).toBe(name)
  })

  test('stand in the middle of the wood, hold by three shanks, and stay inside the ring', () => {
    fc.assert(
      fc.property(between(8, 40), fc.constantFrom(...SCREW_GAUGES, undefined), (wall, gauge) => {
        const { bearing, screws } = screwsOf(wall, gauge === undefined ? {} : { screws: { gauge } })
        if (screws === undefined) return
        const { outerRing, cheeks } = bearing
        if (gauge !== undefined) expect(screws.name).toBe(`No. ${gauge}`)
        expect(screws.screwCircle).toBeWithin(1e-9, outerRing.grooveBottomDiameter + outerRing.wall)
        expect(screws.pilotDepth).toBeGreaterThanOrEqual(3 * screws.shankDiameter - 1e-9)
        expect(screws.pilotDepth).toBeLessThan(outerRing.width)
        expect(screws.countersinkDepth).toBeLessThanOrEqual((cheeks?.thickness ?? Number.NaN) / 2)
      }),
    )
  })

  test('grooved rings have no cheeks to screw on', () => {
    expect(stocked(PLAIN).cheekScrews).toBeUndefined()
  })
})

test('what a finish puts on, blanks are cut without', () => {
  const bare = stocked(PLAIN)
  const filmed = stocked({ ...PLAIN, finishAllowance: mm(0.05) })
  expect(filmed.outerRing.blank.roughCircle).toBeWithin(1e-9, bare.outerRing.blank.roughCircle - 0.1)
  expect(filmed.outerRing.blank.roughHole).toBeWithin(1e-9, (bare.outerRing.blank.roughHole ?? Number.NaN) + 0.1)
  expect(filmed.outerRing.blank.thickness).toBeWithin(1e-9, bare.outerRing.blank.thickness - 0.1)
})

describe('in millimetres', () => {
  test('boards are those of a metric sawmill, planed; screws and drills are metric', () => {
    const { outerRing, split } = stocked({ ...PLAIN, width: mm(24) })
    expect(outerRing.boards[0]).toMatchObject({ kind: 'hardwood', nominalThickness: '32 mm', dressedThickness: 27 })
    const softwood = stocked({ ...PLAIN, width: mm(24) }, { lumber: 'softwood' }).outerRing.boards[0]
    expect(softwood).toMatchObject({ nominalThickness: '32 mm', nominalWidth: expect.stringMatching(/^\d+ mm$/) })
    expect(split?.screws?.name).toMatch(/ mm$/)
    expect([3, 3.5, 4, 5, 6]).toContain(split?.screws?.shankDiameter)
  })

  test('a 4 mm screw: a pilot of nine tenths of its core in hardwood, of seven in softwood, by tenths of a millimetre', () => {
    const wide: RadialInput = { units: 'mm', balls: { count: 14, diameter: mm(25) }, bore: mm(12), width: mm(54) }
    const four = (lumber: MakingInput['lumber'] & string) =>
      stocked(wide, { lumber, screws: { metricDiameter: 4 } }).split?.screws
    expect(four('hardwood')).toMatchObject({ name: '4 mm', pilot: { name: '2.5 mm' }, clearance: { name: '4.2 mm' } })
    expect(four('softwood')).toMatchObject({ pilot: { name: '2 mm' } })
    // A cone of 90 degrees from 7.5 mm to 4 mm: half the difference.
    expect(four('hardwood')?.countersinkDepth).toBeWithin(1e-9, 1.75)
  })
})

test('boards on hand: only those, as wide and as long as they are', () => {
  const boards = [{ thickness: mm(30), width: mm(120), length: mm(900) }]
  const { outerRing } = stocked({ ...PLAIN, width: mm(24) }, { boards })
  expect(outerRing.boards).toHaveLength(1)
  expect(outerRing.boards[0]).toMatchObject({ kind: 'on-hand', dressedThickness: 30, dressedWidth: 120, layers: 1 })
  const { roughCircle } = outerRing.blank
  const across = Math.ceil(roughCircle / 120)
  expect(outerRing.boards[0]).toMatchObject({ across })
  const perBoard = Math.floor((900 + 1.5) / (roughCircle + 1.5))
  expect(outerRing.boards[0]?.boards).toBe(Math.ceil(across / perBoard))
})
