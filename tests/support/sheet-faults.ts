import type { Drawing, ShapeOf } from '#src/drawings/model.ts'
import { extentOf, overlap } from './extents.ts'

export const textsOn = ({ shapes }: Drawing): readonly ShapeOf<'text'>[] =>
  shapes.filter((shape) => shape.kind === 'text')

/** What no sheet may have, in words: a text on another, one without height, and anything that leaves the paper. */
export function sheetFaults(drawing: Drawing): readonly string[] {
  const flat = textsOn(drawing).flatMap(({ text, height }) => (height > 0 ? [] : [`${text} is ${height} mm high`]))
  const boxes = textsOn(drawing).map((text) => ({ text: text.text, box: extentOf(text) }))
  const overlaps = boxes.flatMap((one, index) =>
    boxes.slice(index + 1).flatMap((other) => (overlap(one.box, other.box) ? [`${one.text} on ${other.text}`] : [])),
  )
  // A point that has come all the way from full size to paper and back has lost its last digits.
  const rounding = 1e-9 * Math.max(drawing.width, drawing.height)
  const outside = drawing.shapes.flatMap((shape) => {
    const { left, bottom, right, top } = extentOf(shape)
    const least = Math.min(left, bottom, drawing.width - right, drawing.height - top)
    const words = shape.kind === 'text' ? shape.text : ''
    return least >= -rounding ? [] : [`${shape.kind} ${shape.role} ${words} leaves the sheet by ${-least}`]
  })
  return [...flat, ...overlaps, ...outside]
}
