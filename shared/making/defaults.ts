import type { Default } from '#shared/bearing/field.ts'
import { plain, trade } from '#shared/bearing/fields.ts'
import type { Allowances, MakingInput } from '#shared/bearing/making-input.ts'
import type { Method } from '#shared/bearing/method.ts'
import { wholeClimate, wholeWoods } from '#shared/bearing/whole-year.ts'
import { inches, mm, type Units } from '#shared/units/length.ts'

/** Fields without a usual value, or with one that follows from the ring. */
type LeftOpen = 'name' | 'woods' | 'climate' | 'boards' | 'screws' | 'chuck' | 'swing' | 'mounting'

/** The same with all else filled in. */
export type ResolvedMaking = Required<Omit<MakingInput, LeftOpen | 'allowances'>> &
  Pick<MakingInput, LeftOpen> & { readonly allowances: Allowances }

/** Common practice, no source: a size in inches, and what one takes in millimetres. */
const USUAL: Readonly<Record<Units, Pick<ResolvedMaking, 'allowances' | 'boardLength'>>> = {
  in: {
    boardLength: inches(96),
    allowances: {
      turning: inches(1 / 4),
      side: mm(0),
      sawKerf: inches(1 / 16),
      miterKerf: inches(1 / 8),
      entryHole: inches(3 / 8),
    },
  },
  mm: {
    boardLength: mm(2400),
    allowances: {
      turning: mm(6),
      side: mm(0),
      sawKerf: mm(1.5),
      miterKerf: mm(3),
      entryHole: mm(10),
    },
  },
}

export const USUAL_METHOD: Method = 'saw-and-lathe'
const NO_KERF = mm(0)

/** Why each of them, by its JSON pointer. The screws' follow from the ring. */
export const MAKING_DEFAULTS = {
  '/method': trade(USUAL_METHOD, 'the machines that most makers have'),
  '/lumber': trade('hardwood', 'most bearings are cut from hardwood'),
  '/boardLength': trade('96 in or 2400 mm', 'a usual length of board'),
  '/allowances/turning': trade('1/4 in or 6 mm', 'enough to turn a sawn blank round'),
  '/allowances/side': plain('0', 'the sides stay as planed'),
  '/allowances/sawKerf': trade('1/16 in or 1.5 mm', 'the kerf of a narrow blade that cuts circles'),
  '/allowances/miterKerf': trade('1/8 in or 3 mm', 'the kerf of a table saw'),
  '/allowances/entryHole': trade('3/8 in or 10 mm', 'a scroll saw blade or jigsaw blade goes in'),
  '/kerf': plain('0', 'the line itself is cut, and what it is for measures as drawn'),
  '/mounting/turns': plain('inner-ring', 'a shaft turns in a ring that stands still'),
  '/mounting/drive': plain('crank', 'a handle in the wall of the ring'),
  '/mounting/shaft/diameter': plain('what the bore takes', 'the bore less what this way of holding wants'),
  '/mounting/shaft/material': trade(
    'steel up to 50 mm, and wood above',
    'a bolt or a bright bar, and a turned shaft where it would be heavy',
  ),
  '/mounting/shaft/hold': trade('glued', 'it holds any shaft and needs no more parts'),
  '/mounting/housing/thickness': plain('the width of the ring', 'the ring is flush with the board'),
  '/mounting/housing/hold': trade('glued', 'it holds any ring and needs no more parts'),
  '/screws/count': trade('4, 6 or 8 by the size of the ring', 'the joint stays shut between the screws'),
  '/screws/metricDiameter': trade(
    'the thickest for which there is wood',
    'the thickest screw that leaves enough wood beside it',
  ),
  '/screws/gauge': trade(
    'the thickest for which there is wood',
    'the thickest screw that leaves enough wood beside it',
  ),
} as const satisfies Readonly<Record<string, Default>>

/** The same of a plate, where it differs. */
export const PLATE_DEFAULTS = {
  '/mounting/housing/thickness': plain('the thickness of a plate', 'a board as thick as the plate takes its screws'),
  '/mounting/housing/hold': trade('screwed, or glued where no screw fits', 'a plate on screws comes off again'),
} as const satisfies Readonly<Record<string, Default>>

/** A plan with every default filled in that does not follow from the ring. */
export const resolveMaking = (input: MakingInput, units: Units): ResolvedMaking => ({
  method: USUAL_METHOD,
  lumber: 'hardwood',
  kerf: NO_KERF,
  ...USUAL[units],
  ...input,
  ...(input.woods && { woods: wholeWoods(input.woods) }),
  ...(input.climate && { climate: wholeClimate(input.climate) }),
  allowances: { ...USUAL[units].allowances, ...input.allowances },
})

/** Why a default that follows from the season is taken. */
export const SEASON_DEFAULT: Default = {
  stated: 'what the season asks for',
  reason: 'what the bearing needs to run all year in `making.climate`',
  standing: 'derived here',
}
