import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect } from 'vitest'
import { VIEWS } from '#src/drawings/view.ts'
import { drawingOf } from '#src/drawings/views.ts'
import { toDxf } from '#src/drawings/writers/dxf.ts'
import { designed } from '#tests/support/designed.ts'
import { emptyFolder } from '#tests/support/empty-folder.ts'
import { PLAIN } from '#tests/support/inputs.ts'
import { outputOf, testsThatNeed } from './needed.ts'

const { test } = testsThatNeed('ezdxf')

/** A strict reader, which lists what it finds wrong, what it had to mend, and every circle. */
const AUDIT = `
import sys, json, ezdxf
doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
print(json.dumps({
  'errors': [e.message for e in audit.errors],
  'fixes': [f.message for f in audit.fixes],
  'version': doc.dxfversion,
  'units': doc.header.get('$INSUNITS'),
  'circles': [[e.dxf.layer, e.dxf.radius] for e in doc.modelspace().query('CIRCLE')],
}))
`

test.each(VIEWS)('%s: a strict reader finds nothing to mend', (view) => {
  const file = join(emptyFolder(), 'drawing.dxf')
  writeFileSync(file, toDxf(drawingOf(view, designed(PLAIN), 'a4')))
  const found: Record<string, unknown> = JSON.parse(outputOf('ezdxf', ['-c', AUDIT, file]).toString())
  expect(found).toMatchObject({ errors: [], fixes: [], version: 'AC1009', units: 4 })
  const radii = (found['circles'] as readonly (readonly [string, number])[]).map(([, radius]) => radius)
  if (view === 'templates') expect(radii.some((radius) => Math.abs(radius - 50) < 1e-6)).toBe(true)
})
