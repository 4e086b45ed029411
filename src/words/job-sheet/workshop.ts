import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import type { WoodPart } from '#shared/bearing/wood-parts.ts'
import type { Blank } from '#shared/making/blanks.ts'
import type { BoardOption } from '#shared/making/boards.ts'
import type { Shut } from '#shared/making/opening.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import type { Construction } from '#shared/wood/construction.ts'
import { boardFigure, differenceFigure, figure } from '#src/words/figure.ts'
import { BAR_ENTERS, fitDecides } from '#src/words/gauge-kit.ts'
import { LEAVE_OUT, MEASURE_INSTEAD } from '#src/words/plugs.ts'
import { TRADE_SIGN } from '#src/words/standing.ts'
import { TERMS, type Terms, WOODEN_PARTS } from '#src/words/terms.ts'
import { nameInSentence } from '#src/words/wood-name.ts'
import type { OperationWords } from './operation.ts'

/* Operations before the first cut and after the last one. */

/** The parts with the same grain direction, if a ring comes in two halves or a bearing in two parts. */
const HALVES = ' Lay both halves of the split ring the same way, one above the other, so that they move together.'
const ALIKE: Readonly<Partial<Record<ArrangementName, string>>> = {
  roller: ' Lay both cheeks the same way as the outer ring, so that they move with it.',
  thrust: ' Lay both plates the same way, and mark it on their edges: they come together so.',
}

/** What rests with the wood if it is of wood too, before anybody cuts or measures it. */
const RESTS_TOO: Readonly<Record<ArrangementName, string>> = {
  radial: ' and the balls',
  roller: ' and the rods for the rollers',
  thrust: ' and the balls',
  caged: ' and the balls',
}

const SAWN: Readonly<Record<Construction, string>> = {
  'flat-sawn': 'flat-sawn: at the end of the board, the growth rings lie along its width',
  'quarter-sawn': 'quarter-sawn: at the end of the board, the growth rings stand upright',
  segmented: 'segments of flat-sawn strips',
  'segmented-quarter-sawn': 'segments of quarter-sawn strips',
  'cross-laminated-ply': 'cross-laminated plywood',
}

export interface PlannedWood {
  readonly part: WoodPart | 'cheeks'
  readonly species?: string
  /** Where it is stated. */
  readonly construction?: Construction
  readonly blank: Pick<Blank, 'thickness' | 'roughCircle' | 'pieces'>
  /** The first of those that the stock offers. */
  readonly board: Pick<BoardOption, 'kind' | 'nominalThickness' | 'layers' | 'across' | 'dressedWidth' | 'length'>
}

/** Wood of one part: what it is, and how much to take. */
function planned({ part, species, construction, blank, board }: PlannedWood, units: Units): string {
  const least = (length: Mm): string => boardFigure(length, units)
  const what = [
    ...(species === undefined ? [] : [nameInSentence(species)]),
    ...(construction === undefined ? [] : [SAWN[construction]]),
  ]
  const layers = board.layers > 1 ? `, in ${board.layers} layers` : ''
  const across = board.across > 1 ? `, ${board.across} side by side` : ''
  const much =
    construction === 'cross-laminated-ply'
      ? `${blank.pieces === 2 ? 'two blanks' : 'a blank'} ${figure(blank.thickness, units)} thick and ${least(blank.roughCircle)} across`
      : board.kind === 'on-hand'
        ? `${least(board.length)} of your ${board.nominalThickness}${layers}${across}`
        : `a board sold as ${board.nominalThickness} thick, at least ${least(board.dressedWidth)} wide and ${least(board.length)} long${layers}${across}`
  return ` For the ${part === 'cheeks' ? part : WOODEN_PARTS[part]}: ${[...what, much].join('; ')}.`
}

/** A board, as it is fetched: no comma parts its name, for commas part those of tools. */
function fetched({ part, construction, blank, board }: PlannedWood, units: Units): string {
  const least = (length: Mm): string => boardFigure(length, units)
  const forPart = `for the ${part === 'cheeks' ? part : WOODEN_PARTS[part]}`
  if (construction === 'cross-laminated-ply') {
    const across = least(blank.roughCircle)
    return `plywood ${forPart}: ${figure(blank.thickness, units)} × ${across} × ${across}${blank.pieces === 2 ? ' twice' : ''}`
  }
  const across = board.across > 1 ? ` with ${board.across} side by side` : ''
  const layers = board.layers > 1 ? ` in ${board.layers} layers` : ''
  const wide = board.kind === 'on-hand' ? '' : ` × ${least(board.dressedWidth)}`
  return `board ${forPart}: ${board.nominalThickness}${wide} × ${least(board.length)}${layers}${across}`
}

/**
 * @param lies whether a ring comes in halves, and whether the parts that lie alike have a grain to lie by
 * @param woods of every part
 * @param ofBalls the wood of what rolls, where it is planned
 * @param year what it does to wood that is not planned
 */
export const wood = (
  arrangement: ArrangementName,
  lies: { readonly isSplit: boolean; readonly hasGrain: boolean },
  {
    woods,
    ofBalls,
    year,
    isRollingWood,
  }: {
    readonly woods: readonly PlannedWood[]
    readonly ofBalls: string | undefined
    readonly year: string | undefined
    readonly isRollingWood: boolean
  },
  units: Units,
): OperationWords => ({
  title: 'Choose the wood',
  tool: ['a rule', 'a pencil', ...woods.map((each) => fetched(each, units))].join(', '),
  how: `${woods.every(({ construction }) => construction === 'cross-laminated-ply') ? 'Take plywood of many thin layers without gaps.' : 'Take straight-grained wood without knots or splits.'} Leave the wood${isRollingWood ? RESTS_TOO[arrangement] : ''} for two weeks ${TRADE_SIGN} in the room where the bearing will be used.${lies.hasGrain ? (lies.isSplit ? HALVES : (ALIKE[arrangement] ?? '')) : ''}${woods.map((each) => planned(each, units)).join('')}${ofBalls === undefined ? '' : ` For the ${TERMS[arrangement].element.many}: ${nameInSentence(ofBalls)}.`}${year === undefined ? '' : ` ${year} Design it again with your woods and the air that it will live in, before you cut.`}`,
  check: `A straightedge laid across each face does not rock, and the board weighs the same on two days.`,
  mistake: {
    looksLike: `The board was damp: a ${TERMS[arrangement].part.one} that was round on the lathe is oval a week later.`,
    costs: 'Every size that you cut.',
    remedy: 'Wait until it weighs the same: wood costs less than work.',
  },
})

interface GaugeFacts {
  /** How far a plug may be off, and still tells what it should: common practice, no source. */
  readonly within: Mm
  /** Least width of plugs that are bars; left out where they are discs. */
  readonly barWidth?: Mm
  /** Thickness of the abrasive paper; left out where no dowel carries any. */
  readonly paper?: Mm
  /** Whether the plugs tell what a rule in the gap does not. */
  readonly arePlugsNeeded: boolean
  readonly units: Units
}

const setBlocks = (terms: Terms): string =>
  `Saw each set-block from a straight strip along the grain, leave it a little long, sand its ends square to the size, and write on it which one it is: “stop” or “done”. “Done” is as drawn: ${fitDecides(terms)}`

const SET_BLOCKS_CHECK = 'Measure each set-block from end to end, and leave the caliper set to the one that you use.'
const OF_GROOVES = {
  how: (terms: Terms) => `Grind a scraper to each profile. ${setBlocks(terms)}`,
  check: SET_BLOCKS_CHECK,
}

/** What is made beside the plugs. */
const SETS: Readonly<Record<ArrangementName, { readonly how: (terms: Terms) => string; readonly check: string }>> = {
  radial: OF_GROOVES,
  caged: OF_GROOVES,
  roller: { how: setBlocks, check: SET_BLOCKS_CHECK },
  thrust: {
    how: () => 'Grind a scraper, or choose a round-nose bit, to the profile.',
    check:
      'Measure the step of the depth block with the depth rod of the caliper, and the circle gauge from its edge in the bore to the tip.',
  },
}

const dowels = (paper: Mm, units: Units): string =>
  `Turn the dowels for paper ${differenceFigure(paper, units)} thick, wrapped once. Where yours is thicker or thinner, turn them thinner or thicker by twice the difference.`

export function gauges(arrangement: ArrangementName, facts: GaugeFacts): OperationWords {
  const { within, barWidth, paper, arePlugsNeeded, units } = facts
  const { element, part, raceway } = TERMS[arrangement]
  const plugs = arrangement === 'caged' ? 'the plug' : 'both plugs'
  const areBars = barWidth !== undefined
  const make = areBars
    ? `Saw ${plugs} as ${arrangement === 'caged' ? 'a bar' : 'bars'} from straight, dry wood along the grain, as thick as the ${part.one} and at least ${figure(barWidth, units)} wide. File the ends round by the arcs of the gauge sheet, down to the size from end to end. ${BAR_ENTERS}`
    : `Turn ${plugs} from dense, dry wood, longer than the ${part.one} is thick, and sand the last bit.`
  return {
    title: 'Make the gauges',
    tool: `lathe, gouge and scraper, outside caliper, fine saw, file, the printed gauge sheet, glue, thin plywood or card${raceway.one === 'track' ? '' : ', a grinder'}`,
    how: `${arePlugsNeeded ? '' : `The plugs decide nothing with these ${element.many}, so ${LEAVE_OUT}: ${MEASURE_INSTEAD} instead. To have them all the same: `}${make} Write the size on it. Print the gauge sheet at full size, glue it to thin plywood or card, cut outside its lines, and file to them. ${SETS[arrangement].how(TERMS[arrangement])}${paper === undefined ? '' : ` ${dowels(paper, units)}`}`,
    check: `Measure each plug with the caliper ${areBars ? 'from end to end, straight and a little askew, on both faces' : 'at both ends, in two directions'}: it must be within ${differenceFigure(within, units)} ${TRADE_SIGN}.${arrangement === 'roller' ? '' : ' Lay each profile on a second print of its sheet: it must cover the outline, and no more.'} ${SETS[arrangement].check}${paper === undefined ? '' : ' Measure each dowel once more with the paper on: twice the radius of its profile.'}`,
    mistake: {
      looksLike: areBars
        ? 'The ends of a bar are not square to its faces: it enters by one face.'
        : 'A plug is tapered: it enters by its thin end.',
      costs: `Every ${raceway.one} that you check with it.`,
      remedy: 'Make it again.',
    },
  }
}

/** What is read once the bearing is in use. */
export const MEASURED_LATER: Readonly<Record<ArrangementName, string>> = {
  radial: 'the gap and the play',
  roller: 'the gap and the play',
  thrust: 'the gap and the space between the plates',
  caged: 'the play',
}

/** What keeps it shut, and what can still be done from outside. */
const SHUT: Readonly<Record<Shut, string>> = {
  'by-its-halves': 'It is glued shut: do not open it.',
  'by-its-seats': 'The glue of its seats keeps it shut: do not open it.',
}
/** Where nobody chose how the seats hold. */
const HOLD_NOT_CHOSEN = 'the hold of its seats at “Put together”. Glue is assumed.'

/** What keeps anybody from the grooves of a finished bearing, and whether that was chosen. */
export interface Closing {
  readonly shut: Shut
  readonly isChosen: boolean
}

/** @param isSteel whether what rolls may rust */
export function care(arrangement: ArrangementName, closing: Closing | undefined, isSteel: boolean): OperationWords {
  const { raceway, element } = TERMS[arrangement]
  const brushed =
    closing === undefined
      ? `Brush out the dust, and wax the ${raceway.many} again when it runs rough`
      : `${SHUT[closing.shut]} Brush the dust out from the side${arrangement === 'caged' ? '' : `, and rub a little wax on the ${element.many} where they show when it runs rough`}`
  return {
    title: 'Keep it running',
    tool: 'a brush, hard paste wax, a rule',
    counted: closing?.isChosen === false ? HOLD_NOT_CHOSEN : undefined,
    how: `Turn it by hand now and then. Keep it out of sun and rain, away from heaters, and out of air damper than it was designed for. ${brushed}. Never oil wood that ${element.many} run on: it swells.${isSteel ? ` Steel ${element.many} rust in damp air, and the rust stains oak black: wipe off any damp, and keep a thin coat of wax on them.` : ''} Twice a year, in the driest month and in the dampest, measure ${MEASURED_LATER[arrangement]} again${closing === undefined ? '' : ', from the side'}, and write what you find on the back of the job sheet, with the date.`,
    check: 'It turns freely all the way round, as it did when it was new, and nothing is cracked.',
    mistake: {
      looksLike: 'It goes stiff in one season.',
      costs: 'The wood has moved: it dents or splits if you force it.',
      remedy:
        'Do not force it, and cut nothing: what you ease in one season is too loose in the other. In the damp season wait for drier air, in the dry one for damper air.',
    },
  }
}
