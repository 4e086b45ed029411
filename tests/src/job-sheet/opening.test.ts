import { describe, expect, test } from 'vitest'
import { isCaged, isOfPlates, isOfRollers } from '#shared/bearing/arrangements.ts'
import { HOLDS, PIN_HOLDS, PLATE_HOLDS } from '#shared/bearing/mounting-input.ts'
import { plugReading } from '#shared/bearing/plug-reading.ts'
import { operationsFor } from '#src/job-sheet/operations.ts'
import { OF_EVERY_KIND, type OfKind } from '#tests/support/of-every-kind.ts'
import { withMaking } from '#tests/support/with-making.ts'

/* What the last steps tell of a bearing that glue keeps shut, however it is mounted. */

const mountingsOf = ({ arrangement }: OfKind) =>
  arrangement === 'thrust'
    ? PIN_HOLDS.flatMap((pin) => PLATE_HOLDS.map((plates) => ({ shaft: { hold: pin }, housing: { hold: plates } })))
    : [
        ...HOLDS.flatMap((shaft) => HOLDS.map((housing) => ({ shaft: { hold: shaft }, housing: { hold: housing } }))),
        ...HOLDS.map((shaft) => ({ turns: 'outer-ring' as const, drive: 'crank' as const, shaft: { hold: shaft } })),
      ]

/** Which seat holds both halves of what would have to come apart, told by the split alone. */
function keptShut({ design }: OfKind, mounting: ReturnType<typeof mountingsOf>[number], isLoose: boolean): boolean {
  if (isOfPlates(design) || isOfRollers(design)) return false
  if (isLoose) return true
  const housing = 'turns' in mounting ? undefined : mounting.housing?.hold
  const { split } = design.bearing.resolved
  if (split === 'inner-ring') return mounting.shaft.hold === 'glued'
  if (split === 'outer-ring') return housing === 'glued'
  return mounting.shaft.hold === 'glued' && housing === 'glued'
}

const OPENS =
  /(?<!(?:do not|nobody) )opens? it\b|\btake it apart\b(?! before)|wax the (?:grooves|tracks)|ease the (?:grooves|tracks)/i

describe.each(OF_EVERY_KIND)('$name', (made) => {
  test.each(mountingsOf(made))('with $shaft.hold, $housing.hold: nothing is told that its glue forbids', (mounting) => {
    const design = withMaking(made.design, { mounting })
    const operations = operationsFor(design)
    const [mount, care] = ['mount', 'care'].map((id) => operations.find((operation) => operation.id === id))
    const isLoose = /Glue it shut/.test(mount?.title ?? '')
    const told = [care?.how, care?.check, care?.mistake.costs].join(' ')
    expect(/do not open it/.test(told)).toBe(keptShut(made, mounting, isLoose))
    if (/do not open it/.test(told)) {
      expect(told).not.toMatch(OPENS)
      if (!isLoose) expect(mount?.how).toMatch(/nobody opens it again: wax the .* before\./)
    } else expect(told).toMatch(/wax the (?:grooves|tracks)/)
  })

  test('what is glued with epoxy has its caution, and nothing else has', () => {
    for (const mounting of mountingsOf(made))
      for (const { id, tool, cautions } of operationsFor(withMaking(made.design, { mounting })))
        expect(cautions.includes('epoxy'), id).toBe(/epoxy/.test(tool))
  })

  test('whoever grinds is told what sparks do', () => {
    for (const { id, tool, cautions } of operationsFor(made.design))
      expect(cautions.includes('grinding'), id).toBe(/grinder/.test(tool))
  })

  test('halves that wait for their glue are held while it is run in', () => {
    for (const making of [undefined, {}]) {
      const operations = operationsFor(making === undefined ? made.design : withMaking(made.design, making))
      const runIn = operations.find(({ id }) => id === 'run-in')
      const isGlued = operations.some(({ how }) => /glue the halves of the (?:inner|outer) ring together/.test(how))
      expect(/^Until they are glued/.test(runIn?.how ?? '')).toBe(isGlued)
      if (isGlued) expect(runIn?.tool).toMatch(/a bolt, two washers of wood|three small clamps/)
    }
  })

  test('plugs that decide nothing may be left out, and nothing on the sheet needs them', () => {
    if (isCaged(made.design)) return expect(operationsFor(made.design).length).toBeGreaterThan(0)
    const { decides } = plugReading(made.design.bearing)
    const operations = operationsFor(made.design)
    const gauges = operations.find(({ id }) => id === 'make-gauges')
    expect(/you may leave both out/.test(gauges?.how ?? '')).toBe(!decides)
    const later = operations.filter(({ id }) => id !== 'make-gauges')
    const used = later.some(
      ({ tool, sizes, readings }) =>
        /plug/.test(tool) ||
        sizes.some(({ name }) => /plug/.test(name)) ||
        readings.some(({ kind }) => kind === 'plug'),
    )
    return expect(used).toBe(decides)
  })

  test('no step names another than those of the page for the readings', () => {
    for (const { how, mistake } of operationsFor(made.design))
      expect(`${how} ${mistake.costs}`).not.toMatch(/fit correction/)
  })
})
