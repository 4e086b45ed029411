import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { emptyFolder } from '#tests/support/empty-folder.ts'
import { run } from '#tests/support/run.ts'

const PROMISED = 'openapi/promised.json'

type Schema = { required?: string[]; properties: Record<string, unknown>; enum?: string[] }
type Document = {
  readonly paths: Record<string, unknown>
  readonly components: { readonly schemas: Record<string, Schema> }
}

const read = (file: string): Document => JSON.parse(readFileSync(file, 'utf8'))

const compare = (revision: string) => run('redocly', ['diff', PROMISED, revision, '--fail-on', 'major'])

test('nothing that a caller was promised is gone: see DEVELOPERS.md, “A change that breaks callers”', async () => {
  const ran = await compare('openapi/openapi.json')
  expect(ran?.code, ran?.out).toBe(0)
})

const schemaOf = ({ components: { schemas } }: Document, name: string): Schema => {
  const schema = schemas[name]
  if (schema === undefined) throw new Error(`there is no ${name}`)
  return schema
}

test.each<[string, (document: Document) => void]>([
  ['a path that is gone', ({ paths }) => delete paths['/v1/size-table']],
  [
    'a field that an answer no longer has',
    (document) => delete schemaOf(document, 'RadialDesignResponse').properties['gauge'],
  ],
  [
    'a field that a request must have now',
    (document) => schemaOf(document, 'RadialDesignRequest').required?.push('width'),
  ],
  [
    'a field that a request may not have any more',
    (document) => delete schemaOf(document, 'RadialDesignRequest').properties['width'],
  ],
])('the check finds %s', async (_name, breakIt) => {
  const document = read('openapi/openapi.json')
  breakIt(document)
  const broken = join(emptyFolder(), 'broken.json')
  writeFileSync(broken, JSON.stringify(document))
  expect(await compare(broken)).toMatchObject({ code: 1 })
})
