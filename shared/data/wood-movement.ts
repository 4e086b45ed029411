import type { SourceId } from './sources.ts'
import type { SpeciesId } from './species.ts'

/** How a wood moves across the grain, per size and per % of moisture content, the size being that at 10 %. */
export interface Movement {
  readonly radial: number
  readonly tangential: number
  /** Moisture content below which it moves at all [%]: 30, or 22 for woods that carry footnote b. */
  readonly saturation: 30 | 22
  readonly source: SourceId
}

/**
 * Wood Handbook Table 13-5, as printed; woods from outside North America from `timber-trade`, which does not say where
 * movement starts (30 % is taken). Left out are five imported woods whose printed shrinkage (Table 4-4) gives other
 * figures than those remembered (andiroba, avodire, khaya, limba, true mahogany), and pond pine, for the same reason.
 * Green ash, sweet birch, cedar elm and black maple share the row of their sister wood, as in print.
 */
const ROWS = {
  afrormosia: { radial: 0.0018, tangential: 0.0032, saturation: 30, source: 'timber-trade' },
  afzelia: { radial: 0.0011, tangential: 0.0022, saturation: 30, source: 'timber-trade' },
  'alder-red': { radial: 0.00151, tangential: 0.00256, saturation: 30, source: 'fpl-13-5' },
  angelique: { radial: 0.0018, tangential: 0.00312, saturation: 30, source: 'fpl-13-5-rederived' },
  'apitong-keruing': { radial: 0.00243, tangential: 0.00527, saturation: 22, source: 'fpl-13-5-rederived' },
  apple: { radial: 0.00205, tangential: 0.00376, saturation: 30, source: 'fpl-13-5' },
  'ash-black': { radial: 0.00172, tangential: 0.00274, saturation: 30, source: 'fpl-13-5' },
  'ash-european': { radial: 0.0021, tangential: 0.0038, saturation: 30, source: 'timber-trade' },
  'ash-green': { radial: 0.00169, tangential: 0.00274, saturation: 30, source: 'fpl-13-5' },
  'ash-oregon': { radial: 0.00141, tangential: 0.00285, saturation: 30, source: 'fpl-13-5' },
  'ash-pumpkin': { radial: 0.00126, tangential: 0.00219, saturation: 30, source: 'fpl-13-5' },
  'ash-white': { radial: 0.00169, tangential: 0.00274, saturation: 30, source: 'fpl-13-5' },
  'aspen-quaking': { radial: 0.00119, tangential: 0.00234, saturation: 30, source: 'fpl-13-5' },
  azobe: { radial: 0.0031, tangential: 0.004, saturation: 30, source: 'timber-trade' },
  baldcypress: { radial: 0.0013, tangential: 0.00216, saturation: 30, source: 'fpl-13-5-rederived' },
  balsa: { radial: 0.00102, tangential: 0.00267, saturation: 30, source: 'fpl-13-5-memory' },
  banak: { radial: 0.00158, tangential: 0.00312, saturation: 30, source: 'fpl-13-5-memory' },
  'basswood-american': { radial: 0.0023, tangential: 0.0033, saturation: 30, source: 'fpl-13-5' },
  'beech-american': { radial: 0.0019, tangential: 0.00431, saturation: 30, source: 'fpl-13-5' },
  'beech-european': { radial: 0.002, tangential: 0.0041, saturation: 30, source: 'timber-trade' },
  'birch-european': { radial: 0.0029, tangential: 0.0041, saturation: 30, source: 'timber-trade' },
  'birch-paper': { radial: 0.00219, tangential: 0.00304, saturation: 30, source: 'fpl-13-5' },
  'birch-river': { radial: 0.00162, tangential: 0.00327, saturation: 30, source: 'fpl-13-5' },
  'birch-sweet': { radial: 0.00256, tangential: 0.00338, saturation: 30, source: 'fpl-13-5' },
  'birch-yellow': { radial: 0.00256, tangential: 0.00338, saturation: 30, source: 'fpl-13-5' },
  'buckeye-yellow': { radial: 0.00123, tangential: 0.00285, saturation: 30, source: 'fpl-13-5' },
  butternut: { radial: 0.00116, tangential: 0.00223, saturation: 30, source: 'fpl-13-5' },
  'catalpa-northern': { radial: 0.00085, tangential: 0.00169, saturation: 30, source: 'fpl-13-5' },
  cativo: { radial: 0.00078, tangential: 0.00183, saturation: 30, source: 'fpl-13-5-memory' },
  'cedar-atlantic-white': { radial: 0.00099, tangential: 0.00187, saturation: 30, source: 'fpl-13-5-rederived' },
  'cedar-eastern-red': { radial: 0.00106, tangential: 0.00162, saturation: 30, source: 'fpl-13-5-rederived' },
  'cedar-incense': { radial: 0.00112, tangential: 0.0018, saturation: 30, source: 'fpl-13-5-rederived' },
  'cedar-northern-white': { radial: 0.00101, tangential: 0.00229, saturation: 22, source: 'fpl-13-5-rederived' },
  'cedar-port-orford': { radial: 0.00158, tangential: 0.00241, saturation: 30, source: 'fpl-13-5-rederived' },
  'cedar-western-red': { radial: 0.00111, tangential: 0.00234, saturation: 22, source: 'fpl-13-5-rederived' },
  'cedar-yellow': { radial: 0.00095, tangential: 0.00208, saturation: 30, source: 'fpl-13-5-rederived' },
  'cherry-black': { radial: 0.00126, tangential: 0.00248, saturation: 30, source: 'fpl-13-5' },
  'chestnut-american': { radial: 0.00116, tangential: 0.00234, saturation: 30, source: 'fpl-13-5' },
  'cottonwood-black': { radial: 0.00123, tangential: 0.00304, saturation: 30, source: 'fpl-13-5' },
  'cottonwood-eastern': { radial: 0.00133, tangential: 0.00327, saturation: 30, source: 'fpl-13-5' },
  cuangare: { radial: 0.00183, tangential: 0.00342, saturation: 30, source: 'fpl-13-5-memory' },
  'douglas-fir-coast-type': { radial: 0.00165, tangential: 0.00267, saturation: 30, source: 'fpl-13-5-rederived' },
  'douglas-fir-interior-north': { radial: 0.0013, tangential: 0.00241, saturation: 30, source: 'fpl-13-5-rederived' },
  'douglas-fir-interior-west': { radial: 0.00165, tangential: 0.00263, saturation: 30, source: 'fpl-13-5-rederived' },
  'elm-american': { radial: 0.00144, tangential: 0.00338, saturation: 30, source: 'fpl-13-5' },
  'elm-cedar': { radial: 0.00183, tangential: 0.00419, saturation: 30, source: 'fpl-13-5' },
  'elm-european': { radial: 0.002, tangential: 0.0023, saturation: 30, source: 'timber-trade' },
  'elm-rock': { radial: 0.00165, tangential: 0.00285, saturation: 30, source: 'fpl-13-5' },
  'elm-slippery': { radial: 0.00169, tangential: 0.00315, saturation: 30, source: 'fpl-13-5' },
  'elm-winged': { radial: 0.00183, tangential: 0.00419, saturation: 30, source: 'fpl-13-5' },
  'fir-balsam': { radial: 0.00099, tangential: 0.00241, saturation: 30, source: 'fpl-13-5-rederived' },
  'fir-california-red': { radial: 0.00155, tangential: 0.00278, saturation: 30, source: 'fpl-13-5-rederived' },
  'fir-noble': { radial: 0.00148, tangential: 0.00293, saturation: 30, source: 'fpl-13-5-rederived' },
  'fir-pacific-silver': { radial: 0.00151, tangential: 0.00327, saturation: 30, source: 'fpl-13-5-rederived' },
  'fir-silver': { radial: 0.0014, tangential: 0.0028, saturation: 30, source: 'timber-trade' },
  'fir-subalpine': { radial: 0.00088, tangential: 0.00259, saturation: 30, source: 'fpl-13-5-rederived' },
  'fir-white': { radial: 0.00112, tangential: 0.00245, saturation: 30, source: 'fpl-13-5' },
  greenheart: { radial: 0.0039, tangential: 0.0043, saturation: 22, source: 'fpl-13-5-memory' },
  hackberry: { radial: 0.00165, tangential: 0.00315, saturation: 30, source: 'fpl-13-5' },
  'hemlock-eastern': { radial: 0.00102, tangential: 0.00237, saturation: 30, source: 'fpl-13-5-rederived' },
  'hemlock-western': { radial: 0.00144, tangential: 0.00274, saturation: 30, source: 'fpl-13-5-rederived' },
  'hickory-pecan': { radial: 0.00169, tangential: 0.00315, saturation: 30, source: 'fpl-13-5' },
  'hickory-true': { radial: 0.00259, tangential: 0.00411, saturation: 30, source: 'fpl-13-5-memory' },
  'holly-american': { radial: 0.00165, tangential: 0.00353, saturation: 30, source: 'fpl-13-5-rederived' },
  honeylocust: { radial: 0.00144, tangential: 0.0023, saturation: 30, source: 'fpl-13-5' },
  iroko: { radial: 0.00153, tangential: 0.00205, saturation: 22, source: 'fpl-13-5-memory' },
  kokrodua: { radial: 0.00148, tangential: 0.00297, saturation: 22, source: 'fpl-13-5-memory' },
  'larch-european': { radial: 0.0014, tangential: 0.003, saturation: 30, source: 'timber-trade' },
  'larch-western': { radial: 0.00155, tangential: 0.00323, saturation: 30, source: 'fpl-13-5-rederived' },
  'lauan-dark-red': { radial: 0.00133, tangential: 0.00267, saturation: 30, source: 'fpl-13-5-memory' },
  'lauan-light-red': { radial: 0.00126, tangential: 0.00241, saturation: 30, source: 'fpl-13-5-memory' },
  'locust-black': { radial: 0.00158, tangential: 0.00252, saturation: 30, source: 'fpl-13-5' },
  'madrone-pacific': { radial: 0.00194, tangential: 0.00451, saturation: 30, source: 'fpl-13-5' },
  'magnolia-cucumbertree': { radial: 0.0018, tangential: 0.00312, saturation: 30, source: 'fpl-13-5' },
  'magnolia-southern': { radial: 0.00187, tangential: 0.0023, saturation: 30, source: 'fpl-13-5' },
  'magnolia-sweetbay': { radial: 0.00162, tangential: 0.00293, saturation: 30, source: 'fpl-13-5' },
  makore: { radial: 0.0022, tangential: 0.0027, saturation: 30, source: 'timber-trade' },
  'maple-bigleaf': { radial: 0.00126, tangential: 0.00248, saturation: 30, source: 'fpl-13-5' },
  'maple-black': { radial: 0.00165, tangential: 0.00353, saturation: 30, source: 'fpl-13-5' },
  'maple-red': { radial: 0.00137, tangential: 0.00289, saturation: 30, source: 'fpl-13-5' },
  'maple-silver': { radial: 0.00102, tangential: 0.00252, saturation: 30, source: 'fpl-13-5' },
  'maple-sugar': { radial: 0.00165, tangential: 0.00353, saturation: 30, source: 'fpl-13-5' },
  meranti: { radial: 0.00126, tangential: 0.00289, saturation: 30, source: 'fpl-13-5-memory' },
  'meranti-red': { radial: 0.0011, tangential: 0.0025, saturation: 30, source: 'timber-trade' },
  'meranti-yellow': { radial: 0.0012, tangential: 0.0043, saturation: 30, source: 'timber-trade' },
  muhuhu: { radial: 0.0025, tangential: 0.004, saturation: 30, source: 'timber-trade' },
  niangon: { radial: 0.0018, tangential: 0.0033, saturation: 30, source: 'timber-trade' },
  'oak-black': { radial: 0.00123, tangential: 0.0023, saturation: 30, source: 'fpl-13-5' },
  'oak-european': { radial: 0.0016, tangential: 0.0036, saturation: 30, source: 'timber-trade' },
  obeche: { radial: 0.00106, tangential: 0.00183, saturation: 30, source: 'fpl-13-5-memory' },
  okoume: { radial: 0.00194, tangential: 0.00212, saturation: 30, source: 'fpl-13-5-memory' },
  'parana-pine': { radial: 0.00137, tangential: 0.00278, saturation: 30, source: 'fpl-13-5-memory' },
  'persimmon-common': { radial: 0.00278, tangential: 0.00403, saturation: 30, source: 'fpl-13-5' },
  'pine-eastern-white': { radial: 0.00071, tangential: 0.00212, saturation: 30, source: 'fpl-13-5-rederived' },
  'pine-jack': { radial: 0.00126, tangential: 0.0023, saturation: 30, source: 'fpl-13-5-rederived' },
  'pine-jeffrey': { radial: 0.00148, tangential: 0.00234, saturation: 30, source: 'fpl-13-5-memory' },
  'pine-loblolly': { radial: 0.00165, tangential: 0.00259, saturation: 30, source: 'fpl-13-5-rederived' },
  'pine-lodgepole': { radial: 0.00148, tangential: 0.00234, saturation: 30, source: 'fpl-13-5-rederived' },
  'pine-longleaf': { radial: 0.00176, tangential: 0.00263, saturation: 30, source: 'fpl-13-5-rederived' },
  'pine-ponderosa': { radial: 0.00133, tangential: 0.00216, saturation: 30, source: 'fpl-13-5-rederived' },
  'pine-red': { radial: 0.0013, tangential: 0.00252, saturation: 30, source: 'fpl-13-5-rederived' },
  'pine-scots': { radial: 0.0019, tangential: 0.0036, saturation: 30, source: 'timber-trade' },
  'pine-shortleaf': { radial: 0.00158, tangential: 0.00271, saturation: 30, source: 'fpl-13-5-rederived' },
  'pine-slash': { radial: 0.00187, tangential: 0.00267, saturation: 30, source: 'fpl-13-5-rederived' },
  'pine-sugar': { radial: 0.00099, tangential: 0.00194, saturation: 30, source: 'fpl-13-5-rederived' },
  'pine-virginia': { radial: 0.00144, tangential: 0.00252, saturation: 30, source: 'fpl-13-5-rederived' },
  'pine-western-white': { radial: 0.00141, tangential: 0.00259, saturation: 30, source: 'fpl-13-5-rederived' },
  poplar: { radial: 0.0013, tangential: 0.0031, saturation: 30, source: 'timber-trade' },
  primavera: { radial: 0.00106, tangential: 0.0018, saturation: 30, source: 'fpl-13-5-memory' },
  ramin: { radial: 0.00133, tangential: 0.00308, saturation: 30, source: 'fpl-13-5-memory' },
  'red-oak-california': { radial: 0.00123, tangential: 0.0023, saturation: 30, source: 'fpl-13-5' },
  'red-oak-commercial': { radial: 0.00158, tangential: 0.00369, saturation: 30, source: 'fpl-13-5' },
  'red-oak-water-laurel-willow': { radial: 0.00151, tangential: 0.0035, saturation: 30, source: 'fpl-13-5' },
  'redwood-old-growth': { radial: 0.0012, tangential: 0.00205, saturation: 22, source: 'fpl-13-5-rederived' },
  'redwood-second-growth': { radial: 0.00101, tangential: 0.00229, saturation: 22, source: 'fpl-13-5-rederived' },
  'santa-maria': { radial: 0.00187, tangential: 0.00278, saturation: 30, source: 'fpl-13-5-memory' },
  sapele: { radial: 0.0024, tangential: 0.0032, saturation: 30, source: 'timber-trade' },
  sassafras: { radial: 0.00137, tangential: 0.00216, saturation: 30, source: 'fpl-13-5' },
  sipo: { radial: 0.002, tangential: 0.0025, saturation: 30, source: 'timber-trade' },
  'spanish-cedar': { radial: 0.00141, tangential: 0.00219, saturation: 30, source: 'fpl-13-5-memory' },
  'spruce-black': { radial: 0.00141, tangential: 0.00237, saturation: 30, source: 'fpl-13-5-rederived' },
  'spruce-engelmann': { radial: 0.0013, tangential: 0.00248, saturation: 30, source: 'fpl-13-5-rederived' },
  'spruce-norway': { radial: 0.0019, tangential: 0.0039, saturation: 30, source: 'timber-trade' },
  'spruce-red': { radial: 0.0013, tangential: 0.00274, saturation: 30, source: 'fpl-13-5-rederived' },
  'spruce-sitka': { radial: 0.00148, tangential: 0.00263, saturation: 30, source: 'fpl-13-5-rederived' },
  'spruce-white': { radial: 0.0013, tangential: 0.00274, saturation: 30, source: 'fpl-13-5-memory' },
  sweetgum: { radial: 0.00183, tangential: 0.00365, saturation: 30, source: 'fpl-13-5' },
  'sycamore-american': { radial: 0.00172, tangential: 0.00296, saturation: 30, source: 'fpl-13-5' },
  tamarack: { radial: 0.00126, tangential: 0.00259, saturation: 30, source: 'fpl-13-5-rederived' },
  tanoak: { radial: 0.00169, tangential: 0.00423, saturation: 30, source: 'fpl-13-5' },
  teak: { radial: 0.00101, tangential: 0.00186, saturation: 22, source: 'fpl-13-5-memory' },
  'tupelo-black': { radial: 0.00176, tangential: 0.00308, saturation: 30, source: 'fpl-13-5' },
  'tupelo-water': { radial: 0.00144, tangential: 0.00267, saturation: 30, source: 'fpl-13-5' },
  'walnut-black': { radial: 0.0019, tangential: 0.00274, saturation: 30, source: 'fpl-13-5' },
  'walnut-european': { radial: 0.0018, tangential: 0.0029, saturation: 30, source: 'timber-trade' },
  wenge: { radial: 0.0022, tangential: 0.0034, saturation: 30, source: 'timber-trade' },
  'white-oak-commercial': { radial: 0.0018, tangential: 0.00365, saturation: 30, source: 'fpl-13-5' },
  'white-oak-live': { radial: 0.0023, tangential: 0.00338, saturation: 30, source: 'fpl-13-5' },
  'white-oak-oregon-white': { radial: 0.00144, tangential: 0.00327, saturation: 30, source: 'fpl-13-5' },
  'white-oak-overcup': { radial: 0.00183, tangential: 0.00462, saturation: 30, source: 'fpl-13-5' },
  'willow-black': { radial: 0.00112, tangential: 0.00308, saturation: 30, source: 'fpl-13-5-rederived' },
  'yellow-poplar': { radial: 0.00158, tangential: 0.00289, saturation: 30, source: 'fpl-13-5-rederived' },
} as const satisfies Readonly<Partial<Record<SpeciesId, Movement>>>

export const MOVEMENT: Readonly<Partial<Record<SpeciesId, Movement>>> = ROWS

/** Along the grain, green to ovendry, normal wood shrinks 0.1 to 0.2 %: the middle, spread over 30 % of moisture. */
export const ALONG_THE_GRAIN = { perPercent: 0.0015 / 30, source: 'fpl-4-longitudinal' } as const

/** Plywood of balanced veneers, in its plane, both ways, per % of moisture content. */
export const PLY_IN_PLANE = { perPercent: 0.0002, source: 'fpl-plywood' } as const

/** Plywood in its thickness, where nothing holds the veneers: about as solid wood across the grain. */
export const PLY_THICKNESS = { perPercent: 0.003, source: 'fpl-plywood-thickness' } as const

/** Standard deviation of the movement of one board over that of its species. */
export const BOARD_VARIATION = { relative: 0.15, source: 'fpl-variation' } as const

/** Between wood that has dried and wood that took moisture up, at rest in the same air [%]. */
const HYSTERESIS_LOOP = 2.5
/** How far, at most, wood is damper or drier than air at rest with it would make it, by how it came there [%]: half of that. */
export const HYSTERESIS = {
  loop: HYSTERESIS_LOOP,
  moisture: HYSTERESIS_LOOP / 2,
  source: 'sorption-hysteresis',
} as const
