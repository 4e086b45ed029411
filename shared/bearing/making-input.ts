import { type Mm, mm } from '#shared/units/length.ts'
import type { Scale } from '#shared/units/temperature.ts'
import type { Construction } from '#shared/wood/construction.ts'
import { LENGTH, LENGTH_OR_NONE } from './field.ts'
import type { Method } from './method.ts'
import type { MountingInput } from './mounting-input.ts'
import type { WoodPart } from './wood-parts.ts'

export const LUMBERS = ['hardwood', 'softwood'] as const
/** Which tables of sizes and pilot holes count. */
export type Lumber = (typeof LUMBERS)[number]

/** A part's wood as a maker states it: without a climate a part may state its pieces alone. */
export interface WoodInput {
  readonly construction?: Construction
  readonly segments?: { readonly count: number }
  readonly species?: string
}
export type WoodsInput = { readonly [Part in WoodPart]?: WoodInput } & { readonly balls?: { readonly species: string } }

/** Of a laser, a water jet or a fine saw: a wider cutter rounds the corners that gauges have. Common practice, no source. */
export const MOST_KERF = mm(1)

interface Range {
  readonly min: number
  readonly max: number
}

/** The year as a maker states it, in one of three ways; temperatures in the scale that is stated. */
export interface ClimateInput {
  readonly temperatureScale?: Scale
  readonly today: {
    readonly temperature?: number
    readonly relativeHumidity?: number
    readonly moistureContent?: number
  }
  readonly temperature?: Range
  readonly relativeHumidity?: Range
  readonly moistureContent?: Range
  readonly months?: readonly {
    readonly name: string
    readonly temperature: number
    readonly relativeHumidity: number
  }[]
}

/** Wood left on a blank, and wood that the saws take away. */
export interface Allowances {
  /** Left for the lathe on each cylinder that is turned, by radius. */
  readonly turning: Mm
  /** Left on each side of a ring, along the axis. */
  readonly side: Mm
  /** Kerf of the saw that cuts the circles. */
  readonly sawKerf: Mm
  /** Kerf of the saw that cuts miters. */
  readonly miterKerf: Mm
  /** Diameter of the hole through which a saw enters. */
  readonly entryHole: Mm
}

/** A board that the maker has, planed. */
interface BoardInput {
  readonly thickness: Mm
  readonly width: Mm
  readonly length: Mm
}

/** The effect of a year of `climate` on a bearing of `woods`. */
export interface Seasoned {
  /** JSON pointers of the values that no caller stated: they follow from the season. */
  readonly paths: readonly string[]
  /** Chances over what is not known when the bearing is made. */
  readonly goesTogether: number
  readonly runsAllYear: number
  readonly knocks: number
  /** Advice in words; absent if it runs all year without a rattle. */
  readonly advice?: string
  /** The segmented parts whose joints open in the year, in words. */
  readonly openJoints: readonly { readonly part: WoodPart; readonly message: string }[]
}

/** How a bearing is made and where it lives: the one place for it in a design's input. */
export interface MakingInput {
  /** The maker's own name for the bearing. */
  readonly name?: string
  readonly method?: Method
  readonly woods?: WoodsInput
  readonly climate?: ClimateInput
  readonly lumber?: Lumber
  /** Length of the boards that are bought. */
  readonly boardLength?: Mm
  /** The boards on hand, instead of sizes that are sold. */
  readonly boards?: readonly BoardInput[]
  readonly allowances?: Partial<Allowances>
  /** Screws of the ring that comes apart, or of cheeks. */
  readonly screws?: {
    readonly count?: number
    readonly gauge?: number
    /** Instead of a gauge [mm]. */
    readonly metricDiameter?: number
  }
  /** Width of the beam or cutter that follows a file for a machine: outlines are moved by half of it. */
  readonly kerf?: Mm
  /** Diameters that the chuck grips from the outside. */
  readonly chuck?: { readonly min: Mm; readonly max: Mm }
  /** Largest diameter that turns over the bed of the lathe. */
  readonly swing?: Mm
  readonly mounting?: MountingInput
}

/** Every length of a plan with its place under `making`, and what it may be. */
export const makingLengths = ({ allowances = {}, boards = [], chuck, mounting, ...input }: MakingInput) =>
  [
    ['/boardLength', input.boardLength, LENGTH],
    ...boards.flatMap((board, i) =>
      (['thickness', 'width', 'length'] as const).map((name) => [`/boards/${i}/${name}`, board[name], LENGTH] as const),
    ),
    ['/allowances/turning', allowances.turning, LENGTH_OR_NONE],
    ['/allowances/side', allowances.side, LENGTH_OR_NONE],
    ['/allowances/sawKerf', allowances.sawKerf, LENGTH_OR_NONE],
    ['/allowances/miterKerf', allowances.miterKerf, LENGTH_OR_NONE],
    ['/allowances/entryHole', allowances.entryHole, LENGTH],
    ['/kerf', input.kerf, LENGTH_OR_NONE],
    ['/chuck/min', chuck?.min, LENGTH],
    ['/chuck/max', chuck?.max, LENGTH],
    ['/swing', input.swing, LENGTH],
    ['/mounting/shaft/diameter', mounting?.shaft?.diameter, LENGTH],
    ['/mounting/housing/thickness', mounting?.housing?.thickness, LENGTH],
  ] as const
