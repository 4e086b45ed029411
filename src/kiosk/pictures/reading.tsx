import type { ReadingKind } from '#shared/questions/fit/reading.ts'

/** Where a reading is taken: a ring in thin lines, what is measured in a thick one. */
export function ReadingPicture({ kind }: { readonly kind: ReadingKind }) {
  return (
    <svg class="where" viewBox="0 0 64 64" aria-hidden="true">
      {RINGS[kind] ?? FRONT}
      {MARKS[kind]}
    </svg>
  )
}

const BALLS = Array.from({ length: 7 }, (_, index) => {
  const angle = (index * Math.PI) / 4 - Math.PI / 4
  return <circle key={index} class="thin" cx={32 + 18 * Math.cos(angle)} cy={32 + 18 * Math.sin(angle)} r="6.5" />
})

/** The outer ring with all balls but one, the gap at the top. */
const FRONT = (
  <>
    <circle class="thin" cx="32" cy="32" r="29" />
    {BALLS}
  </>
)

/** The inner ring alone; a ring cut through; a channel. */
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

const RINGS: Partial<Record<ReadingKind, typeof FRONT>> = {
  'radial-play': INNER,
  binds: INNER,
  'groove-bottom-diameter': INNER,
  'groove-depth': SECTION,
  'ball-row': CHANNEL,
}

const MARKS: Readonly<Record<ReadingKind, typeof FRONT>> = {
  'last-ball-opening': <path class="mark" d="M23 9 V3 M41 9 V3 M23 6 H41" />,
  'ball-gap': <path class="mark" d="M27 16 H37 M27 11 V21 M37 11 V21" />,
  'last-ball-refused': <path class="mark" d="M25 5 L39 19 M39 5 L25 19" />,
  'last-ball-in': <path class="mark" d="M24 12 L30 18 L41 5" />,
  'groove-bottom-diameter': <path class="mark" d="M10 32 H54 M10 26 V38 M54 26 V38" />,
  'groove-depth': <path class="mark" d="M32 20 V30 M27 20 H37 M27 30 H37" />,
  plug: <circle class="mark" cx="32" cy="32" r="11" />,
  'ball-row': <path class="mark" d="M5.5 54 H57.5 M5.5 49 V59 M57.5 49 V59" />,
  'radial-play': <path class="mark" d="M4 32 H18 M8 28 L4 32 L8 36 M46 32 H60 M56 28 L60 32 L56 36" />,
  binds: <path class="mark" d="M14 14 L50 50 M50 14 L14 50" />,
}
