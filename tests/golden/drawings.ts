import { inches, mm } from '#shared/units/length.ts'
import { VIEWS } from '#src/drawings/view.ts'
import { drawingOf } from '#src/drawings/views.ts'
import { toDxf } from '#src/drawings/writers/dxf.ts'
import { toSvg } from '#src/drawings/writers/svg.ts'
import { anyDesigned } from '#tests/support/designed.ts'

/**
 * The bearing of Larkmoor's tide clock (invented), one in inches, the rollers of its gate hinge, its chart table, a wheel with an
 * outer ring of segments that a hub turns, and one with a cage.
 */
const BEARINGS = [
  {
    name: 'tide-clock',
    paper: 'a4',
    input: {
      units: 'mm',
      balls: { count: 14, diameter: mm(14), material: 'glass', standardDeviation: mm(0.1) },
      bore: mm(10),
      ballGap: mm(0.7),
    },
  },
  {
    name: 'inches',
    paper: 'letter',
    input: { units: 'in', balls: { count: 10, diameter: inches(5 / 8) }, bore: inches(1 / 2) },
  },
  {
    name: 'gate-hinge',
    paper: 'a4',
    input: { units: 'mm', arrangement: 'roller', balls: { count: 14, diameter: mm(12) }, bore: mm(16), ballGap: mm(0.6) },
  },
  {
    name: 'chart-table',
    paper: 'a4',
    input: { units: 'mm', arrangement: 'thrust', balls: { count: 24, diameter: mm(16), material: 'glass' }, bore: mm(60) },
  },
  {
    name: 'wind-wheel',
    paper: 'a4',
    input: {
      units: 'mm',
      balls: { count: 12, diameter: mm(16) },
      bore: mm(12),
      making: {
        woods: { outerRing: { construction: 'segmented', species: 'maple-sugar' }, innerRing: { species: 'maple-sugar' } },
        mounting: { turns: 'outer-ring', drive: 'hub' },
      },
    },
  },
  {
    name: 'lantern-wheel',
    paper: 'a4',
    input: { units: 'mm', arrangement: 'caged', balls: { count: 9, diameter: mm(16), material: 'glass' }, bore: mm(20) },
  },
] as const

export type GoldenFile = { readonly name: string; readonly text: string }

/** Drawings as they are to look, each with the name of its file. Look at one before it is approved. */
export function goldenDrawings(): readonly GoldenFile[] {
  return BEARINGS.flatMap(({ name, paper, input }) =>
    VIEWS.flatMap((view) => {
      const made = anyDesigned(input)
      return [
        { name: `${name}-${view}.svg`, text: toSvg(drawingOf(view, made, paper)) },
        { name: `${name}-${view}.dxf`, text: toDxf(drawingOf(view, made, paper, 'machine')) },
      ]
    }),
  )
}
