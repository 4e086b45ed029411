import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect } from 'vitest'
import { mm } from '#shared/units/length.ts'
import { VIEWS } from '#src/drawings/view.ts'
import { drawingOf } from '#src/drawings/views.ts'
import { toDxf } from '#src/drawings/writers/dxf.ts'
import { anyDesigned, designed } from '#tests/support/designed.ts'
import { emptyFolder } from '#tests/support/empty-folder.ts'
import { CAGED, PLAIN, PLATES, ROLLERS } from '#tests/support/inputs.ts'
import { withMaking } from '#tests/support/with-making.ts'
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

/** Every circle and, of every closed outline, its lines and arcs: how far they reach, and the radii. */
const OUTLINES = `
import sys, json, ezdxf
from ezdxf import bbox
out = []
for e in ezdxf.readfile(sys.argv[1]).modelspace():
    if e.dxf.layer not in ('FINISH', 'SAW', 'HOLES'):
        continue
    if e.dxftype() == 'CIRCLE':
        out.append({'radii': [e.dxf.radius], 'layer': e.dxf.layer})
    if e.dxftype() == 'POLYLINE' and e.is_closed:
        parts = list(e.virtual_entities())
        box = bbox.extents(parts)
        out.append({'radii': [p.dxf.radius for p in parts if p.dxftype() == 'ARC'],
                    'wide': box.size.x, 'high': box.size.y})
print(json.dumps(out))
`

type Measured = {
  readonly radii: readonly number[]
  readonly wide?: number
  readonly high?: number
  readonly layer?: string
}

test.each([PLAIN, ROLLERS, PLATES, CAGED])('with a kerf, outlines are wider by it, and holes narrower', (input) => {
  const folder = emptyFolder()
  const KERF = 0.3
  for (const view of ['templates', 'gauges'] as const) {
    const [plain, cut] = [0, KERF].map((kerf, index) => {
      const file = join(folder, `${view}${index}.dxf`)
      const made = withMaking(anyDesigned(input), { kerf: mm(kerf) })
      writeFileSync(file, toDxf(drawingOf(view, made, 'a4', 'machine')))
      return JSON.parse(outputOf('ezdxf', ['-c', OUTLINES, file]).toString()) as readonly Measured[]
    }) as [readonly Measured[], readonly Measured[]]
    expect(cut).toHaveLength(plain.length)
    expect(plain.length).toBeGreaterThanOrEqual(3)
    for (const [index, before] of plain.entries()) {
      const after = cut[index]
      for (const [at, radius] of before.radii.entries())
        expect(Math.abs((after?.radii[at] ?? 0) - radius)).toBeWithin(1e-4, KERF / 2) // six digits of a bulge
      if (before.layer === 'HOLES') expect(after?.radii[0]).toBeWithin(2e-6, (before.radii[0] ?? 0) - KERF / 2)
      if (before.wide !== undefined) expect(after?.wide).toBeWithin(1e-5, before.wide + KERF)
      // A horn of a hollow edge grows longer than half a kerf, for its corner is sharp.
      if (before.high !== undefined) expect(after?.high).toBeGreaterThan(before.high + KERF - 1e-5)
    }
  }
})
