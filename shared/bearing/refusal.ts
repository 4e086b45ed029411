import type { OwnPart, OwnRefusal } from '#shared/bearing/arrangements/facts.ts'
import type { Mm } from '#shared/units/length.ts'

export type RingName = 'outerRing' | 'innerRing'
/** Parts with a groove. */
export type PartName = RingName | OwnPart

/** Why no such bearing can exist: facts only. Words and units are made at the edge. */
export type Refusal =
  | OwnRefusal
  | { readonly code: 'bore-meets-groove'; readonly path: string; readonly given: Mm; readonly below: Mm }
  | { readonly code: 'no-room-inside'; readonly path: string; readonly ballCount: number }
  | { readonly code: 'wall-below-zero'; readonly path: string; readonly given: Mm; readonly above: Mm }
  | {
      readonly code: 'groove-undercut'
      readonly path: string
      readonly ring: PartName
      readonly depth: Mm
      readonly grooveRadius: Mm
    }
  | { readonly code: 'lands-overlap'; readonly path: string; readonly overlap: Mm }
  | { readonly code: 'gap-takes-another-ball'; readonly path: string; readonly given: Mm; readonly below: Mm }
  | { readonly code: 'gap-band-reversed'; readonly path: string; readonly min: Mm; readonly max: Mm }
  | { readonly code: 'gap-outside-band'; readonly path: string; readonly given: Mm; readonly min: Mm; readonly max: Mm }
  | { readonly code: 'play-lets-balls-out'; readonly path: string; readonly given: Mm; readonly below: Mm }
  | { readonly code: 'finish-fills-groove'; readonly path: string; readonly given: Mm; readonly below: Mm }
  | { readonly code: 'finish-leaves-no-wood'; readonly path: string; readonly given: Mm; readonly below: Mm }
  | { readonly code: 'beyond-bounds'; readonly path: string; readonly given: Mm; readonly min: Mm; readonly max: Mm }
  | { readonly code: 'not-of-arrangement'; readonly path: string; readonly arrangement: string }
  | {
      readonly code: 'not-answered'
      readonly path: string
      readonly arrangement: string
      readonly question: string
    }
  | { readonly code: 'other-balls-measured'; readonly path: string; readonly middle: Mm; readonly diameter: Mm }
  | { readonly code: 'too-few-measured'; readonly path: string; readonly given: number; readonly needed: number }

/** Why a question about a bearing has no answer: what speaks against its design, and what against the question itself. */
export interface Refused<Own> {
  /** Paths are those of the design. */
  readonly ofDesign: readonly Refusal[]
  /** Paths are those of the whole input. */
  readonly ofQuestion: readonly Own[]
}

export const refusedDesign = (ofDesign: readonly Refusal[]): Refused<never> => ({ ofDesign, ofQuestion: [] })
export const refusedQuestion = <Own>(ofQuestion: readonly Own[]): Refused<Own> => ({ ofDesign: [], ofQuestion })
