import { Type } from 'typebox'
import type { Units } from '#shared/units/length.ts'

const UNITS = ['in', 'mm'] as const satisfies readonly Units[]

export const UnitsName = Type.Unsafe<Units>(
  Type.Enum(UNITS, {
    $id: 'Units',
    type: 'string',
    description: 'Inches or millimetres, for the request and its answer.',
  }),
)
