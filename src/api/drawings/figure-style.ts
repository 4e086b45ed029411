import { LOOKS } from '#src/drawings/writers/looks.ts'

/* Nobody cuts by a drawing on a screen: there, what is cut by is as thick as can be seen [mm]. */
const SEEN = `@media screen{[stroke-width="${LOOKS.finish.width}"]{stroke-width:.3}}`

/** As wide as its frame, in the reader's own light; on paper black on white. */
export const FIGURE_STYLE = [
  ':root{color-scheme:light dark;--ink:light-dark(#1d1a16,#efe9dd);--paper:light-dark(#fff,#171512)}',
  'body{margin:0;background:var(--paper);color:var(--ink)}',
  'figure{margin:0;padding:.25rem}',
  'svg{display:block;width:100%;height:auto}',
  '.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}',
  '.narrow{display:none}',
  SEEN,
  "figcaption,.narrow{padding:.5rem;font:.9rem/1.4 'DejaVu Sans',Verdana,sans-serif}",
  ".refused{padding:.5rem;font:1rem/1.5 'DejaVu Sans',Verdana,sans-serif}.refused h1{margin:0;font:inherit}",
  '@media screen and (max-width:36rem){.wide{display:none}.narrow{display:block}}',
  '@page{margin:10mm}',
  '@media print{:root{--ink:#000;--paper:#fff}figure{break-inside:avoid}svg{max-height:80vh}}',
].join('')
