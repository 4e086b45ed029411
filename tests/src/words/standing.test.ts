import { describe, expect, test } from 'vitest'
import { toJobSheet } from '#src/api/job-sheet/present.ts'
import { PAPERS } from '#src/drawings/papers.ts'
import { VIEWS } from '#src/drawings/view.ts'
import { drawingOf, pagesOfView } from '#src/drawings/views.ts'
import { toHtml } from '#src/job-sheet/html.ts'
import { toPages } from '#src/job-sheet/pages.ts'
import { MEMORY_SIGN, signMeanings, signNote, TRADE_SIGN } from '#src/words/standing.ts'
import { post } from '#tests/support/ask.ts'
import { OF_EVERY_KIND } from '#tests/support/of-every-kind.ts'
import { textsOn } from '#tests/support/sheet-faults.ts'
import { sharedApp } from '#tests/support/started-app.ts'

const MEANINGS = signMeanings([TRADE_SIGN, MEMORY_SIGN])

/** Of all texts of a sheet: the signs at its figures, and those that its foot explains. */
const signsOf = (texts: readonly string[]) => {
  const all = texts.join('\n')
  const atFigures = MEANINGS.reduce((rest, meaning) => rest.replaceAll(meaning, ''), all)
  const among = (words: string) => [TRADE_SIGN, MEMORY_SIGN].filter((sign) => words.includes(sign))
  return { used: among(atFigures), explained: among(MEANINGS.filter((meaning) => all.includes(meaning)).join()) }
}

const FORMS = ['full', 'short'] as const

describe('a sheet explains the signs that stand on it, and no others', () => {
  test.each(OF_EVERY_KIND)('$name', ({ design }) => {
    const { units } = design.bearing.resolved.input
    const drawn = VIEWS.flatMap((view) => [
      [drawingOf(view, design, 'a4')],
      ...PAPERS.map((paper) => paged(view, paper)),
    ])
    function paged(view: (typeof VIEWS)[number], paper: (typeof PAPERS)[number]) {
      const made = pagesOfView(view, design, paper)
      return made.ok ? made.value : []
    }
    const sheet = toJobSheet(design, { units })
    const texts = [
      ...drawn.map((sheets) => sheets.flatMap((each) => textsOn(each).map(({ text }) => text))),
      ...FORMS.flatMap((form) => [
        toPages(sheet, 'a4', form).flatMap((page) => textsOn(page).map(({ text }) => text)),
        [toHtml(sheet, form)],
      ]),
    ]
    for (const { used, explained } of texts.map(signsOf)) expect(explained).toEqual(used)
  })

  test.each([
    ['tolerance-check', { contributors: {} }, {}],
    ['tolerance-check', { contributors: {}, overshootRisk: 0.1 }, { maxBallGap: 2 }],
    ['load-check', { axialLoad: 30 }, { arrangement: 'thrust' }],
    ['load-check', { axialLoad: 30, friction: 0.2 }, { arrangement: 'thrust' }],
  ])('the picture of a %s: %o, %o', async (path, question, more) => {
    const design = { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12, ...more }
    const drawn = await post(`${await sharedApp()}/v1/${path}`, { design, ...question }, { accept: 'image/svg+xml' })
    expect(drawn.status, drawn.text).toBe(200)
    const { used, explained } = signsOf([drawn.text])
    expect(explained).toEqual(used)
    expect(explained).not.toContain(MEMORY_SIGN)
  })

  test('a line under a picture is there only where there is a sign', () => {
    expect(signNote(['by hand'])).toEqual([])
    expect(signNote(['by hand †'])).toEqual(['† common practice, no source.'])
  })
})
