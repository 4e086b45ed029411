import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  ARRANGEMENT_NAMES,
  ARRANGEMENTS,
  type ArrangementName,
  type DesignInput,
  design,
} from '#shared/bearing/arrangements.ts'
import { DIMENSION_SYMBOLS, type DimensionKey } from '#shared/bearing/dimensions.ts'
import { type Group, leavesOf, valueAt } from '#shared/bearing/field.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import type { WarningFacts } from '#shared/bearing/warning.ts'
import { mm } from '#shared/units/length.ts'
import { answerOf } from '#src/api/design/arrangements/all.ts'
import { CAGED_STEPS, gaugeNote, ROLLER_STEPS, radialSteps, THRUST_STEPS } from '#src/words/assembly.ts'
import { CAUTION_CODES, cautionSentence } from '#src/words/caution.ts'
import { dimensionName } from '#src/words/dimension-names.ts'
import { choiceName, fieldName } from '#src/words/kiosk/bearing.ts'
import { onThePage } from '#src/words/kiosk/of-service.ts'
import { refusalSentence } from '#src/words/refusal.ts'
import { TERMS } from '#src/words/terms.ts'
import { warningSentence } from '#src/words/warning.ts'
import {
  anyInput,
  CAGED,
  likelyCaged,
  likelyInput,
  likelyPlates,
  likelyRollers,
  PLAIN,
  PLATES,
  ROLLERS,
} from '#tests/support/inputs.ts'
import { programNames } from '#tests/support/program-names.ts'
import { withMaking } from '#tests/support/with-making.ts'
import { foreignWords, isPlain } from './vocabulary.ts'

/** The fields of any radial input, sensible or not, that an arrangement has too; a turntable has the outer ring's in its plates. */
const wild = (arrangement: ArrangementName): fc.Arbitrary<DesignInput> =>
  anyInput.map((input) => {
    const { fields } = ARRANGEMENTS[arrangement]
    const kept = ownFields(fields, { ...input, plates: input.outerRing })
    return { units: input.units, arrangement, ...kept } as unknown as DesignInput
  })

const ownFields = ({ fields }: Group, input: object): object =>
  Object.fromEntries(
    Object.entries(fields).flatMap(([name, field]) => {
      const value = valueAt(input, [name])
      if (value === undefined) return []
      return [[name, field.kind === 'group' ? ownFields(field, Object(value)) : value]]
    }),
  )

const INPUTS: Readonly<Record<ArrangementName, fc.Arbitrary<DesignInput>>> = {
  radial: fc.oneof<fc.Arbitrary<DesignInput>[]>(likelyInput, wild('radial')),
  roller: fc.oneof<fc.Arbitrary<DesignInput>[]>(likelyRollers, wild('roller')),
  thrust: fc.oneof<fc.Arbitrary<DesignInput>[]>(likelyPlates, wild('thrust')),
  caged: fc.oneof<fc.Arbitrary<DesignInput>[]>(likelyCaged, wild('caged')),
}
const PLAIN_ONES: Readonly<Record<ArrangementName, DesignInput>> = {
  radial: PLAIN,
  roller: ROLLERS,
  thrust: PLATES,
  caged: CAGED,
}

const EVERY = ARRANGEMENT_NAMES
const RINGS = ['radial', 'roller', 'caged'] as const
const GROOVED = ['radial', 'caged'] as const
const OF_BALLS = ['radial', 'thrust', 'caged'] as const
const FULL = ['radial', 'roller', 'thrust'] as const

type Of<Facts extends { readonly code: string }, Code> = Omit<Extract<Facts, { readonly code: Code }>, 'code' | 'path'>
/** A sentence's facts, and the arrangements that it is told of. */
type Told<Facts> = readonly [of: readonly ArrangementName[], ...facts: Facts[]]
type Entries<Facts extends { readonly code: string }> = {
  readonly [Code in Facts['code']]: readonly Told<Of<Facts, Code>>[]
}
const [A, B, C] = [mm(12.5), mm(3.25), mm(40)]

/** Every refusal with facts, and the arrangements that it is told of. */
const REFUSALS: Entries<Refusal> = {
  'bore-meets-groove': [[EVERY, { given: A, below: B }]],
  'no-room-inside': [[EVERY, { ballCount: 3 }]],
  'wall-below-zero': [[EVERY, { given: A, above: C }]],
  'groove-undercut': [
    [GROOVED, { ring: 'outerRing', depth: A, grooveRadius: B }, { ring: 'innerRing', depth: A, grooveRadius: B }],
    [['thrust'], { ring: 'plates', depth: A, grooveRadius: B }],
  ],
  'plates-meet': [[['thrust'], { depth: A, below: B }]],
  'plate-cut-through': [[['thrust'], { given: A, above: C }]],
  'lands-overlap': [[GROOVED, { overlap: B }]],
  'gap-takes-another-ball': [[FULL, { given: A, below: B }]],
  'gap-band-reversed': [[FULL, { min: A, max: B }]],
  'gap-outside-band': [[FULL, { given: A, min: B, max: C }]],
  'play-lets-balls-out': [[GROOVED, { given: A, below: B }]],
  'finish-fills-groove': [[OF_BALLS, { given: A, below: B }]],
  'finish-leaves-no-wood': [[EVERY, { given: A, below: B }]],
  'beyond-bounds': [[EVERY, { given: A, min: B, max: C }]],
  'not-of-arrangement': [[EVERY, ...EVERY.map((arrangement) => ({ arrangement }))]],
  'not-answered': [[EVERY, { arrangement: 'roller', question: 'seasonal-fit' }]],
  'roller-longer-than-ring': [[['roller'], { given: A, below: B }]],
  'play-lets-rollers-climb': [[['roller'], { given: A, below: B }]],
  'pockets-meet': [[['caged'], { given: A, above: C }]],
  'no-room-for-cage': [[['caged'], { given: A, below: B }]],
  'cage-misses-middle': [
    [['caged'], { ring: 'outerRing', depth: A, below: B }, { ring: 'innerRing', depth: A, below: B }],
  ],
  'pocket-cuts-cage': [[['caged'], { given: A, above: C }]],
  'other-balls-measured': [[EVERY, { middle: A, diameter: B }]],
  'too-few-measured': [[EVERY, { given: 3, needed: 12 }]],
}

/** Every warning with facts, and the arrangements that it is told of. */
const WARNINGS: Entries<WarningFacts> = {
  'lands-touch': [[GROOVED, { leastLandGap: mm(-1) }]],
  'lands-nearly-touch': [[GROOVED, { leastLandGap: B, least: A }]],
  'outer-wall-thin': [[EVERY, { wall: B, least: A }]],
  'inner-wall-thin': [[EVERY, { wall: B, least: A }]],
  'no-room-for-screws': [[GROOVED, { wall: B, least: A }]],
  'groove-wider-than-ring': [
    [GROOVED, { ring: 'outerRing', grooveWidth: A, width: B }, { ring: 'innerRing', grooveWidth: A, width: B }],
  ],
  'shoulders-thin': [
    [GROOVED, { ring: 'outerRing', shoulder: B, least: A }, { ring: 'innerRing', shoulder: B, least: A }],
  ],
  'shallow-engagement': [
    [GROOVED, { ring: 'outerRing', seatDepth: B, least: A }],
    [['thrust'], { ring: 'plates', seatDepth: B, least: A }],
  ],
  'groove-past-middle': [
    [GROOVED, { ring: 'innerRing', grooveDepth: A, ballRadius: B }],
    [['thrust'], { ring: 'plates', grooveDepth: A, ballRadius: B }],
  ],
  'rides-on-edges': [
    [GROOVED, { ring: 'outerRing', grooveRadius: B, ballRadius: A, seatDepth: B, grooveDepth: C }],
    [['thrust'], { ring: 'plates', grooveRadius: B, ballRadius: A, seatDepth: B, grooveDepth: C }],
  ],
  'ball-wanders': [
    [GROOVED, { ring: 'innerRing', grooveRadius: A, most: B }],
    [['thrust'], { ring: 'plates', grooveRadius: A, most: B }],
  ],
  'rollers-turn-askew': [[['roller'], { length: B, least: A }]],
  'plate-thin': [[['thrust'], { floor: B, least: A }]],
  'plates-nearly-meet': [[['thrust'], { plateGap: B, least: A }]],
  'web-thin': [[['caged'], { web: B, least: A }]],
  'cage-rim-thin': [[['caged'], { rim: B, least: A }]],
  'cage-thin': [[['caged'], { thickness: B, least: A }]],
  'cage-rubs': [[['caged'], { left: B, least: A }]],
  'cage-stands-out': [[['caged'], { width: A, ringWidth: B }]],
  'few-balls': [[EVERY, { count: 3, fewest: 6 }]],
  'cannot-assemble': [
    [
      ['radial'],
      { ballSet: 'full', count: 12, mostBalls: 7, roomBetweenLands: true },
      { ballSet: 'full', count: 12, mostBalls: 7, roomBetweenLands: false },
    ],
    [
      ['caged'],
      { ballSet: 'caged', count: 12, mostBalls: 7, roomBetweenLands: true },
      { ballSet: 'caged', count: 7, mostBalls: 7, roomBetweenLands: false },
    ],
  ],
  'gap-below-assembly-gap': [[['radial'], { ballGap: B, assemblyGap: A }]],
  'band-below-assembly-gap': [[['radial'], { maxBallGap: A, assemblyGap: B }]],
  'no-play': [[RINGS, { play: B, least: A }]],
  'plugs-cannot-tell': [[FULL, { scatter: A, maxBallGap: B, tooDeep: 0.4 }]],
  'shop-rounding-spoils-gap': [
    [FULL, { dimension: 'gaugeDiameter', shop: '3 1/4', shopError: B, gapThere: A, least: B, most: C }],
    [
      ['radial', 'roller'],
      { dimension: 'grooveBottomDiameter', shop: '81', shopError: B, gapThere: A, least: B, most: C },
    ],
    [['thrust'], { dimension: 'grooveCircleDiameter', shop: '81', shopError: B, gapThere: A, least: B, most: C }],
  ],
}

type Said = readonly [arrangement: ArrangementName, what: string, sentence: string]

const refusals: readonly Said[] = Object.entries(REFUSALS).flatMap(([code, entries]) =>
  saidOf<Refusal>(code, entries, (refusal, name) => refusalSentence(refusal, 'mm', TERMS[name])),
)
const warnings: readonly Said[] = Object.entries(WARNINGS).flatMap(([code, entries]) =>
  saidOf<WarningFacts>(code, entries, (facts, name) => warningSentence(facts, 'in', TERMS[name])),
)

function saidOf<Facts>(
  code: string,
  entries: readonly Told<object>[],
  sentence: (facts: Facts, name: ArrangementName) => string,
): readonly Said[] {
  return entries.flatMap(([of, ...all]) =>
    of.flatMap((name) =>
      // Of its code: the table above is typed by it.
      all.map((facts): Said => [name, code, sentence({ path: '/bore', ...facts, code } as Facts, name)]),
    ),
  )
}

const notes: readonly Said[] = EVERY.flatMap((name) => [
  ...(name === 'caged'
    ? []
    : [true, false].map((isFinished): Said => {
        const gap = { mean: A, standardDeviation: B }
        const facts = {
          plugs: { scatter: B, whenGoEnters: gap, whenNoGoRefuses: gap, decides: isFinished },
          ballDiameter: A,
          gapPerBallDiameter: -12.2,
          ...(isFinished && name !== 'thrust' && { largerBeforeFinish: B }),
        }
        return [name, 'gauge', gaugeNote(facts, 'mm', TERMS[name])]
      })),
  ...stepsOf(name).map((step): Said => [name, 'assembly', step]),
  ...leavesOf(ARRANGEMENTS[name].fields.fields).flatMap(({ path, field: { byDefault } }): Said[] =>
    byDefault === undefined
      ? []
      : [
          [name, path, byDefault.reason],
          [name, path, byDefault.stated],
        ],
  ),
])

function stepsOf(name: ArrangementName): readonly string[] {
  const splits = ['none', 'inner-ring', 'outer-ring'] as const
  if (name === 'roller') return ROLLER_STEPS
  if (name === 'thrust') return THRUST_STEPS
  if (name === 'caged') return splits.flatMap((split) => CAGED_STEPS[split])
  const ways = ['from-inside', 'over-land', 'open-side'] as const
  return ways.flatMap((way) => splits.flatMap((split) => radialSteps(way, split)))
}

describe('a sentence has the words of its arrangement alone', () => {
  test.each([...refusals, ...warnings, ...notes])('%s, %s: %s', (name, what, sentence) => {
    expect(foreignWords(sentence, name)).toEqual([])
    expect(isPlain(sentence)).toBe(true)
    // Of a default the page shows what it is; it makes refusals and warnings by itself.
    const shown = what.startsWith('/') ? onThePage(choiceName(sentence), TERMS[name]) : sentence
    expect(programNames(shown)).toEqual([])
  })

  test.each(EVERY)('cautions of everyone who turns a %s bearing', (name) => {
    const own = CAUTION_CODES.filter((code) => code !== 'roller-skew' || name === 'roller')
    const ofWork = new Set(['routing', 'sanding-inside', 'core-loose', 'sawing', 'drilling'])
    for (const code of own.filter((each) => !ofWork.has(each)))
      expect(foreignWords(cautionSentence(code, TERMS[name]), name), code).toEqual([])
  })

  test.each(EVERY)('real answers of %s bearings, whatever is asked', (name) => {
    fc.assert(
      fc.property(INPUTS[name], (input) => {
        const made = design(input)
        if (!made.ok) {
          for (const refusal of made.error) {
            expect(
              REFUSALS[refusal.code].flatMap(([of]) => of),
              refusal.code,
            ).toContain(name)
            expect(foreignWords(refusalSentence(refusal, input.units, TERMS[name]), name)).toEqual([])
          }
          return
        }
        for (const { suggestion } of made.value.warnings)
          if (suggestion !== undefined)
            expect(fieldName(suggestion.path.slice(1).replaceAll('/', '.'), TERMS[name]), suggestion.path).toBeDefined()
        const { input: _echoed, ...answer } = answerOf(withMaking(made.value, {}))
        // Warnings of screws have their words with the making.
        for (const { code } of answer.warnings.filter((warning) => Object.hasOwn(WARNINGS, warning.code)))
          expect(
            WARNINGS[code as WarningFacts['code']].flatMap(([of]) => of),
            code,
          ).toContain(name)
        for (const sentence of sentencesIn(answer)) expect(foreignWords(sentence, name), sentence).toEqual([])
      }),
      { numRuns: 150 },
    )
  })
})

/** Every text of an answer that is more than one word. The sources are the same for every arrangement. */
const sentencesIn = (value: unknown): readonly string[] =>
  typeof value === 'string'
    ? value.includes(' ')
      ? [value]
      : []
    : typeof value === 'object' && value !== null
      ? Object.entries(value).flatMap(([name, inner]) => (name === 'sources' ? [] : sentencesIn(inner)))
      : []

test.each(EVERY)('the names of the sizes of a %s bearing', (name) => {
  const made = design(PLAIN_ONES[name])
  expect(made.ok).toBe(true)
  if (!made.ok) return
  const names = made.value.dimensions.map(({ key }) => dimensionName(key, TERMS[name]))
  expect(new Set(names).size).toBe(names.length)
  for (const each of names) expect(foreignWords(each, name), each).toEqual([])
})

test('every size has a name in every arrangement', () => {
  for (const name of EVERY)
    for (const key of Object.keys(DIMENSION_SYMBOLS) as DimensionKey[])
      expect(dimensionName(key, TERMS[name])).toMatch(/^[a-z]/)
})

test('a word of another arrangement is found', () => {
  expect(foreignWords('The land of the outer ring is 70 mm across.', 'roller')).toEqual(['land'])
  expect(foreignWords('The track is 70 mm across.', 'radial')).toEqual(['track'])
  expect(foreignWords('Cut the groove of the outer ring.', 'thrust')).toEqual(['outer', 'ring'])
  expect(foreignWords('The cheek, the no-go plug and the ball.', 'caged')).toEqual(['cheek', 'no-go'])
})
