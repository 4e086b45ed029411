import { clipped } from '#src/drawings/clip.ts'
import type { Drawing, Shape, ShapeOf } from '#src/drawings/model.ts'
import { type Extent, extentOf, overlap } from './extents.ts'

export const textsOn = ({ shapes }: Drawing): readonly ShapeOf<'text'>[] =>
  shapes.filter((shape) => shape.kind === 'text')

/**
 * What no sheet may have, in words: a text on another, one without height, a line through one, anything in a code, and anything
 * that leaves the paper.
 */
export function sheetFaults(drawing: Drawing): readonly string[] {
  const flat = textsOn(drawing).flatMap(({ text, height }) => (height > 0 ? [] : [`${text} is ${height} mm high`]))
  const boxed: readonly Boxed[] = drawing.shapes.map((shape) => ({ shape, box: extentOf(shape) }))
  const boxes = boxed.flatMap(({ shape, box }) => (shape.kind === 'text' ? [{ text: shape.text, box }] : []))
  const overlaps = boxes.flatMap((one, index) =>
    boxes.slice(index + 1).flatMap((other) => (overlap(one.box, other.box) ? [`${one.text} on ${other.text}`] : [])),
  )
  // A point that has come all the way from full size to paper and back has lost its last digits.
  const rounding = 1e-9 * Math.max(drawing.width, drawing.height)
  const outside = boxed.flatMap(({ shape, box: { left, bottom, right, top } }) => {
    const least = Math.min(left, bottom, drawing.width - right, drawing.height - top)
    const words = shape.kind === 'text' ? shape.text : ''
    return least >= -rounding ? [] : [`${shape.kind} ${shape.role} ${words} leaves the sheet by ${-least}`]
  })
  return [...flat, ...overlaps, ...outside, ...throughTexts(boxed), ...inCodes(boxed, rounding)]
}

type Boxed = { readonly shape: Shape; readonly box: Extent }

/** What of some shapes is inside a window. Most lie far from it: their boxes say so at less cost than a cut. */
function partsIn(boxed: readonly Boxed[], window: Extent): readonly Shape[] {
  const { left, bottom, right, top } = window
  const near = boxed.filter(
    ({ box }) => !(box.right < left || right < box.left || box.top < bottom || top < box.bottom),
  )
  return clipped(
    near.map(({ shape }) => shape),
    window,
  )
}

/** Of a text's height: a line may touch its box by so much, which has room for what reaches below the base line. */
const TOUCHED = 0.35

/** ISO 129-1: no line runs through a text. The box of a text that is turned by an odd angle says nothing. */
function throughTexts(boxed: readonly Boxed[]): readonly string[] {
  const lines = boxed.filter(({ shape: { kind } }) => kind !== 'text' && kind !== 'code')
  return boxed.flatMap(({ shape: text, box: { left, bottom, right, top } }) => {
    if (text.kind !== 'text' || (text.turned ?? 0) % 90 !== 0) return []
    const touched = TOUCHED * text.height
    const window = { left: left + touched, bottom: bottom + touched, right: right - touched, top: top - touched }
    return partsIn(lines, window).map(({ kind, role }) => `${kind} ${role} through ${text.text}`)
  })
}

/** A camera reads a code only where nothing else stands in it or in the light edge that it brings. */
function inCodes(boxed: readonly Boxed[], rounding: number): readonly string[] {
  return boxed.flatMap(({ shape: code, box: { left, bottom, right, top } }) => {
    if (code.kind !== 'code') return []
    const window = { left: left + rounding, bottom: bottom + rounding, right: right - rounding, top: top - rounding }
    const texts = boxed.filter(({ shape, box }) => shape.kind === 'text' && overlap(box, window))
    const others = boxed.filter(({ shape }) => shape.kind !== 'text' && shape !== code)
    const crossing = partsIn(others, window)
    return [...texts.map(({ shape }) => shape), ...crossing].map(({ kind, role }) => `${kind} ${role} in the code`)
  })
}
