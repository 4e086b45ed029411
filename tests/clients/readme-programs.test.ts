import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { post } from '#tests/support/ask.ts'
import { type Ran, run } from '#tests/support/run.ts'
import { startedApp } from '#tests/support/started-app.ts'

const README = readFileSync('README.md', 'utf8')
const ADDRESS = 'http://127.0.0.1:8080'

/** The first block of the README in one language, asking a server at another address. */
function program(language: string, at: string): string {
  const [, text = ''] = new RegExp(`\`\`\`${language}\\n((?!npm|docker).*?)\`\`\``, 's').exec(README) ?? []
  expect(text).toContain(ADDRESS)
  return text.replaceAll(ADDRESS, at)
}

/** What both programs print: the plug of ten balls of 5/8 in. */
async function plug(at: string): Promise<number> {
  const { text } = await post(`${at}/v1/design`, { units: 'in', balls: { count: 10, diameter: '5/8' }, bore: '1/2' })
  const answer: { gauge: { nominalDiameter: number } } = JSON.parse(text)
  return answer.gauge.nominalDiameter
}

const PROGRAMS: readonly (readonly [language: string, run: (text: string) => Promise<Ran | undefined>])[] = [
  ['js', (text) => run('node', ['--input-type=module'], { input: text })],
  ['python', (text) => run('python3', ['-'], { input: text })],
]

test.each(PROGRAMS)('the program in %s prints the plug, or what is wrong', async (language, runs) => {
  const at = await startedApp()
  const text = program(language, at)
  const ran = await runs(text)
  if (ran === undefined) return expect(language).not.toBe('js') // no such interpreter on this machine
  expect(ran).toMatchObject({ code: 0, err: '' })
  expect(Number(ran.out)).toBe(await plug(at))

  const mistaken = await runs(text.replace(/(['"])1\/2\1/, '$13/0$1'))
  expect(mistaken).toMatchObject({ code: 0, out: '/bore "3/0" divides by 0\n', err: '' })
})

test('the first call of the README, in a shell', async () => {
  const at = await startedApp()
  const ran = await run('bash', ['-c', `command -v curl > /dev/null || exit 77\n${program('sh', at)}`])
  if (ran === undefined || ran.code === 77) return expect(ran?.code).not.toBe(0) // no shell or no curl here
  expect(ran).toMatchObject({ code: 0, err: '' })
  expect(JSON.parse(ran.out)).toMatchObject({ units: 'mm', ballGap: 0.7 })
})
