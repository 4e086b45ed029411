import { expect, test, vi } from 'vitest'
import { DEFAULTS } from '#src/config.ts'

const config = { ...DEFAULTS, logLevel: 'silent' } as const

async function documentOfService(): Promise<unknown> {
  vi.resetModules()
  const { buildApp } = await import('#src/app.ts')
  const app = await buildApp({ documented: true, config })
  await app.ready()
  const document: unknown = JSON.parse(JSON.stringify(app.swagger()))
  await app.close()
  return document
}

test('plain schemas make the same document as those of TypeBox', async () => {
  const ofTypeBox = await documentOfService()
  vi.doMock('typebox', () => import('#src/http/plain-schemas.ts'))
  const { Type } = await import('typebox')
  expect(Type.Null()).not.toHaveProperty('~kind')
  expect(await documentOfService()).toEqual(ofTypeBox)
})
