import { FIGURE_STYLE } from '#src/api/drawings/figure-style.ts'
import { STYLE as SHEET_STYLE } from '#src/job-sheet/style.ts'

const FONT = "font:1rem/1.5 'DejaVu Sans',Verdana,sans-serif"

/** A page for a frame looks like the drawing or the job sheet that it shows. The form is its own. */
export const EMBED_STYLE = [
  SHEET_STYLE,
  FIGURE_STYLE,
  `body{max-width:none;padding:0;${FONT}}`,
  'main{padding:.25rem .75rem}main.bare{padding:0}main figure{padding:0}',
  'form{display:flex;flex-wrap:wrap;gap:.5rem 1rem;align-items:end;padding:.5rem 0 0}',
  'label{display:grid;gap:.15rem}',
  'input,button{font:inherit;min-height:2.75rem;width:6.5rem;box-sizing:border-box}',
  'summary{min-height:2.75rem;line-height:2.75rem;cursor:pointer}',
  'li{margin:.25rem 0}',
  'main a{display:inline-block;padding:.6rem 0;color:inherit}',
].join('')
