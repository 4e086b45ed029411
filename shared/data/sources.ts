/** How sure a statement is: read in print, written from memory, derived in this project, or what the trade does. */
type Standing = 'published' | 'published, quoted from memory' | 'derived here' | 'common practice, no source'

export interface Source {
  readonly title: string
  /** What is taken from it here. */
  readonly usedFor: string
  readonly standing: Standing
}

/** Where the figures of the service come from. A formula or a number names its row by the key. */
export const SOURCES = {
  'iso-5593': {
    title: 'ISO 5593, Rolling bearings: Vocabulary',
    usedFor: 'the words: ring, raceway groove, pitch diameter of the ball set, radial internal clearance',
    standing: 'published',
  },
  'iso-76': {
    title: 'ISO 76, Rolling bearings: Static load ratings',
    usedFor: 'groove radius at most 0.52 (inner) and 0.53 (outer) of the ball diameter, the usual range in steel',
    standing: 'published',
  },
  'iso-1938-1': {
    title: 'ISO 1938-1, Geometrical product specifications: Dimensional measuring equipment, plain limit gauges',
    usedFor: 'go and no-go plug gauges',
    standing: 'published, quoted from memory',
  },
  'machinerys-handbook-chords': {
    title: "Machinery's Handbook, lengths of chords for spacing off the circumference of circles",
    usedFor: 'the closed ring: chord = diameter sin(pi / n)',
    standing: 'published',
  },
  'circular-segment': {
    title: 'Circular segment, any handbook of mathematics',
    usedFor: 'width and depth of a groove, and the seat on its edges',
    standing: 'published, quoted from memory',
  },
  harris: {
    title: 'T. A. Harris, Rolling Bearing Analysis',
    usedFor: 'assembly angle; end play from conformity and clearance',
    standing: 'published, quoted from memory',
  },
  'asme-b18.6.1': {
    title: 'ASME B18.6.1, Wood Screws',
    usedFor: 'shank and head of the smallest screw that holds a split ring',
    standing: 'published',
  },
  'jcgm-100': {
    title: 'JCGM 100:2008, Guide to the expression of uncertainty in measurement',
    usedFor: 'root of the sum of squares: the law of propagation of uncertainty',
    standing: 'published, quoted from memory',
  },
  'jcgm-101': {
    title: 'JCGM 101:2008, Propagation of distributions using a Monte Carlo method',
    usedFor: 'trials, the shortest interval of 95 %, and when figures stand still',
    standing: 'published, quoted from memory',
  },
  xoshiro: {
    title: 'D. Blackman, S. Vigna, Scrambled linear pseudorandom number generators (xoshiro128++)',
    usedFor: 'the random numbers of trials: the same for the same seed, on every machine',
    standing: 'published',
  },
  derived: {
    title: 'Geometry of rigid balls in grooves, derived in this project and tested by a second road',
    usedFor: 'ball gap and its slopes; the ways in for the last ball',
    standing: 'derived here',
  },
  trade: {
    title: 'Common practice of makers',
    usedFor: 'every default, and the limits at which a warning is given',
    standing: 'common practice, no source',
  },
} as const satisfies Readonly<Record<string, Source>>

export type SourceId = keyof typeof SOURCES

/** What the sizes of a bearing rest on. */
export const DESIGN_SOURCES: readonly SourceId[] = [
  'iso-5593',
  'iso-76',
  'iso-1938-1',
  'machinerys-handbook-chords',
  'circular-segment',
  'harris',
  'asme-b18.6.1',
  'derived',
  'trade',
]
