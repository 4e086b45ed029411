import { clipped } from '#src/drawings/clip.ts'
import type { Drawing, ShapeOf } from '#src/drawings/model.ts'
import { extentOf, overlap } from './extents.ts'

export const textsOn = ({ shapes }: Drawing): readonly ShapeOf<'text'>[] =>
  shapes.filter((shape) => shape.kind === 'text')

/**
 * What no sheet may have, in words: a text on another, one without height, a line through one, anything in a code, and anything
 * that leaves the paper.
 */
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
  return [...flat, ...overlaps, ...outside, ...throughTexts(drawing), ...inCodes(drawing, rounding)]
}

/** Of a text's height: a line may touch its box by so much, which has room for what reaches below the base line. */
const TOUCHED = 0.35

/** ISO 129-1: no line runs through a text. The box of a text that is turned by an odd angle says nothing. */
function throughTexts(drawing: Drawing): readonly string[] {
  const lines = drawing.shapes.filter(({ kind }) => kind !== 'text' && kind !== 'code')
  return textsOn(drawing).flatMap((text) => {
    if ((text.turned ?? 0) % 90 !== 0) return []
    const { left, bottom, right, top } = extentOf(text)
    const touched = TOUCHED * text.height
    const window = { left: left + touched, bottom: bottom + touched, right: right - touched, top: top - touched }
    return clipped(lines, window).map(({ kind, role }) => `${kind} ${role} through ${text.text}`)
  })
}

/** A camera reads a code only where nothing else stands in it or in the light edge that it brings. */
function inCodes({ shapes }: Drawing, rounding: number): readonly string[] {
  return shapes
    .filter((shape) => shape.kind === 'code')
    .flatMap((code) => {
      const { left, bottom, right, top } = extentOf(code)
      const window = { left: left + rounding, bottom: bottom + rounding, right: right - rounding, top: top - rounding }
      const texts = shapes.filter((shape) => shape.kind === 'text' && overlap(extentOf(shape), window))
      const others = shapes.filter(({ kind }) => kind !== 'text')
      const crossing = clipped(
        others.filter((shape) => shape !== code),
        window,
      )
      return [...texts, ...crossing].map(({ kind, role }) => `${kind} ${role} in the code`)
    })
}
