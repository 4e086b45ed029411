import type { Static } from 'typebox'
import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { type Mounting, type MountingFault, mountingOf } from '#shared/making/mounting.ts'
import { type PlateMounting, plateMountingOf } from '#shared/making/plate-mounting.ts'
import { seasonOf } from '#shared/movement/states.ts'
import type { Units } from '#shared/units/length.ts'
import type { MoistureRange } from '#shared/wood/unstated.ts'
import { show } from '#src/api/length.ts'
import { yearIn } from '#src/api/making-input.ts'
import { shownBy } from '#src/api/schema.ts'
import type { Warning } from '#src/api/warning.ts'
import {
  boardsSentence,
  driveSentence,
  housingSentence,
  mountingWarning,
  pinSentence,
  shaftSentence,
} from '#src/words/mounting.ts'
import type { Terms } from '#src/words/terms.ts'
import {
  type CheekScrews,
  DriveSeat,
  HousingSeat,
  type MountingAnswer,
  PinSeat,
  type PlateSeats,
  ShaftSeat,
} from './making-schema.ts'

/* The mounting of a bearing, as an answer states it. */

/** The moistures of the year that a design states; undefined where it states none. */
export function moistureIn({
  resolved: { input },
}: Pick<RingPair | ThrustBearing, 'resolved'>): MoistureRange | undefined {
  const { arrangement, balls, making } = input
  const year = yearIn(making, { arrangement, balls } as Parameters<typeof yearIn>[1])
  if (year === undefined) return undefined
  const season = seasonOf(year.climate, year.today, year.woods)
  if (!season.ok) return undefined
  const moistures = season.value.states.map(({ moistureContent }) => moistureContent)
  return {
    today: season.value.today.moistureContent,
    min: Math.min(...moistures),
    max: Math.max(...moistures),
  }
}

/** The mounting of a bearing, where its plan of making is stated, through the year that it states. */
export const mountingIn = (bearing: RingPair): Mounting | undefined =>
  bearing.resolved.input.making === undefined ? undefined : mountingOf(bearing, moistureIn(bearing))

/** The same of a turntable. */
export const plateMountingIn = (bearing: ThrustBearing): PlateMounting | undefined =>
  bearing.resolved.input.making === undefined ? undefined : plateMountingOf(bearing, moistureIn(bearing))

/** The mounting of a turntable, in the caller's units and in words. */
export const toPlateMounting = (
  { pin, boards, screws }: PlateMounting,
  shownScrews: Static<typeof CheekScrews> | undefined,
  units: Units,
): Static<typeof PlateSeats> => ({
  shaft: shownBy(
    PinSeat,
    {
      ...pin,
      message: pinSentence(pin, units),
    },
    units,
  ),
  boards: {
    hold: boards.hold,
    thickness: show(boards.thickness, units),
    ...(shownScrews && { screws: shownScrews }),
    message: boardsSentence(boards, screws, units),
  },
})

/** In the caller's units and in words. */
export function toMounting({ turns, shaft, housing, drive }: Mounting, units: Units, terms: Terms): MountingAnswer {
  return {
    turns,
    shaft: shownBy(ShaftSeat, { ...shaft, message: shaftSentence(shaft, units, terms) }, units),
    ...(housing && {
      housing: shownBy(HousingSeat, { ...housing, message: housingSentence(housing, units) }, units),
    }),
    ...(drive && { drive: shownBy(DriveSeat, { ...drive, message: driveSentence(drive, units) }, units) }),
  }
}

/** The path of the field that causes each fault of a mounting. */
const PATHS: Readonly<Record<MountingFault['code'], string>> = {
  'no-plate-screws': '/making/mounting/housing/hold',
  'shaft-does-not-fit': '/bore',
  'wood-round-shaft-thin': '/bore',
  'housing-thin': '/making/mounting/housing/thickness',
  'no-room-for-handle': '/making/mounting/drive',
}

export function toMountingWarning(fault: MountingFault, units: Units): Static<typeof Warning> {
  const path = PATHS[fault.code]
  const value =
    fault.code === 'shaft-does-not-fit' ? fault.needed : fault.code === 'housing-thin' ? fault.least : undefined
  return {
    code: fault.code,
    severity: 'risk',
    message: mountingWarning(fault, units),
    path,
    ...(value === undefined ? {} : { suggestion: { path, value: show(value, units) } }),
  }
}
