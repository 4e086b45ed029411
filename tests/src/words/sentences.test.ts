import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { sentencesOf } from '#src/words/kiosk/sentences.ts'

/* The answers of the examples are those that the page breaks into points. */
const ANSWERS = readdirSync('openapi/examples').filter(
  (name) => /^(loadCheck|toleranceCheck|seasonalFit|ballSelection)/.test(name) && !name.includes('refused'),
)

test.each(ANSWERS)('the summary of %s is of whole sentences', (name) => {
  // Its own title, which is indented least, is no sentence.
  const text = readFileSync(`openapi/examples/${name}`, 'utf8')
  const summaries = [...text.matchAll(/^ {4,}"summary": ("(?:[^"\\]|\\.)*")/gm)].map(([, json = '""']) =>
    JSON.parse(json),
  )
  expect(summaries.length).toBeGreaterThan(0)
  for (const summary of summaries) {
    const sentences = sentencesOf(summary)
    expect(sentences.join(' ')).toBe(summary)
    for (const sentence of sentences) expect(sentence).toMatch(/^[“"\p{Lu}\d].*[.!?]$/u)
  }
})

test('what lessens a scatter stands in the sentence that names its cause, so that no list parts them', () => {
  const texts = ANSWERS.map((name) => readFileSync(`openapi/examples/${name}`, 'utf8'))
  const causes = texts.flatMap(sentencesOf).filter((sentence) => sentence.includes('of the scatter comes from'))
  expect(causes.length).toBeGreaterThan(5)
  for (const cause of causes) expect(cause).toMatch(/of the scatter comes from [^;.]+; [a-z]/)
})

test('figures, units and quoted names break no sentence', () => {
  expect(sentencesOf('Cut to 3.5 mm, about 0.14 in. It binds in 30. 61 % run. Take a no. 8 screw.')).toEqual([
    'Cut to 3.5 mm, about 0.14 in.',
    'It binds in 30.',
    '61 % run.',
    'Take a no. 8 screw.',
  ])
})
