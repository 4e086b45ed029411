import { describe, expect, test } from 'vitest'
import { ARRANGEMENT_NAMES, type ArrangementName, type DesignInput, traitsOf } from '#shared/bearing/arrangements.ts'
import { SPECIES_IDS } from '#shared/data/species.ts'
import type { Trouble } from '#shared/movement/fit.ts'
import { type LoadSpeedReason, loadCheck, loadNameOf } from '#shared/questions/load/load-check.ts'
import type { LoadWarningFacts } from '#shared/questions/load/warning.ts'
import { designSearch } from '#shared/questions/search/design-search.ts'
import { DROP_REASONS } from '#shared/questions/search/drop-reason.ts'
import type { SeasonalFitInput } from '#shared/questions/season/input.ts'
import { seasonalFit } from '#shared/questions/season/seasonal-fit.ts'
import { BALL_SELECTION, ballSelection } from '#shared/questions/selection/ball-selection.ts'
import { SELECTION_GOALS } from '#shared/questions/selection/fields.ts'
import { CONTRIBUTORS_OF, TOLERANCE_CHECK } from '#shared/questions/tolerance/input.ts'
import type { WhyTrials } from '#shared/questions/tolerance/nearly-linear.ts'
import type { ToleranceRefusal } from '#shared/questions/tolerance/refusal.ts'
import { toleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { mm } from '#shared/units/length.ts'
import { toSelectionAnswer } from '#src/api/ball-selection/present.ts'
import { toDesignRequest } from '#src/api/design-input.ts'
import { toLoadAnswer } from '#src/api/load-check/arrangements/all.ts'
import { explainRefusal as selectionRefusal, explainWarning as selectionWarning } from '#src/words/ball-selection.ts'
import { droppedFor, explainCriterion, explainRefusal as searchRefusal } from '#src/words/design-search.ts'
import { disagreeing, explainFitRefusal } from '#src/words/fit-correction.ts'
import { onThePage } from '#src/words/kiosk/of-service.ts'
import { estimateOnly, explainRefusal as loadRefusal, explainWarning as loadWarning } from '#src/words/load-check.ts'
import { memorySentence, seasonRefusalSentence } from '#src/words/season-refusal.ts'
import { describeAdvice, describeBand, describeState, notesOf, warningOf } from '#src/words/seasonal-fit.ts'
import { searchSummary } from '#src/words/summary.ts'
import { TERMS } from '#src/words/terms.ts'
import {
  advice,
  explainAim,
  explainEffect,
  explainMethod,
  explainToleranceRefusal,
  gapSheetWords,
  notes,
} from '#src/words/tolerance-check.ts'
import { post } from '#tests/support/ask.ts'
import { CAGED, PLAIN, PLATES, ROLLERS } from '#tests/support/inputs.ts'
import { programNames } from '#tests/support/program-names.ts'
import { MAPLE, MARBLES } from '#tests/support/seasons.ts'
import { sharedApp } from '#tests/support/started-app.ts'

/** The parts of a bearing that a sentence may name: every other word is free. */
const PART = /\b(ball|roller|dowel|groove|track|raceway|ring|plate|land|cage|pocket|cheek|flank)s?\b/gi

/** The parts of each arrangement. A sentence that names another part is about another bearing. */
const PARTS_OF: Readonly<Record<ArrangementName, readonly string[]>> = {
  radial: ['ball', 'groove', 'ring', 'land', 'flank'],
  caged: ['ball', 'groove', 'ring', 'land', 'flank', 'cage', 'pocket'],
  roller: ['roller', 'track', 'ring', 'cheek'],
  thrust: ['ball', 'groove', 'plate', 'flank'],
}

/** What the year can do to each arrangement. */
const TROUBLES_OF: Readonly<Record<ArrangementName, readonly Trouble[]>> = {
  radial: ['balls-bind', 'rings-bind', 'lands-rub', 'balls-knock'],
  roller: ['balls-bind', 'rings-bind', 'ends-bind', 'balls-knock'],
  thrust: ['balls-bind', 'balls-climb', 'balls-knock'],
  caged: ['rings-bind', 'lands-rub', 'cage-rubs', 'pockets-bind'],
}

/** What each arrangement has no use for although it has the parts. */
const NOT_SAID: Readonly<Partial<Record<ArrangementName, RegExp>>> = {
  caged: /\bball gap|\bgo plug|\bno-go/i,
  thrust: /\b(?:inner|outer) (?:groove|plate)|deeper than|\bshallower|too deep|\bthe play\b/i,
  roller: /\bdeep|\bdepth|\bshallow/i,
}

/** Names of JSON are those of the contract, and stand in backquotes or quotation marks. */
const ofContract = /`[^`]*`|"[^"]*"|\(ballsOnHand\)/g

function expectOwnWords(arrangement: ArrangementName, sentences: readonly string[]): void {
  expect(sentences.length).toBeGreaterThan(0)
  for (const sentence of sentences) {
    const words = sentence.replaceAll(ofContract, '')
    const foreign = Array.from(words.matchAll(PART), ([, part]) => part?.toLowerCase() ?? '').filter(
      (part) => !PARTS_OF[arrangement].includes(part),
    )
    expect(foreign, `${arrangement}: ${sentence}`).toEqual([])
    const unsaid = NOT_SAID[arrangement]
    if (unsaid !== undefined) expect(words, arrangement).not.toMatch(unsaid)
    expect(sentence, arrangement).not.toMatch(/NaN|undefined|Infinity|\[object| {2}|\.\.|^\s|\s$/)
    expect(programNames(onThePage(sentence, TERMS[arrangement])), sentence).toEqual([])
  }
}

const SENTENCES: ReadonlySet<string> = new Set(['message', 'advice', 'verdict', 'notes', 'summary'])

/** Every sentence of an answer, but those of its cautions and sources, which are those of the bearing. */
function sentencesIn(value: unknown, isSentence = false): readonly string[] {
  if (typeof value === 'string') return isSentence ? [value] : []
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([name, inner]) =>
    name === 'cautions' || name === 'sources'
      ? []
      : sentencesIn(inner, SENTENCES.has(name) || (isSentence && Array.isArray(value))),
  )
}

function known<T>(
  result: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: unknown },
): T {
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

const DESIGNS: Readonly<Record<ArrangementName, DesignInput>> = {
  radial: PLAIN,
  roller: ROLLERS,
  thrust: PLATES,
  caged: CAGED,
}

describe('tolerance check', () => {
  const UNIFORM = { kind: 'uniform', plusMinus: mm(0.1) } as const

  test.each(TOLERANCE_CHECK.serves)('of a %s: every answer in its own words', (arrangement) => {
    const design = DESIGNS[arrangement]
    const names = CONTRIBUTORS_OF[traitsOf(design).members]
    const year = { woods: MARBLES.woods, climate: MARBLES.climate, today: MARBLES.today }
    const glass: DesignInput = { ...design, balls: { ...design.balls, material: 'glass' } } as DesignInput
    const checks = [
      // Each contributor alone decides once; without trials, and with.
      ...names.map((name) => ({ design, contributors: { [name]: UNIFORM }, trials: 1000 })),
      { design, contributors: Object.fromEntries(names.map((name) => [name, UNIFORM])) },
      { design, contributors: { ballLotMean: { kind: 'uniform', plusMinus: mm(1) } as const }, overshootRisk: 0.001 },
      ...(arrangement !== 'radial'
        ? []
        : [
            { design: glass, contributors: {}, year },
            { design: glass, contributors: { ballDiameter: UNIFORM }, year },
          ]),
    ].map((input) => known(toleranceCheck(input)))
    const terms = TERMS[arrangement]
    for (const check of checks) {
      const { description, regions, ...texts } = gapSheetWords(check, { maxBallGap: true, overshootRisk: true })
      const { ballGap, play } = check.figures
      const effects = [...ballGap.rss.sensitivities].map(([name, gap]) =>
        explainEffect(name, gap, play.rss.sensitivities.get(name) ?? gap, {
          units: 'mm',
          terms,
          shares: { gap: '40 %', play: '60 %' },
        }),
      )
      const counts = / fits in (\d+) of .* in (\d+) and too loose in (\d+)\./.exec(advice(check))?.slice(1)
      if (counts !== undefined) expect(counts.map(Number).reduce((sum, count) => sum + count)).toBe(100)
      expectOwnWords(arrangement, [advice(check), explainAim(check), explainMethod(check), ...notes(check), ...effects])
      expectOwnWords(arrangement, [description, ...regions, ...Object.values(texts).flatMap((text) => text ?? 'none')])
    }
    const whys: readonly WhyTrials[] = [
      'trials-requested',
      'out-of-round',
      'measured-balls',
      'uneven-balls',
      'not-linear',
      'corners',
    ]
    const [check] = checks
    if (check === undefined) throw new Error('there must be a check')
    expectOwnWords(
      arrangement,
      whys.map((why) => explainMethod({ ...check, method: { kind: 'trials', why } })),
    )
  })

  test.each(TOLERANCE_CHECK.serves)('of a %s: every refusal in its own words', (arrangement) => {
    const design = DESIGNS[arrangement]
    const { members, raceway } = traitsOf(design)
    type Because = Extract<ToleranceRefusal, { code: 'contributor-too-wide' }>['because']
    const ofRings: readonly Because[] = ['balls', 'inner-groove', 'closes', 'lobes']
    const reasons: readonly Because[] =
      members === 'plates'
        ? ['balls', 'plate-groove', 'closes']
        : raceway === 'track'
          ? ofRings
          : [...ofRings, 'outer-groove']
    const causes = [...CONTRIBUTORS_OF[members], ...(members === 'rings' ? (['climate'] as const) : [])]
    const sentences = causes.flatMap((name) =>
      reasons.map((because) =>
        explainToleranceRefusal(
          { code: 'contributor-too-wide', path: '', name, reach: mm(3), because },
          'mm',
          TERMS[arrangement],
        ),
      ),
    )
    expectOwnWords(arrangement, [
      ...sentences,
      explainToleranceRefusal({ code: 'limits-reversed', path: '', min: mm(2), max: mm(1) }, 'mm', TERMS[arrangement]),
    ])
  })
})

describe('ball selection', () => {
  const lot = (shift: number, scatter: number) =>
    Array.from({ length: 20 }, (_, ball) => mm(16 + shift + scatter * ((ball * 0.618) % 1)))

  test.each(BALL_SELECTION.serves)('of a %s: every answer in its own words', (arrangement) => {
    const design = DESIGNS[arrangement]
    for (const goal of SELECTION_GOALS) {
      for (const measured of [lot(-0.3, 0.2), lot(0, 0.002), lot(0, 0.2), lot(0.4, 0.2)]) {
        expectOwnWords(
          arrangement,
          sentencesIn(
            toSelectionAnswer(known(ballSelection({ design, measured, goal })), {
              design: toDesignRequest(design),
              measured: [...measured],
              goal,
            }),
          ),
        )
      }
    }
  })

  test.each(BALL_SELECTION.serves)('of a %s: every refusal and every warning in its own words', (arrangement) => {
    const terms = TERMS[arrangement]
    const length = {
      path: '',
      given: mm(60),
      ballCount: 12,
      closed: mm(75),
      least: mm(13),
      most: mm(20),
      below: mm(14),
    }
    const codes = ['not-of-this-size', 'aim-takes-another-ball', 'groove-too-tight', 'groove-too-wide'] as const
    expectOwnWords(arrangement, [
      selectionRefusal({ code: 'lot-too-small', path: '', given: 9, needed: 12 }, 'mm', terms),
      ...codes.map((code) => selectionRefusal({ code, ...length }, 'mm', terms)),
      selectionWarning({ code: 'does-not-close', ballGap: mm(-0.4) }, 'mm', terms),
      selectionWarning({ code: 'gap-below-band', ballGap: mm(0.1), min: mm(0.2) }, 'mm', terms),
      selectionWarning({ code: 'gap-above-band', ballGap: mm(3), max: mm(2) }, 'mm', terms),
      selectionWarning(
        { code: 'gap-below-assembly-gap', ballGap: mm(0.1), assemblyGap: mm(0.3), chance: 0.2 },
        'mm',
        terms,
      ),
    ])
    if (traitsOf(DESIGNS[arrangement]).members === 'rings') {
      expectOwnWords(arrangement, [
        selectionRefusal({ code: 'groove-meets-bore', path: '', given: mm(9), above: mm(10) }, 'mm', terms),
        selectionWarning({ code: 'binds', play: mm(-0.1) }, 'mm', terms),
        selectionWarning({ code: 'little-play', play: mm(0.1), least: mm(0.14) }, 'mm', terms),
        selectionWarning({ code: 'much-play', play: mm(0.7), most: mm(0.56) }, 'mm', terms),
      ])
    }
    if (traitsOf(DESIGNS[arrangement]).raceway === 'groove') {
      const edges = { code: 'rides-on-edges', ballCount: 3, grooveRadius: mm(7.9), gapShift: mm(-0.1) } as const
      expectOwnWords(arrangement, [selectionWarning(edges, 'mm', terms)])
    }
  })
})

describe('load check', () => {
  const ALL = ['radial', 'roller', 'thrust', 'caged'] as const

  test.each(ALL)('of a %s: every answer in its own words', (arrangement) => {
    const { members, raceway } = traitsOf(DESIGNS[arrangement])
    const tight = raceway === 'groove' ? [{ ...DESIGNS[arrangement], groove: { conformity: 0.45 } }] : []
    for (const design of [DESIGNS[arrangement], ...tight] as readonly DesignInput[]) {
      for (const load of [1, 60, 90_000]) {
        for (const more of [{}, { speed: 90_000 }, ...(members === 'plates' ? [{ offset: mm(3), speed: 20 }] : [])]) {
          const asked = { design, [loadNameOf(design)]: load, ...more }
          expectOwnWords(
            arrangement,
            sentencesIn(toLoadAnswer(known(loadCheck(asked)), { ...asked, design: toDesignRequest(design) })),
          )
        }
      }
    }
    const soft = loadCheck({
      design: DESIGNS[arrangement],
      [loadNameOf(DESIGNS[arrangement])]: 20,
      wood: 'maple-sugar',
      ballWood: 'basswood-american',
    })
    expectOwnWords(
      arrangement,
      sentencesIn(toLoadAnswer(known(soft), { design: toDesignRequest(DESIGNS[arrangement]) })),
    )
    expectOwnWords(arrangement, [estimateOnly(TERMS[arrangement]).message])
  })

  test.each(ALL)('of a %s: every warning in its own words', (arrangement) => {
    const { members, raceway } = traitsOf(DESIGNS[arrangement])
    const part = members === 'plates' ? 'plates' : 'outerRing'
    const facts: readonly LoadWarningFacts<LoadSpeedReason>[] = [
      { code: 'ball-sinks-in', part, ballLoad: 900 },
      { code: 'dents-deeper', part, dent: mm(0.2), most: mm(0.1) },
      { code: 'above-working-load', part, load: 30, still: 20, slowHand: 40, steadyCrank: 15 },
      { code: 'faster-than-by-hand', speed: 120 },
      { code: 'too-fast', reason: 'balls-rub', speed: 300, byHand: 60 },
      { code: 'too-fast', reason: 'runs-out', speed: 800, byHand: 60 },
      { code: 'balls-softer' },
      { code: 'too-fast', reason: 'balls-dent-groove', speed: 900, byHand: 60 },
      ...(raceway === 'groove'
        ? ([
            { code: 'edges-crush', part, dent: mm(0.1), width: mm(1) },
            { code: 'contact-reaches-edges', part, grooveWidth: mm(12) },
          ] as const)
        : []),
      ...(members === 'plates'
        ? ([
            { code: 'three-carry', ballLoad: 30, dent: undefined, allCarryFrom: 200 },
            { code: 'three-carry', ballLoad: 30, dent: mm(0.2), allCarryFrom: 200 },
            { code: 'too-fast', reason: 'load-slides-off', speed: 90, byHand: 60 },
            { code: 'too-fast', reason: 'plate-pushed-aside', speed: 90, byHand: 60 },
            { code: 'too-fast', reason: 'plate-tips', speed: 90, byHand: 60 },
            { code: 'too-fast', reason: 'balls-climb-out', speed: 90, byHand: 60 },
            { code: 'too-fast', reason: 'plate-splits', speed: 900, byHand: 60 },
          ] as const)
        : ([
            { code: 'one-ball-carries', share: 0.6, play: mm(0.5) },
            { code: 'too-fast', reason: 'ring-splits', speed: 900, byHand: 60 },
            { code: 'too-fast', reason: 'joint-opens', speed: 900, byHand: 60 },
          ] as const)),
    ]
    const spoken = { units: 'mm', forceUnits: 'N', terms: TERMS[arrangement] } as const
    expectOwnWords(
      arrangement,
      facts.map((each) => loadWarning(each, spoken)),
    )
    if (members === 'plates') {
      const tips = { code: 'load-tips-plate', path: '', given: mm(100), below: mm(30) } as const
      expectOwnWords(arrangement, [loadRefusal(tips, 'mm', TERMS[arrangement])])
    }
  })
})

describe('seasonal fit', () => {
  const segmented = { construction: 'segmented', species: 'maple-sugar' } as const
  const rings = { outerRing: MAPLE, innerRing: MAPLE }
  const wet = { kind: 'moisture', moistureContent: { min: 2, max: 24 } } as const
  const frost = {
    ...MARBLES,
    climate: { kind: 'air', temperature: { min: -10, max: 30 }, relativeHumidity: { min: 20, max: 95 } },
  } as const
  const wooden = { ...MARBLES.design, balls: { count: 14, diameter: mm(14) } } as DesignInput
  const years: readonly (readonly [ArrangementName, readonly SeasonalFitInput[]])[] = [
    [
      'radial',
      [
        MARBLES,
        frost,
        { ...MARBLES, climate: wet },
        { ...MARBLES, woods: { outerRing: segmented, innerRing: { construction: 'cross-laminated-ply' } } },
        { ...MARBLES, design: wooden, woods: { ...rings, balls: 'maple-sugar' } },
      ],
    ],
    [
      'roller',
      [MARBLES, frost].map((year) => ({ ...year, design: ROLLERS, woods: { ...rings, balls: 'maple-sugar' } })),
    ],
    [
      'thrust',
      [MARBLES, frost].map((year) => ({ ...year, design: PLATES, woods: { plates: MAPLE, balls: 'maple-sugar' } })),
    ],
    [
      'caged',
      [MARBLES, frost].map((year) => ({
        ...year,
        design: CAGED,
        woods: { ...rings, cage: MAPLE, balls: 'maple-sugar' },
      })),
    ],
  ]

  test.each(years)('%s: every answer in its own words', (arrangement, inputs) => {
    const terms = TERMS[arrangement]
    for (const input of inputs) {
      const season = known(seasonalFit(input))
      const { today, states, band } = season
      const year = [today, ...states]
      const advised = (['leave', 'no-remedy', season.advice.kind] as const).map((kind) => ({
        ...season,
        advice: { ...season.advice, kind },
      }))
      expectOwnWords(arrangement, [
        ...year.map((each) => describeState(each, 0.5, 'mm', terms)),
        ...(band === undefined ? [] : [describeBand(band, 'celsius', terms), describeBand(band, 'fahrenheit', terms)]),
        ...advised.map((each) => describeAdvice(each, terms)),
        ...notesOf(season, 'celsius', terms),
        ...TROUBLES_OF[arrangement].map((trouble) => warningOf(trouble, year, true, terms)),
      ])
    }
  })

  test('every refusal, which any arrangement may be told', () => {
    const [species = 'teak'] = SPECIES_IDS
    const refusals = [
      { code: 'range-reversed', path: '', low: 60, high: 30 },
      { code: 'temperature-outside', path: '', given: -20, least: -1, most: 70 },
      { code: 'above-fibre-saturation', path: '', moisture: 35, saturation: 30 },
      { code: 'above-fibre-saturation', path: '', moisture: 35, saturation: 22, species: 'teak' },
      { code: 'movement-unknown', path: '', species: 'purpleheart' },
      { code: 'balls-without-wood', path: '' },
    ] as const
    for (const arrangement of ARRANGEMENT_NAMES) {
      expectOwnWords(arrangement, [
        memorySentence(species),
        ...refusals.map((each) => seasonRefusalSentence(each, 'celsius', TERMS[arrangement])),
      ])
    }
  })
})

test.each(ARRANGEMENT_NAMES)('design search, %s: every reason in its own words', (arrangement) => {
  const found = known(
    designSearch({
      units: 'mm',
      arrangement,
      outsideDiameter: { max: mm(140) },
      bore: { min: mm(12), max: mm(20) },
      balls: [{ diameter: mm(16) }, { diameter: mm(12) }],
      drillDiameters: [mm(12)],
      load: arrangement === 'thrust' ? { axialLoad: 20 } : { radialLoad: 20 },
      ...(arrangement === 'roller' ? {} : { cutterDiameters: [mm(12), mm(17), mm(20)] }),
    }),
  )
  expect(found.ranked.length).toBeGreaterThan(3)
  expectOwnWords(arrangement, [
    searchSummary(found),
    ...found.ranked.flatMap((ranked) => found.search.weights.map(([name]) => explainCriterion(name, ranked, found))),
    ...DROP_REASONS.filter((reason) => found.dropped[reason] > 0).map((reason) =>
      droppedFor(reason, TERMS[arrangement]),
    ),
    ...(arrangement === 'radial'
      ? [
          ...DROP_REASONS.map((reason) => droppedFor(reason, TERMS.radial)),
          searchRefusal({ code: 'hardly-any-runs', path: '' }, 'celsius', TERMS.radial),
        ]
      : []),
  ])
})

describe('fit correction', () => {
  const RULE = { graduation: 0.5 }
  const READ: readonly (readonly [ArrangementName, 'outer' | 'inner' | undefined, readonly object[]])[] = [
    ...(['radial', 'roller', 'thrust'] as const).flatMap((arrangement) =>
      [0.1, 0.8, 3.2, 6].map((value) => {
        const ring = arrangement === 'thrust' ? undefined : ('outer' as const)
        return [arrangement, ring, [{ kind: 'ball-gap', value, ...RULE }]] as const
      }),
    ),
    ...(['radial', 'roller', 'caged'] as const).flatMap((arrangement) => [
      [arrangement, 'inner', [{ kind: 'binds' }]] as const,
      [arrangement, 'inner', [{ kind: 'radial-play', value: 1.5, ...RULE }]] as const,
    ]),
  ]

  test.each(READ)('of a %s, %s, %o: in its own words', async (arrangement, ring, readings) => {
    const answer = await post(`${await sharedApp()}/v1/fit-correction`, {
      design: toDesignRequest(DESIGNS[arrangement]),
      ...(ring === undefined ? {} : { ring }),
      readings,
      ballsOnHand: [{ diameter: 16.4, quantity: 40 }],
    })
    expect(answer.status, answer.text).toBe(200)
    expectOwnWords(arrangement, sentencesIn(JSON.parse(answer.text)))
  })

  test.each(['radial', 'roller', 'thrust'] as const)('of a %s: every refusal in its own words', (arrangement) => {
    const terms = TERMS[arrangement]
    const kinds = ['ball-gap', 'last-ball-opening', 'last-ball-refused', 'last-ball-in', 'plug', 'ball-row'] as const
    const lengths = { path: '', given: mm(1), most: mm(3), min: mm(2), max: mm(3), aim: mm(4) }
    expectOwnWords(arrangement, [
      ...kinds.flatMap((kind) => [false, true].map((isAlone) => disagreeing({ kind, isAlone }, terms))),
      ...(['balls-too-uneven', 'target-band-empty', 'target-out-of-reach', 'aim-outside-band'] as const).map((code) =>
        explainFitRefusal({ code, ...lengths }, 'mm', terms),
      ),
      ...[{}, { tooWide: mm(21) }].flatMap((wide) =>
        [false, true].flatMap((isAlone) =>
          [false, true].map((isExplained) => {
            const why = { isAlone, isCutBetween: isExplained, isLastBallInAndOut: isExplained, ...wide }
            return explainFitRefusal({ code: 'readings-contradict', path: '', ...why }, 'mm', terms)
          }),
        ),
      ),
    ])
  })
})
