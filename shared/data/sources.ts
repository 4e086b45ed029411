/** How sure a statement is: read in print, written from memory, derived in this project, or what the trade does. */
export const STANDINGS = [
  'published',
  'published, quoted from memory',
  'derived here',
  'common practice, no source',
] as const
type Standing = (typeof STANDINGS)[number]

export interface Source {
  readonly title: string
  /** What is taken from it. */
  readonly usedFor: string
  readonly standing: Standing
}

/** Where the figures of a bearing come from. A formula or a number names its row by the key. */
export const SOURCES = {
  'iso-5593': {
    title: 'ISO 5593, Rolling bearings: Vocabulary',
    usedFor: 'terms: ring, raceway groove, pitch diameter of the ball set, radial internal clearance',
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
    usedFor: 'trials, the shortest interval of 95 %, and when the figures have settled',
    standing: 'published, quoted from memory',
  },
  xoshiro: {
    title: 'D. Blackman, S. Vigna, Scrambled linear pseudorandom number generators (xoshiro128++)',
    usedFor: 'the random numbers of trials: the same for the same seed, on every machine',
    standing: 'published',
  },
  derived: {
    title: 'Geometry of rigid bearings, derived in this project and tested by a second method',
    usedFor: 'the gap of a full ring and its slopes, how the last of it goes in, and clearances',
    standing: 'derived here',
  },
  trade: {
    title: 'Common practice of makers',
    usedFor: 'every default, and the limits at which a warning is given',
    standing: 'common practice, no source',
  },
} as const satisfies Readonly<Record<string, Source>>

/** Where the figures of woods, boards, screws and the weather come from. A design alone does not need them. */
export const DATA_SOURCES = {
  'fpl-13-5': {
    title: 'Wood Handbook (USDA Forest Products Laboratory, FPL-GTR-190, 2010), Table 13-5, row read',
    usedFor: 'how a wood moves across the grain, per % of moisture content',
    standing: 'published',
  },
  'fpl-13-5-rederived': {
    title: 'Wood Handbook (FPL-GTR-190), Table 13-5, from memory; its shrinkage in Table 4-3 or 4-4 gives the same',
    usedFor: 'how a wood moves across the grain, per % of moisture content',
    standing: 'published, quoted from memory',
  },
  'fpl-13-5-memory': {
    title: 'Wood Handbook (FPL-GTR-190), Table 13-5, from memory and not checked against anything else',
    usedFor: 'how a wood moves across the grain, per % of moisture content: treat as a guess',
    standing: 'published, quoted from memory',
  },
  'fpl-13-3': {
    title: 'Wood Handbook (FPL-GTR-190), equations 13-2 and 13-3, size against moisture content',
    usedFor: 'how a size follows its moisture content, up to fibre saturation',
    standing: 'published',
  },
  'fpl-4-5': {
    title: 'Wood Handbook (FPL-GTR-282, 2021), equation 4-5; W. T. Simpson, FPL 190 (1973)',
    usedFor: 'equilibrium moisture content from temperature and relative humidity',
    standing: 'published',
  },
  'fpl-4-longitudinal': {
    title: 'Wood Handbook, chapter 4; American Wood Council: 0.1 to 0.2 % along the grain, green to ovendry',
    usedFor: 'how little wood moves along the grain: the middle of that range',
    standing: 'published',
  },
  'fpl-plywood': {
    title: 'Wood Handbook, chapter on wood-based composites, as others quote it: about 0.02 % per % of moisture',
    usedFor: 'how cross-laminated plywood moves in its plane',
    standing: 'published',
  },
  'fpl-plywood-thickness': {
    title: 'Thickness swelling of plywood, about that of solid wood across the grain, from memory',
    usedFor: 'how plywood moves in its thickness: treat as a guess',
    standing: 'published, quoted from memory',
  },
  'fpl-variation': {
    title: 'Wood Handbook, chapter 4: coefficient of variation of shrinkage about 15 %, from memory',
    usedFor: 'how much boards of one species differ in their movement',
    standing: 'published, quoted from memory',
  },
  'fpl-hysteresis': {
    title: 'Wood Handbook, chapter 4: wood that has dried holds more moisture than wood that took it up, from memory',
    usedFor: 'wood may be up to 1 % of moisture damper or drier than the equation says for the air',
    standing: 'published, quoted from memory',
  },
  'fpl-5-1': {
    title: 'Wood Handbook, Table 5-1, elastic ratios, rounded over the common woods of each group',
    usedFor:
      'stiffness across the grain and in shear over stiffness along it: segmented rings, and woods without ratios of their own',
    standing: 'published, quoted from memory',
  },
  'fpl-5-3b': {
    title: 'Wood Handbook (FPL-GTR-282, 2021), Table 5-3b',
    usedFor: 'specific gravity, strength across the grain, side hardness and stiffness at 12 % of moisture',
    standing: 'published',
  },
  'fpl-5-5b': {
    title: 'Wood Handbook (FPL-GTR-282, 2021), Table 5-5b, woods imported into the United States',
    usedFor: 'specific gravity of the green wood, and side hardness at 12 % of moisture',
    standing: 'published',
  },
  'segmented-ring': {
    title: 'Elastic ring of straight-grained pieces with glued miters, in plane stress, by the method of least energy',
    usedFor: 'how a ring glued from segments moves: derived in this project and checked against finite elements',
    standing: 'derived here',
  },
  'fpl-5-11': {
    title: 'Wood Handbook, Table 5-11, strength and stiffness by specific gravity',
    usedFor: 'stiffness and tension across the grain in segmented rings, of woods without printed values',
    standing: 'published, quoted from memory',
  },
  'ball-materials': {
    title: 'Handbook values for soda-lime glass, acrylic and bearing steel',
    usedFor: 'density, stiffness and hardness of bought balls',
    standing: 'published, quoted from memory',
  },
  'acrylic-humidity': {
    title:
      'A data page of a maker of acrylic sheet: growth in size of 0.2, 0.3 and 0.6 % at 60, 80 and 100 % of humidity',
    usedFor: 'how acrylic balls grow with humidity',
    standing: 'published',
  },
  'ps-20': {
    title: 'Voluntary Product Standard PS 20, American Softwood Lumber Standard, Table 3',
    usedFor: 'nominal and least dressed sizes of softwood boards and dimension lumber',
    standing: 'published',
  },
  nhla: {
    title: 'NHLA Rules for the Measurement and Inspection of Hardwood and Cypress',
    usedFor: 'thickness of hardwood, rough and surfaced on two sides',
    standing: 'published',
  },
  'wood-screw-holes': {
    title:
      'Published tables of wood screws: mean root diameter, clearance holes, pilots of 70 % (softwood) and 90 % of it',
    usedFor: 'pilot and clearance holes; other tables differ by up to 1/32 in',
    standing: 'published',
  },
  'asme-b18.6.1-memory': {
    title: 'ASME B18.6.1, Wood Screws: head angle of 82 degrees',
    usedFor: 'depth of the countersink',
    standing: 'published, quoted from memory',
  },
  'band-saw-manuals': {
    title: 'Manuals of band saws and trade guides; where they disagree the larger radius is taken',
    usedFor: 'least radius that a band-saw blade turns',
    standing: 'published',
  },
  'lathe-speed': {
    title: 'Rule of woodturners: diameter in inches times revolutions a minute between 6000 and 9000',
    usedFor: 'turning speed from the diameter of the blank',
    standing: 'common practice, no source',
  },
} as const satisfies Readonly<Record<string, Source>>

/** Where the figures of loads and speeds come from. */
export const LOAD_SOURCES = {
  hertz: {
    title: 'H. Hertz 1881; K. L. Johnson, Contact Mechanics (1985)',
    usedFor: 'contact of ball and groove, first yield under it, how much of a dent springs back',
    standing: 'published, quoted from memory',
  },
  sjovall: {
    title: 'R. Stribeck 1901, H. Sjovall 1933, as in T. A. Harris, Rolling Bearing Analysis',
    usedFor: 'how balls share a radial load, with play; how fast they roll',
    standing: 'published, quoted from memory',
  },
  koczan: {
    title: "Koczan, Karwat, Kozakiewicz, Journal of Wood Science 67 (2021): hardness of wood by Meyer's law",
    usedFor: 'the force on a ball pressed into wood is proportional to the 5/2 power of the width of the mark',
    standing: 'published',
  },
  'astm-d143': {
    title: 'ASTM D143, side hardness (Janka)',
    usedFor: 'hardness as a pressure: a ball of 0.444 in pressed in to half its diameter',
    standing: 'published, quoted from memory',
  },
  'rotating-disc': {
    title: 'Rotating disc with a hole, any handbook of strength of materials',
    usedFor: 'the hoop stress of a ring that turns',
    standing: 'published, quoted from memory',
  },
  'fpl-5-1-species': {
    title: 'Wood Handbook, Table 5-1, elastic ratios of single woods',
    usedFor: 'stiffness across the grain',
    standing: 'published, quoted from memory',
  },
  'fpl-5-6': {
    title: 'Wood Handbook, Table 5-6, average coefficients of variation of clear wood',
    usedFor: 'how far the hardness of single boards lies from the average',
    standing: 'published, quoted from memory',
  },
  'fpl-duration': {
    title: 'Wood Handbook, chapter 5, duration of load and fatigue',
    usedFor: 'what is left of the strength under a load that stays for years, and under one that comes back for ever',
    standing: 'published, quoted from memory',
  },
  'rolling-ballpark': {
    title:
      'Page of a machine shop on rolling friction, 0.06 in of lever arm for wood on wood, a ballpark by its own word',
    usedFor: 'the upper end of what wooden balls take to roll',
    standing: 'published',
  },
  'load-derived': {
    title:
      'Derived in this project from those: the dent in a groove, groove edges, an ellipse as long as the groove is wide, a turntable whose plate is pushed aside',
    usedFor: 'dents, the loads that leave them, and the speeds at which a plate goes',
    standing: 'derived here',
  },
  'load-trade': {
    title: 'Common practice',
    usedFor:
      'the dent that is still acceptable, 120 turns a minute by hand, speeds of rubbing and of glass, runout, how hard balls are to roll, the share of the strength across the grain that a ring may use',
    standing: 'common practice, no source',
  },
} as const satisfies Readonly<Record<string, Source>>

export const ALL_SOURCES = { ...SOURCES, ...DATA_SOURCES, ...LOAD_SOURCES }

export type SourceId = keyof typeof ALL_SOURCES

/** The sources of a bearing's sizes. */
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

/** What a fit correction rests on. */
export const FIT_CORRECTION_SOURCES: readonly SourceId[] = ['jcgm-101', 'derived', 'trade']

/** The sources of a load check. */
export const LOAD_CHECK_SOURCES: readonly SourceId[] = [
  'hertz',
  'sjovall',
  'koczan',
  'astm-d143',
  'fpl-5-3b',
  'fpl-5-1',
  'fpl-5-1-species',
  'fpl-5-6',
  'fpl-duration',
  'rolling-ballpark',
  'ball-materials',
  'rotating-disc',
  'load-derived',
  'load-trade',
]
