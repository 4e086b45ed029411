import { describe, expect, test } from 'vitest'
import { type DesignInput, design as designOf } from '#shared/bearing/arrangements.ts'
import { askedReading } from '#shared/questions/fit/asked-reading.ts'
import { type FitCorrection, type FitCorrectionInput, fitCorrection } from '#shared/questions/fit/fit-correction.ts'
import type { Reading } from '#shared/questions/fit/reading.ts'
import { mm } from '#shared/units/length.ts'
import {
  disagreeing,
  explainFitRefusal,
  explainRescue,
  fitSummary,
  livingWith,
  nextReadingSentence,
} from '#src/words/fit-correction.ts'
import { cutLarge } from '#src/words/kiosk/lathe.ts'
import { TERMS } from '#src/words/terms.ts'
import { DIAL, RULE } from '#tests/support/fit-workshop.ts'

/* Every sentence of real answers, held to the words of its own arrangement. */

const gap = (value: number): Reading => ({ kind: 'ball-gap', value, error: RULE })
const opening = (value: number): Reading => ({ kind: 'last-ball-opening', ballsLeftOut: 1, value, error: RULE })
const play = (value: number): Reading => ({ kind: 'radial-play', value, error: DIAL })

const balls = { count: 14, diameter: mm(14), standardDeviation: mm(0.1) }
const OUTER: readonly (readonly Reading[])[] = [
  [],
  [{ kind: 'last-ball-refused' }],
  [{ kind: 'last-ball-in' }],
  [{ kind: 'plug', diameter: 48, result: 'enters', error: DIAL }],
  [opening(10)],
  [opening(13.5)],
  [gap(0.5), gap(1)],
  [gap(4)],
  Array.from({ length: 12 }, () => ({ kind: 'last-ball-in' })),
  Array.from({ length: 12 }, () => ({ kind: 'last-ball-refused' })),
]
const INNER: readonly (readonly Reading[])[] = [
  [],
  [{ kind: 'binds' }],
  Array.from({ length: 12 }, () => ({ kind: 'binds' })),
  [play(0.05)],
  [play(0.3)],
  [play(3)],
]

interface Case {
  readonly design: DesignInput
  readonly asked: readonly (readonly [FitCorrectionInput['ring'], readonly (readonly Reading[])[]])[]
  readonly foreign: RegExp
}
const CASES: Readonly<Record<'radial' | 'roller' | 'thrust' | 'caged', Case>> = {
  radial: {
    design: { units: 'mm', balls, bore: mm(10) },
    asked: [
      ['outer', OUTER],
      ['inner', INNER],
    ],
    foreign: /roller|\btrack|cheek|\bplate|\bcage/i,
  },
  roller: {
    design: { units: 'mm', arrangement: 'roller', balls, bore: mm(10) },
    asked: [
      ['outer', OUTER],
      ['inner', INNER],
    ],
    foreign: /\bballs?\b|groove|\blands?\b|\bplate|\bcage|\bdeep/i,
  },
  thrust: {
    design: { units: 'mm', arrangement: 'thrust', balls, bore: mm(10) },
    asked: [['plate', OUTER]],
    foreign: /\brings?\b|\blands?\b|\btrack|roller|\bcage|inner|outer ring/i,
  },
  caged: {
    design: { units: 'mm', arrangement: 'caged', balls: { ...balls, count: 9 }, bore: mm(10) },
    asked: [['inner', INNER]],
    foreign: /roller|\btrack|cheek|\bplate|ball gap|\bgo\b|no-go/i,
  },
}

/** The first may serve; of the second there are too few, the third are too small, and the last too large. */
const LOTS = [
  { diameter: 14.2, quantity: 20 },
  { diameter: 14.3, quantity: 2 },
  { diameter: 9, quantity: 50 },
  { diameter: 19, quantity: 50 },
]

function answersOf({ design, asked }: Case): readonly FitCorrection[] {
  return asked.flatMap(([ring, all]) =>
    all.map((readings) => {
      const none = { earlier: [], target: {}, tools: {}, removalHistory: [] }
      const ballsOnHand = LOTS
      const answer = fitCorrection({ design, ring, readings, ...none, ballsOnHand })
      if (!answer.ok) throw new Error(JSON.stringify(answer.error))
      return answer.value
    }),
  )
}

describe.each(Object.entries(CASES))('%s', (name, each) => {
  const terms = TERMS[name as keyof typeof CASES]
  const answers = answersOf(each)

  test('every sentence keeps to the words of its arrangement', () => {
    const said = answers.flatMap((answer) => [
      fitSummary(answer, 'mm', terms),
      ...(answer.fit.action === 'measure' ? [nextReadingSentence(answer, answer.fit.nextReading, 'mm', terms)] : []),
      ...(answer.rescue ?? []).flatMap((rescue) => [explainRescue(rescue, 'mm', terms), livingWith(rescue, terms)]),
    ])
    expect(new Set(answers.map(({ fit }) => fit.action)).size).toBe(3)
    for (const sentence of said) {
      expect(sentence.replace(/`\w+`/g, '')).not.toMatch(each.foreign)
      expect(sentence).toMatch(/^[A-Z].*\.$/)
      expect(sentence).not.toMatch(/undefined|NaN| {2}/)
    }
  })

  test('every rescue that makes another inner ring says its sizes, and every further cut where it ends', () => {
    const rescues = answers.flatMap((answer) => answer.rescue ?? []).filter(({ possible }) => possible)
    expect(rescues.length).toBeGreaterThan(0)
    for (const rescue of rescues) {
      const told = explainRescue(rescue, 'mm', terms)
      const { grooveBottomDiameter, landDiameter } = rescue.innerToCut ?? {}
      expect(rescue.innerToCut === undefined).toBe(rescue.inner === undefined)
      if (grooveBottomDiameter !== undefined)
        expect(told).toContain(`${grooveBottomDiameter.toFixed(2)} mm ${terms.acrossIt}: write`)
      if (landDiameter !== undefined) expect(told).toContain(`land to ${landDiameter.toFixed(2)} mm`)
      if (rescue.option === 'one-ball-more')
        expect(told).toContain(`measures ${rescue.until?.grooveBottomDiameter.toFixed(2)} mm ${terms.acrossIt}`)
    }
  })

  test('of every lot on hand it is told whether it serves, and why not', () => {
    const rescues = answers.flatMap((answer) =>
      (answer.rescue ?? []).flatMap((each) => (each.option === 'balls-on-hand' ? [each] : [])),
    )
    expect(rescues.length).toBeGreaterThan(0)
    for (const rescue of rescues) {
      const told = explainRescue(rescue, 'mm', terms)
      for (const { diameter } of LOTS) {
        const isTold = told.includes(`of ${diameter} mm`)
        // Of two that would serve the nearer is named.
        expect(isTold || rescue.possible, told).toBe(true)
      }
      expect(told).toContain(`of 14.3 mm there are only 2, and it takes ${rescue.ballCount}`)
      expect(told).toMatch(/those of 9 mm would leave/)
    }
  })

  test('who is told to stop without a figure is told which figure to read', () => {
    const stopped = answers.filter(({ fit }) => fit.action === 'stop' && !fit.isFigureRead)
    expect(stopped.length).toBeGreaterThan(0)
    for (const answer of stopped) expect(fitSummary(answer, 'mm', terms)).toMatch(/[Mm]easure the .*\.$/)
  })

  test('and so do the causes of a reading that disagrees, and a refusal', () => {
    const kinds =
      name === 'caged' ? (['radial-play', 'plug'] as const) : (['last-ball-opening', 'plug', 'ball-row'] as const)
    for (const kind of kinds) expect(disagreeing({ kind, isAlone: false }, terms)).not.toMatch(each.foreign)
    const [ring] = each.asked[0] ?? ['outer' as const]
    for (const refusal of [
      {
        code: 'readings-contradict',
        path: '/readings',
        isAlone: false,
        isCutBetween: false,
        isLastBallInAndOut: false,
      },
      { code: 'readings-contradict', path: '/readings', isAlone: false, isCutBetween: true, isLastBallInAndOut: true },
      {
        code: 'readings-contradict',
        path: '/readings',
        isAlone: true,
        isCutBetween: false,
        isLastBallInAndOut: false,
        ...(name !== 'caged' && { tooWide: mm(21) }),
      },
      { code: 'too-many-left-out', path: '', given: 12, most: 11 },
      { code: 'balls-too-uneven', path: '', given: mm(3), most: mm(1) },
      { code: 'reading-of-other-ring', path: '', kind: 'groove-depth', ring },
    ] as const) {
      expect(explainFitRefusal(refusal, 'mm', terms)).not.toMatch(
        name === 'thrust' ? /\blands?\b|roller|\btrack/ : each.foreign,
      )
    }
  })
})

test('a cut is an imperative with its figure, the check after it, and the risk', () => {
  const [, , , , opened] = answersOf(CASES.radial)
  if (opened?.fit.action !== 'cut') throw new Error('a cut was expected')
  expect(fitSummary(opened, 'mm', TERMS.radial)).toMatch(
    /^(Cut|Sand) [\d.]+ mm of depth.*\. Note what the groove measures across the bottoms now, and stop when it measures [\d.]+ mm more\. Then .* \([\w .]+% chance of ending too deep\)\.$/,
  )
})

test('of two plates one is cut until it fits, and the other then at the same setting', () => {
  const told = answersOf(CASES.thrust).map((answer) => [answer.fit, fitSummary(answer, 'mm', TERMS.thrust)] as const)
  const [cut, fits] = [
    told.filter(([fit]) => fit.action === 'cut'),
    told.filter(([fit]) => fit.action === 'stop' && fit.reason === 'in-band'),
  ]
  expect(Math.min(cut.length, fits.length)).toBeGreaterThan(0)
  for (const [, summary] of cut) expect(summary).toMatch(/\. Cut the other plate only once this one fits\.$/)
  for (const [, summary] of fits) {
    expect(summary).toContain('cut the other plate at the same setting.')
    // The groove that showed the gap may be a shallow one.
    expect(summary).toContain('if the groove is still shallow, cut it to its depth')
    expect(summary).not.toContain('Another cut could only spoil it')
  }
})

test('the circle of a plate moves with its whole groove, by the figure of the large line', () => {
  const found = answersOf(CASES.thrust).flatMap((answer) => (answer.fit.action === 'cut' ? [answer] : []))
  const across = { kind: 'groove-bottom-diameter', value: 62, error: DIAL } as const
  const none = { earlier: [], target: {}, tools: {}, removalHistory: [], ballsOnHand: [] }
  const sized = [opening(10), opening(13.5)].map((reading) =>
    fitCorrection({ design: CASES.thrust.design, ring: 'plate', readings: [reading, across], ...none }),
  )
  const cuts = [...found, ...sized.flatMap((answer) => (answer.ok ? [answer.value] : []))].flatMap((answer) =>
    answer.fit.action === 'cut' ? [{ answer, step: answer.fit.nextStep }] : [],
  )
  expect(new Set(cuts.map(({ step }) => step.isSizeKnown))).toEqual(new Set([true, false]))
  for (const { answer, step } of cuts) {
    const { with: tool, radial, until, isSizeKnown } = step
    const size = mm(until.grooveBottomDiameter)
    const large = cutLarge({ tool, radial: mm(radial), size: isSizeKnown ? size : undefined }, 'mm', TERMS.thrust)
    const [, verb = '', depth = ''] = /^(Set the tool|Sand) ([\d.]+) mm further out$/.exec(large) ?? []
    const summary = fitSummary(answer, 'mm', TERMS.thrust)
    expect(summary).toMatch(new RegExp(`^${verb}( the whole groove)? ${depth} mm further out`))
    expect(summary).toContain('whole groove')
    expect(summary).not.toContain('flank')
    const measures = isSizeKnown ? size.toFixed(2) : String(Number((2 * Number(depth)).toFixed(2)))
    expect(summary).toContain(`it measures ${measures} mm ${isSizeKnown ? '' : 'more '}across its deepest circle.`)
  }
})

describe.each([
  { part: 'outer', before: [opening(10)], bottoms: 75.8, more: 'more' },
  { part: 'inner', before: [play(0.05)], bottoms: 49.3, more: 'less' },
] as const)('how far to cut the $part ring', ({ part, before, bottoms, more }) => {
  const across: Reading = { kind: 'groove-bottom-diameter', value: bottoms, error: DIAL }
  const said = (readings: readonly Reading[], units: 'mm' | 'in') => {
    const none = { earlier: [], target: {}, tools: {}, removalHistory: [], ballsOnHand: [] }
    const answer = fitCorrection({ design: CASES.radial.design, ring: part, readings, ...none })
    if (!answer.ok || answer.value.fit.action !== 'cut')
      throw new Error(`a cut was expected: ${JSON.stringify(answer)}`)
    const { radial, until, isSizeKnown, with: tool } = answer.value.fit.nextStep
    const size = isSizeKnown ? mm(until.grooveBottomDiameter) : undefined
    return {
      isSizeKnown,
      large: cutLarge({ tool, radial: mm(radial), size }, units, TERMS.radial),
      summary: fitSummary(answer.value, units, TERMS.radial),
    }
  }

  test.each(['mm', 'in'] as const)(
    'is a depth where no caliper has read it, in the large line and in the summary, %s',
    (units) => {
      const { isSizeKnown, large, summary } = said(before, units)
      expect(isSizeKnown).toBe(false)
      const [, depth = ''] = /^(?:Cut|Sand) (\S+) (?:mm|in) of depth$/.exec(large) ?? []
      expect(summary.startsWith(large)).toBe(true)
      const [, across = ''] = new RegExp(`stop when it measures (\\S+) (?:mm|in) ${more}`).exec(summary) ?? []
      // To the digits that are written: whoever doubles the depth gets the change across.
      expect(Number(across)).toBeWithin(1e-9, 2 * Number(depth))
    },
  )

  test.each(['mm', 'in'] as const)(
    'is a size where a caliper has read it, in the large line and in the summary, %s',
    (units) => {
      const { isSizeKnown, large, summary } = said([...before, across], units)
      expect(isSizeKnown).toBe(true)
      const [, size = '-'] = /until (\S+) (?:mm|in) across the bottoms$/.exec(large) ?? []
      expect(summary).toContain(`groove measures ${size}`)
    },
  )
})

describe('an inner ring that is to be cut past its drawing', () => {
  const GOES_PAST = /This goes past the ([\d.]+) mm of the drawing: uneven balls take some of the play\.$/
  const said = (standardDeviation: number, readings: readonly Reading[], finishAllowance = 0) => {
    const none = { earlier: [], target: {}, tools: {}, removalHistory: [], ballsOnHand: [] }
    const design = {
      ...CASES.radial.design,
      balls: { ...balls, standardDeviation: mm(standardDeviation) },
      ballGap: mm(1),
      radialInternalClearance: mm(0.7),
      finishAllowance: mm(finishAllowance),
    } as DesignInput
    const made = designOf(design)
    if (!made.ok || !('innerRing' in made.value.bearing)) throw new Error(JSON.stringify(made))
    const row = made.value.dimensions.find(({ key }) => key === 'innerRing.grooveBottomDiameter')
    const drawn = row?.cutTo ?? Number.NaN
    const across: Reading = { kind: 'groove-bottom-diameter', value: drawn + 0.3, error: DIAL }
    const answer = fitCorrection({ design, ring: 'inner', readings: [...readings, across], ...none })
    if (!answer.ok || answer.value.fit.action !== 'cut')
      throw new Error(`a cut was expected: ${JSON.stringify(answer)}`)
    const { until, isSizeKnown } = answer.value.fit.nextStep
    expect(isSizeKnown).toBe(true)
    return { drawn, until: until.grooveBottomDiameter, summary: fitSummary(answer.value, 'mm', TERMS.radial) }
  }

  test.each([0, 0.08])('is told that its uneven balls are why, with a finish of %s mm to come', (finish) => {
    const { drawn, until, summary } = said(0.1, [gap(1)], finish)
    expect(until).toBeLessThan(drawn)
    // The size that stands on the sheet and on the set-block, to the digits of a caliper.
    expect(GOES_PAST.exec(summary)?.[1]).toBe(drawn.toFixed(2))
  })

  test('is told nothing of its balls where they are even, and what the outer ring measures is why', () => {
    const { drawn, until, summary } = said(0.005, [gap(0.2)])
    expect(until).toBeLessThan(drawn)
    expect(summary).not.toContain('drawing')
  })

  test('is told nothing where no caliper tells the two sizes apart', () => {
    const { drawn, until, summary } = said(0.005, [gap(1)])
    expect(until).toBeWithin(DIAL.standardUncertainty, drawn)
    expect(summary).not.toContain('drawing')
  })
})

describe('an inner ring on which nothing more can come off', () => {
  const said = (readings: readonly Reading[]) => {
    const none = { earlier: [], target: {}, tools: {}, removalHistory: [], ballsOnHand: [] }
    const answer = fitCorrection({ design: CASES.radial.design, ring: 'inner', readings, ...none })
    if (!answer.ok) throw new Error(JSON.stringify(answer.error))
    return { ...answer.value, summary: fitSummary(answer.value, 'mm', TERMS.radial) }
  }
  const most = said([play(0.3)]).target.max

  test('is not to be cut any more, rather than not yet; its play is read again, another way', () => {
    const { fit, summary } = said([gap(1), play(most)])
    expect(fit.action).toBe('measure')
    expect(fit.probability.tooTight).toBeLessThan(0.05)
    expect(summary).toBe(
      'Do not cut any more: the groove is finished or a little too deep. Measure the play once more, in another direction: how far the inner ring travels from side to side.',
    )
  })

  test('of one that may still be too tight, only the next cut waits', () => {
    const { fit, summary } = said([gap(1), { kind: 'groove-bottom-diameter', value: 48.6, error: DIAL }])
    expect(fit.action).toBe('measure')
    expect(fit.probability.tooTight).toBeGreaterThan(0.05)
    expect(summary).toMatch(/^Do not cut yet: /)
  })
})

test('a ring that binds is not forced, whatever comes next', () => {
  const across: Reading = { kind: 'groove-bottom-diameter', value: 49.3, error: DIAL }
  const none = { earlier: [], target: {}, tools: {}, removalHistory: [], ballsOnHand: [] }
  const answers = [[{ kind: 'binds' }], [gap(1), { kind: 'binds' }, across]].map((readings) =>
    fitCorrection({ design: CASES.radial.design, ring: 'inner', readings: readings as readonly Reading[], ...none }),
  )
  const told = answers.flatMap((answer) => (answer.ok ? [answer.value] : []))
  expect(told.map(({ fit }) => fit.action)).toEqual(['measure', 'cut'])
  for (const answer of told)
    expect(fitSummary(answer, 'mm', TERMS.radial)).toContain(
      'Do not force the ring, or it dents or splits. If it binds at one place only, find out why first: one ball is large, or the groove has a high spot.',
    )
})

/** The kind that a sentence asks to read, by its words. */
const NAMED: readonly (readonly [RegExp, string])[] = [
  [/leave out|try the last ball and measure/i, 'last-ball-opening'],
  [/measure the ball gap/i, 'ball-gap'],
  [/with a caliper/, 'groove-bottom-diameter'],
  [/measure the play/i, 'radial-play'],
  [/in a straight channel/, 'ball-row'],
  [/Turn a disc/, 'plug'],
]

test('the reading that the summary asks for is the one that programs are told', () => {
  const answers = answersOf(CASES.radial)
  for (const answer of answers) {
    const told = fitSummary(answer, 'mm', TERMS.radial)
    const kinds = NAMED.filter(([words]) => words.test(told)).map(([, kind]) => kind)
    const asked = askedReading(answer)?.kind
    // Before the last ball was tried nobody knows which of the two there is to measure.
    if (/If it goes in, .*; if it stays out, /.test(told)) expect(['ball-gap', 'last-ball-opening']).toContain(asked)
    else expect(kinds, told).toEqual([asked].filter((kind) => kind !== undefined))
  }
})

test('of a groove that was measured before the last cut, nobody says that it has not been measured', () => {
  const earlier = [{ readings: [opening(13)], thenRemoved: { with: 'abrasive' as const, radial: 0.3 } }]
  const none = { target: {}, tools: {}, removalHistory: [], ballsOnHand: [] }
  const answer = fitCorrection({ design: CASES.radial.design, ring: 'outer', readings: [], earlier, ...none })
  if (!answer.ok) throw new Error(JSON.stringify(answer.error))
  expect(fitSummary(answer.value, 'mm', TERMS.radial)).toContain(
    'the groove has not been measured since the last cut of 0.3 mm',
  )
})
