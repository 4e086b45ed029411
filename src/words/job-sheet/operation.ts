import type { Method } from '#shared/bearing/method.ts'
import type { Mandrel } from '#shared/making/work-holding.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { capitalised, figure } from '#src/words/figure.ts'
import { STAGE_NAMES } from '#src/words/kiosk/page.ts'

/** The step of the page that takes the readings and says what comes off, by the name that it has there. */
export const AT_THE_LATHE = `“${STAGE_NAMES.lathe}”`
export const ENTER_READINGS = `Enter the readings under ${AT_THE_LATHE}.`

/** The words of one operation of the job sheet. */
export interface OperationWords {
  readonly title: string
  readonly tool: string
  /** What the plan leaves open of it, and what is counted with instead. */
  readonly counted?: string | undefined
  readonly how: string
  readonly check: string
  /** How it shows, what is lost by it, and what to do about it or against it. */
  readonly mistake: { readonly looksLike: string; readonly costs: string; readonly remedy: string }
}

/** The effect of cutting too far on the gap. */
export interface GapFacts {
  /** Radially. */
  readonly over: Mm
  readonly opens: Mm
  readonly units: Units
}

/** Before anything is cut by it. */
export const BARS_FIRST = 'First measure the bars on the printed template: 100 mm and 4 in.'
const CIRCLES = 'measure each circle with a rule, in two directions at right angles.'
export const CIRCLES_CHECK = capitalised(CIRCLES)
export const LAYOUT_CHECK = `${BARS_FIRST} Then ${CIRCLES}`
/** Two faces with paper between them. */
export const WITH_A_KNIFE = 'push a knife into the paper, with both hands behind its edge'

/** How a template lies on the wood: a part of segments has no one grain, and its centre is on its waste disc. */
export const laidOn = (isSegmented: boolean): string =>
  isSegmented ? 'with its full straight lines over the joints' : 'with its arrow along the grain'

export const LAYOUT_TOOL = 'the printed template or a compass, a centre punch'
/** One print is cut up on one blank. */
export const PRINT_TWICE = 'Print the template twice, one for each blank.'
export const layTemplate = (isSegmented: boolean, punch: string, pieces = 1): string =>
  `${pieces === 1 ? '' : `${PRINT_TWICE} `}Glue the template on ${laidOn(isSegmented)}, or prick its lines through to the wood. ${isSegmented ? 'Its centre must lie over that of the waste disc.' : punch}`

/** A ring whose hole no bit bores: both circles at one setting, so that the hole is true to the outside. */
export const RING_BY: Readonly<
  Record<Method, { readonly tool: string; readonly how: (hole: 'bore' | 'hole', isOnDisc: boolean) => string }>
> = {
  'saw-and-lathe': {
    tool: 'band saw or scroll saw, lathe, scraper, parting tool, waste wood, glue, paper, a knife',
    how: (hole, isOnDisc) => `Saw it out along the dashed line${atOneSetting(hole, isOnDisc)}`,
  },
  'lathe-only': {
    tool: 'lathe, scraper, parting tool, waste wood, glue, paper, a knife',
    how: (hole, isOnDisc) => `Knock its corners off by hand${atOneSetting(hole, isOnDisc)}`,
  },
  'router-and-lathe': {
    tool: 'router on a circle jig, waste wood, glue, paper, a knife',
    how: (hole, isOnDisc) =>
      `${isOnDisc ? 'Rout' : 'Glue it to waste wood with paper between, rout'} the ${hole} and the outside about one centre, ${PART_DISC}`,
  },
}
const PART_DISC = `and ${WITH_A_KNIFE}.`
const atOneSetting = (hole: string, isOnDisc: boolean): string =>
  `${isOnDisc ? '' : ', glue it to a disc of waste wood with paper between'}, turn the outside and the ${hole} at one setting, ${PART_DISC}`

/** Where no bit is as wide as the bore, or a ring of segments has a hole already, so that a bit finds no centre. */
export const turnBore = (parts: string, isOnDisc: boolean): string =>
  isOnDisc
    ? 'A bit would find no wood in the middle to start on: turn or rout the bore before the outside.'
    : `The bore is too wide for a bit: glue ${parts} to waste wood with paper between, and turn or rout the bore before the outside.`

export const TURNED_BORE_TOOLS = 'lathe, waste wood, glue, paper, a knife'

/** The check of the halves of a ring. */
export const HALVES_CHECK = 'No light shows between the halves, and the marks meet.'

/** Edges of the gauge sheet: round for a hole, hollow for an outside. */
export const ROUND_EDGE = 'Hold the round edge of the gauge sheet in it: no light may show.'
export const HOLLOW_EDGE = 'Hold the hollow edge of the gauge sheet against it: no light may show.'
/** A raceway that is still to be sanded: no edge fits it, and whoever cuts until one does has nothing left to sand. */
export const SET_BY_STOP_BLOCK = 'set by the set-block “stop”'
export const NO_EDGE_YET = 'Leave the edge of the gauge sheet: it has the finished size, so that light still shows.'
/** The same edge on a track near its end: what rolls decides how large it becomes. */
export const ROUND_EDGE_AT_END =
  'Near the end, hold the round edge of the gauge sheet in the track: light at one place alone shows that it is not round. The rollers decide when it is done, not the edge.'
/** The profile of the gauge sheet in a groove that is not deep enough yet. */
export const PROFILE_SHORT =
  'Hold the profile of the gauge sheet in the groove: its shoulders must stay off the land by what is left to sand.'

export const FULL_LINE_STAYS = 'The full line is still there all the way round.'

/** How a ring is held that has no centre left. */
export const HELD_OUTSIDE =
  'Hold it by its outside: in the chuck, or in a recess that you turn to fit in a disc of waste wood.'

/** Before a ring comes off the lathe, and when it goes back on. */
export const MARK_CHUCK = 'Before you take it off the lathe, mark the ring and the chuck across each other.'
export const RECHUCK =
  'Put the ring back, mark against mark, and turn it by hand against a pencil: the pencil must touch all the way round. Tap it true before you start the lathe.'
export interface MandrelFacts {
  /** None where the bore is smaller than any bolt. */
  readonly mandrel: Mandrel | undefined
  /** Whether a bit is as wide as the bore. */
  readonly isBored: boolean
  readonly units: Units
}

const boltName = ({ bolt }: Mandrel): string => `${bolt.startsWith('M') ? 'an' : 'a'} ${bolt} bolt`

/** What goes through a bore, and how it holds a ring on the lathe. */
export function mandrelWords({ mandrel, isBored, units }: MandrelFacts): {
  readonly tool: string
  readonly how: string
} {
  if (!isBored)
    return {
      tool: 'waste wood',
      how: 'For a mandrel, turn a spigot of waste wood that fills the bore, and hold the ring on it with a washer of wood and a screw.',
    }
  if (mandrel === undefined)
    return { tool: 'a rod as wide as the bore', how: 'For a mandrel, take a rod that fills the bore.' }
  const bush = mandrel.bush > 0 ? `, in a turned bush ${figure(mandrel.bush, units)} thick that fills the bore` : ''
  return {
    tool: `${boltName(mandrel)} with washers and a nut`,
    how: `For a mandrel, take ${boltName(mandrel)} through the bore${bush}, its head in the chuck, and clamp the ring between washers.`,
  }
}

/** The same of a plate, whose face must be free. */
export function plateOnLathe({ mandrel, isBored }: Omit<MandrelFacts, 'units'>): {
  readonly tools: readonly string[]
  readonly how: string
} {
  if (!isBored) return { tools: [], how: 'On the lathe, its waste wood holds it.' }
  const { tool, name } =
    mandrel === undefined
      ? { tool: 'a long screw with a washer', name: 'a screw' }
      : { tool: `${boltName(mandrel)} with a washer and a nut`, name: boltName(mandrel) }
  return {
    tools: ['waste wood', tool],
    how: `On the lathe, lay it against a flat disc of waste wood that has a stub: the stub fills the bore, half as long as the plate is thick. Clamp the plate with ${name} through the middle of the stub, and a washer wider than the bore. To hold a gauge in the bore, stop the lathe and take the washer off.`,
  }
}

export const MARK_MANDREL = 'Before you take it off the mandrel, mark both across each other.'
/** As straight as a track is. */
export const BLOCK_ON_TRACK =
  'Take the tool rest out. Hold the block, as long as the ring is wide, along the axis, on the side where the wood runs away from your hand, and keep it moving.'
/** As the caution about abrasive has it. */
export const OVER_A_DOWEL =
  'Take the tool rest out. Lay a strip of abrasive over the dowel, hold the strip by its two ends, never wound round a finger, and press the dowel into the groove on the side where the wood runs away from your hand.'
