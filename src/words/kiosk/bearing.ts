import type { BallMaterial } from '#shared/bearing/fields.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { capitalised, figure } from '#src/words/figure.ts'
import { TERMS, type Terms } from '#src/words/terms.ts'
import { MONTH_NAMES, PLACE } from './place.ts'

/** Words of the step in which a bearing is chosen. */
export const BEARING = {
  units: 'Units',
  in: 'inches',
  mm: 'millimetres',
  otherSize: 'Other size',
  bore: 'Bore',
  smallerBore: 'smaller bore',
  largerBore: 'larger bore',
  depth: 'How deep the balls sit',
  outerRing: 'outer ring',
  innerRing: 'inner ring',
  arrangement: 'Kind of bearing',
  besides: 'Also stated by the link',
  remove: 'Remove',
  picture: 'The bearing from the front',
  refusals: 'why this bearing cannot be made',
  sizes: 'Sizes to cut',
  size: 'Size',
  onTheRule: 'On the rule',
  /** Of a size that nobody cuts or measures. */
  follows: 'follows',
  exact: 'Exact',
  usual: 'Usual value',
  usualChoice: 'as usual',
  empty: 'Leave a field empty for the usual value.',
} as const

/** Words of the fields that any bearing has, for what rolls in this one. */
export const elementWords = ({ element: { one, many } }: Terms) => ({
  diameter: `${capitalised(one)} diameter`,
  material: `Material of the ${many}`,
  count: `Number of ${many}`,
  fewer: `one ${one} fewer`,
  more: `one ${one} more`,
})

export const ARRANGEMENT_CHOICES = {
  radial: 'two rings, full of balls',
  caged: 'two rings with a cage',
  roller: 'two rings with rollers',
  thrust: 'turntable of two plates',
} as const

export const MATERIAL_CHOICES: Readonly<Record<BallMaterial, string>> = {
  wood: 'wood',
  glass: 'glass',
  acrylic: 'acrylic',
  steel: 'steel',
}

const MATERIAL_ADJECTIVES: Readonly<Record<BallMaterial, string>> = {
  wood: 'wooden',
  glass: 'glass',
  acrylic: 'acrylic',
  steel: 'steel',
}

/** A bearing in one line, so that nobody takes its figures for those of another. */
export function bearingName(of: {
  readonly count: number
  readonly material: BallMaterial
  readonly ballDiameter: Mm
  readonly bore: Mm
  readonly units: Units
  readonly terms: Terms
  readonly name: string | undefined
}): string {
  const { bearing, element } = of.terms
  const sizes = `${of.count} ${MATERIAL_ADJECTIVES[of.material]} ${element.many} of ${figure(of.ballDiameter, of.units)}, bore ${figure(of.bore, of.units)}`
  const line = of.terms === TERMS.radial ? sizes : `${capitalised(bearing)}: ${sizes}`
  return of.name === undefined ? line : `${of.name}: ${line}`
}

/** A button that follows a warning's advice. */
export const followSuggestion = (name: string, value: string): string => `Change ${name} to ${value}`

const ROUNDING = 'Round the outside up to'
const OUTSIDE = 'Outside diameter'

/** Names of fields for people, by their names in a request. */
const FIELD_NAMES: Readonly<Record<string, string | ((terms: Terms) => string)>> = {
  'balls.count': (terms) => elementWords(terms).count,
  'balls.diameter': (terms) => elementWords(terms).diameter,
  'balls.material': (terms) => elementWords(terms).material,
  'balls.length': 'Length of a roller',
  'balls.standardDeviation': ({ element }) => `Scatter of the ${element.many}`,
  'balls.diameters': ({ element }) => `Measured ${element.many}, with a comma between them`,
  bore: BEARING.bore,
  'outerRing.engagement': 'Depth in the outer ring, as a part of a ball',
  'outerRing.grooveDepth': 'Depth of the outer groove',
  'outerRing.groove.conformity': 'Radius of the outer groove, as a part of a ball',
  'outerRing.groove.grooveRadius': 'Radius of the outer groove',
  'outerRing.groove.cutterDiameter': 'Diameter of the cutter for the outer groove',
  'outerRing.wall': ({ raceway }) => `Wood behind the outer ${raceway.one}`,
  'outerRing.roundOutsideDiameterTo': ROUNDING,
  'outerRing.outsideDiameter': OUTSIDE,
  'innerRing.engagement': 'Depth in the inner ring, as a part of a ball',
  'innerRing.grooveDepth': 'Depth of the inner groove',
  'innerRing.groove.conformity': 'Radius of the inner groove, as a part of a ball',
  'innerRing.groove.grooveRadius': 'Radius of the inner groove',
  'innerRing.groove.cutterDiameter': 'Diameter of the cutter for the inner groove',
  'plates.engagement': 'Depth in each plate, as a part of a ball',
  'plates.grooveDepth': 'Depth of the groove',
  'plates.wall': 'Wood outside the groove',
  'plates.roundOutsideDiameterTo': ROUNDING,
  'plates.outsideDiameter': OUTSIDE,
  'plates.thickness': 'Thickness of each plate',
  'cage.web': 'Wood between two pockets',
  'cage.pitchDiameter': 'Circle of the ball centres',
  'cage.pocketClearance': 'Room round a ball in its pocket',
  'cage.landClearance': 'Room between the cage and each ring',
  'cage.width': 'Width of the cage',
  'groove.conformity': 'Groove radius, as a part of a ball',
  'groove.grooveRadius': 'Groove radius',
  'groove.cutterDiameter': 'Diameter of the cutter',
  ballGap: 'Gap to aim for',
  minBallGap: ({ element }) => `Smallest gap, with the last ${element.one} in`,
  maxBallGap: 'Largest good gap',
  radialInternalClearance: 'Play',
  finishAllowance: 'Thickness of the finish',
  width: 'Width',
  split: 'Ring that is split',
  shopDenominator: 'Finest fraction of an inch on your rule',
  ring: 'Ring on the lathe',
  readings: 'Readings',
  'woods.balls': ({ element }) => PLACE.elements(element.many),
  'making.name': PLACE.name,
  ...Object.fromEntries(
    Object.entries(PLACE.parts).flatMap(([part, label]) => [
      [`making.woods.${part}.species`, label],
      [`making.woods.${part}.construction`, `${label}: ${PLACE.construction}`],
    ]),
  ),
  'making.woods.balls.species': ({ element }) => PLACE.elements(element.many),
  'making.climate.today.relativeHumidity': `${PLACE.humidityOf} ${PLACE.today}`,
  'making.climate.relativeHumidity.min': `${PLACE.humidityOf} ${PLACE.driest}`,
  'making.climate.relativeHumidity.max': `${PLACE.humidityOf} ${PLACE.dampest}`,
  'making.climate.months': PLACE.byMonth,
}

/** The name of a field for people; undefined where no form has it. A month of a year has that month's name. */
export function fieldName(name: string, terms: Terms = TERMS.radial): string | undefined {
  const [, month, figure] = /^making\.climate\.months\.(\d+)\.(\w+)$/.exec(name) ?? []
  if (month !== undefined)
    return `${MONTH_NAMES[Number(month)]}, ${figure === 'temperature' ? PLACE.temperature : PLACE.humidity}`
  const found = Object.hasOwn(FIELD_NAMES, name) ? FIELD_NAMES[name] : undefined
  return typeof found === 'function' ? found(terms) : found
}

/** A choice of a field as a maker would say it. */
export const choiceName = (choice: string): string => CHOICE_NAMES[choice] ?? choice
const CHOICE_NAMES: Readonly<Record<string, string>> = {
  'inner-ring': 'inner ring',
  'outer-ring': 'outer ring',
  none: 'neither',
  true: 'yes',
  false: 'no',
  ...Object.fromEntries([8, 16, 32, 64, 128].map((parts) => [parts, `1/${parts} in`])),
}
