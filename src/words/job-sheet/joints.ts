import type { RingName } from '#shared/bearing/refusal.ts'
import type { WoodPart } from '#shared/bearing/wood-parts.ts'
import type { CheekScrews, Screws, SplitRing } from '#shared/making/split-ring.ts'
import type { Units } from '#shared/units/length.ts'
import { angleFigure, figure } from '#src/words/figure.ts'
import { type Terms, WOODEN_PARTS } from '#src/words/terms.ts'
import { HALVES_CHECK, type OperationWords, WITH_A_KNIFE } from './operation.ts'

/* Joining wood before it is turned: segments to a ring, halves to one. */

export function glueUp(facts: {
  readonly part: WoodPart
  /** Pieces in a layer, and in all. */
  readonly count: number
  readonly pieces: number
  readonly layers: number
  /** Two where a ring is made in halves, and of plates. */
  readonly blanks: number
  /** [degrees] */
  readonly miter: number
  /** Whether it has a hole from the start. */
  readonly isRing: boolean
}): OperationWords {
  const { part, count, pieces, layers, blanks, miter } = facts
  const shape = facts.isRing ? 'ring' : 'disc'
  const stacked = layers > 1 ? ` Glue ${layers} layers face to face, each turned by half a segment.` : ''
  const twice = blanks > 1 ? ` Make two such ${shape}s, one for each ${part === 'plates' ? 'plate' : 'half'}.` : ''
  const wasted =
    blanks === 1
      ? `glue the ${shape} to a disc`
      : part === 'plates'
        ? `glue each ${shape} to a disc`
        : `glue the second ${shape} to a disc`
  return {
    title: `Glue up the ${WOODEN_PARTS[part]} from ${pieces} segments, cut at ${angleFigure(miter)}`,
    tool: 'miter saw or table saw with a stop, glue, a band clamp, a flat sanding board, waste wood, paper, a knife',
    how: `Set the saw to ${angleFigure(miter)} from square, and cut ${pieces} segments, turning the strip over after each cut. Glue ${count} of them to a ${shape} without a gap.${stacked}${twice} When the glue is hard, flatten both faces, and ${wasted} of waste wood with paper between: that disc has the centre, and the lathe holds it. When all is turned, ${WITH_A_KNIFE}, and it comes off.`,
    check: `Lay the first segment on its template before you cut the others. Then lay ${count} of them together dry: no light may show in any joint.`,
    mistake: {
      looksLike: 'The last joint stays open: each cut is off by a small part of a degree.',
      costs: 'Clamping it shut leaves a weak joint.',
      remedy: 'Glue up two half rings first, sand them flat where they meet, and glue them then.',
    },
  }
}

const BEFORE_TURNING =
  'Do this before you turn anything, so that both halves are turned as one. The faces meet at mid groove. Mark the pair across the edge'

const screwsNamed = ({ count, name }: Screws | CheekScrews, times = 1): string => `${times * count} wood screws ${name}`
export const screwTools = (screws: Screws | CheekScrews, units: Units, times = 1): string =>
  `drill press, drills of ${screws.pilot.name} and ${screws.clearance.name}, countersink, screwdriver, ${screwsNamed(screws, times)} × ${figure(screws.length, units)}`

/** A screw bites in the second piece alone, so that it draws both together. */
const DRIVE_SCREWS = 'Brush out the chips, and drive the screws by hand until the heads lie below the face, no harder.'

/** Holes on a circle through one piece into another. */
export const screwHoles = ({ pilot, clearance }: Screws | CheekScrews, first: string): string =>
  `Drill ${pilot.name} pilot holes through ${first} to their depth in the second piece. Open them to ${clearance.name} through ${first} only, and countersink them`

/** The halves of a ring, on whatever holds them. */
export function joint(
  ring: RingName,
  { screws, dowels }: Pick<SplitRing, 'screws' | 'dowels'>,
  units: Units,
): OperationWords {
  const name = WOODEN_PARTS[ring]
  const edge = ring === 'innerRing' ? 'bore' : 'outside'
  if (screws !== undefined) {
    const isSunk = screws.counterboreDepth > 0
    return {
      title: `Screw the halves of the ${name} together, with ${screwsNamed(screws)}`,
      tool: `plane, clamps, ${isSunk ? `a Forstner bit of ${figure(screws.headDiameter, units)} or the next size up for the heads, ` : ''}${screwTools(screws, units)}`,
      how: `${BEFORE_TURNING}, and take it apart only to put the balls in. See that the faces meet without light: take off no more than a shaving. Clamp the two discs face to face, and mark the circle of the screws. ${isSunk ? 'Drill the counterbores first, as wide as the heads. ' : ''}${screwHoles(screws, 'the first disc')}. ${DRIVE_SCREWS}`,
      check: HALVES_CHECK,
      mistake: {
        looksLike: `A screw comes out in the groove or the ${edge}.`,
        costs: 'The tool strikes steel.',
        remedy: 'Keep to the circle and the depths.',
      },
    }
  }
  const held =
    ring === 'innerRing'
      ? 'let the washers of the mandrel hold the halves together while you turn them'
      : 'glue the faces together with paper between them, and when the groove is done, part them with a knife, with both hands behind its edge'
  return {
    title: `${dowels === undefined ? 'Fit' : 'Pin'} the halves of the ${name} together`,
    tool: [
      'plane',
      'clamps',
      ...(dowels === undefined
        ? []
        : [
            'fine saw',
            'drill press',
            `${dowels.count} dowels of ${figure(dowels.diameter, units)} × ${figure(dowels.length, units)}`,
          ]),
      ...(dowels === undefined && ring === 'innerRing' ? [] : ['glue']),
      ...(ring === 'innerRing' ? [] : ['paper', 'a knife']),
    ].join(', '),
    how:
      dowels === undefined
        ? `${BEFORE_TURNING}. There is no room for screws or dowels: see that the faces meet without light, and ${held}.`
        : `${BEFORE_TURNING}. See that the faces meet without light, clamp the two discs face to face, and drill for ${dowels.count} dowels on their circle. Glue each dowel into one half only. Then ${held}.`,
    check: HALVES_CHECK,
    mistake: {
      looksLike: 'The halves shift while you turn them: the groove has a step where they meet.',
      costs: 'Every ball knocks on the step.',
      remedy: 'Join the halves again before you go on.',
    },
  }
}

/** Halves that no screw holds, within a sentence and to its end: they are joined last of all. */
export const gluedShut = (ring: RingName, { element, raceway }: Terms): string =>
  `glue the halves of the ${WOODEN_PARTS[ring]} together round the ${element.many}, and keep the glue away from the ${raceway.one}: no screw holds them, and once glued they cannot be opened.`
