import { encode } from 'uqr'
import { mm } from '#shared/units/length.ts'
import { at, type Shape } from './model.ts'

/** A QR code (ISO/IEC 18004), its quiet zone included. */
export interface QrCode {
  /** On each side. */
  readonly modules: number
  /** The dark ones as an SVG path: a module is 1, y goes down. */
  readonly path: string
}

/** Of ISO/IEC 18004: so many light modules on every side. */
const QUIET_ZONE = 4

/** Sheets get dirty: level M reads with 15 % of it lost. */
export function qrCode(address: string): QrCode {
  const { data } = encode(address, { ecc: 'M', border: QUIET_ZONE })
  const path = data.flatMap((row, y) => runsIn(row).map(({ x, length }) => `M${x} ${y}h${length}v1h-${length}z`))
  return { modules: data.length, path: path.join('') }
}

/** Dark modules side by side. */
function runsIn(row: readonly boolean[]): readonly { readonly x: number; readonly length: number }[] {
  const ends = row.flatMap((isDark, x) => (isDark !== (row[x - 1] ?? false) ? [x] : []))
  return ends.flatMap((x, index) => (index % 2 === 0 ? [{ x, length: (ends[index + 1] ?? row.length) - x }] : []))
}

/** A code on a sheet; none where there is no address. */
export const codeAt = (code: QrCode | undefined, left: number, bottom: number, side: number): readonly Shape[] =>
  code === undefined ? [] : [{ role: 'mark', kind: 'code', ...code, at: at(left, bottom), side: mm(side) }]
