import { LOOKS } from '#src/drawings/writers/looks.ts'

/** The smallest font that can be read on a screen [px]. In print nothing says what can be read; common practice, no source. */
export const LEAST_TEXT = 11
/** Widths of a screen from which on a whole drawing may be shown, if its text can be read there [rem], and how large one is [px]. */
export const WIDE_FROM = [60, 84, 108, 132, 156] as const
export const ROOT_SIZE = 16
/** Round a figure, on both sides together [px]. */
export const BESIDE_FIGURE = 32

/* Nobody cuts by a drawing on a screen: there, what is cut by is as thick as can be seen [mm]. */
const SEEN = `@media screen{[stroke-width="${LOOKS.finish.width}"]{stroke-width:.3}}`

/** As wide as its frame, in the reader's own light; on paper black on white. */
export const FIGURE_STYLE = [
  ':root{color-scheme:light dark;--ink:light-dark(#1d1a16,#efe9dd);--paper:light-dark(#fff,#171512)}',
  'body{margin:0;background:var(--paper);color:var(--ink)}',
  'figure{margin:0;padding:.25rem}',
  'svg{display:block;width:100%;height:auto}',
  '.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}',
  '.narrow{display:none;gap:0 1.5rem;grid-template-columns:repeat(auto-fit,minmax(min(100%,21rem),1fr))}',
  '.narrow svg{max-width:40rem}',
  '.sizes+section{grid-column:1/-1}.sizes+section ul{columns:21rem}.narrow li{break-inside:avoid}',
  SEEN,
  "figcaption,.narrow{padding:.5rem;font:.9rem/1.4 'DejaVu Sans',Verdana,sans-serif}",
  ".refused{padding:.5rem;font:1rem/1.5 'DejaVu Sans',Verdana,sans-serif}.refused h1{margin:0;font:inherit}",
  '@media screen{.wide{display:none}.narrow{display:grid}}',
  ...WIDE_FROM.map(
    (rem) => `@media screen and (min-width:${rem}rem){.from-${rem}{display:block}.from-${rem}+.narrow{display:none}}`,
  ),
  '@page{margin:10mm}',
  '@media print{:root{--ink:#000;--paper:#fff}figure{break-inside:avoid}svg{max-height:80vh}}',
].join('')
