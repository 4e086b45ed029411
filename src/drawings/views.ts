import { type Design, isCaged, isOfPlates, isOfRollers, nameOf, woodPartsOf } from '#shared/bearing/arrangements.ts'
import { constructionOf } from '#shared/bearing/whole-year.ts'
import { nameOfSpecies } from '#shared/data/species.ts'
import { resolveMaking } from '#shared/making/defaults.ts'
import { plateStockOf, stockOf } from '#shared/making/stock.ts'
import { ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import {
  type Assembled,
  assemblySheet,
  NARROW_WIDTH,
  narrowAssembly,
  type SheetWood,
} from '#src/drawings/sheets/assembly.ts'
import { cagedGaugeItems, gaugeItems, plateGaugeItems } from '#src/drawings/sheets/gauges.ts'
import { signed } from '#src/drawings/sheets/labelled-item.ts'
import { numberedFigure } from '#src/drawings/sheets/numbered-figure.ts'
import { type Item, oneSheet, pagesOf, type TooManyPages } from '#src/drawings/sheets/pages.ts'
import { assembledPlates } from '#src/drawings/sheets/plates-assembly.ts'
import { assembledRings, assembledWithCage } from '#src/drawings/sheets/rings-assembly.ts'
import { sizeTextFor } from '#src/drawings/sheets/size-text.ts'
import { cagedTemplateItems, plateItems, templateItems } from '#src/drawings/sheets/templates.ts'
import {
  CUT_OUT_DESCRIPTIONS,
  GRAIN,
  GRAIN_BELOW,
  imprintWithUnits,
  kerfWords,
  OWN_SCALE,
  sizesIn,
  TITLES,
} from '#src/words/drawing.ts'
import { signMeanings } from '#src/words/standing.ts'
import { movedForKerf } from './kerf.ts'
import type { Drawing, NarrowPart, Shape } from './model.ts'
import { PAPER_SIZES, type Paper } from './papers.ts'
import type { QrCode } from './qr-code.ts'
import { type SheetMark, sheetMark } from './sheet-mark.ts'
import type { View } from './view.ts'

/** What is cut out of paper. */
function itemsOf(view: Exclude<View, 'assembly'>, design: Design, { code }: SheetMark): readonly Item[] {
  const isTemplates = view === 'templates'
  if (isOfPlates(design))
    return isTemplates ? plateItems(design, plateStockOf(design.bearing), code) : plateGaugeItems(design, code)
  if (isCaged(design))
    return isTemplates ? cagedTemplateItems(design, stockOf(design.bearing), code) : cagedGaugeItems(design, code)
  return isTemplates ? templateItems(design, stockOf(design.bearing), code) : gaugeItems(design, code)
}

/** The items, and what the sheet says of itself. */
function cutOut(view: Exclude<View, 'assembly'>, design: Design, code: QrCode | undefined) {
  const mark = sheetMark(design)
  const sign = imprintWithUnits(mark, design.bearing.resolved.input.units)
  const items = itemsOf(view, design, mark)
  const labels = items.flatMap(({ bare }) => bare.labels.map(({ words }) => words))
  return {
    items: items.map((item) => signed(item, sign)),
    words: {
      title: `${TITLES[view]} ${mark.code}`,
      description: `${CUT_OUT_DESCRIPTIONS[view](nameOf(design.bearing.resolved.input))} ${sign}.`,
      imprint: [sign, ...signMeanings(labels)].join(', '),
      code,
    },
  }
}

function assembled(design: Design): Assembled {
  if (isOfPlates(design)) return assembledPlates(design)
  return isCaged(design)
    ? assembledWithCage(design, stockOf(design.bearing))
    : assembledRings(design, stockOf(design.bearing))
}

function woodOf(design: Design): SheetWood {
  const { units, making = {} } = design.bearing.resolved.input
  const { lumber, woods = {} } = resolveMaking(making, units)
  const parts = woodPartsOf(design.bearing.resolved.input)
  const segmented = parts.filter((part) => woods[part]?.segments !== undefined)
  return {
    parts: parts.map((part) => {
      const wood = woods[part]
      if (wood === undefined) return { part }
      const { species: id } = wood
      return {
        part,
        construction: constructionOf(wood),
        ...(id !== undefined && { species: nameOfSpecies(id) }),
      }
    }),
    lumber,
    isLumberAssumed: making.lumber === undefined,
    segmented,
    // The cheeks of rollers come from the board.
    hasArrow: segmented.length < parts.length || isOfRollers(design),
  }
}

/** The purpose of a drawing: to be printed, or for a machine that cuts, which knows neither paper nor printer. */
export type Medium = 'paper' | 'machine'

/**
 * A view of a bearing as one drawing, as large as it takes; what is cut by is for a beam of the kerf that is planned.
 *
 * @param code leads back to the bearing, where that has an address
 */
export function drawingOf(
  view: View,
  design: Design,
  paper: Paper,
  medium: Medium = 'paper',
  code?: QrCode | undefined,
): Drawing {
  const isPrinted = medium === 'paper'
  if (view === 'assembly')
    return assemblySheet(assembled(design), {
      mark: sheetMark(design),
      wood: woodOf(design),
      paper,
      isPrinted,
      code,
    })
  const { items, words } = cutOut(view, design, code)
  const { units, making = {} } = design.bearing.resolved.input
  const { kerf } = resolveMaking(making, units)
  const { moved, areAllMoved } = itemsForKerf(items, kerf)
  const kerfNote = kerfWords(`${sizeTextFor(design.bearing)(kerf)} ${units}`, kerf === 0, areAllMoved)
  return oneSheet(moved, { ...words, imprint: `${words.imprint}, ${kerfNote}` }, PAPER_SIZES[paper], isPrinted)
}

/** Outlines as a beam of a kerf follows them; what is too small for it is left as drawn, and only marked. */
function itemsForKerf(items: readonly Item[], kerf: Mm) {
  let areAllMoved = true
  const moved = items.map((item) => ({
    ...item,
    shapes: item.shapes.map((shape): Shape => {
      const found = movedForKerf(shape, kerf)
      if (found === undefined) areAllMoved = false
      return found ?? { ...shape, role: 'mark' }
    }),
  }))
  return { moved, areAllMoved }
}

/** Lines are wide: so much stays free round a figure. */
const ROUND_FIGURE = 1

/** The same for a narrow screen: part below part, each with text that can be read there. */
export function narrowParts(view: View, design: Design): readonly NarrowPart[] {
  if (view === 'assembly') return narrowAssembly(assembled(design), woodOf(design))
  const { units } = design.bearing.resolved.input
  return itemsOf(view, design, sheetMark(design)).map(({ title, bare: { figure, labels } }) => {
    // What stands at an edge, or on the wood, says nothing away from it.
    const texts = figure.shapes.flatMap((shape) =>
      shape.kind === 'text' && shape.role !== 'mark' ? [inList(shape.text)] : [],
    )
    // All as wide as a screen: else the lines of a large one would be too thin to see there, and those of a small one bars.
    const { shapes, height, words } = numberedFigure(figure, labels, NARROW_WIDTH, ROUND_FIGURE)
    const drawing = {
      title,
      description: title,
      width: mm(NARROW_WIDTH),
      height: mm(height),
      scale: 1,
      shapes,
    }
    const said = [...words, ...texts]
    // Away from the imprint of its sheet.
    return { title, drawing, words: [...said, `${sizesIn(units)}, ${OWN_SCALE}`, ...signMeanings(said)] }
  })
}

/** A label of a drawing as it is said away from it. */
const inList = (label: string): string => (label === GRAIN ? GRAIN_BELOW : label)

/** The same on pages to print, or how many pages it would take where nobody would print so many. */
export function pagesOfView(
  view: View,
  design: Design,
  paper: Paper,
  code?: QrCode | undefined,
): Result<readonly Drawing[], TooManyPages> {
  if (view === 'assembly') return ok([drawingOf(view, design, paper, 'paper', code)])
  const { items, words } = cutOut(view, design, code)
  return pagesOf(items, words, PAPER_SIZES[paper])
}
