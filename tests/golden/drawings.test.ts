import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { goldenDrawings } from './drawings.ts'

const FOLDER = join(import.meta.dirname, 'drawings')

test.each(goldenDrawings())('$name is as it was last looked at: after a change, npm run golden', ({ name, text }) => {
  expect(text).toBe(readFileSync(join(FOLDER, name), 'utf8'))
})

test('there is no file that nothing draws', () => {
  const names = goldenDrawings().map(({ name }) => name)
  expect(readdirSync(FOLDER).toSorted()).toEqual(names.toSorted())
})
