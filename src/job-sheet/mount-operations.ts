import { type Design, isOfPlates, woodPartsOf } from '#shared/bearing/arrangements.ts'
import { type Hold, turningRing } from '#shared/bearing/mounting-input.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import type { DriveSeat, Holder, Mounting } from '#shared/making/mounting.ts'
import type { Shut } from '#shared/making/opening.ts'
import type { PlateMounting } from '#shared/making/plate-mounting.ts'
import type { CautionCode } from '#src/words/caution.ts'
import * as words from '#src/words/job-sheet/mount.ts'
import { driveNames, holderNames, SIZES } from '#src/words/job-sheet/sizes.ts'
import { MEASURED_LATER } from '#src/words/job-sheet/workshop.ts'
import { screwSizes } from './joint-operations.ts'
import { type AnyJob, arrangementOf, type Operation, type RingJob, type Size, termsOf, unitsOf } from './operation.ts'

/* The seats on the shaft and in the housing. Common practice, no source, as all of the sheet. */

/** The last operation of making, if the plan states one; none for plates, which lie on each other. */
export function mount(job: AnyJob<Design>, loose: RingName | undefined, shut: Shut | undefined): readonly Operation[] {
  const { mounting } = job
  if (mounting === undefined) return []
  const { shaft, housing, drive } = mounting
  const saws = [shaft.holder, housing?.holder].some((holder) => holder?.kind === 'pin')
  const drills = shaft.holder !== undefined || housing?.holder !== undefined || drive?.holeDiameter !== undefined
  return [
    {
      ...words.mount(
        { ...mounting, drills, loose, shut, usual: usualIn(job.design), measured: MEASURED_LATER[arrangementOf(job)] },
        unitsOf(job),
        termsOf(job),
      ),
      id: 'mount',
      part: 'both',
      sizes: [...shaftSizes(mounting), ...housingSizes(mounting), ...(drive ? driveSizes(drive) : [])],
      cautions: [
        ...(saws ? ['sawing' as const] : []),
        ...(drills ? ['drilling' as const] : []),
        'turning',
        'dust',
        ...epoxyFor(shaft.hold, housing?.hold),
      ],
      readings: [],
    },
  ]
}

const epoxyFor = (...holds: readonly (Hold | undefined)[]): readonly CautionCode[] =>
  holds.includes('glued') ? ['epoxy'] : []

/** What the plan leaves open of the mounting, so that the usual stands for it. */
function usualIn(design: Design): readonly words.LeftOpen[] {
  const { input } = design.bearing.resolved
  const { mounting = {}, woods = {}, climate } = input.making ?? {}
  const { shaft = {}, housing = {} } = mounting
  const hasHousing = isOfPlates(design) || turningRing(mounting) === 'inner-ring'
  const isWoodOpen = woodPartsOf(input).some((part) => woods[part] === undefined && part !== 'cage')
  return [
    ...(shaft.diameter === undefined ? (['shaft-diameter'] as const) : []),
    ...(shaft.hold === undefined ? (['shaft-hold'] as const) : []),
    ...(hasHousing && housing.thickness === undefined ? (['housing-thickness'] as const) : []),
    ...(hasHousing && housing.hold === undefined ? (['housing-hold'] as const) : []),
    ...(isWoodOpen ? (['wood'] as const) : []),
    ...(climate === undefined ? (['year'] as const) : []),
  ]
}

/** Whether somebody chose how all seats hold. */
export const isHoldChosen = (design: Design): boolean =>
  !usualIn(design).some((each) => each === 'shaft-hold' || each === 'housing-hold')

const shaftSizes = ({ shaft }: Mounting): readonly Size[] => [
  ...shaftSize(shaft),
  { name: SIZES.shaftSeat, value: shaft.seatDiameter, byCaliper: true, source: 'trade' },
  ...(shaft.holder ? holderSizes('shaft', shaft.holder) : []),
]

const shaftSize = ({ shaftDiameter }: Mounting['shaft']): readonly Size[] => [
  { name: SIZES.shaft, value: shaftDiameter, byCaliper: true },
]

function housingSizes({ housing }: Mounting): readonly Size[] {
  if (housing === undefined) return []
  const { seatDiameter, seatDepth, thickness, shoulderHole, leastWidth, holder } = housing
  return [
    { name: SIZES.housingSeat, value: seatDiameter, byCaliper: true, source: 'trade' },
    { name: SIZES.seatDepth, value: seatDepth },
    ...(seatDepth < thickness ? [{ name: SIZES.shoulderHole, value: shoulderHole }] : []),
    { name: SIZES.housingWidth, value: leastWidth, source: 'trade' },
    ...(holder ? holderSizes('housing', holder) : []),
  ]
}

function holderSizes(at: 'shaft' | 'housing', holder: Holder): readonly Size[] {
  const names = holderNames(at, holder)
  return [
    { name: names.diameter, value: holder.diameter },
    { name: names.length, value: holder.length },
    ...(holder.circle === undefined ? [] : [{ name: names.circle, value: holder.circle }]),
  ]
}

function driveSizes({ kind, circle, holeDiameter, depth }: DriveSeat): readonly Size[] {
  if (holeDiameter === undefined) return []
  const names = driveNames(kind)
  return [
    { name: names.hole, value: holeDiameter },
    { name: names.depth, value: depth },
    { name: names.circle, value: circle },
  ]
}

/** The bore, and the shaft that goes into it where one is planned: then no rule is fine enough for either. */
export function boreFor({ mounting }: RingJob, bore: Size): readonly Size[] {
  return mounting ? [{ ...bore, byCaliper: true }, ...shaftSize(mounting.shaft)] : [bore]
}

/** The outside of the outer ring, and the seat in the housing that it goes into where one is planned. */
export function outsideFor({ mounting }: RingJob, outside: Size): readonly Size[] {
  const housing = mounting?.housing
  if (housing === undefined) return [outside]
  return [
    { ...outside, byCaliper: true },
    { name: SIZES.housingSeat, value: housing.seatDiameter, byCaliper: true, source: 'trade' },
  ]
}

/** The same of a turntable between two boards. */
export function mountPlates(job: AnyJob<Design>, mounting: PlateMounting | undefined): readonly Operation[] {
  if (mounting === undefined) return []
  const { pin, boards, screws } = mounting
  return [
    {
      ...words.mountPlates({ ...mounting, usual: usualIn(job.design) }, unitsOf(job)),
      id: 'mount',
      part: 'both',
      sizes: [
        { name: SIZES.pin, value: pin.shaftDiameter, byCaliper: true },
        { name: SIZES.pinLength, value: pin.length },
        { name: SIZES.pinSeat, value: pin.seatDiameter, byCaliper: true },
        { name: SIZES.upperHole, value: pin.upperHole },
        { name: SIZES.boards, value: boards.thickness },
        ...(screws ? screwSizes(screws, screws.screwCircle) : []),
      ],
      cautions: [
        ...(pin.hold === 'retained' ? [] : ['sawing' as const]),
        'drilling',
        'dust',
        ...epoxyFor(pin.hold, boards.hold),
      ],
      readings: [],
    },
  ]
}
