import { type Static, Type } from 'typebox'
import { SCREW_DIAMETERS } from '#shared/making/screws.ts'
import { length, type ShownLength, shownLength as shown } from '#src/api/length.ts'
import { shownNumber } from '#src/api/number.ts'
import { integer, listOf, named, numberOf, requestObject, text } from '#src/api/schema.ts'
import type { Source } from '#src/api/source.ts'
import { system } from '#src/api/system.ts'
import type { UnitsName } from '#src/api/units.ts'
import { refTo } from '#src/http/schema.ts'

const MOST_GAUGE = 24

export const FastenersRequest = requestObject('Which screws to show. Default: all.', {
  units: refTo<typeof UnitsName>('Units'),
  system: Type.Optional(system('Show only screws by gauge, in inches, or by diameter, in millimetres.')),
  gauge: Type.Optional(Type.Integer({ minimum: 0, maximum: MOST_GAUGE, description: 'Show only this gauge.' })),
  metricDiameter: Type.Optional(
    numberOf(SCREW_DIAMETERS, 'Show only screws of this diameter, in millimetres whatever the units.'),
  ),
  maxHeadDiameter: Type.Optional(length('Show only screws whose head is known to be no larger.')),
})
export type FastenersRequest = Static<typeof FastenersRequest>

export const DrilledHole = named('DrilledHole', 'A drilled hole.', {
  drill: text('The name of the drill, with its unit: `11/64 in` or `4.2 mm`.'),
  diameter: shown('Diameter of the hole.'),
})

export const WoodScrew = named(
  'WoodScrew',
  'A wood screw with its holes. A figure that was not found in print is absent.',
  {
    system: system('Whether it is sold by gauge, in inches, or by diameter, in millimetres.'),
    size: text('Trade size: `No. 8` or `4 mm`.'),
    gauge: Type.Optional(integer('Gauge number of screws in inches.')),
    metricDiameter: Type.Optional(shownNumber('Diameter of metric screws in millimetres.')),
    diameter: shown('Diameter of the shank.'),
    threadsPerInch: Type.Optional(integer('Threads per inch.')),
    headDiameter: Type.Optional(shown('Largest diameter of a flat head.')),
    rootDiameter: Type.Optional(shown('Mean diameter at the root of the thread; largest of a metric screw.')),
    clearanceHole: Type.Optional(refTo<typeof DrilledHole>('DrilledHole')),
    softwoodPilot: Type.Optional(refTo<typeof DrilledHole>('DrilledHole')),
    hardwoodPilot: Type.Optional(refTo<typeof DrilledHole>('DrilledHole')),
    sources: Type.Array(Type.String(), { description: 'The `id` of each source in `sources`.' }),
  },
)

export const FastenersResponse = named('FastenersResponse', 'Wood screws.', {
  units: refTo<typeof UnitsName>('Units'),
  screws: Type.Array(refTo<typeof WoodScrew>('WoodScrew')),
  lengths: listOf<typeof ShownLength>('ShownLength', 'Lengths on sale by gauge: common practice, no source.'),
  metricLengths: listOf<typeof ShownLength>('ShownLength', 'Lengths on sale by diameter: common practice, no source.'),
  sources: Type.Array(refTo<typeof Source>('Source')),
})
export type FastenersResponse = Static<typeof FastenersResponse>
