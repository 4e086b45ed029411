import { describe, expect, test } from 'vitest'
import { ARRANGEMENT_NAMES, type DesignInput } from '#shared/bearing/arrangements.ts'
import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import { METHODS } from '#shared/bearing/method.ts'
import { mm } from '#shared/units/length.ts'
import { toJobSheet } from '#src/api/job-sheet/present.ts'
import type { Drawing } from '#src/drawings/model.ts'
import { VIEWS } from '#src/drawings/view.ts'
import { drawingOf } from '#src/drawings/views.ts'
import { sheetBody } from '#src/job-sheet/html.ts'
import { toPages } from '#src/job-sheet/pages.ts'
import { sizeCells } from '#src/job-sheet/sheet-text.ts'
import { CAUTION_CODES, cautionSentence, cuttingCaution } from '#src/words/caution.ts'
import { SIZES } from '#src/words/job-sheet/sizes.ts'
import { toolGroups } from '#src/words/job-sheet/tools.ts'
import { placeOfReading } from '#src/words/kiosk/lathe.ts'
import { TERMS } from '#src/words/terms.ts'
import { anyDesigned } from '#tests/support/designed.ts'
import { OF_EVERY_KIND, type OfKind } from '#tests/support/of-every-kind.ts'
import { programNames } from '#tests/support/program-names.ts'
import { richly } from '#tests/support/richly-made.ts'
import { textsOn } from '#tests/support/sheet-faults.ts'
import { foreignWords, unusedWords } from '#tests/support/trade-words.ts'
import { withMaking } from '#tests/support/with-making.ts'

const unitsOf = ({ bearing }: OfKind['design']) => bearing.resolved.input.units

/** What a person reads of a sheet: all but the names that programs go by. */
const sentencesOf = ({ design, arrangement }: OfKind): readonly string[] =>
  METHODS.flatMap((method) => {
    const { title, summary, operations } = toJobSheet(withMaking(design, { method }), { units: unitsOf(design) })
    const ofOperations = operations.flatMap((operation) => [
      operation.title,
      operation.tool,
      operation.how,
      operation.check,
      operation.mistake.looksLike,
      operation.mistake.costs,
      operation.mistake.remedy,
      ...operation.cautions.map(({ message }) => message),
      ...operation.sizes.map(({ name }) => name),
      ...operation.readings.flatMap((reading) => [reading.name, placeOfReading(reading, TERMS[arrangement])]),
    ])
    return [title, summary, ...ofOperations]
  })

describe('the job sheet', () => {
  test.each(OF_EVERY_KIND)('of $name has no word of another arrangement', (made) => {
    expect(sentencesOf(made).flatMap((sentence) => foreignWords(made.arrangement, sentence))).toEqual([])
  })

  test.each(OF_EVERY_KIND)('of $name has no name that only programs read, on a screen or on paper', (made) => {
    for (const design of [made.design, ...richly(made)]) {
      const sheet = toJobSheet(design, { units: unitsOf(design) })
      for (const form of ['full', 'short'] as const) {
        const paper = toPages(sheet, 'a4', form).flatMap((page) => textsOn(page).map(({ text }) => text))
        const screen = sheetBody(sheet, form).replaceAll(/<[^>]*>/g, ' ')
        expect([...paper, screen].flatMap(programNames)).toEqual([])
      }
    }
  })

  test.each(ARRANGEMENT_NAMES)('of every %s bearing speaks of all that there is', (arrangement) => {
    const ofIt = OF_EVERY_KIND.filter((made) => made.arrangement === arrangement)
    expect(unusedWords(arrangement, ofIt.flatMap(sentencesOf))).toEqual([])
  })

  test.each(OF_EVERY_KIND)('of $name has no gap in a sentence, and every instruction ends', (made) => {
    for (const method of METHODS)
      for (const { how, check, mistake } of toJobSheet(withMaking(made.design, { method }), {
        units: unitsOf(made.design),
      }).operations)
        for (const sentence of [how, check, mistake.looksLike, mistake.costs, mistake.remedy])
          expect(sentence).toMatch(/^[A-Z](?!.*(?: {2}|undefined|NaN|\[object)).*[^.]\.$/s)
  })

  test.each(OF_EVERY_KIND)(
    'of $name asks for boards, and states small differences, as a rule and a caliper read',
    (made) => {
      for (const { units, operations } of sheetsOf(made))
        for (const { sizes, how, check, mistake } of operations) {
          for (const size of sizes) {
            const [, value = '', within = value] = /^([\d.]+) ± ([\d.]+) /.exec(sizeCells(size, units)[2] ?? '') ?? []
            expect(decimalsOf(within)).toBe(decimalsOf(value))
          }
          expect(how).not.toMatch(/at least \d+\.\d/)
          for (const sentence of [how, check, mistake.looksLike])
            expect(sentence).not.toMatch(/(?:paper|too large make.*|within) \d+\.\d{4,} in/)
        }
    },
  )

  test.each(OF_EVERY_KIND)(
    'of $name parts no figure from its symbol, its sign or its unit, on paper and on drawings',
    (made) => {
      const parted = sheetsAndDrawings(made).flatMap((drawing) => {
        const lines = textsOn(drawing).map(({ text }) => text)
        return lines.filter((line, index) => {
          const next = lines[index + 1] ?? ''
          // A symbol alone is a cell of a table.
          const ends =
            SYMBOLS.some((symbol) => line.endsWith(` ${symbol}`)) || /(?: up| up to|[ (]No\.| ×| ±)$/.test(line)
          return (
            (ends && /^(?:to )?[Ø±R−]?\d/.test(next)) ||
            (/ screws$/.test(line) && /^(?:No\. \d|[\d.]+ mm [×o])/.test(next)) ||
            (/ [\d.]+$/.test(line) && /^(?:mm|in|%|×|±)(?![\w])/.test(next))
          )
        })
      })
      expect(parted).toEqual([])
    },
  )

  test.each(OF_EVERY_KIND)('of $name parts no figure from its unit, on the page', (made) => {
    for (const sheet of sheetsOf(made)) expect(sheetBody(sheet)).not.toMatch(/\d (?:mm|in)\b|\bNo\. \d|M\d+ bolt/)
  })

  test.each(OF_EVERY_KIND)('of $name counts each tool once', (made) => {
    for (const { tools } of sheetsOf(made)) {
      const alone = new Set(tools)
      expect(alone.size).toBe(tools.length)
      for (const tool of tools)
        expect(tool.split(' or ').filter((each) => each !== tool && alone.has(each))).toEqual([])
      expect(tools).toContain('rule')
      expect(tools).toContain('soft cloth')
    }
  })

  test.each(OF_EVERY_KIND)('of $name lists each tool once, with a box to tick, on a screen and on paper', (made) => {
    for (const sheet of sheetsOf(made)) {
      const groups = toolGroups(sheet.tools)
      expect(groups.flatMap(({ tools }) => tools).toSorted()).toEqual(sheet.tools.toSorted())
      expect(groups.map(({ name }) => name)).toEqual(['Material', 'Machines', 'Measuring', 'Supplies', 'Tools'])
      const [, list = ''] = /<section class="need">(.*?)<\/section>/.exec(sheetBody(sheet)) ?? []
      expect(list.match(/<li><span class="box"/g)).toHaveLength(sheet.tools.length)
      const paper = toPages(sheet, 'a4').flatMap((page) => textsOn(page).map(({ text }) => text))
      expect(paper.join(' ').split('☐')).toHaveLength(sheet.tools.length + 1)
      for (const line of paper) expect(line).not.toMatch(/☐$/)
    }
  })

  test.each(OF_EVERY_KIND)('of $name leaves bare what will be glued, with a film as without', (made) => {
    for (const film of [0, 0.05]) {
      const { resolved } = made.design.bearing
      const design = anyDesigned({ ...resolved.input, finishAllowance: mm(film) } as DesignInput)
      const { operations } = toJobSheet(design, { units: unitsOf(design) })
      expect(operations.find(({ id }) => id === 'finish')?.how).toMatch(/glued.*bare|bare what will be glued/)
    }
  })

  test.each(OF_EVERY_KIND)('the drawing of $name says that a glued seat is bare', (made) => {
    for (const design of richly(made)) {
      const notes = textsOn(drawingOf('assembly', design, 'a4'))
        .map(({ text }) => text)
        .join(' ')
      expect(notes).not.toMatch(/(?:Shaft|Housing|Pin|Boards): [^†]*\bglued(?! on bare wood)/)
    }
  })

  test.each(OF_EVERY_KIND)('of $name lets wood that rolls rest before it is cut or measured', (made) => {
    for (const { operations, input } of sheetsOf(made)) {
      const at = (wanted: string): number => operations.findIndex(({ id }) => id === wanted)
      const isWood = input.balls.material === 'wood'
      for (const id of ['cut-rollers', 'choose-balls']) if (at(id) >= 0) expect(at('choose-wood') < at(id)).toBe(isWood)
      expect(/Leave the wood and the (?:balls|rods)/.test(operations[at('choose-wood')]?.how ?? '')).toBe(isWood)
    }
  })

  test.each(OF_EVERY_KIND)('of $name says how round stock is held where it is sawn or drilled', (made) => {
    const cutsRods = /(?:^|, )(?:a \w+ pin of |thin pins|\d+ dowels of )/
    const loose = sheetsOf(made)
      .flatMap(({ operations }) => operations.map(({ id, tool, cautions }) => ({ id, tool, cautions })))
      .filter(({ id, tool }) => (id === 'cut-rollers' && tool.includes('saw')) || cutsRods.test(tool))
      .filter(
        ({ tool, cautions }) =>
          !/fine saw|hacksaw/.test(tool) ||
          !cautions.some(({ code, message }) => code === 'sawing' && /V-block/.test(message)),
      )
    expect(loose).toEqual([])
  })

  test.each(OF_EVERY_KIND)('of $name tries no finished edge on what is still to be sanded', (made) => {
    const stopped = sheetsOf(made)
      .flatMap(({ operations }) => operations.map(({ sizes, check }) => ({ sizes, check })))
      .filter(({ sizes }) => sizes.some(({ stopAt }) => stopAt !== undefined))
    expect(stopped.filter(({ check }) => check.includes('no light may show'))).toEqual([])
  })

  test.each(OF_EVERY_KIND)('of $name drives the screws that it drills for', (made) => {
    const drilled = sheetsOf(made)
      .flatMap(({ operations }) => operations.map(({ how }) => how))
      .filter((how) => how.includes('countersink them'))
    expect(drilled.filter((how) => !/drive the screws|screw one cheek on|Screw each plate/.test(how))).toEqual([])
  })

  test.each(OF_EVERY_KIND)('of $name leaves to sand what it stops short', (made) => {
    const differ = sheetsOf(made).flatMap(({ operations }) => {
      const sizesOf = (...ids: readonly string[]) =>
        operations.filter(({ id }) => ids.includes(id)).flatMap(({ sizes }) => sizes)
      return ['outer', 'inner'].filter((ring) => {
        const left = sizesOf(`${ring}-sand`).find(({ name }) => name === SIZES.leftToSand)
        const across = sizesOf(`${ring}-groove`, `${ring}-track`).find(
          ({ name, stopAt }) => stopAt !== undefined && (name === SIZES.acrossBottoms || name === SIZES.track),
        )
        const short = Math.abs((across?.stopAt ?? Number.NaN) - (across?.value ?? Number.NaN)) / 2
        return sizesOf(`${ring}-sand`).length > 0 && !(Math.abs((left?.value ?? Number.NaN) - short) < 1e-4)
      })
    })
    expect(differ).toEqual([])
  })

  test.each(OF_EVERY_KIND)('of $name sets no caliper to a play, and has what measures it', (made) => {
    const operations = sheetsOf(made).flatMap((sheet) =>
      sheet.operations.map(({ id, tool, sizes }) => ({ id, tool, sizes })),
    )
    const plays = operations.flatMap(({ sizes }) =>
      sizes.filter(({ symbol, name }) => symbol === 'Gr' || /^play\b/.test(name)),
    )
    expect(new Set(plays.map((size) => sizeCells(size, unitsOf(made.design))[3]))).toEqual(
      new Set(made.arrangement === 'thrust' ? [] : ['by measuring']),
    )
    const fits = operations.filter(({ id }) => id === 'inner-fit')
    expect(fits.filter(({ tool }) => !tool.includes('a dial indicator or feelers'))).toEqual([])
  })

  test('of rollers of glass has nobody cut them, and of steel no fine saw', () => {
    const made = OF_EVERY_KIND.find(({ arrangement }) => arrangement === 'roller')
    const rods = (material: 'glass' | 'steel') => {
      const { input } = (made as OfKind).design.bearing.resolved
      const design = anyDesigned({ ...input, balls: { ...input.balls, material } } as DesignInput)
      return toJobSheet(design, { units: 'mm' }).operations.find(({ id }) => id === 'cut-rollers')
    }
    expect(rods('glass')?.how).toContain('Do not cut glass rod at home')
    expect(rods('glass')?.tool).not.toContain('saw')
    expect(rods('steel')?.tool).toMatch(/hacksaw, vise/)
  })

  test.each(OF_EVERY_KIND)('of $name stops the machine before anything is measured in a groove', (made) => {
    const isRaceway = /^(?:outer|inner)-(?:groove|track|sand)$|^(?:trial-)?groove$/
    for (const { operations } of sheetsOf(made)) {
      const raceways = operations.filter(({ id }) => isRaceway.test(id))
      expect(raceways.length).toBeGreaterThan(1)
      for (const { how } of raceways) expect(how).toMatch(/stop the (?:lathe|machine)/i)
      for (const { how } of raceways.filter(({ id }) => id.endsWith('sand'))) expect(how).toContain('tool rest out')
    }
  })

  test.each(OF_EVERY_KIND)('of $name starts no bit where a ring of segments has its hole', (made) => {
    const bored = sheetsOf(made).flatMap(({ operations }) => {
      const hollow = operations.filter(({ sizes }) => sizes.some(({ name }) => name === SIZES.shortEdge))
      return operations.filter(
        ({ part, tool }) => hollow.some((glued) => glued.part === part) && tool.includes('a bit as wide as the bore'),
      )
    })
    expect(bored).toEqual([])
  })

  test.each(OF_EVERY_KIND)('of $name rubs off only what raises the fibres where the balls run', (made) => {
    for (const { operations } of sheetsOf(made)) {
      const [finish, grain] = ['finish', 'grain'].map((wanted) => operations.find(({ id }) => id === wanted)?.how)
      expect(grain).toContain('worn abrasive of a fine grit')
      expect(/coat/.test(grain ?? '')).toBe(!/keep the finish out/.test(finish ?? ''))
    }
  })

  test.each(OF_EVERY_KIND)('of $name has a line of its own for each seat of a mounting', (made) => {
    for (const { operations } of sheetsOf(made))
      for (const { how } of operations.filter(({ id }) => id === 'mount')) {
        expect(how.split('\n').length).toBeGreaterThan(2)
        expect(how).not.toMatch(/(?<!\n)(?:Shaft|Housing|Boards|Pin|To turn it): | \n|\n | it is from /)
      }
  })
})

const sheetsOf = (made: OfKind) =>
  [made.design, ...richly(made)].map((design) => toJobSheet(design, { units: unitsOf(design) }))
const SYMBOLS = ['Dw', ...Object.values(DIMENSION_SYMBOLS)]
const sheetsAndDrawings = (made: OfKind): readonly Drawing[] =>
  [made.design, ...richly(made)].flatMap((design) => [
    ...toPages(toJobSheet(design, { units: unitsOf(design) }), 'a4'),
    ...VIEWS.map((view) => drawingOf(view, design, 'a4')),
  ])
const decimalsOf = (figure: string): number => figure.split('.')[1]?.length ?? 0

test.each(ARRANGEMENT_NAMES)('cautions for a %s bearing name its own parts', (arrangement) => {
  const ofRings = ['core-loose', 'sanding-inside', 'roller-skew']
  const codes = CAUTION_CODES.filter((code) => !ofRings.includes(code))
  const sentences = codes.map((code) => cautionSentence(code, TERMS[arrangement]))
  expect(sentences.flatMap((sentence) => foreignWords(arrangement, sentence))).toEqual([])
})

test.each(ARRANGEMENT_NAMES)('cautions beside a cut of a %s bearing stop the machine first', (arrangement) => {
  const rings = arrangement === 'thrust' ? (['outer'] as const) : (['outer', 'inner'] as const)
  for (const ring of rings)
    for (const tool of ['sharp-tool', 'abrasive'] as const) {
      const caution = cuttingCaution(tool, ring, TERMS[arrangement])
      expect(caution).toMatch(/^Stop the (lathe|machine) each time you measure\./)
      expect(caution.includes('tool rest out')).toBe(tool === 'abrasive')
      expect(foreignWords(arrangement, caution)).toEqual([])
    }
})
