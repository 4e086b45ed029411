import { hash } from 'node:crypto'
import { type Design, isOfPlates } from '#shared/bearing/arrangements.ts'
import { canonical } from '#shared/canonical.ts'
import { resolveMaking } from '#shared/making/defaults.ts'
import { wholePlatePlan } from '#shared/making/plate-mounting.ts'
import { wholePlan } from '#shared/making/whole-plan.ts'
import { significant } from '#shared/numbers/significant.ts'
import { VERSION } from '#src/version.ts'

/** Whose sheet it is. Every page, template, tile, gauge and file of one input carries the same. */
export interface SheetMark {
  /** Code of the bearing that is made: the same input has the same code, in whatever order and with whatever defaults it was given. */
  readonly code: string
  readonly version: string
  /** The maker's own name for the bearing. */
  readonly name?: string
}

/** Crockford's base 32: no sign that could be read as another. */
const SIGNS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'
/** A billion codes: nobody has two bearings of one code on the bench. */
const LENGTH = 6

export function sheetMark(design: Design): SheetMark {
  const { seasoned: _, ...input } = design.bearing.resolved.input
  const found = isOfPlates(design) ? wholePlatePlan(design.bearing) : wholePlan(design.bearing)
  // Neither what it is called nor the machine that cuts its gauges makes it another bearing.
  const { name, kerf: _kerf, ...plan } = resolveMaking(found, input.units)
  const made = plainData({ ...input, making: plan })
  const digest = hash('sha256', canonical(made), 'hex')
  const bytes = Array.from({ length: LENGTH }, (_, at) => Number.parseInt(digest.slice(2 * at, 2 * at + 2), 16))
  const code = bytes.map((byte) => SIGNS[byte % SIGNS.length]).join('')
  return { code, version: VERSION, ...(name !== undefined && { name }) }
}

/** Without what is left open, and numbers as an answer shows them: what is echoed and sent again has the same code. */
const plainData = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value, (_, inner) => (typeof inner === 'number' ? significant(inner) : inner)))
