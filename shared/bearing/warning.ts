import type { OwnWarning } from '#shared/bearing/arrangements/facts.ts'
import type { Mm } from '#shared/units/length.ts'
import type { PartName, RingName } from './refusal.ts'
import type { Suggestion } from './suggestion.ts'
import type { Traits } from './traits.ts'

/** Warnings as facts. Words and units are added at the edge. */
export type WarningFacts =
  | OwnWarning
  | { readonly code: 'lands-touch'; readonly leastLandGap: Mm }
  | { readonly code: 'lands-nearly-touch'; readonly leastLandGap: Mm; readonly least: Mm }
  | { readonly code: 'outer-wall-thin'; readonly wall: Mm; readonly least: Mm }
  | { readonly code: 'inner-wall-thin'; readonly wall: Mm; readonly least: Mm }
  | { readonly code: 'no-room-for-screws'; readonly wall: Mm; readonly least: Mm }
  | { readonly code: 'groove-wider-than-ring'; readonly ring: RingName; readonly grooveWidth: Mm; readonly width: Mm }
  | { readonly code: 'shoulders-thin'; readonly ring: RingName; readonly shoulder: Mm; readonly least: Mm }
  | { readonly code: 'shallow-engagement'; readonly ring: PartName; readonly seatDepth: Mm; readonly least: Mm }
  | { readonly code: 'groove-past-middle'; readonly ring: PartName; readonly grooveDepth: Mm; readonly ballRadius: Mm }
  | {
      readonly code: 'rides-on-edges'
      readonly ring: PartName
      readonly grooveRadius: Mm
      readonly ballRadius: Mm
      readonly seatDepth: Mm
      readonly grooveDepth: Mm
    }
  | { readonly code: 'ball-wanders'; readonly ring: PartName; readonly grooveRadius: Mm; readonly most: Mm }
  | { readonly code: 'few-balls'; readonly count: number; readonly fewest: number }
  | {
      readonly code: 'cannot-assemble'
      readonly ballSet: Traits['ballSet']
      readonly count: number
      readonly mostBalls: number
      readonly roomBetweenLands: boolean
    }
  | { readonly code: 'gap-below-assembly-gap'; readonly ballGap: Mm; readonly assemblyGap: Mm }
  | { readonly code: 'band-below-assembly-gap'; readonly maxBallGap: Mm; readonly assemblyGap: Mm }
  | {
      readonly code: 'plugs-cannot-tell'
      readonly scatter: Mm
      readonly maxBallGap: Mm
      /** The chance of a gap above the largest where go enters, no-go does not and the last ball goes in. */
      readonly tooDeep: number
    }
  | { readonly code: 'no-play'; readonly play: Mm; readonly least: Mm }
  | {
      readonly code: 'shop-rounding-spoils-gap'
      readonly dimension: 'grooveBottomDiameter' | 'grooveCircleDiameter' | 'gaugeDiameter'
      readonly shop: string
      readonly shopError: Mm
      /** −Dw where the rule is so coarse that the balls but one would not go in. */
      readonly gapThere: Mm
      readonly least: Mm
      readonly most: Mm
    }

export type WarningCode = WarningFacts['code']

/** `note`: good to know; `risk`: often goes wrong; `fault`: will not work as it is. */
export type Severity = 'note' | 'risk' | 'fault'

/** A warning before anyone has looked for the one number that clears it. */
export interface Finding {
  readonly severity: Severity
  readonly path: string
  readonly facts: WarningFacts
  /** In the order in which to try them. None where no single number helps. */
  readonly remedies: readonly Suggestion[]
}

export interface Warning {
  readonly severity: Severity
  readonly path: string
  readonly facts: WarningFacts
  readonly suggestion?: Suggestion
}
