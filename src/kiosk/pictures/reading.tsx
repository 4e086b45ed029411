import type { FittedRing } from '#shared/questions/fit/fit-setup.ts'
import type { ReadingKind } from '#shared/questions/fit/reading.ts'

/** Where a reading is taken: a ring in thin lines, what is measured in a thick one. */
export function ReadingPicture(of: {
  readonly kind: ReadingKind
  readonly ring: FittedRing
  /** A track has no groove. */
  readonly isTrack: boolean
}) {
  const { kind } = of
  return (
    <svg class="where" viewBox="0 0 64 64" aria-hidden="true">
      {kind === 'groove-bottom-diameter' ? (
        <Across {...of} />
      ) : (
        <>
          {RINGS[kind] ?? FRONT}
          {MARKS[kind]}
        </>
      )}
    </svg>
  )
}

/** The outer ring from the front, with balls in it at these places, in degrees from the right. */
const front = (places: readonly number[], radius: number) => (
  <>
    <circle class="thin" cx="32" cy="32" r="29" />
    {places.map((place) => {
      const angle = (place * Math.PI) / 180
      return (
        <circle
          key={place}
          class="thin"
          cx={(32 + radius * Math.cos(angle)).toFixed(2)}
          cy={(32 + radius * Math.sin(angle)).toFixed(2)}
          r="6.5"
        />
      )
    })}
  </>
)

/** All balls but one, the opening at the top. */
const FRONT = front([-45, 0, 45, 90, 135, 180, 225], 18)
/** All balls, each touching the next, but for a thin gap at the top. */
const FULL = front([-60.8, -17.7, 25.4, 68.5, 111.5, 154.6, 197.7, 240.8], 17.7)

/** The inner ring alone; a groove in section; a channel. */
const INNER = (
  <>
    <circle class="thin" cx="32" cy="32" r="22" />
    <circle class="thin" cx="32" cy="32" r="8" />
  </>
)
const SECTION = <path class="thin" d="M8 54 V20 H22 A10 10 0 0 0 42 20 H56 V54 Z" />
const CHANNEL = (
  <>
    <path class="thin" d="M4 44 H60 M4 24 H60" />
    {[12, 25, 38, 51].map((x) => (
      <circle key={x} class="thin" cx={x} cy="37" r="6.5" />
    ))}
  </>
)

/** What reaches across a ring that is cut through: inside an outer one, round an inner one. */
function Across({ ring, isTrack }: { readonly ring: FittedRing; readonly isTrack: boolean }) {
  const { wood, reach } = ACROSS[ring][isTrack ? 'track' : 'groove']
  return (
    <>
      <path class="thin" d={wood} />
      <path class="mark" d={reach} />
    </>
  )
}

/** Between the two walls of an outer ring stands its far side. */
const FAR_SIDE = 'M18 18 H46 M18 46 H46'
const ACROSS: Readonly<Record<FittedRing, Readonly<Record<'groove' | 'track', { wood: string; reach: string }>>>> = {
  outer: {
    groove: {
      wood: `M4 18 H18 V24 A8.33 8.33 0 0 0 18 40 V46 H4 Z M60 18 H46 V24 A8.33 8.33 0 0 1 46 40 V46 H60 Z ${FAR_SIDE}`,
      reach: 'M12 32 H52 M13.7 28 V36 M50.3 28 V36',
    },
    track: {
      wood: `M4 18 H18 V46 H4 Z M60 18 H46 V46 H60 Z ${FAR_SIDE}`,
      reach: 'M18 32 H46 M19.7 27 V37 M44.3 27 V37',
    },
  },
  inner: {
    groove: {
      wood: 'M14 18 H50 V24 A8.33 8.33 0 0 0 50 40 V46 H14 V40 A8.33 8.33 0 0 0 14 24 Z',
      reach: 'M20 32 H6 V7 H58 V32 H44',
    },
    track: { wood: 'M14 18 H50 V46 H14 Z', reach: 'M14 32 H6 V7 H58 V32 H50' },
  },
}

const RINGS: Partial<Record<ReadingKind, typeof FRONT>> = {
  'ball-gap': FULL,
  'radial-play': INNER,
  binds: INNER,
  'groove-depth': SECTION,
  'ball-row': CHANNEL,
}

const MARKS: Readonly<Record<Exclude<ReadingKind, 'groove-bottom-diameter'>, typeof FRONT>> = {
  'last-ball-opening': <path class="mark" d="M26 19.3 H38 M27.5 13 V25.6 M36.5 13 V25.6" />,
  // A feeler in the gap.
  'ball-gap': <path class="mark" d="M32 2 V23" />,
  'last-ball-refused': <path class="mark" d="M25 5 L39 19 M39 5 L25 19" />,
  'last-ball-in': <path class="mark" d="M24 12 L30 18 L41 5" />,
  'groove-depth': <path class="mark" d="M32 20 V30 M27 20 H37 M27 30 H37" />,
  plug: <circle class="mark" cx="32" cy="32" r="11" />,
  'ball-row': <path class="mark" d="M5.5 54 H57.5 M5.5 49 V59 M57.5 49 V59" />,
  'radial-play': <path class="mark" d="M4 32 H18 M8 28 L4 32 L8 36 M46 32 H60 M56 28 L60 32 L56 36" />,
  binds: <path class="mark" d="M14 14 L50 50 M50 14 L14 50" />,
}
