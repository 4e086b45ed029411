import type { Design } from '#shared/bearing/arrangements.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import type { DriveSeat, Holder, Mounting } from '#shared/making/mounting.ts'
import type { PlateMounting } from '#shared/making/plate-mounting.ts'
import * as words from '#src/words/job-sheet/mount.ts'
import { driveNames, holderNames, SIZES } from '#src/words/job-sheet/sizes.ts'
import { screwSizes } from './joint-operations.ts'
import { type AnyJob, type Operation, type RingJob, type Size, termsOf, unitsOf } from './operation.ts'

/* The seats on the shaft and in the housing. Common practice, no source, as all of the sheet. */

/** The last operation of making, if the plan states one; none for plates, which lie on each other. */
export function mount(job: AnyJob<Design>, loose: RingName | undefined): readonly Operation[] {
  const { mounting } = job
  if (mounting === undefined) return []
  const { shaft, housing, drive } = mounting
  const drills = shaft.holder !== undefined || housing?.holder !== undefined || drive?.holeDiameter !== undefined
  return [
    {
      ...words.mount({ ...mounting, drills, loose }, unitsOf(job), termsOf(job)),
      id: 'mount',
      part: 'both',
      sizes: [...shaftSizes(mounting), ...housingSizes(mounting), ...(drive ? driveSizes(drive) : [])],
      cautions: [...(drills ? ['drilling' as const] : []), 'turning', 'dust'],
      readings: [],
    },
  ]
}

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
export function mountPlates(job: AnyJob, mounting: PlateMounting | undefined): readonly Operation[] {
  if (mounting === undefined) return []
  const { pin, boards, screws } = mounting
  return [
    {
      ...words.mountPlates(mounting, unitsOf(job)),
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
      cautions: ['drilling', 'dust'],
      readings: [],
    },
  ]
}
