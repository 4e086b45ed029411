import type { Source } from './sources.ts'

/** Where the figures of loads and speeds come from: those of a bearing's sizes stand in `sources.ts`. */
export const LOAD_SOURCES = {
  hertz: {
    title: 'H. Hertz 1881; K. L. Johnson, Contact Mechanics (1985)',
    usedFor: 'contact of ball and groove, first yield under it, what springs back of a dent',
    standing: 'published, quoted from memory',
  },
  sjovall: {
    title: 'R. Stribeck 1901, H. Sjovall 1933, as in T. A. Harris, Rolling Bearing Analysis',
    usedFor: 'how balls share a radial load, with play; how fast they roll',
    standing: 'published, quoted from memory',
  },
  koczan: {
    title: "Koczan, Karwat, Kozakiewicz, Journal of Wood Science 67 (2021): hardness of wood by Meyer's law",
    usedFor: 'the force on a ball pressed into wood goes with the 5/2 power of the mark',
    standing: 'published',
  },
  'astm-d143': {
    title: 'ASTM D143, side hardness (Janka)',
    usedFor: 'hardness as a pressure: a ball of 0.444 in pressed in to half its diameter',
    standing: 'published, quoted from memory',
  },
  'fpl-mechanical': {
    title: 'Wood Handbook, FPL-GTR-282 (2021), table 5-3b; elastic ratios of table 5-1 in part from memory',
    usedFor: 'side hardness, compression and tension across the grain, stiffness of woods',
    standing: 'published',
  },
  'ball-materials': {
    title: 'Data sheets of makers of steel, glass and acrylic balls',
    usedFor: 'density and stiffness of balls',
    standing: 'published, quoted from memory',
  },
  'turning-rule': {
    title: 'A rule of wood turners: diameter in inches times turns a minute from 6000 to 9000',
    usedFor: 'a speed limit',
    standing: 'published',
  },
  'rotating-disc': {
    title: 'Rotating disc with a hole, any handbook of strength of materials',
    usedFor: 'the pull round a ring that turns',
    standing: 'published, quoted from memory',
  },
  'load-derived': {
    title:
      'Derived in this project from those: the dent in a groove, groove edges, an ellipse as long as the groove is wide',
    usedFor: 'dents, and the loads that leave them',
    standing: 'derived here',
  },
  'load-trade': {
    title: 'Common practice',
    usedFor: 'the dent that is still borne, the part of the strength across the grain that is asked of a ring',
    standing: 'common practice, no source',
  },
} as const satisfies Readonly<Record<string, Source>>

export type LoadSourceId = keyof typeof LOAD_SOURCES
