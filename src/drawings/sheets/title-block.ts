import { at, type Shape } from '#src/drawings/model.ts'
import { line } from '#src/drawings/shapes.ts'
import { fittedText, SMALL_TEXT_HEIGHT, TEXT_HEIGHT } from './annotations.ts'

type TitleBlock = {
  readonly title: string
  readonly subtitle: string
  /** Name and value of each cell of the bottom row. */
  readonly facts: readonly (readonly [name: string, value: string])[]
  readonly note: string
}

type Frame = { readonly left: number; readonly bottom: number; readonly right: number; readonly top: number }

/** Who and what, at which scale and in which unit (ISO 7200), without a date: the same input gives the same sheet. */
export function titleBlock({ title, subtitle, facts, note }: TitleBlock, frame: Frame): readonly Shape[] {
  const { left, bottom, right, top } = frame
  const height = top - bottom
  const room = right - left - 4
  const rule = bottom + height * 0.46
  const second = bottom + height * 0.17
  const cell = (right - left) / facts.length
  const x = (index: number): number => left + index * cell
  return [
    fittedText(title, at(left + 2, top - height * 0.23), room, 'start', { height: 3.5, bold: true }),
    fittedText(subtitle, at(left + 2, top - height * 0.45), room, 'start'),
    line('frame', at(left, rule), at(right, rule)),
    line('frame', at(left, second), at(right, second)),
    fittedText(note, at(left + 2, bottom + (second - bottom - SMALL_TEXT_HEIGHT) / 2), room, 'start', {
      height: SMALL_TEXT_HEIGHT,
    }),
    ...facts.flatMap(([name, value], index) => [
      ...(index > 0 ? [line('frame', at(x(index), second), at(x(index), rule))] : []),
      fittedText(name, at(x(index) + 1.5, rule - SMALL_TEXT_HEIGHT - 1), cell - 2, 'start', { height: 1.6 }),
      fittedText(value, at(x(index) + 1.5, second + 1.2), cell - 2, 'start', { height: TEXT_HEIGHT }),
    ]),
  ]
}
