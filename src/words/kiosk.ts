import { inUnits, type Mm, type Units } from '#shared/units/length.ts'

/*
 * The page for a screen in the workshop. `PAGE` stands in `page.html`, each text where its name stands in double braces; the
 * rest is said while the page is used. The page knows radial bearings alone.
 */

export const PAGE = {
  lead: 'Design a wooden ball bearing: its sizes follow while you choose.',
  tabs: 'What to do',
  choose: 'Choose',
  fit: 'Fit',
  sheet: 'Job sheet',
  noScript: 'This page works out the bearing in your browser. Switch scripts on to use it.',

  example: 'Show an example: the tide clock of Larkmoor',
  exampleNote: 'Larkmoor is an invented makerspace.',
  units: 'Units',
  inches: 'inches',
  millimetres: 'millimetres',
  ballDiameter: 'Ball diameter',
  otherSize: 'Other size',
  material: 'Material of the balls',
  wood: 'wood',
  glass: 'glass',
  acrylic: 'acrylic',
  steel: 'steel',
  count: 'Number of balls',
  fewerBalls: 'one ball fewer',
  moreBalls: 'one ball more',
  bore: 'Bore',
  smallerBore: 'smaller bore',
  largerBore: 'larger bore',
  depth: 'How deep the balls sit',
  outerRing: 'outer ring',
  innerRing: 'inner ring',

  drawing: 'drawing of the bearing',
  refusals: 'why this bearing cannot be made',
  warnings: 'warnings',
  sizes: 'Sizes to cut',
  size: 'Size',
  onTheRule: 'On the rule',
  exact: 'Exact',
  cautions: 'cautions',

  fitLead: 'The outer ring is on the lathe, and its groove is partly cut. What did you measure?',
  reading: 'Reading',
  opening: 'The last ball does not go in: the opening where it should go',
  gap: 'All balls are in: the gap that is left',
  refused: 'The last ball does not go in, and I measured nothing',
  entered: 'The last ball goes in, and I measured nothing',
  across: 'Across the bottoms of the groove, with a caliper',
  measured: 'Measured',
  next: 'What next?',

  sheetLead:
    'Every step in order, with the sizes of the bearing that you chose, boxes to tick and blanks for your readings.',
  openSheet: 'Open the job sheet',
  printSheet: 'PDF to print',
} as const

/** What is wrong with a field. */
export const FAULTS = {
  length: 'Enter a length such as 5/8, 1 3/16 or 16 mm.',
  lengthBounds: (least: number, most: number, units: Units) => `Enter a length from ${least} to ${most} ${units}.`,
  countBounds: (least: number, most: number) => `Enter a whole number from ${least} to ${most}.`,
} as const

/** How the page's figures compare with the service's: nothing is said where they agree. */
export const STANDING = {
  unreached: 'The service cannot be reached. This page worked out these figures by itself.',
  refused: 'The service finds that this bearing cannot be made.',
  different: 'These figures come from the service. They differ from the ones that this page worked out.',
} as const

/** Headings of an advice, by the `action` of the answer. */
export const FIT_HEADINGS: Readonly<Record<string, string>> = {
  cut: 'Remove more.',
  measure: 'Measure first.',
  stop: 'Stop here.',
}

/** The same by the `reason` to stop. */
export const FIT_REASONS: Readonly<Record<string, string>> = {
  'in-band': 'It fits: stop here.',
  'too-deep': 'Too deep. These can still save it:',
}

export const FIT = {
  noBearing: 'Choose a bearing first.',
  unreached:
    'The service cannot be reached, and it alone can judge a reading. Cut nothing for now, and try again later.',
  impossible: 'This reading is not possible',
  next: 'What next',
  cautions: 'Cautions',
} as const

/** Decimals of a gap: no finer than anyone can measure it. */
const GAP_DECIMALS: Readonly<Record<Units, number>> = { in: 3, mm: 1 }

export function gapNow(gap: { readonly value: Mm; readonly low: Mm; readonly high: Mm }, units: Units): string {
  const size = (length: Mm): string => `${inUnits(length, units).toFixed(GAP_DECIMALS[units])} ${units}`
  return `The gap is now about ${size(gap.value)}; 19 times in 20 it is between ${size(gap.low)} and ${size(gap.high)}. Below 0, the last ball does not go in.`
}
