import type { Refusal } from '#shared/bearing/refusal.ts'
import type { WarningCode } from '#shared/bearing/warning.ts'

/** Why a candidate is no answer. */
export const DROP_REASONS = [
  'too-few-balls',
  'no-such-groove',
  'lands-touch',
  'outside-diameter',
  'no-board',
  'bore-too-large',
  'cannot-be-made',
  'not-on-rule',
  'dents-deeper',
  'not-all-year',
] as const
export type DropReason = (typeof DROP_REASONS)[number]

/** The reason that a code comes to. */
export type DropReasons = Readonly<Partial<Record<Refusal['code'] | WarningCode, DropReason>>>

const REASON_OF: DropReasons = {
  'groove-undercut': 'no-such-groove',
  'groove-past-middle': 'no-such-groove',
  'groove-wider-than-ring': 'no-such-groove',
  'lands-overlap': 'lands-touch',
  'lands-touch': 'lands-touch',
  'wall-below-zero': 'outside-diameter',
  'bore-meets-groove': 'bore-too-large',
  'no-room-inside': 'bore-too-large',
}

/**
 * The reason that a refusal of the design, or a fault of its bearing, comes to.
 *
 * @param own those of codes that only its arrangement has
 */
export const reasonOf = (code: keyof DropReasons, own: DropReasons = {}): DropReason =>
  own[code] ?? REASON_OF[code] ?? 'cannot-be-made'
