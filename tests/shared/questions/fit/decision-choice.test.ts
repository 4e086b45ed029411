import { describe, expect, test } from 'vitest'
import { type DecisionInput, decide, readsHowMuch, stateOf, wordNow } from '#shared/questions/fit/decision.ts'
import { bestCut, riskNow, type ToolAtHand } from '#shared/questions/fit/next-cut.ts'
import type { Offer } from '#shared/questions/fit/next-reading.ts'
import type { EarlierState, Reading, ReadingKind } from '#shared/questions/fit/reading.ts'
import type { Room } from '#shared/questions/fit/room.ts'
import { strokeOf } from '#shared/questions/fit/stroke.ts'
import { normalCdf } from '#shared/statistics/normal.ts'

/*
 * A decision rests on chances, on what was read, and on the room for a cut. Here the room is that of one bearing that is known, so that
 * what each cut comes to is a closed form.
 */

/** Depths to where it is good, to the aim, to where a rule cannot tell, and to too deep. */
const room = (toBand: number, toAim: number, toSafe: number, toDeep: number, bias = 0): Room => ({
  count: 1,
  points: Int32Array.of(0),
  toBand: Float64Array.of(toBand),
  toAim: Float64Array.of(toAim),
  toSafe: Float64Array.of(toSafe),
  toDeep: Float64Array.of(toDeep),
  tool: Float64Array.of(bias),
  remaining: toAim,
  toolMean: bias,
})
const SHARP: ToolAtHand = { name: 'sharp-tool', error: { absolute: 0.1, relative: 0 } }
const PAPER: ToolAtHand = { name: 'abrasive', error: { absolute: 0.02, relative: 0 } }
const deepBy = (cut: number, toDeep: number, error = 0.1) => normalCdf((cut - toDeep) / error)

describe('the risk that a cut may take', () => {
  test.each([
    [0, 0.015],
    [1, 0.045],
    [2, 0.05],
  ])('read %s times again: %s of the 0.05 that is accepted', (again, risk) => {
    expect(riskNow(0.05, again)).toBeWithin(1e-12, risk)
  })
})

describe('the best cut', () => {
  test('goes no deeper than its risk: 2.17 deviations short for 1.5 %', () => {
    const cut = bestCut(room(5, 6, 7, 1), [SHARP], 0.015)
    expect(cut?.radial).toBeGreaterThan(0.5)
    expect(cut?.radial).toBeLessThanOrEqual(1 - 0.1 * 2.17)
    expect(cut?.tooDeep).toBeLessThanOrEqual(0.015)
    expect(cut?.tooDeep).toBeWithin(1e-12, deepBy(cut?.radial ?? Number.NaN, 1))
  })

  test('nor past the aim, a tool that takes more than asked the less', () => {
    expect(bestCut(room(0.4, 0.5, 9, 10), [SHARP], 0.015)?.radial).toBeWithin(1e-12, 0.5)
    expect(bestCut(room(0.4, 0.5, 9, 10, 0.25), [SHARP], 0.015)?.radial).toBeWithin(1e-12, 0.4)
    expect(bestCut(room(0.4, 0.5, 9, 10, -0.25), [SHARP], 0.015)?.radial).toBeWithin(1e-12, 0.5)
    expect(bestCut(room(-1, 0, 9, 10), [SHARP], 0.015)).toBeUndefined()
    expect(bestCut(room(-1, -0.1, 9, 10), [SHARP], 0.015)).toBeUndefined()
  })

  test('is the best of 24 depths: the chance of the band, less ten times the rise of too deep, and a fifth for its depth', () => {
    const [band, safe, deep, aim] = [0.3, 0.55, 0.8, 0.6]
    const cut = bestCut(room(band, aim, safe, deep), [SHARP], 0.04)
    const worth = (radial: number) =>
      normalCdf((safe - radial) / 0.1) -
      normalCdf((band - radial) / 0.1) -
      10 * (deepBy(radial, deep) - deepBy(0, deep)) +
      0.2 * Math.min(1, radial / aim)
    const radial = cut?.radial ?? Number.NaN
    expect(cut?.good).toBeWithin(1e-12, normalCdf((safe - radial) / 0.1) - normalCdf((band - radial) / 0.1))
    for (let depth = 0.01; depth <= aim && deepBy(depth, deep) <= 0.04; depth += 0.005)
      expect(worth(depth)).toBeLessThan(worth(radial) + 0.01)
  })

  test('is made with the tool that does it better: a gouge for what is far, paper for what is near', () => {
    expect(bestCut(room(2, 2.2, 2.5, 3), [SHARP, PAPER], 0.015)?.with).toBe('sharp-tool')
    expect(bestCut(room(0.2, 0.25, 0.3, 0.35), [SHARP, PAPER], 0.015)?.with).toBe('abrasive')
    // nobody sands more than 0.4 mm at once
    expect(bestCut(room(2, 2.2, 2.5, 3), [PAPER], 0.015)?.radial).toBeWithin(1e-12, 0.4)
  })

  test('comes in whole strokes where they were counted, never more', () => {
    const counted = { ...PAPER, perStroke: 0.03 }
    const cut = bestCut(room(0.2, 0.25, 0.3, 0.5), [counted], 0.015)
    const strokes = (cut?.radial ?? Number.NaN) / 0.03
    expect(strokes).toBeWithin(1e-9, Math.round(strokes))
    expect(cut?.radial).toBeLessThanOrEqual(0.25)
    expect(bestCut(room(0.01, 0.02, 0.03, 0.5), [counted], 0.015)).toBeUndefined()
  })
})

const ERROR = { graduation: 0.5, standardUncertainty: 0.1 }
const reading = (kind: ReadingKind): Reading =>
  ({
    kind,
    value: 1,
    diameter: 46,
    result: 'enters',
    landDiameter: 70,
    ballsLeftOut: 1,
    count: 12,
    error: ERROR,
  }) as Reading
const stateWith = (...kinds: readonly ReadingKind[]): EarlierState => ({
  readings: kinds.map(reading),
  thenRemoved: { with: 'sharp-tool', radial: 0.2 },
})
const offer = (kind: ReadingKind, after = 0.1, now = 1): Offer => ({
  kind,
  uncertaintyNow: now,
  uncertaintyAfter: after,
})
const NEAR = room(0.1, 0.5, 0.9, 1.2)

function asked(kinds: readonly ReadingKind[], more: Partial<DecisionInput> = {}): DecisionInput {
  return {
    cuts: 'outer',
    chances: { tooTight: 0.6, inBand: 0.3, tooDeep: 0.1 },
    target: { min: 0, aim: 1, max: 2, overshootRisk: 0.05 } as DecisionInput['target'],
    readings: kinds.map(reading),
    earlier: [],
    agrees: true,
    isRowDoubted: false,
    tools: [SHARP],
    room: NEAR,
    offers: () => [offer('ball-gap')],
    ...more,
  }
}
const chances = (tooTight: number, inBand: number, tooDeep: number) => ({ chances: { tooTight, inBand, tooDeep } })
const INNER = { cuts: 'inner' } as const

describe('the state of a groove', () => {
  test('unread, whatever the chances, until something touched the groove that is cut', () => {
    expect([[], ['ball-row']].map((kinds) => stateOf(asked(kinds as ReadingKind[], chances(0, 0, 1))))).toEqual([
      'unread',
      'unread',
    ])
    for (const kind of ['plug', 'ball-gap', 'last-ball-in'] as const)
      expect(stateOf(asked([kind], { ...INNER, ...chances(0, 0, 1) })), kind).toBe('unread')
  })

  test.each([
    ['ball-gap', 'outer', 'too-deep'],
    ['last-ball-opening', 'outer', 'too-deep'],
    ['groove-bottom-diameter', 'outer', 'too-deep'],
    ['plug', 'outer', 'unclear'],
    ['last-ball-in', 'outer', 'unclear'],
    ['last-ball-refused', 'outer', 'unclear'],
    ['radial-play', 'inner', 'too-deep'],
    ['groove-depth', 'inner', 'too-deep'],
    ['binds', 'inner', 'unclear'],
  ] as const)('condemned by a figure alone: %s of an %s ring is %s', (kind, cuts, state) => {
    expect(stateOf(asked([kind], { cuts, ...chances(0, 0.05, 0.95) }))).toBe(state)
    expect(stateOf(asked([kind], { cuts, ...chances(0, 0.051, 0.949) }))).toBe('unclear')
  })

  test('in band only where the last ball is in by the latest word', () => {
    const sure = chances(0.05, 0.95, 0)
    const states = (...lists: readonly ReadingKind[][]) => lists.map((kinds) => stateOf(asked(kinds, sure)))
    expect(states(['ball-gap'], ['groove-depth', 'last-ball-in'], ['groove-depth'], ['last-ball-opening'])).toEqual([
      'in-band',
      'in-band',
      'unclear',
      'unclear',
    ])
    expect(states(['last-ball-in', 'last-ball-refused'], ['last-ball-refused', 'ball-gap'])).toEqual([
      'unclear',
      'in-band',
    ])
    expect(stateOf(asked(['ball-gap'], chances(0.06, 0.94, 0)))).toBe('unclear')
  })

  test('a groove that took the ball and was cut deeper still takes it; one that refused it may take it now', () => {
    const word = (...states: readonly EarlierState[]) =>
      wordNow({ readings: [reading('groove-depth')], earlier: states })
    expect(word(stateWith('last-ball-in'))).toBe('in')
    expect(word(stateWith('last-ball-in'), stateWith('groove-depth'))).toBe('in')
    expect(word(stateWith('last-ball-refused'))).toBeUndefined()
    expect(word(stateWith('last-ball-in'), stateWith('last-ball-refused'))).toBeUndefined()
    expect(wordNow({ readings: [reading('last-ball-refused')], earlier: [stateWith('last-ball-in')] })).toBe('out')
  })

  test('an inner ring: in band where its groove or its play was read, and it does not bind by the latest trial', () => {
    const sure = { ...INNER, ...chances(0.05, 0.95, 0) }
    const states = (...lists: readonly ReadingKind[][]) => lists.map((kinds) => stateOf(asked(kinds, sure)))
    expect(
      states(['radial-play'], ['groove-depth'], ['binds'], ['radial-play', 'binds'], ['binds', 'radial-play']),
    ).toEqual(['in-band', 'in-band', 'unclear', 'unclear', 'in-band'])
    expect(states(['groove-bottom-diameter'])).toEqual(['in-band'])
    expect(stateOf(asked(['binds'], { ...sure, earlier: [stateWith('groove-depth')] }))).toBe('unclear')
    expect(stateOf(asked(['plug'], { ...sure, earlier: [stateWith('groove-depth')] }))).toBe('in-band')
  })

  test('more to remove where that is as sure', () => {
    expect([0.95, 0.949].map((tight) => stateOf(asked(['last-ball-opening'], chances(tight, 0.05, 0))))).toEqual([
      'more-to-remove',
      'unclear',
    ])
  })

  test('a figure that shows how much: the gap of an outer ring, any of the groove of an inner one', () => {
    const shows = (cuts: 'outer' | 'inner', kind: ReadingKind) => readsHowMuch([reading(kind)], cuts)
    expect(
      ['ball-gap', 'last-ball-opening', 'groove-depth', 'plug'].map((kind) => shows('outer', kind as ReadingKind)),
    ).toEqual([true, true, false, false])
    expect(
      ['radial-play', 'groove-depth', 'binds', 'ball-gap'].map((kind) => shows('inner', kind as ReadingKind)),
    ).toEqual([true, true, false, false])
  })
})

const why = (input: DecisionInput) => {
  const decided = decide(input)
  return decided.action === 'measure' ? decided.nextReading.why : decided.action === 'stop' ? decided.reason : 'cut'
}

describe('the decision', () => {
  test('a verdict ends it', () => {
    expect(decide(asked(['ball-gap'], chances(0, 0.95, 0.05)))).toEqual({ action: 'stop', reason: 'in-band' })
    expect(decide(asked(['ball-gap'], chances(0, 0.05, 0.95)))).toEqual({ action: 'stop', reason: 'too-deep' })
  })

  test('a groove that nobody has read is read, by what teaches most, however many checks were made', () => {
    const many = Array.from({ length: 13 }, (): ReadingKind => 'ball-row')
    expect(decide(asked(many))).toMatchObject({
      action: 'measure',
      nextReading: { kind: 'ball-gap', why: 'groove-unread' },
    })
    expect(why(asked([], { offers: () => [] }))).toBe('cannot-be-told')
  })

  test('a word without a figure asks for one', () => {
    expect(why(asked(['last-ball-refused']))).toBe('refusal-has-no-figure')
    expect(why(asked(['ball-gap'], { agrees: false }))).toBe('readings-disagree')
    expect(why(asked(['last-ball-in']))).toBe('groove-unread')
    expect(why(asked(['binds'], INNER))).toBe('refusal-has-no-figure')
    // what the groove of an inner ring measured before will do
    expect(why(asked(['binds'], { ...INNER, earlier: [stateWith('groove-depth')] }))).toBe('cut')
    expect(why(asked(['last-ball-refused'], { earlier: [stateWith('ball-gap')] }))).toBe('refusal-has-no-figure')
    expect(why(asked(['last-ball-in'], { ...INNER, earlier: [stateWith('groove-depth')] }))).toBe('groove-unread')
  })

  test('a shallow groove is cut where it covers a tenth of what remains, another where it gains fifteen in a hundred', () => {
    expect(why(asked(['last-ball-opening']))).toBe('cut')
    const { good = Number.NaN } = bestCut(NEAR, [SHARP], 0.015) ?? {}
    const gaining = (gain: number) => why(asked(['ball-gap'], chances(0.5, good - gain, 0)))
    expect(gaining(0.151)).toBe('cut')
    expect(gaining(0.149)).toBe('verdict-uncertain')
    // hardly any risk left: a short cut, but of a shallow groove
    const far = room(5, 20, 25, 2.5)
    expect(why(asked(['last-ball-opening'], { room: far, ...chances(0.51, 0.4, 0) }))).toBe('cut')
    const farther = room(5, 30, 35, 2.5)
    expect(why(asked(['last-ball-opening'], { room: farther, ...chances(0.51, 0.4, 0) }))).toBe('cut-too-risky')
    expect(why(asked(['last-ball-opening'], { room: far, ...chances(0.5, 0.4, 0) }))).toBe('cut-too-risky')
  })

  test('read again it may be cut with more risk; a row of balls is no reading of the groove', () => {
    const cutBy = (...kinds: readonly ReadingKind[]) => {
      const decided = decide(asked(kinds, { room: room(0.3, 0.9, 1.2, 1) }))
      return decided.action === 'cut' ? decided.cut.radial : Number.NaN
    }
    expect(cutBy('ball-gap', 'ball-gap')).toBeGreaterThan(cutBy('ball-gap'))
    expect(cutBy('ball-gap', 'ball-row')).toBe(cutBy('ball-gap'))
  })

  test('no cut: what is asked for says why', () => {
    const none = { tools: [] }
    expect(why(asked(['groove-depth'], none))).toBe('no-word-on-last-ball')
    expect(why(asked(['ball-gap'], { ...none, ...chances(0.49, 0.41, 0.1) }))).toBe('verdict-uncertain')
    expect(why(asked(['ball-gap'], { ...none, ...chances(0.5, 0.4, 0.1) }))).toBe('cut-too-risky')
    expect(why(asked(['radial-play'], { ...none, ...INNER }))).toBe('cut-too-risky')
  })

  test('a cut by a caliper alone is not made where the gap can be read, unless it is good or covers half of what remains', () => {
    const poor = room(0.6, 1, 1.1, 0.7)
    const blind = (more: Partial<DecisionInput> = {}) =>
      why(asked(['groove-depth', 'last-ball-in'], { room: poor, ...more }))
    expect(bestCut(poor, [SHARP], 0.045)?.good).toBeLessThan(0.45)
    expect(blind()).toBe('cut-too-risky')
    expect(blind({ offers: () => [offer('groove-bottom-diameter')] })).toBe('cut')
    expect(blind({ room: room(0.6, 0.8, 1.1, 0.7) })).toBe('cut')
    expect(why(asked(['ball-gap'], { room: poor }))).toBe('cut')
  })

  test('an inner ring whose balls leave its play in doubt is gauged by a plug first', () => {
    const poor = { ...INNER, room: room(0.6, 0.9, 1.1, 0.7) }
    const plug = (after: number, now: number) =>
      why(asked(['groove-depth'], { ...poor, offers: () => [offer('plug', after, now)] }))
    expect(plug(0.5, 1.01)).toBe('cut-too-risky')
    expect(plug(0.5, 0.99)).toBe('cut')
    expect(plug(0.52, 1.03)).toBe('cut')
    expect(why(asked(['groove-depth'], { ...poor, offers: () => [offer('groove-bottom-diameter', 0.1, 1.5)] }))).toBe(
      'cut',
    )
  })

  test('twelve checks are enough: a state without a reading counts as one', () => {
    const made = (count: number, now: readonly ReadingKind[]) =>
      why(
        asked(now, {
          earlier: Array.from({ length: count }, (_, i) =>
            i % 2 === 0 ? stateWith() : stateWith('last-ball-opening'),
          ),
        }),
      )
    expect(made(10, ['last-ball-opening'])).toBe('cut')
    expect(made(11, ['last-ball-opening'])).toBe('cannot-be-told')
  })

  test('six readings of one state are enough, and one that teaches nothing is not asked for', () => {
    const none = { tools: [] }
    const read = (count: number) =>
      why(
        asked(
          Array.from({ length: count }, (): ReadingKind => 'ball-gap'),
          none,
        ),
      )
    expect([read(5), read(6)]).toEqual(['cut-too-risky', 'cannot-be-told'])
    const teaching = (after: number, kinds: readonly ReadingKind[] = ['ball-gap']) =>
      why(asked(kinds, { ...none, offers: () => [offer('ball-gap', after)] }))
    expect([teaching(0.984), teaching(0.986)]).toEqual(['cut-too-risky', 'cannot-be-told'])
    // what has not been read at all need not teach so much
    expect([teaching(0.999, []), teaching(1, [])]).toEqual(['groove-unread', 'cannot-be-told'])
  })

  test.each([
    [0.51, 0.3, 0.1, 'how-deep-to-cut'],
    [0.5, 0.2, 0.3, 'whether-it-is-too-deep'],
    [0.4, 0.3, 0.3, 'whether-it-is-finished'],
  ])('chances of %s, %s and %s: the next reading decides %s', (tight, band, deep, decides) => {
    const decided = decide(asked(['ball-gap'], { tools: [], ...chances(tight, band, deep) }))
    expect(decided.action === 'measure' && decided.nextReading.decides).toBe(decides)
  })
})

describe('a stroke', () => {
  const counted = (strokes: number, gained: number) => ({ strokes, before: 1, after: 1 + gained })

  test('of one count: the gain over the strokes and the slope, by the error of two readings', () => {
    const stroke = strokeOf([counted(40, 0.5)], 6.25, 0.1)
    expect(stroke?.radial).toBeWithin(1e-12, 0.5 / 40 / 6.25)
    expect(stroke?.relativeUncertainty).toBeWithin(1e-9, (Math.SQRT2 * 0.1) / 0.5)
  })

  test('of several: all gains over all strokes, each count weighted by its own', () => {
    const stroke = strokeOf([counted(20, 0.3), counted(60, 0.7)], 5, 0)
    expect(stroke?.radial).toBeWithin(1e-12, 1 / 80 / 5)
    // the scatter about that line: weights 1/20 and 1/60, one degree of freedom
    const [off, far] = [0.3 - 20 / 80, 0.7 - 60 / 80]
    const scatter = Math.sqrt((off * off) / 20 + (far * far) / 60)
    expect(stroke?.relativeUncertainty).toBeWithin(1e-9, scatter / Math.sqrt(80) / (1 / 80))
  })

  test('none without counts, or where nothing came off', () => {
    expect(strokeOf([], 6, 0.1)).toBeUndefined()
    expect(strokeOf([counted(40, 0)], 6, 0.1)).toBeUndefined()
    expect(strokeOf([counted(40, -0.1)], 6, 0.1)).toBeUndefined()
  })
})
