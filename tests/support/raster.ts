import { fileURLToPath } from 'node:url'
import { Resvg } from '@resvg/resvg-js'
import { mm } from '#shared/units/length.ts'
import { at, type Shape } from '#src/drawings/model.ts'
import { toSvg } from '#src/drawings/writers/svg.ts'

const FONTS = [
  import.meta.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'),
  import.meta.resolve('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf'),
].map((file) => fileURLToPath(file))

const FONT_OPTIONS = { loadSystemFonts: false, fontFiles: FONTS, defaultFontFamily: 'DejaVu Sans' }

export type Raster = {
  readonly width: number
  readonly height: number
  readonly pixelsPerMm: number
  /** 0 is white, 1 is black; 0 outside of the picture. */
  readonly ink: (x: number, y: number) => number
  readonly png: Buffer
}

/** A drawing as SVG, in pixels, drawn by something that is not ours. Fonts are those of the package on every machine. */
export function rasterOf(svg: string, pixelsPerMm: number): Raster {
  const widthMm = Number(/ width="([\d.]+)mm"/.exec(svg)?.[1])
  const resvg = new Resvg(svg, {
    font: FONT_OPTIONS,
    fitTo: { mode: 'width', value: Math.round(widthMm * pixelsPerMm) },
  })
  const rendered = resvg.render()
  const { width, height, pixels } = rendered
  const ink = (x: number, y: number): number => {
    const red = x >= 0 && y >= 0 && x < width && y < height ? pixels[4 * (y * width + x)] : 255
    return 1 - (red ?? 255) / 255
  }
  return { width, height, pixelsPerMm, ink, png: rendered.asPng() }
}

/** Where along a row of pixels the ink of a line lies: the middle of each run, in millimetres from the left edge. */
export function linesInRow({ width, ink, pixelsPerMm }: Raster, y: number): readonly number[] {
  const middles: number[] = []
  let weight = 0
  let moment = 0
  for (let x = 0; x <= width; x += 1) {
    const dark = ink(x, y)
    if (dark > 0.02) {
      weight += dark
      moment += dark * (x + 0.5)
    } else if (weight > 0) {
      middles.push(moment / weight / pixelsPerMm)
      weight = 0
      moment = 0
    }
  }
  return middles
}

/** How wide the ink of a text is when its capitals are so high, set by the rasteriser. */
export function inkWidth(text: string, height: number, bold: boolean): number {
  const words: Shape = {
    role: 'dimension',
    kind: 'text',
    text,
    at: at(0, 20),
    height: mm(height),
    anchor: 'start',
    bold,
  }
  const drawing = { title: '', description: '', width: mm(10), height: mm(40), scale: 1, shapes: [words] }
  const box = new Resvg(toSvg(drawing, { paper: false }), { font: FONT_OPTIONS }).getBBox()
  if (box === undefined) throw new RangeError(`a text must leave ink, got ${text}`)
  return box.width
}
