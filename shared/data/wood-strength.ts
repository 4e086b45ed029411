import type { SourceId } from './sources.ts'
import type { SpeciesId } from './species.ts'

/** Averages of small clear pieces at 12 % moisture content, in the units of print. */
export interface Strength {
  /** Ovendry mass over the volume at 12 % of moisture, relative to water. */
  readonly specificGravity?: number
  /** The same over the green volume: all that is printed for imported woods. */
  readonly greenSpecificGravity?: number
  /** Compression across the grain at the proportional limit [lbf/in2]. */
  readonly compressionPsi?: number
  /** Force that presses a ball of 0.444 in half its diameter into the side grain [lbf]. */
  readonly hardnessLbf?: number
  readonly source: SourceId
}

/** Wood Handbook Tables 5-3b and, for imported woods, 5-5b, as printed. */
const ROWS = {
  'alder-red': { specificGravity: 0.41, compressionPsi: 440, hardnessLbf: 590, source: 'fpl-5-3b' },
  'ash-black': { specificGravity: 0.49, compressionPsi: 760, hardnessLbf: 850, source: 'fpl-5-3b' },
  'ash-blue': { specificGravity: 0.58, compressionPsi: 1420, source: 'fpl-5-3b' },
  'ash-green': { specificGravity: 0.56, compressionPsi: 1310, hardnessLbf: 1200, source: 'fpl-5-3b' },
  'ash-oregon': { specificGravity: 0.55, compressionPsi: 1250, hardnessLbf: 1160, source: 'fpl-5-3b' },
  'ash-white': { specificGravity: 0.6, compressionPsi: 1160, hardnessLbf: 1320, source: 'fpl-5-3b' },
  'aspen-bigtooth': { specificGravity: 0.39, compressionPsi: 450, source: 'fpl-5-3b' },
  'aspen-quaking': { specificGravity: 0.38, compressionPsi: 370, hardnessLbf: 350, source: 'fpl-5-3b' },
  baldcypress: { specificGravity: 0.46, compressionPsi: 730, hardnessLbf: 510, source: 'fpl-5-3b' },
  'basswood-american': { specificGravity: 0.37, compressionPsi: 370, hardnessLbf: 410, source: 'fpl-5-3b' },
  'beech-american': { specificGravity: 0.64, compressionPsi: 1010, hardnessLbf: 1300, source: 'fpl-5-3b' },
  'birch-paper': { specificGravity: 0.55, compressionPsi: 600, hardnessLbf: 910, source: 'fpl-5-3b' },
  'birch-sweet': { specificGravity: 0.65, compressionPsi: 1080, hardnessLbf: 1470, source: 'fpl-5-3b' },
  'birch-yellow': { specificGravity: 0.62, compressionPsi: 970, hardnessLbf: 1260, source: 'fpl-5-3b' },
  butternut: { specificGravity: 0.38, compressionPsi: 460, hardnessLbf: 490, source: 'fpl-5-3b' },
  'cedar-atlantic-white': { specificGravity: 0.32, compressionPsi: 410, hardnessLbf: 350, source: 'fpl-5-3b' },
  'cedar-eastern-red': { specificGravity: 0.47, compressionPsi: 920, source: 'fpl-5-3b' },
  'cedar-incense': { specificGravity: 0.37, compressionPsi: 590, hardnessLbf: 470, source: 'fpl-5-3b' },
  'cedar-northern-white': { specificGravity: 0.31, compressionPsi: 310, hardnessLbf: 320, source: 'fpl-5-3b' },
  'cedar-port-orford': { specificGravity: 0.43, compressionPsi: 720, hardnessLbf: 630, source: 'fpl-5-3b' },
  'cedar-western-red': { specificGravity: 0.32, compressionPsi: 460, hardnessLbf: 350, source: 'fpl-5-3b' },
  'cedar-yellow': { specificGravity: 0.44, compressionPsi: 620, hardnessLbf: 580, source: 'fpl-5-3b' },
  'cherry-black': { specificGravity: 0.5, compressionPsi: 690, hardnessLbf: 950, source: 'fpl-5-3b' },
  'chestnut-american': { specificGravity: 0.43, compressionPsi: 620, hardnessLbf: 540, source: 'fpl-5-3b' },
  'cottonwood-balsam-poplar': { specificGravity: 0.34, compressionPsi: 300, source: 'fpl-5-3b' },
  'cottonwood-black': { specificGravity: 0.35, compressionPsi: 300, hardnessLbf: 350, source: 'fpl-5-3b' },
  'cottonwood-eastern': { specificGravity: 0.4, compressionPsi: 380, hardnessLbf: 430, source: 'fpl-5-3b' },
  'douglas-fir-coast-type': { specificGravity: 0.48, compressionPsi: 800, hardnessLbf: 710, source: 'fpl-5-3b' },
  'douglas-fir-interior-north': { specificGravity: 0.48, compressionPsi: 770, hardnessLbf: 600, source: 'fpl-5-3b' },
  'douglas-fir-interior-south': { specificGravity: 0.46, compressionPsi: 740, hardnessLbf: 510, source: 'fpl-5-3b' },
  'douglas-fir-interior-west': { specificGravity: 0.5, compressionPsi: 760, hardnessLbf: 660, source: 'fpl-5-3b' },
  'elm-american': { specificGravity: 0.5, compressionPsi: 690, hardnessLbf: 830, source: 'fpl-5-3b' },
  'elm-rock': { specificGravity: 0.63, compressionPsi: 1230, hardnessLbf: 1320, source: 'fpl-5-3b' },
  'elm-slippery': { specificGravity: 0.53, compressionPsi: 820, hardnessLbf: 860, source: 'fpl-5-3b' },
  'fir-balsam': { specificGravity: 0.35, compressionPsi: 400, hardnessLbf: 380, source: 'fpl-5-3b' },
  'fir-california-red': { specificGravity: 0.38, compressionPsi: 610, hardnessLbf: 500, source: 'fpl-5-3b' },
  'fir-grand': { specificGravity: 0.37, compressionPsi: 500, hardnessLbf: 490, source: 'fpl-5-3b' },
  'fir-noble': { specificGravity: 0.39, compressionPsi: 520, hardnessLbf: 410, source: 'fpl-5-3b' },
  'fir-pacific-silver': { specificGravity: 0.43, compressionPsi: 450, hardnessLbf: 430, source: 'fpl-5-3b' },
  'fir-subalpine': { specificGravity: 0.32, compressionPsi: 390, hardnessLbf: 350, source: 'fpl-5-3b' },
  'fir-white': { specificGravity: 0.39, compressionPsi: 530, hardnessLbf: 480, source: 'fpl-5-3b' },
  hackberry: { specificGravity: 0.53, compressionPsi: 890, hardnessLbf: 880, source: 'fpl-5-3b' },
  'hemlock-eastern': { specificGravity: 0.4, compressionPsi: 650, hardnessLbf: 500, source: 'fpl-5-3b' },
  'hemlock-mountain': { specificGravity: 0.45, compressionPsi: 860, hardnessLbf: 680, source: 'fpl-5-3b' },
  'hemlock-western': { specificGravity: 0.45, compressionPsi: 550, hardnessLbf: 540, source: 'fpl-5-3b' },
  'hickory-pecan': { specificGravity: 0.66, compressionPsi: 1720, hardnessLbf: 1820, source: 'fpl-5-3b' },
  'hickory-pecan-bitternut': { specificGravity: 0.66, compressionPsi: 1680, source: 'fpl-5-3b' },
  'hickory-pecan-nutmeg': { specificGravity: 0.6, compressionPsi: 1570, source: 'fpl-5-3b' },
  'hickory-pecan-water': { specificGravity: 0.62, compressionPsi: 1550, source: 'fpl-5-3b' },
  'hickory-true': { specificGravity: 0.72, compressionPsi: 1760, hardnessLbf: 1880, source: 'fpl-5-3b' },
  'hickory-true-mockernut': { specificGravity: 0.72, compressionPsi: 1730, hardnessLbf: 1970, source: 'fpl-5-3b' },
  'hickory-true-pignut': { specificGravity: 0.75, compressionPsi: 1980, hardnessLbf: 2140, source: 'fpl-5-3b' },
  'hickory-true-shellbark': { specificGravity: 0.69, compressionPsi: 1800, hardnessLbf: 1810, source: 'fpl-5-3b' },
  honeylocust: { compressionPsi: 1840, hardnessLbf: 1580, source: 'fpl-5-3b' },
  khaya: { greenSpecificGravity: 0.42, hardnessLbf: 830, source: 'fpl-5-5b' },
  'larch-western': { specificGravity: 0.52, compressionPsi: 930, hardnessLbf: 830, source: 'fpl-5-3b' },
  'lauan-dark-red': { greenSpecificGravity: 0.46, hardnessLbf: 780, source: 'fpl-5-5b' },
  'lauan-light-red': { greenSpecificGravity: 0.34, hardnessLbf: 460, source: 'fpl-5-5b' },
  lignumvitae: { greenSpecificGravity: 1.05, hardnessLbf: 4500, source: 'fpl-5-5b' },
  limba: { greenSpecificGravity: 0.38, hardnessLbf: 490, source: 'fpl-5-5b' },
  'locust-black': { specificGravity: 0.69, compressionPsi: 1830, hardnessLbf: 1700, source: 'fpl-5-3b' },
  'magnolia-cucumbertree': { specificGravity: 0.48, compressionPsi: 570, hardnessLbf: 700, source: 'fpl-5-3b' },
  'magnolia-southern': { specificGravity: 0.5, compressionPsi: 860, hardnessLbf: 1020, source: 'fpl-5-3b' },
  'mahogany-true': { greenSpecificGravity: 0.45, hardnessLbf: 800, source: 'fpl-5-5b' },
  'maple-bigleaf': { specificGravity: 0.48, compressionPsi: 750, hardnessLbf: 850, source: 'fpl-5-3b' },
  'maple-black': { specificGravity: 0.57, compressionPsi: 1020, hardnessLbf: 1180, source: 'fpl-5-3b' },
  'maple-red': { specificGravity: 0.54, compressionPsi: 1000, hardnessLbf: 950, source: 'fpl-5-3b' },
  'maple-silver': { specificGravity: 0.47, compressionPsi: 740, hardnessLbf: 700, source: 'fpl-5-3b' },
  'maple-sugar': { specificGravity: 0.63, compressionPsi: 1470, hardnessLbf: 1450, source: 'fpl-5-3b' },
  'oak-black': { specificGravity: 0.61, compressionPsi: 930, hardnessLbf: 1210, source: 'fpl-5-3b' },
  'oak-red-cherrybark': { specificGravity: 0.68, compressionPsi: 1250, hardnessLbf: 1480, source: 'fpl-5-3b' },
  'oak-red-laurel': { specificGravity: 0.63, compressionPsi: 1060, hardnessLbf: 1210, source: 'fpl-5-3b' },
  'oak-red-pin': { specificGravity: 0.63, compressionPsi: 1020, hardnessLbf: 1510, source: 'fpl-5-3b' },
  'oak-red-scarlet': { specificGravity: 0.67, compressionPsi: 1120, hardnessLbf: 1400, source: 'fpl-5-3b' },
  'oak-red-southern-red': { specificGravity: 0.59, compressionPsi: 870, hardnessLbf: 1060, source: 'fpl-5-3b' },
  'oak-red-willow': { specificGravity: 0.69, compressionPsi: 1130, hardnessLbf: 1460, source: 'fpl-5-3b' },
  'oak-white-bur': { specificGravity: 0.64, compressionPsi: 1200, hardnessLbf: 1370, source: 'fpl-5-3b' },
  'oak-white-chestnut': { specificGravity: 0.66, compressionPsi: 840, hardnessLbf: 1130, source: 'fpl-5-3b' },
  'oak-white-post': { specificGravity: 0.67, compressionPsi: 1430, hardnessLbf: 1360, source: 'fpl-5-3b' },
  'oak-white-swamp-chestnut': { specificGravity: 0.67, compressionPsi: 1110, hardnessLbf: 1240, source: 'fpl-5-3b' },
  'oak-white-swamp-white': { specificGravity: 0.72, compressionPsi: 1190, hardnessLbf: 1620, source: 'fpl-5-3b' },
  obeche: { greenSpecificGravity: 0.3, hardnessLbf: 430, source: 'fpl-5-5b' },
  okoume: { greenSpecificGravity: 0.33, source: 'fpl-5-5b' },
  'pine-caribbean': { greenSpecificGravity: 0.68, hardnessLbf: 1240, source: 'fpl-5-5b' },
  'pine-eastern-white': { specificGravity: 0.35, compressionPsi: 440, hardnessLbf: 380, source: 'fpl-5-3b' },
  'pine-jack': { specificGravity: 0.43, compressionPsi: 580, hardnessLbf: 570, source: 'fpl-5-3b' },
  'pine-loblolly': { specificGravity: 0.51, compressionPsi: 790, hardnessLbf: 690, source: 'fpl-5-3b' },
  'pine-lodgepole': { specificGravity: 0.41, compressionPsi: 610, hardnessLbf: 480, source: 'fpl-5-3b' },
  'pine-longleaf': { specificGravity: 0.59, compressionPsi: 960, hardnessLbf: 870, source: 'fpl-5-3b' },
  'pine-pitch': { specificGravity: 0.52, compressionPsi: 820, source: 'fpl-5-3b' },
  'pine-pond': { specificGravity: 0.56, compressionPsi: 910, source: 'fpl-5-3b' },
  'pine-ponderosa': { specificGravity: 0.4, compressionPsi: 580, hardnessLbf: 460, source: 'fpl-5-3b' },
  'pine-radiata': { greenSpecificGravity: 0.42, hardnessLbf: 750, source: 'fpl-5-5b' },
  'pine-red': { specificGravity: 0.46, compressionPsi: 600, hardnessLbf: 560, source: 'fpl-5-3b' },
  'pine-sand': { specificGravity: 0.48, compressionPsi: 836, source: 'fpl-5-3b' },
  'pine-shortleaf': { specificGravity: 0.51, compressionPsi: 820, hardnessLbf: 690, source: 'fpl-5-3b' },
  'pine-slash': { specificGravity: 0.59, compressionPsi: 1020, source: 'fpl-5-3b' },
  'pine-spruce': { specificGravity: 0.44, compressionPsi: 730, hardnessLbf: 660, source: 'fpl-5-3b' },
  'pine-sugar': { specificGravity: 0.36, compressionPsi: 500, hardnessLbf: 380, source: 'fpl-5-3b' },
  'pine-virginia': { specificGravity: 0.48, compressionPsi: 910, hardnessLbf: 740, source: 'fpl-5-3b' },
  'pine-western-white': { specificGravity: 0.38, compressionPsi: 470, hardnessLbf: 420, source: 'fpl-5-3b' },
  primavera: { greenSpecificGravity: 0.4, hardnessLbf: 660, source: 'fpl-5-5b' },
  purpleheart: { greenSpecificGravity: 0.67, hardnessLbf: 1860, source: 'fpl-5-5b' },
  ramin: { greenSpecificGravity: 0.52, hardnessLbf: 1300, source: 'fpl-5-5b' },
  'red-oak-commercial': { specificGravity: 0.63, compressionPsi: 1010, hardnessLbf: 1290, source: 'fpl-5-3b' },
  'red-oak-water-laurel-willow': { specificGravity: 0.63, compressionPsi: 1020, hardnessLbf: 1190, source: 'fpl-5-3b' },
  'redwood-old-growth': { specificGravity: 0.4, compressionPsi: 700, hardnessLbf: 480, source: 'fpl-5-3b' },
  'redwood-second-growth': { specificGravity: 0.35, compressionPsi: 520, hardnessLbf: 420, source: 'fpl-5-3b' },
  'rosewood-brazilian': { greenSpecificGravity: 0.8, hardnessLbf: 2720, source: 'fpl-5-5b' },
  'rosewood-indian': { greenSpecificGravity: 0.75, hardnessLbf: 3170, source: 'fpl-5-5b' },
  'santa-maria': { greenSpecificGravity: 0.52, hardnessLbf: 1150, source: 'fpl-5-5b' },
  sapele: { greenSpecificGravity: 0.55, hardnessLbf: 1510, source: 'fpl-5-5b' },
  sassafras: { specificGravity: 0.46, compressionPsi: 850, source: 'fpl-5-3b' },
  'spanish-cedar': { greenSpecificGravity: 0.41, hardnessLbf: 600, source: 'fpl-5-5b' },
  'spruce-black': { specificGravity: 0.42, compressionPsi: 550, hardnessLbf: 530, source: 'fpl-5-3b' },
  'spruce-engelmann': { specificGravity: 0.35, compressionPsi: 410, hardnessLbf: 390, source: 'fpl-5-3b' },
  'spruce-red': { specificGravity: 0.4, compressionPsi: 550, hardnessLbf: 530, source: 'fpl-5-3b' },
  'spruce-sitka': { specificGravity: 0.4, compressionPsi: 580, hardnessLbf: 510, source: 'fpl-5-3b' },
  'spruce-white': { specificGravity: 0.36, compressionPsi: 430, hardnessLbf: 410, source: 'fpl-5-3b' },
  sweetgum: { specificGravity: 0.52, compressionPsi: 620, hardnessLbf: 850, source: 'fpl-5-3b' },
  'sycamore-american': { specificGravity: 0.49, compressionPsi: 700, hardnessLbf: 770, source: 'fpl-5-3b' },
  tamarack: { specificGravity: 0.53, compressionPsi: 800, hardnessLbf: 590, source: 'fpl-5-3b' },
  teak: { greenSpecificGravity: 0.55, hardnessLbf: 1000, source: 'fpl-5-5b' },
  'tupelo-black': { specificGravity: 0.5, compressionPsi: 930, hardnessLbf: 810, source: 'fpl-5-3b' },
  'tupelo-water': { specificGravity: 0.5, compressionPsi: 870, hardnessLbf: 880, source: 'fpl-5-3b' },
  'walnut-black': { specificGravity: 0.55, compressionPsi: 1010, hardnessLbf: 1010, source: 'fpl-5-3b' },
  'white-oak-commercial': { specificGravity: 0.68, compressionPsi: 1070, hardnessLbf: 1360, source: 'fpl-5-3b' },
  'white-oak-live': { specificGravity: 0.88, compressionPsi: 2840, source: 'fpl-5-3b' },
  'white-oak-overcup': { specificGravity: 0.63, compressionPsi: 810, hardnessLbf: 1190, source: 'fpl-5-3b' },
  'willow-black': { specificGravity: 0.39, compressionPsi: 430, source: 'fpl-5-3b' },
  'yellow-poplar': { specificGravity: 0.42, compressionPsi: 500, hardnessLbf: 540, source: 'fpl-5-3b' },
} as const satisfies Readonly<Partial<Record<SpeciesId, Strength>>>

export const STRENGTH: Readonly<Partial<Record<SpeciesId, Strength>>> = ROWS

/**
 * How far single boards lie from the average of their wood: standard deviation over mean. And the share of a strength that is left
 * under a load that stays for ten years, and under one that comes back some million times.
 */
export const SCATTER = {
  hardness: { variation: 0.2, source: 'fpl-5-6' },
  underLastingLoad: { share: 0.6, source: 'madison-curve' },
  underRepeatedLoad: { share: 0.6, source: 'wood-fatigue' },
} as const

/** A pound-force in newtons, and a pound-force per square inch in megapascals: both exact by definition, rounded. */
export const NEWTONS_PER_LBF = 4.4482216152605
export const MPA_PER_PSI = 0.00689475729316836

/**
 * Stiffness across the grain over stiffness along it, from pith to bark and along the rings: about the middle of the
 * common woods of each group. Single woods differ by a third.
 */
export const ACROSS_OVER_ALONG = {
  hardwood: { radial: 0.12, tangential: 0.065, source: 'fpl-5-1' },
  softwood: { radial: 0.09, tangential: 0.06, source: 'fpl-5-1' },
} as const
