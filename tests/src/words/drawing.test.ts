import { describe, expect, test } from 'vitest'
import { toFigure } from '#src/api/drawings/figure.ts'
import { PAPERS } from '#src/drawings/papers.ts'
import { VIEWS } from '#src/drawings/view.ts'
import { drawingOf, pagesOfView } from '#src/drawings/views.ts'
import { OF_EVERY_KIND, type OfKind } from '#tests/support/of-every-kind.ts'
import { programNames } from '#tests/support/program-names.ts'
import { richly } from '#tests/support/richly-made.ts'
import { textsOn } from '#tests/support/sheet-faults.ts'
import { foreignWords, unusedWords } from '#tests/support/trade-words.ts'

/** All that is read on the drawings of a design, and of them. */
const textsOf = ({ design }: OfKind): readonly string[] =>
  VIEWS.flatMap((view) => {
    const drawing = drawingOf(view, design, 'a4')
    const caption = /<figcaption>([^<]*)/.exec(toFigure(view, drawing, design))?.[1] ?? ''
    const pages = PAPERS.flatMap((paper) => {
      const made = pagesOfView(view, design, paper)
      return made.ok ? made.value : []
    })
    return [drawing, ...pages].flatMap((sheet) => [
      caption,
      sheet.title,
      sheet.description,
      ...textsOn(sheet).map(({ text }) => text),
    ])
  })

describe('drawings', () => {
  test.each(OF_EVERY_KIND)('of $name have no word of another arrangement', (made) => {
    const texts = new Set(textsOf(made))
    expect([...texts].flatMap((text) => foreignWords(made.arrangement, text))).toEqual([])
  })

  test.each(OF_EVERY_KIND)('of $name have no name that only programs read', (made) => {
    const texts = [made.design, ...richly(made)].flatMap((design) => textsOf({ ...made, design }))
    expect([...new Set(texts)].flatMap(programNames)).toEqual([])
  })

  test.each(OF_EVERY_KIND)('of $name speak of all that there is', (made) => {
    expect(unusedWords(made.arrangement, textsOf(made))).toEqual([])
  })

  test.each(OF_EVERY_KIND)('of $name say what they show to those who cannot see them', ({ design }) => {
    for (const view of VIEWS) {
      const { description } = drawingOf(view, design, 'a4')
      expect(description).toMatch(/^[A-Z](?!.*(?: {2}|undefined|NaN)).*\.$/)
    }
  })
})
