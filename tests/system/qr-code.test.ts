import { mkdtempSync, readdirSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect } from 'vitest'
import { readAddress } from '#src/kiosk/job/address.ts'
import { readBearing } from '#src/kiosk/job/bearing.ts'
import { post } from '#tests/support/ask.ts'
import { kioskAddress, PUBLIC_URL } from './kiosk-page.ts'
import { outputOf, testsThatNeed } from './needed.ts'

const { describe, test } = testsThatNeed('zbarimg', 'pdftoppm')

/* The code of each sheet, printed by Poppler and read by ZBar, neither of them ours. Larkmoor is made up. */

const SHEETS = ['drawings/assembly.pdf', 'drawings/templates.pdf', 'drawings/gauges.pdf', 'job-sheet'] as const

/** What stands in the codes of each page of a sheet. */
async function addressesOn(sheet: (typeof SHEETS)[number], query: string): Promise<readonly (readonly string[])[]> {
  const format = sheet === 'job-sheet' ? '&format=pdf' : ''
  const answer = await fetch(`${await kioskAddress()}/v1/${sheet}?${query}${format}`)
  expect(answer.status).toBe(200)
  const folder = mkdtempSync(join(tmpdir(), 'code-'))
  writeFileSync(join(folder, 'sheet.pdf'), Buffer.from(await answer.arrayBuffer()))
  // Of a job sheet the first page has it; of sheets that are cut up, each.
  const range = sheet === 'job-sheet' ? ['-l', '1'] : []
  outputOf('pdftoppm', [...range, '-r', '150', '-png', join(folder, 'sheet.pdf'), join(folder, 'page')])
  const pages = readdirSync(folder).filter((name) => name.endsWith('.png'))
  return pages.sort().map((page) => codesIn(join(folder, page)))
}

function codesIn(file: string): readonly string[] {
  try {
    return outputOf('zbarimg', ['--quiet', '--raw', file]).toString().trim().split('\n')
  } catch {
    return [] // it ends with a fault where it finds none
  }
}

/** The bearing to which an address leads, as the service works it out. */
async function bearingAt(address: string) {
  expect(address.length).toBeLessThanOrEqual(300)
  const [url, fragment = ''] = address.split('/#', 2)
  expect(url).toBe(PUBLIC_URL)
  const { request } = readBearing(readAddress(fragment)?.job.bearing ?? {})
  return designed(request ?? {})
}

async function designed(request: object) {
  const { dimensions, input } = JSON.parse((await post(`${await kioskAddress()}/v1/design`, request)).text)
  return { dimensions, name: input.making?.name }
}

describe.each([
  ['millimetres', { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12, making: { name: 'Uhr & "Werk"' } }],
  ['inches', { units: 'in', balls: { count: 10, diameter: '5/8', material: 'glass' }, bore: '1/2' }],
])('a bearing in %s', (_units, request) => {
  const query = new URLSearchParams(flat(request)).toString()

  test.each(SHEETS)('%s leads back to it', async (sheet) => {
    const pages = await addressesOn(sheet, query)
    expect(pages.length).toBeGreaterThan(0)
    for (const codes of pages) {
      expect(codes).toHaveLength(1)
      expect(await bearingAt(codes[0] ?? '')).toEqual(await designed(request))
    }
  })
})

test('wood and place that are too long stay out of it; the sizes that they decided do not', async () => {
  const wood = { species: 'maple-sugar', construction: 'quarter-sawn' }
  const making = {
    name: 'The hour wheel of the tide clock in the yard of the makerspace at Larkmoor',
    woods: { outerRing: wood, innerRing: wood, balls: { species: 'birch-paper' } },
    climate: { today: { relativeHumidity: 50 }, relativeHumidity: { min: 35, max: 60 } },
  }
  const request = { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12, making }
  const [[address = ''] = []] = await addressesOn(
    'drawings/assembly.pdf',
    new URLSearchParams(flat(request)).toString(),
  )
  expect(address).not.toContain('making')
  // Which sizes are seats is of the plan that stays out.
  const sizes = ({ dimensions }: { dimensions: readonly object[] }) =>
    dimensions.map((each) => ({ ...each, byCaliper: undefined }))
  expect(sizes(await bearingAt(address))).toEqual(sizes(await designed(request)))
})

/** An input by the names of a query. */
function flat(input: object, path = ''): Record<string, string> {
  const entries = Object.entries(input).flatMap(([name, value]) =>
    typeof value === 'object' ? Object.entries(flat(value, `${path}${name}.`)) : [[`${path}${name}`, String(value)]],
  )
  return Object.fromEntries(entries)
}
