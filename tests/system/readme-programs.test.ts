import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect } from 'vitest'
import { post } from '#tests/support/ask.ts'
import { emptyFolder } from '#tests/support/empty-folder.ts'
import { type Ran, run } from '#tests/support/run.ts'
import { sharedApp } from '#tests/support/started-app.ts'
import { testsThatNeed } from './needed.ts'

const { test } = testsThatNeed('python3', 'curl')

const README = readFileSync('README.md', 'utf8')
const ADDRESS = 'http://127.0.0.1:8080'

/** The first block of the README in one language, asking a server at another address. */
function program(language: string, at: string): string {
  const [, text = ''] = new RegExp(`\`\`\`${language}\\n((?!npm|docker).*?)\`\`\``, 's').exec(README) ?? []
  expect(text).toContain(ADDRESS)
  return text.replaceAll(ADDRESS, at)
}

/** What both programs print: the plug of ten glass balls of 5/8 in, in cherry, through the year. */
async function plug(at: string): Promise<number> {
  const { text } = await post(`${at}/v1/design`, {
    units: 'in',
    balls: { count: 10, diameter: '5/8', material: 'glass' },
    bore: '1/2',
    making: {
      woods: { outerRing: { species: 'cherry-black' }, innerRing: { species: 'cherry-black' } },
      climate: { today: { relativeHumidity: 50 }, relativeHumidity: { min: 35, max: 60 } },
    },
  })
  const answer: { gauge: { nominalDiameter: number } } = JSON.parse(text)
  return answer.gauge.nominalDiameter
}

const PROGRAMS: readonly (readonly [language: string, run: (text: string) => Promise<Ran | undefined>])[] = [
  ['js', (text) => run('node', ['--input-type=module'], { input: text })],
  ['python', (text) => run('python3', ['-'], { input: text })],
]

test.each(PROGRAMS)('the program in %s prints the plug, or what is wrong', async (language, runs) => {
  const at = await sharedApp()
  const text = program(language, at)
  const ran = await runs(text)
  expect(ran).toMatchObject({ code: 0, err: '' })
  expect(Number(ran?.out)).toBe(await plug(at))

  const mistaken = await runs(text.replace(/(['"])1\/2\1/, '$13/0$1'))
  expect(mistaken).toMatchObject({ code: 0, out: '/bore "3/0" divides by 0\n', err: '' })
})

/** Every block of shell that asks the service. */
const CALLS = Array.from(README.matchAll(/```sh\n(.*?)```/gs), ([, text = '']) => text).filter(
  (text) => text.includes(ADDRESS) && text.includes('curl '),
)

/** Runs a block of shell in a folder, where a refusal ends it with the code of curl for that. */
function called(text: string, at: string, cwd: string): Promise<Ran | undefined> {
  const asked = text.replaceAll(ADDRESS, at).replaceAll('curl -s ', 'curl -sS --fail-with-body ')
  return run('bash', ['-e', '-c', asked], { cwd })
}

test.each(CALLS)('a call of the README, in a shell, is answered: %#', async (text) => {
  const folder = emptyFolder()
  const ran = await called(text, await sharedApp(), folder)
  expect(ran).toMatchObject({ code: 0, err: '' })
  const saved = Array.from(text.matchAll(/ -o (\S+)/g), ([, name = '']) => name)
  expect(readdirSync(folder).toSorted()).toEqual(saved.toSorted())
  for (const name of saved)
    expect(readFileSync(join(folder, name), 'latin1')).toMatch(name.endsWith('.pdf') ? /^%PDF-/ : /\bSECTION\b/)
})

test('the first design of the README, asked in a shell, has the gap that it says', async () => {
  const [first = ''] = CALLS.filter((text) => text.includes('/v1/design '))
  const ran = await called(first, await sharedApp(), emptyFolder())
  expect(ran).toMatchObject({ code: 0, err: '' })
  expect(JSON.parse(ran?.out ?? '')).toMatchObject({ units: 'mm', ballGap: 1.3 })
})
