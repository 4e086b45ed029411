import { THRUST_FIELDS, type ThrustInput } from '#shared/bearing/arrangements/thrust/input.ts'
import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import { type AnyLoadCheckInput, carriedBy, loadCheck, NONE_CARRIED } from '#shared/questions/load/load-check.ts'
import { ALONG_FIELDS } from '#shared/questions/search/fields.ts'
import type { SearchModule } from '#shared/questions/search/module.ts'
import { mm } from '#shared/units/length.ts'

export const THRUST_SEARCH: SearchModule<ThrustInput, ThrustBearing, Omit<AnyLoadCheckInput, 'design'>> = {
  has: ['plugDiameters', 'cutterDiameters', 'onlyOnRule'],
  depths: { engagements: THRUST_FIELDS.fields.plates.fields.engagement },
  load: ALONG_FIELDS,
  marks: ['running', 'wall', 'seat', 'material'],
  dropReasons: { 'plates-meet': 'lands-touch', 'plate-cut-through': 'outside-diameter' },
  partsOf: ({ engagements, cutterDiameters }) => ({
    ...(engagements === undefined ? {} : { plates: { engagement: engagements } }),
    ...(cutterDiameters === undefined ? {} : { groove: { cutterDiameter: mm(cutterDiameters) } }),
  }),
  sizesOf: ({ plate, gapPerPitchRadius, resolved }) => {
    const disc = { outside: plate.outsideDiameter, hole: 'bore' } as const
    const seat = { onBottom: plate.seat === 'bottom', conformity: plate.grooveRadius / resolved.ballDiameter }
    return {
      outsideDiameter: plate.outsideDiameter,
      outerWall: plate.wall,
      innerWall: plate.innerWall,
      discs: [disc, disc],
      seats: [seat],
      cutDiameter: plate.grooveCircleDiameter,
      gapPerCut: gapPerPitchRadius,
    }
  },
  // A load outside the ring of balls tips the plate: none is carried there.
  carries: ({ resolved }, load) => {
    const checked = loadCheck({ ...load, design: resolved.input })
    return checked.ok ? carriedBy(checked.value) : NONE_CARRIED
  },
}
