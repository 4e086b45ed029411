import { type Static, Type } from 'typebox'
import { ARRANGEMENTS, nameOf, traitsOf, woodPartsOf } from '#shared/bearing/arrangements.ts'
import { type Default, type Fields, namesIn, valueAt } from '#shared/bearing/field.ts'
import type { Split } from '#shared/bearing/fields.ts'
import {
  type Allowances,
  LUMBERS,
  type Lumber,
  type MakingInput,
  MOST_KERF,
  type WoodInput,
} from '#shared/bearing/making-input.ts'
import { METHODS, type Method } from '#shared/bearing/method.ts'
import {
  DRIVES,
  HOLDS,
  type Hold,
  SHAFT_MATERIALS,
  type ShaftMaterial,
  TURNING_RINGS,
  turningRing,
} from '#shared/bearing/mounting-input.ts'
import { wholeWood } from '#shared/bearing/whole-year.ts'
import { MAKING_DEFAULTS, resolveMaking, USUAL_METHOD } from '#shared/making/defaults.ts'
import { SCREW_DIAMETERS, SCREW_GAUGES } from '#shared/making/screws.ts'
import type { Year } from '#shared/movement/year.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { choiceOf, namedRequest, numberOf, requestObject } from '#src/api/schema.ts'
import type { Fault } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { lengthsReversed } from '#src/words/design-search.ts'
import { kerfTooWide } from '#src/words/making.ts'
import {
  BOARDS_HAVE_LENGTHS,
  NO_CIRCLES,
  NO_CORE,
  NO_DRIVE,
  NO_HOUSING,
  NO_LUMBER,
  NO_SCREWS,
  NO_SEGMENTS,
  SHAFT_NOT_OF_WOOD,
  WOODS_MISSING,
} from '#src/words/season-refusal.ts'
import type { Defaults } from './assumption.ts'
import { type Arranged, type Climate, toYear, type Woods, woodsFaults, yearDefaults } from './climate.ts'
import { echo, type Length, length, nonNegativeLength, toMm } from './length.ts'
import { present } from './optional.ts'
import { readSpecies, speciesName } from './species.ts'

/* How a bearing is made and where it lives, as a caller writes it inside a design. */

const usually = (means: string, path: keyof typeof MAKING_DEFAULTS): string =>
  `${means} Default: ${MAKING_DEFAULTS[path].stated}.`

const SCREWS = { minimum: 2, maximum: 48 } as const
const MOST_BOARDS = 20
const LONGEST_NAME = 80

/** Begins with what can be seen; no control characters, no ends of lines, and none that turn the direction of what follows. */
const ONE_LINE =
  '^[^\\s\\u0000-\\u001f\\u007f-\\u009f\\u2028-\\u202e\\u2066-\\u2069][^\\u0000-\\u001f\\u007f-\\u009f\\u2028-\\u202e\\u2066-\\u2069]*$'

const Allowed = requestObject('What is left on a blank, and what the saws take away.', {
  turning: Type.Optional(
    nonNegativeLength(usually('Left for the lathe on each cylinder, by radius.', '/allowances/turning')),
  ),
  side: Type.Optional(nonNegativeLength(usually('Left on each side of a ring.', '/allowances/side'))),
  sawKerf: Type.Optional(nonNegativeLength(usually('Kerf of the saw that cuts the circles.', '/allowances/sawKerf'))),
  miterKerf: Type.Optional(
    nonNegativeLength(
      usually('Kerf of the saw that cuts miters, where a part is of segments.', '/allowances/miterKerf'),
    ),
  ),
  entryHole: Type.Optional(
    length(
      usually('Diameter of the hole through which a saw enters to cut the inside of a ring.', '/allowances/entryHole'),
    ),
  ),
})

const Shaft = requestObject('The shaft that the bore sits on, or the pin in the middle of a turntable.', {
  diameter: Type.Optional(length('Diameter of the shaft. Default: the bore.')),
  material: Type.Optional(
    choiceOf<ShaftMaterial>('What the shaft is made of. Default: steel up to 50 mm, and wood above.', SHAFT_MATERIALS),
  ),
  species: Type.Optional(speciesName('The wood of a wooden shaft.')),
  hold: Type.Optional(
    choiceOf<Hold>(
      'How the ring is held on it; the pin of a turntable is glued, pressed or retained. Default: glued.',
      HOLDS,
    ),
  ),
})

const Housing = requestObject('The board that the outside sits in, or each of both boards of a turntable.', {
  species: Type.Optional(speciesName('Its wood. Default: that of the outer ring.')),
  thickness: Type.Optional(
    length('Thickness of the board. Default: the width of the ring, or the thickness of a plate.'),
  ),
  hold: Type.Optional(
    choiceOf<Hold>(
      'How the ring is held in it, by default glued; a plate is screwed or glued on, by default screwed.',
      HOLDS,
    ),
  ),
})

export const MakingRequest = namedRequest(
  'MakingRequest',
  'How the bearing is made and where it lives. Every path that takes a design reads it here. An empty object takes every default, all common practice; with it, /v1/design answers with blanks, boards, screws and holding.',
  {
    name: Type.Optional(
      Type.String({
        minLength: 1,
        maxLength: LONGEST_NAME,
        pattern: ONE_LINE,
        description: 'Your own name for the bearing, in one line. It is printed on every sheet.',
      }),
    ),
    method: Type.Optional(choiceOf<Method>(usually('The machines at hand.', '/method'), METHODS)),
    woods: Type.Optional(refTo<typeof Woods>('Woods')),
    climate: Type.Optional(refTo<typeof Climate>('Climate')),
    lumber: Type.Optional(
      choiceOf<Lumber>(usually('Kind of lumber, which decides sizes and pilot holes.', '/lumber'), LUMBERS),
    ),
    boardLength: Type.Optional(
      length(usually('Length of a board that you buy, where you state no `boards`.', '/boardLength')),
    ),
    boards: Type.Optional(
      Type.Array(
        requestObject('A board on hand.', {
          thickness: length('Thickness, planed.'),
          width: length('Width.'),
          length: length('Length.'),
        }),
        {
          minItems: 1,
          maxItems: MOST_BOARDS,
          description: 'The boards that you have. Without any, blanks come from sizes that are sold.',
        },
      ),
    ),
    allowances: Type.Optional(Allowed),
    screws: Type.Optional(
      Type.Object(
        {
          count: Type.Optional(Type.Integer({ ...SCREWS, description: usually('How many of them.', '/screws/count') })),
          gauge: Type.Optional(numberOf(SCREW_GAUGES, usually('Gauge of screws in inches.', '/screws/gauge'))),
          metricDiameter: Type.Optional(
            numberOf(
              SCREW_DIAMETERS,
              'Diameter of metric screws, in millimetres whatever the units. Use instead of `gauge`; the default in millimetres.',
            ),
          ),
        },
        {
          description:
            'Screws that hold the halves of the split ring, the cheeks at its sides, or the plates of a turntable to their boards.',
          additionalProperties: false,
          'x-exclusive': [['gauge', 'metricDiameter']],
        },
      ),
    ),
    kerf: Type.Optional(
      nonNegativeLength(
        usually(
          'Width of the beam that follows an SVG or DXF file of templates or gauges: outlines are moved out, and holes in, by half of it.',
          '/kerf',
        ),
      ),
    ),
    chuck: Type.Optional(
      requestObject('Sizes that the chuck grips.', {
        min: length('Smallest diameter.'),
        max: length('Largest diameter.'),
      }),
    ),
    swing: Type.Optional(length('Largest diameter that turns over the bed.')),
    mounting: Type.Optional(
      requestObject('What the bearing is mounted on and in.', {
        shaft: Type.Optional(Shaft),
        housing: Type.Optional(Housing),
        turns: Type.Optional(choiceOf('The ring that turns. Default: inner-ring.', TURNING_RINGS)),
        drive: Type.Optional(choiceOf('What turns an outer ring. Default: crank.', DRIVES)),
      }),
    ),
  },
)
export type MakingRequest = Static<typeof MakingRequest>

/** Added once by `app.ts`, before the design's own. */
export const MAKING_INPUT_SCHEMAS = [MakingRequest]

/** Why each value of `making` is taken where the caller left it out; where `making` stands in a request. */
export const makingDefaults = (at = '/making', more: Readonly<Record<string, Default>> = {}): Defaults => ({
  ...Object.fromEntries(Object.entries({ ...MAKING_DEFAULTS, ...more }).map(([path, row]) => [at + path, row])),
  ...yearDefaults(at),
})

/** Faults of a plan that its schema does not find, by the paths of the plan: parts, woods, the year and the kerf. */
export function makingFaults(making: MakingRequest, design: Arranged & Splits, units: Units): readonly Fault[] {
  const { chuck, kerf = 0, mounting = {}, screws } = making
  const [smallest, largest] = [chuck?.min ?? 0, chuck?.max ?? 0].map((size) => toMm(size, units)) as [Mm, Mm]
  return [
    ...idleFields(making, design)
      .filter(({ path }) => valueAt(making, namesIn(path)) !== undefined)
      .map(({ path, message }) => ({ path, message })),
    ...(screws !== undefined && isInOnePiece(design) ? [{ path: '/screws', message: NO_SCREWS }] : []),
    ...(smallest > largest ? [{ path: '/chuck/min', message: lengthsReversed(smallest, largest, units) }] : []),
    ...faultsOfWood(making, design),
    ...faultsOfMounting(mounting),
    ...(toMm(kerf, units) > MOST_KERF ? [{ path: '/kerf', message: kerfTooWide(MOST_KERF, units) }] : []),
  ]
}

interface Splits {
  readonly split?: Split
}

/** Fields of a plan that would change nothing: refused where they are stated, and left out where a plan is filled in. */
function idleFields(
  {
    method = USUAL_METHOD,
    woods = {},
    boards,
  }: Pick<MakingInput, 'method' | 'woods'> & { readonly boards?: readonly unknown[] },
  design: Arranged & Splits,
) {
  const parts = woodPartsOf(design)
  const segmented = parts.filter((part) => isGluedUp(woods[part]))
  // Where no wood is stated, the sheets name the kind of lumber.
  const isWoodStated = parts.some((part) => woods[part]?.species !== undefined)
  const { members, raceway } = traitsOf(design)
  const hasCore = members === 'rings' && method === 'saw-and-lathe' && !segmented.includes('outerRing')
  // The cheeks of rollers are never of segments.
  const hasCircles = segmented.length < parts.length || raceway === 'track'
  return [
    ...(boards === undefined ? [] : [{ path: '/boardLength', message: BOARDS_HAVE_LENGTHS }]),
    ...(boards === undefined || !isWoodStated || !isInOnePiece(design)
      ? []
      : [{ path: '/lumber', message: NO_LUMBER }]),
    ...(segmented.length === 0 ? [{ path: '/allowances/miterKerf', message: NO_SEGMENTS }] : []),
    ...(hasCircles ? [] : [{ path: '/allowances/sawKerf', message: NO_CIRCLES }]),
    ...(hasCore ? [] : [{ path: '/allowances/entryHole', message: NO_CORE }]),
  ]
}

const isGluedUp = (wood: WoodInput | undefined): boolean => wood !== undefined && wholeWood(wood).segments !== undefined

/** Rings with grooves that stay whole: nothing in them is screwed together. Cheeks and plates are, whatever the rings. */
function isInOnePiece(design: Arranged & Splits): boolean {
  const fields: Fields = ARRANGEMENTS[nameOf(design)].fields.fields
  return (design.split ?? fields['split']?.byDefault?.stated) === 'none'
}

function faultsOfWood({ woods, climate }: MakingRequest, design: Arranged): readonly Fault[] {
  if (climate === undefined) return woods === undefined ? [] : woodsFaults(woods, design)
  if (woods === undefined) return [{ path: '/woods', message: WOODS_MISSING }]
  const year = toYear({ woods, climate }, design)
  return year.ok ? [] : year.error
}

/** Woods that are not known, and the wood of a shaft of something else. */
function faultsOfMounting({ shaft, housing, ...driven }: MountingRequest): readonly Fault[] {
  const known = (species: string | undefined, path: string): readonly Fault[] => {
    const read = species === undefined ? undefined : readSpecies(species, path)
    return typeof read === 'object' ? [read] : []
  }
  const isStray = shaft?.species !== undefined && shaft.material !== 'wood'
  const isDriven = turningRing(driven) === 'outer-ring'
  return [
    ...(isStray ? [{ path: '/mounting/shaft/species', message: SHAFT_NOT_OF_WOOD }] : []),
    ...(isDriven && housing !== undefined ? [{ path: '/mounting/housing', message: NO_HOUSING }] : []),
    ...(!isDriven && driven.drive !== undefined ? [{ path: '/mounting/drive', message: NO_DRIVE }] : []),
    ...known(shaft?.species, '/mounting/shaft/species'),
    ...known(housing?.species, '/mounting/housing/species'),
  ]
}

/** The woods and the year of a plan that has no faults; undefined where it states no climate. */
export function yearIn(making: MakingInput | undefined, design: Arranged): Year | undefined {
  if (making?.woods === undefined || making.climate === undefined) return undefined
  const year = toYear({ woods: making.woods as Woods, climate: making.climate as Climate }, design)
  if (!year.ok) throw new RangeError(`making must be without faults, got ${year.error[0]?.message}`)
  return year.value
}

type Size = (value: Length | undefined) => Mm | undefined
const ALLOWANCES = ['turning', 'side', 'sawKerf', 'miterKerf', 'entryHole'] as const

/** In the words of the core: millimetres, and no field that is undefined. */
export function toMakingInput(request: MakingRequest, units: Units): MakingInput {
  const size: Size = (value) => (value === undefined ? undefined : toMm(value, units))
  const { allowances, chuck, mounting, boards, boardLength, kerf, swing, ...rest } = request
  return present<MakingInput>({
    ...rest,
    boardLength: size(boardLength),
    boards: boards?.map((board) => ({
      thickness: toMm(board.thickness, units),
      width: toMm(board.width, units),
      length: toMm(board.length, units),
    })),
    allowances:
      allowances &&
      present<Partial<Allowances>>(Object.fromEntries(ALLOWANCES.map((name) => [name, size(allowances[name])]))),
    chuck: chuck && { min: toMm(chuck.min, units), max: toMm(chuck.max, units) },
    kerf: size(kerf),
    swing: size(swing),
    mounting: mounting && toMounting(mounting, size),
  })
}

type MountingRequest = NonNullable<MakingRequest['mounting']>
type Mounting = NonNullable<MakingInput['mounting']>

const toMounting = ({ shaft, housing, ...rest }: MountingRequest, size: Size): Mounting =>
  present<Mounting>({
    ...rest,
    shaft: shaft && present<NonNullable<Mounting['shaft']>>({ ...shaft, diameter: size(shaft.diameter) }),
    housing: housing && present<NonNullable<Mounting['housing']>>({ ...housing, thickness: size(housing.thickness) }),
  })

/** With every default filled in that does not follow from the ring: sent again, it means the same. */
export function toMakingRequest(making: MakingInput, units: Units, design: Arranged): MakingRequest {
  const idle = new Set(idleFields(making, design).map(({ path }) => path))
  const size = (value: Mm | undefined) => (value === undefined ? undefined : echo(value, units))
  const { lumber, boards, boardLength, allowances, chuck, kerf, swing, mounting, woods, climate, ...rest } =
    resolveMaking(making, units)
  return present<MakingRequest>({
    ...rest,
    // The schema made both types: those of the core alone say that nothing of them changes.
    woods: woods as Woods | undefined,
    climate: climate as Climate | undefined,
    lumber: idle.has('/lumber') ? undefined : lumber,
    boardLength: idle.has('/boardLength') ? undefined : echo(boardLength, units),
    boards: boards?.map((board) => ({
      thickness: echo(board.thickness, units),
      width: echo(board.width, units),
      length: echo(board.length, units),
    })),
    allowances: Object.fromEntries(
      ALLOWANCES.filter((name) => !idle.has(`/allowances/${name}`)).map((name) => [
        name,
        echo(allowances[name], units),
      ]),
    ),
    kerf: echo(kerf, units),
    chuck: chuck && { min: echo(chuck.min, units), max: echo(chuck.max, units) },
    swing: size(swing),
    mounting: mounting && fromMounting(mounting, size),
  })
}

const fromMounting = (
  { shaft, housing, ...rest }: Mounting,
  size: (value: Mm | undefined) => Length | undefined,
): MountingRequest =>
  present<MountingRequest>({
    ...rest,
    shaft: shaft && present<NonNullable<MountingRequest['shaft']>>({ ...shaft, diameter: size(shaft.diameter) }),
    housing:
      housing && present<NonNullable<MountingRequest['housing']>>({ ...housing, thickness: size(housing.thickness) }),
  })
